/** What the tables say for each task of a person who was assessed here. */
import type { StageStanding } from '../../assessments/rules/seen.ts';
import type { Task } from '../values.ts';
import type { Demand } from './demand.ts';
import { armsLack, noArmsForLimitedLeg, supportForbidden } from './arms.ts';
import { caution, demand, factsOf, fromRow, note, stop, told } from './demand.ts';
import { againstRisingAlone } from './limits.ts';
import { inChairHelp } from './in-chair-help.ts';
import { FLOOR_CAUTION, FROM_FLOOR } from './tables/from-floor.ts';
import { BARIATRIC_LATERAL, IN_BED, LATERAL, weightRow } from './tables/lying.ts';
import type { EdgeCase, StandCase, WalkCase } from './tables/ours.ts';
import { EDGE, STAND, WALK } from './tables/ours.ts';
import { rowFor } from './tables/table.ts';
import { canUseStandingAid, cooperates, fromChairWords, peopleUsed, transferHelp } from './transfer-help.ts';
import type { Capability, PlanInput } from './types.ts';

function inBed({ capability: c }: PlanInput): Demand[] {
  // Figure 4 is printed with 200 lb in the heavier row, so no setting moves it.
  const row = rowFor(IN_BED, { assists: c.assists, weight: weightRow(c.weightKg, true) });
  return [
    fromRow(IN_BED, row, factsOf(c, 'capability/assists')),
    ...told(c, 'capability/assists'),
    ...withinReach(c),
  ];
}

function lateral(input: PlanInput): Demand[] {
  const c = input.capability;
  const weight = weightRow(c.weightKg, input.rules.handling.twoHundredPoundsIsHeavier.value);
  const row = rowFor(LATERAL, { assists: c.assists, weight });
  const out = [fromRow(LATERAL, row, factsOf(c, 'capability/assists')), ...told(c, 'capability/assists')];
  if (c.weightKg === null || c.weightKg >= input.rules.handling.bariatricFromKg.value) {
    out.push(fromRow(BARIATRIC_LATERAL, rowFor(BARIATRIC_LATERAL, { assists: c.assists }), []));
  }
  return [...out, caution('osha-3182/figure-3', fromChairWords(input), [])];
}

function edge({ capability: c }: PlanInput): Demand[] {
  const standing = c.standings.get('edge');
  const lifted = standing?.outcome === 'not-met' || standing?.securedWith === 'sling';
  const comes: EdgeCase['comes'] =
    !c.cleared.has('upright') || lifted ? 'lifted' : c.comesAlone ? 'alone' : 'helped';
  const row = fromRow(EDGE, rowFor(EDGE, { comes }), [standing?.fact.id]);
  // The rows ask for two where anybody helped.
  return [row, ...(standing && standing.people > 2 ? [asAtTheCheck(standing)] : []), ...withinReach(c)];
}

const asAtTheCheck = (standing: StageStanding | undefined): Demand =>
  demand(
    'secured/keep',
    'As many people as at the check',
    [standing?.fact.id],
    peopleUsed(standing?.people ?? 2),
  );

const noWeight = (what: string, standing: StageStanding | undefined): Demand =>
  stop('capability/bears-no-weight', `No leg may bear weight, or none was seen to: no ${what}`, [
    standing?.fact.id,
  ]);

/** One person and the walking support while a leg bears only in part; two where no arm is known to push on it. */
function inPart({ capability: c }: PlanInput): Demand {
  const pushes = c.armStrength === 'both' || c.armStrength === 'one';
  const words = 'A leg bears in part or not at all: one person and the walking support';
  return demand(
    'ours/limited-leg',
    pushes ? words : `${words}; two while no arm was seen to push`,
    factsOf(c, ...LEGS),
    pushes ? 'one' : 'two',
    'walking-support',
    c.armStrength === 'one' ? { cautions: ['Only one arm pushes: ask which walking support'] } : {},
  );
}

