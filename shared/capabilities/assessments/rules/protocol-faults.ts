/**
 * What is wrong with a protocol that someone wants to publish: each fault with its place (JSON
 * pointer), what it would do, and what to write instead. What only leaves people with more help than
 * they need is a warning. A document already published is not judged by this: it stays readable.
 */
import type { core } from 'zod';
import { STAGE_MEANINGS, type PartMeaning, type Protocol, type ProtocolStage } from './protocol-document.ts';

export interface Fault {
  /** JSON pointer within the document; empty for the document itself. */
  readonly place: string;
  readonly reason: string;
}

const pointer = (path: readonly PropertyKey[]): string =>
  path.map((step) => `/${String(step).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

const EXPECTED: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
};
const HOLDS: Readonly<Record<string, string>> = { string: ' signs', array: ' entries' };

/** The faults of shape, in words a person can act on. */
export function shapeFaults(issues: readonly core.$ZodIssue[]): Fault[] {
  return issues.flatMap((issue) => {
    if (issue.code !== 'unrecognized_keys') return [{ place: pointer(issue.path), reason: reasonOf(issue) }];
    const reason = 'is no field of a protocol here: take it out, or correct its name';
    return issue.keys.map((key) => ({ place: pointer([...issue.path, key]), reason }));
  });
}

function reasonOf(issue: core.$ZodIssue): string {
  switch (issue.code) {
    case 'invalid_type': {
      const wanted = EXPECTED[issue.expected] ?? issue.expected;
      return issue.message.endsWith('undefined') ? `is missing: add ${wanted}` : `must be ${wanted}`;
    }
    case 'invalid_value':
      return `must be one of: ${issue.values.map(String).join(', ')}`;
    case 'too_small':
      return issue.message.startsWith('Too small')
        ? `must be at least ${issue.minimum}${HOLDS[issue.origin] ?? ''}`
        : issue.message;
    case 'too_big':
      return `must be at most ${issue.maximum}${HOLDS[issue.origin] ?? ''}`;
    case 'invalid_format':
      return issue.format === 'date' ? 'must be a date like 2027-05-31' : issue.message;
    default:
      return issue.message;
  }
}

const SIDED: ReadonlySet<PartMeaning> = new Set<PartMeaning>([
  'leg-against-gravity',
  'leg-against-resistance',
  'leg-bears',
  'arm-pushes',
  'grip',
]);
const shows = (stage: ProtocolStage, meaning: PartMeaning) => stage.parts.some((p) => p.shows === meaning);
type Say = (path: readonly PropertyKey[], reason: string) => void;

/** The faults of sense in a document whose shape is right. */
export function senseFaults(p: Protocol): Fault[] {
  const faults: Fault[] = [];
  const say: Say = (path, reason) => faults.push({ place: pointer(path), reason });
  wordFaults(p, say);
  const clear = p.stages.findIndex((s) => s.shows === 'clear');
  if (clear < 0) {
    say(
      ['stages'],
      'no stage shows "clear": let the first one show it, or signs and orders would never be looked at before starting',
    );
  } else if (clear > 0) {
    say(
      ['stages', clear, 'shows'],
      'the stage that shows "clear" must be the first: nothing is done before it',
    );
  }
  const stand = p.stages.findIndex((s) => s.shows === 'stand');
  p.stages.forEach((stage, i) => {
    partFaults(stage, i, say);
    standingFaults(p, stage, i, say);
    holdingFaults(stage, i, stand, say);
  });
  pressureFaults(p, say);
  if (p.toldApart.aboutMinutes < p.toldApart.exactMinutes) {
    say(
      ['toldApart', 'aboutMinutes'],
      'must be at least exactMinutes: a time known only about tells less apart',
    );
  }
  return faults;
}

function wordFaults(p: Protocol, say: Say): void {
  const seen = new Map<string, string>([['not known', 'Not known']]);
  const take = (word: string, path: readonly PropertyKey[]) => {
    const known = seen.get(word.toLowerCase());
    // The very same word is a fault of shape already.
    if (known !== undefined && known !== word) {
      say(path, `"${word}" differs from "${known}" only in capitals: choose another word`);
    }
    seen.set(word.toLowerCase(), word);
  };
  take(p.lowestWord, ['lowestWord']);
  p.stages.forEach((s, i) => {
    if (s.word !== null) take(s.word, ['stages', i, 'word']);
  });
}

function partFaults(stage: ProtocolStage, i: number, say: Say): void {
  stage.parts.forEach((part, j) => {
    const at = ['stages', i, 'parts', j] as const;
    if (part.gate === 'one-side' && !part.sided) {
      say(
        [...at, 'gate'],
        'a part without sides cannot have the gate "one-side": write "required", or make it sided',
      );
    }
    if (part.shows && SIDED.has(part.shows) !== part.sided) {
      say(
        [...at, 'sided'],
        part.sided
          ? `a part that shows "${part.shows}" is of the whole person: write false`
          : `a part that shows "${part.shows}" is tested on each side: write true, or it would never be read`,
      );
    }
  });
  if (stage.parts.every((part) => part.gate === 'informs')) {
    say(
      ['stages', i, 'parts'],
      'no part decides this stage: give at least one the gate "required" or "one-side"',
    );
  }
}

function standingFaults(p: Protocol, stage: ProtocolStage, i: number, say: Say): void {
  const bears = stage.parts.findIndex((part) => part.shows === 'leg-bears');
  if (stage.shows === 'stand' && bears < 0) {
    say(
      ['stages', i, 'parts'],
      'a stage that shows "stand" needs a part that shows "leg-bears": without it a leg that does not bear is never seen',
    );
  }
  if (
    bears >= 0 &&
    (stage.shows === 'stand' || stage.oneLegRoute) &&
    stage.parts[bears]!.gate !== 'required'
  ) {
    say(
      ['stages', i, 'parts', bears, 'gate'],
      'must be "required": standing on one leg is the one-leg route, and goes on only with a therapist',
    );
  }
  if (!stage.oneLegRoute) return;
  if (bears < 0) {
    say(
      ['stages', i, 'oneLegRoute'],
      'needs a part of this stage that shows "leg-bears": write false, or add the part',
    );
  }
  if (!p.stages.slice(0, i + 1).some((s) => shows(s, 'arm-pushes'))) {
    say(
      ['stages', i, 'oneLegRoute'],
      'needs a part that shows "arm-pushes", here or before: one leg asks for both arms, and nobody would see them',
    );
  }
}

function holdingFaults(stage: ProtocolStage, i: number, stand: number, say: Say): void {
  const onFeet = stand >= 0 && i >= stand;
  if (stage.firstTimeSecured && stage.securedBy.length === 0) {
    say(
      ['stages', i, 'securedBy'],
      'is empty, and the first time is to be held safe: say what may hold, or write firstTimeSecured false',
    );
  }
  stage.securedBy.forEach((held, j) => {
    const at = ['stages', i, 'securedBy', j] as const;
    if (stage.securedBy.indexOf(held) < j) say(at, `"${held}" is there twice: take one out`);
    if (stage.shows === 'clear') say(at, 'nobody is moved in the stage that shows "clear": take it out');
    else if (held === 'raised-bed' && onFeet) {
      say(at, 'the raised bed holds nobody on their feet: take it out');
    } else if (held === 'standing-aid' && !onFeet) {
      say(at, 'the standing aid holds a person who stands: take it out of the stages before');
    }
  });
  if (onFeet && !stage.symptomStops) {
    say(['stages', i, 'symptomStops'], 'must be true: with a symptom on their feet nobody goes on');
  }
}

function pressureFaults({ pressureSet: set }: Protocol, say: Say): void {
  set.standingMinutes.forEach((minute, k) => {
    if (minute < 1) {
      say(
        ['pressureSet', 'standingMinutes', k],
        'must be at least 1 min: a reading at once on rising would count as a whole set, and a later fall would never be seen',
      );
    }
    const before = set.standingMinutes[k - 1];
    if (before === undefined || minute - before > 2 * set.within) return;
    say(
      ['pressureSet', 'standingMinutes', k],
      `must be more than ${2 * set.within} min (twice "within") after the one before, or one reading would count for both`,
    );
  });
}

const GAP: Readonly<Record<Exclude<ProtocolStage['shows'], null | 'clear'>, string>> = {
  upright: 'everybody is moved to the edge of the bed as if lifted, and assists in bed as if not able',
  edge: 'no standing aid is ever offered, and no sitting balance is known',
  stand: 'nobody ever bears weight',
  turn: 'nobody is ever taken to transfer freely',
  walk: 'nobody is cleared to walk',
};

/**
 * What a document leaves out, with what that does: more help, but for sitting unheld, which the ward then looks at by
 * other parts or not at all.
 */
export function protocolWarnings(p: Protocol): Fault[] {
  const out: Fault[] = [];
  for (const meaning of STAGE_MEANINGS) {
    if (meaning === 'clear' || p.stages.some((s) => s.shows === meaning)) continue;
    out.push({ place: '/stages', reason: `no stage shows "${meaning}": ${GAP[meaning]}` });
  }
  const lacks = (meaning: PartMeaning, what: string) => {
    if (p.stages.some((s) => shows(s, meaning))) return;
    out.push({ place: '/stages', reason: `no part shows "${meaning}": ${what}` });
  };
  if (p.stages.some((s) => s.shows === 'edge')) {
    lacks('sits-unheld', 'whoever clears the edge counts as sitting unheld, though nobody looked');
    out.push(...sittingOnlyInforms(p));
  }
  if (p.stages.some((s) => s.shows === 'stand')) {
    lacks('leg-against-resistance', 'whoever rises freely counts as held safe');
    lacks('grip', 'no standing aid is ever offered');
    lacks('arm-pushes', 'no seated transfer with the arms is ever offered');
  }
  return out;
}

/** The parts that look at sitting unheld, when none of them decides its stage. */
function sittingOnlyInforms({ stages }: Protocol): Fault[] {
  const found = stages.flatMap((stage, i) =>
    stage.parts.flatMap((part, j) =>
      part.shows === 'sits-unheld'
        ? [{ gate: part.gate, place: pointer(['stages', i, 'parts', j, 'gate']) }]
        : [],
    ),
  );
  if (found.some((part) => part.gate !== 'informs')) return [];
  const reason =
    'the part that shows "sits-unheld" only informs: whoever falls over sitting counts as sitting unheld; write "required"';
  return found.map(({ place }) => ({ place, reason }));
}
