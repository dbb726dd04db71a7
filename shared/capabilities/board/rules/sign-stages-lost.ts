/** Stages lost between two checks that lie close together. */
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { Protocol } from '../../assessments/rules/protocol.ts';
import type { Fact } from '../../corrections/facts.ts';
import { isCheck, isConfirm } from '../../orders/rules/triggers.ts';
import { sayDayTime } from '../../wards/rules/calendar.ts';
import type { SignView } from '../activity-view.ts';
import type { SignsInput } from './signs-input.ts';

/** The tier after a check, or confirmed by a nurse at that time. */
interface Point {
  readonly at: EpochMs;
  readonly fact: EventId;
  readonly word: string;
  /** How many worded stages are cleared. */
  readonly place: number;
}

/**
 * The tier fell by the ward's number of stages between two looks within its hours, and has not come
 * back. Told for as many hours from the later look. Looks under another protocol are not compared.
 */
export function stagesLost(input: SignsInput): SignView | null {
  const { facts, t, rules, protocol, tier, calendar, note } = input;
  const hours = rules.signs.stagesLostHours.value;
  const lost = rules.signs.stagesLost.value;
  const words = wordsOf(protocol);
  // Most stays have lost nothing: then what each check said need not be worked out.
  const now = tier.view.word === null ? -1 : words.indexOf(tier.view.word);
  if (now < 0 || now > words.length - 1 - lost) return null;
  const recent = (f: Fact) => t - f.occurred < 2 * hours * HOUR;
  if (facts.filter((f) => recent(f) && (isCheck(f) || isConfirm(f))).length < 2) return null;

  const points = pointsOf(input, words);
  const last = points.at(-1);
  if (!last) return null;
  let found: { from: Point; to: Point } | null = null;
  for (const to of points) {
    if (t - to.at >= hours * HOUR) continue;
    for (const from of points) {
      if (from.at > to.at || to.at - from.at > hours * HOUR) continue;
      if (from.place - to.place < lost || from.place - last.place < lost) continue;
      if (!found || from.place - to.place >= found.from.place - found.to.place) found = { from, to };
    }
  }
  if (!found) return null;
  const { from, to } = found;
  note(to.at + hours * HOUR);
  const when = (p: Point) => `${p.word} ${sayDayTime(calendar.zone, p.at)}`;
  const fell = `${from.place - to.place} stages less within ${hours} h`;
  return {
    kind: 'stages-lost',
    words: `${fell}: ${when(from)}, ${when(to)}`,
    because: [
      { rule: 'signs/stages-lost', facts: [from.fact, to.fact], words: `${when(from)}, then ${when(to)}` },
    ],
  };
}

const wordsOf = ({ lowestWord, stages }: Protocol): string[] => [
  lowestWord,
  ...stages.flatMap((s) => s.word ?? []),
];

/** In the order of the facts: each check by a qualified author, and each confirmation of what stood. A nurse's look decides what was lost. */
function pointsOf({ facts, protocol, tierWords }: SignsInput, words: readonly string[]): Point[] {
  const after = tierWords();
  const points: Point[] = [];
  for (const fact of facts) {
    if (isConfirm(fact)) {
      const stood = points.at(-1);
      if (stood) points.push({ ...stood, at: fact.occurred, fact: fact.id });
    } else if (isCheck(fact)) {
      const { id, version } = fact.data.protocol;
      const word = after.get(fact.id);
      const place = word === undefined ? -1 : words.indexOf(word);
      if (id !== protocol.id || version !== protocol.version || place < 0) points.length = 0;
      else points.push({ at: fact.occurred, fact: fact.id, word: word!, place });
    }
  }
  return points;
}