/** What is known of the legs. */
const LEGS = [
  'capability/weight-bearing',
  'capability/not-seen-standing',
  'capability/lesser-of-order-and-seen',
];

const neverAlone = (c: Capability): Demand =>
  demand(
    'ours/does-not-wait',
    'Not known to follow instructions and wait for help: one person within reach',
    factsOf(c, 'capability/worst-of-the-window'),
    'one',
  );

const withinReach = (c: Capability): Demand[] => (cooperates(c) ? [] : [neverAlone(c)]);

const keptInSling = (did: 'Stood' | 'Walked', standing: StageStanding): Demand =>
  demand(
    'secured/keep',
    `${did} in a sling, not free: the plan keeps that`,
    [standing.fact.id],
    'two',
    'sling-lift',
  );

function stand(input: PlanInput): Demand[] {
  const c = input.capability;
  const standing = c.standings.get('stand');
  const out: Demand[] = [];
  let seen: StandCase['seen'] = 'not';
  if (c.cleared.has('stand') && c.bears !== 'none') {
    const lack = armsLack(input);
    if (lack) out.push(note('ours/arms', lack.words, lack.facts));
    seen = !lack && c.clearedFree.has('stand') && standing?.oneLeg === null ? 'free' : 'held';
    if (seen === 'held' && !canUseStandingAid(input)) {
      seen = 'not';
      out.push(
        stop(
          'before-the-tables/fit-for-the-aid',
          'A standing aid needs sitting balance, a leg that bears, instructions followed, grip and arms that may pull',
          [standing?.fact.id],
        ),
        ...told(c, 'capability/sitting-balance'),
      );
    }
  } else out.push(noWeight('standing', standing));
  out.push(fromRow(STAND, rowFor(STAND, { seen }), [standing?.fact.id]));
  if (seen === 'not') out.push(stop('ours/stand', 'Standing only in a staged check or with a therapist', []));
  // Whoever was helped up by two is not left with someone standing by, though the stand was free.
  if (seen === 'held' || (standing?.people ?? 0) >= 2) out.push(asAtTheCheck(standing));
  if (c.cleared.has('stand') && standing?.securedWith === 'sling') out.push(keptInSling('Stood', standing));
  if (seen === 'free' && c.bears === 'partial') out.push(inPart(input));
  if (!cooperates(c)) out.push(neverAlone(c));
  return out;
}

/**
 * A leg that may bear nothing by order, while standing was cleared on it: nobody saw this walk on the
 * other leg alone. Where standing was, only a therapist can have cleared what comes after.
 */
function notOnOneLeg({ capability: c, orders }: PlanInput): Demand[] {
  const stoodOn = c.standings.get('stand')?.oneLeg;
  return LEGS_OF_TWO.flatMap(([side, other]) => {
    const order = orders.weightBearing.get(`${side}-leg`);
    if (order?.value.bears !== 'none' || stoodOn === other) return [];
    const words =
      `Order: ${side} leg bears nothing, and walking on one leg was not cleared by a therapist: ` +
      "walking only in a therapist's session";
    return [stop('ours/walk', words, [order.fact, c.standings.get('walk')?.fact.id])];
  });
}
const LEGS_OF_TWO = [
  ['left', 'right'],
  ['right', 'left'],
] as const;

function walk(input: PlanInput): Demand[] {
  const c = input.capability;
  const standing = c.standings.get('walk');
  const cleared = c.cleared.has('walk') && c.bears !== 'none';
  const free = c.clearedFree.has('walk') && c.clearedFree.has('stand');
  const seen: WalkCase['seen'] = !cleared
    ? 'not'
    : !free
      ? 'held'
      : standing?.people === 0
        ? 'free-alone'
        : 'free-with-someone';
  const out = [fromRow(WALK, rowFor(WALK, { seen }), [standing?.fact.id])];
  if (seen === 'not') {
    const first = input.everWalkedHere ? '' : '; the first walk with two and a chair following';
    out.push(stop('ours/walk', `Walking only in a therapist's session${first}`, []));
  }
  if (seen === 'held' || seen === 'free-with-someone') {
    out.push(
      demand(
        'ours/walk',
        'As many people as at the check',
        [standing?.fact.id],
        peopleUsed(standing?.people ?? 2),
      ),
    );
  }
  if (cleared && standing?.securedWith === 'sling') out.push(keptInSling('Walked', standing));
  if (c.bears === 'none') out.push(noWeight('walking', standing));
  if (cleared && c.bears === 'partial') out.push(inPart(input));
  if (cleared) out.push(...notOnOneLeg(input));
  const lack = noArmsForLimitedLeg(input);
  if (lack) out.push(stop('ours/arms', lack.words, lack.facts));
  if (cleared && !input.everWalkedHere) {
    out.push(
      demand('ours/first-walk', 'The first walk here: two people and a chair following', [], 'two', 'none', {
        with: ['chair following'],
      }),
    );
  }
  if (!cooperates(c)) out.push(neverAlone(c));
  return out;
}

/** Nobody who was lifted, held or helped to the edge gets up from the floor alone, nor whom something stops from standing. */
function fromFloor(input: PlanInput): Demand[] {
  const c = input.capability;
  const edgeSeen = c.standings.get('edge');
  const against = againstRisingAlone(input).map((d) =>
    note(d.because.rule, d.because.words, d.because.facts),
  );
  const sits = c.clearedFree.has('edge') && edgeSeen?.people === 0 && !edgeSeen.securedWith;
  if (c.clearedFree.has('walk') && !sits) {
    const words = 'Did not come to the edge of the bed free and alone: does not get up alone';
    against.push(note('ours/from-floor', words, [edgeSeen?.fact.id]));
  }
  const independent =
    c.clearedFree.has('walk') && c.bears === 'full' && cooperates(c) && against.length === 0;
  const row = rowFor(FROM_FLOOR, { injury: 'none-or-minor', independent });
  return [
    { ...fromRow(FROM_FLOOR, row, [c.standings.get('walk')?.fact.id]), cautions: [FLOOR_CAUTION] },
    ...against,
  ];
}

/** With the weight unknown, too: nobody is put on a seat that may break under them. */
function ordinaryToilet({ capability: c, weight, rules }: PlanInput): Demand[] {
  const upTo = rules.handling.ordinaryToiletUpToKg.value;
  if (c.weightKg !== null && c.weightKg <= upTo) return [];
  const words = `An ordinary toilet carries about ${upTo} kg: use a commode rated for the weight`;
  return [caution('va-bariatric/toilet', words, [weight?.fact])];
}

/** A walking support of the person's own goes along wherever the feet carry. */
function ownSupport(input: PlanInput, demands: Demand[]): Demand[] {
  const support = input.walkingSupport?.value;
  if (!support || support === 'none' || supportForbidden(input)) return demands;
  const carried = demands.every((d) =>
    d.help.aids.every((a) => a === 'walking-support' || a === 'belt' || a === 'standing-aid'),
  );
  if (!carried) return demands;
  return [
    ...demands,
    demand(
      'own-walking-support',
      `Own walking support: ${support.replaceAll('-', ' ')}`,
      [input.walkingSupport?.fact],
      'on-own',
      'walking-support',
      {
        with: [support.replaceAll('-', ' ')],
      },
    ),
  ];
}

const BASE: Readonly<Record<Task, (input: PlanInput) => Demand[]>> = {
  'in-bed': inBed,
  'edge-of-bed': edge,
  'bed-chair': (input) => ownSupport(input, transferHelp(input)),
  toilet: (input) => [...ownSupport(input, transferHelp(input)), ...ordinaryToilet(input)],
  lateral,
  stand: (input) => ownSupport(input, stand(input)),
  walk: (input) => ownSupport(input, walk(input)),
  'from-floor': fromFloor,
  'in-chair': (input) => [...inChairHelp(input), ...withinReach(input.capability)],
};

export const baseHelp = (task: Task, input: PlanInput): Demand[] => BASE[task](input);
