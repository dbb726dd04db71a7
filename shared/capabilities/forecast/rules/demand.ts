/** Who will ask for what: plans, planned moves, meals, and the moves of every day, as sources of the simulator. */
import { MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { BedView, StayView } from '../../board/view.ts';
import type { People, Task } from '../../handling/values.ts';
import type { Period } from '../../wards/context.ts';
import { minutesInto, type Horizon } from './horizon.ts';
import { STAY_TYPES, type StayType } from './history.ts';
import type { AidGroup, Due, Need, SimItem, Source } from './scenario.ts';
import type { ForecastRules } from './supply.ts';

/** By task: pieces of the ward's list that suit the person, whether or not they are free now. */
export type Fits = ReadonlyMap<Task, readonly string[]>;

export interface DemandInput {
  readonly beds: readonly BedView[];
  /** By stay. */
  readonly fits: ReadonlyMap<string, Fits>;
  readonly items: readonly SimItem[];
  /** Groups that the ward keeps a list of. Of the others nothing is known, and nobody waits for them here. */
  readonly listed: ReadonlySet<AidGroup>;
  readonly horizon: Horizon;
  /** Stretches in which meals are eaten. */
  readonly meals: readonly Period[];
  /** That somebody is got up for a meal. */
  readonly mealChance: number;
  /** Moves with a time that was set, by stay. */
  readonly visits: ReadonlyMap<string, readonly EpochMs[]>;
  readonly chairSpellMinutes: number;
  readonly rules: ForecastRules;
}

/** Times at which somebody is to be got up: a booking, and what the accepted plan of the day still has that nothing stands against. */
export const timesSet = ({ visit, planned = [] }: StayView): readonly EpochMs[] => [
  ...(visit ? [visit.from] : []),
  ...planned.filter(({ kind, stopped }) => kind === 'goal' && stopped === null).map(({ from }) => from),
];

/** Somebody who is left out of the count, and why. */
export interface LeftOut {
  readonly bed: string;
  readonly why: 'nothing-fits' | 'on-hold' | 'away';
}
export interface Demand {
  readonly sources: readonly Source[];
  /** Somebody is in every bed that has a source, by place. */
  readonly of: readonly { readonly bed: BedView; readonly stay: StayView; readonly type: StayType }[];
  readonly leftOut: readonly LeftOut[];
}

const HANDS: Readonly<Record<People, number>> = {
  'on-own': 0,
  'stand-by': 1,
  one: 1,
  two: 2,
  'three-or-more': 3,
};
const GROUP: Readonly<Partial<Record<TaskPlan['aid'], AidGroup>>> = {
  'sling-lift': 'lift',
  'bariatric-lift': 'lift',
  'standing-aid': 'standing-aid',
  'lateral-transfer-aid': 'lateral-aid',
};
const planOf = (plan: readonly TaskPlan[], task: Task): TaskPlan | null =>
  plan.find((p) => p.task === task) ?? null;

export const groupOf = (plan: TaskPlan): AidGroup | null => GROUP[plan.aid] ?? null;

export function demandOf(input: DemandInput): Demand {
  const sources: Source[] = [];
  const of: { bed: BedView; stay: StayView; type: StayType }[] = [];
  const leftOut: LeftOut[] = [];
  for (const bed of input.beds) {
    const { stay } = bed;
    if (!stay?.plan) continue;
    const moves = movesOf(stay.plan.day);
    const type = typeOf(moves);
    if (type === null) continue;
    if (stay.away && stay.away.dueBack === null) {
      leftOut.push({ bed: bed.bed, why: 'away' });
      continue;
    }
    if (moves.every(({ hold }) => hold)) {
      leftOut.push({ bed: bed.bed, why: 'on-hold' });
      continue;
    }
    if (moves.some((plan) => !plan.hold && fitting(plan, stay, input)?.length === 0))
      leftOut.push({ bed: bed.bed, why: 'nothing-fits' });
    sources.push(sourceOf(bed, stay, type, input));
    of.push({ bed, stay, type });
  }
  return { sources, of, leftOut };
}

/** The two moves that people ask for every day. */
const movesOf = (plan: readonly TaskPlan[]): TaskPlan[] =>
  (['toilet', 'bed-chair'] as const).flatMap((task) => planOf(plan, task) ?? []);

function typeOf(moves: readonly TaskPlan[]): StayType | null {
  if (moves.some((plan) => groupOf(plan) === 'lift')) return 'lifted';
  return moves.some((plan) => groupOf(plan) !== null || HANDS[plan.people] >= 2) ? 'helped' : null;
}

/** Places of the items that fit; null where the plan needs none of the ward's list. */
function fitting(plan: TaskPlan, stay: StayView, { fits, items, listed }: DemandInput): number[] | null {
  const group = groupOf(plan);
  if (group === null || !listed.has(group)) return null;
  const suits = fits.get(stay.stay)?.get(plan.task) ?? [];
  return items.flatMap((one, i) => (suits.includes(one.item) ? [i] : []));
}

/** Null for a move on hold, or one that asks for nothing that others want too. */
function needOf(plan: TaskPlan | null, stay: StayView, input: DemandInput): Need | null {
  if (!plan || plan.hold) return null;
  const hands = HANDS[plan.people];
  const items = fitting(plan, stay, input);
  if (!items && hands < 2) return null;
  const { pairMinutes, floorSeconds } = input.rules;
  // Where nothing fits, the move is done some other way or not at all: it takes hands and is named apart.
  const lifted = groupOf(plan) === 'lift';
  return {
    group: items && items.length > 0 ? groupOf(plan) : null,
    items: items ?? [],
    hands,
    minutes: lifted ? floorSeconds.value / 60 : pairMinutes.value,
  };
}

function sourceOf(bed: BedView, stay: StayView, type: StayType, input: DemandInput): Source {
  const { horizon } = input;
  const { day, night } = stay.plan!;
  const need = (plan: readonly TaskPlan[], task: Task) => needOf(planOf(plan, task), stay, input);
  const into = (at: EpochMs | null | undefined, otherwise: number) =>
    at === null || at === undefined ? otherwise : minutesInto(horizon, at);
  return {
    bed: bed.bed,
    type: STAY_TYPES.indexOf(type),
    scale: 1,
    care: {
      day: need(day, 'toilet') ?? need(day, 'bed-chair'),
      night: need(night, 'toilet') ?? need(night, 'bed-chair'),
    },
    from: into(stay.away?.dueBack, 0),
    to: into(stay.leaving?.at, Infinity),
    due: [
      ...visitsOf(stay, need(day, 'bed-chair'), input),
      ...mealsOf(stay, need(day, 'bed-chair'), input),
      ...backOf(stay, need(day, 'bed-chair'), input),
      ...turnsOf(bed, need(day, 'in-bed'), input),
    ],
  };
}

function visitsOf(
  stay: StayView,
  need: Need | null,
  { visits, horizon, chairSpellMinutes }: DemandInput,
): Due[] {
  if (!need) return [];
  return (visits.get(stay.stay) ?? []).flatMap((at): Due[] => {
    const minutes = minutesInto(horizon, at);
    if (minutes < -15) return [];
    return [
      {
        kind: 'visit',
        at: Math.max(0, minutes),
        spread: 5,
        chance: 1,
        need,
        follows: { after: chairSpellMinutes, need },
      },
    ];
  });
}

/** Up before the meal comes, back after it. Practice: within the half hour before. */
const UP_BEFORE_MEAL = 15;
function mealsOf(stay: StayView, need: Need | null, input: DemandInput): Due[] {
  const { meals, mealChance, horizon, chairSpellMinutes } = input;
  if (!need || stay.scope.kind !== 'staged') return [];
  return meals.flatMap(({ from, to }): Due[] => {
    const at = minutesInto(horizon, from) - UP_BEFORE_MEAL;
    if (at < -UP_BEFORE_MEAL) return [];
    const back = Math.max((to - from) / MINUTE, chairSpellMinutes) + UP_BEFORE_MEAL;
    return [
      {
        kind: 'meal',
        at: Math.max(0, at),
        spread: UP_BEFORE_MEAL,
        chance: mealChance,
        need,
        follows: { after: back, need },
      },
    ];
  });
}

/** Who sits in the chair now goes back by the time that was said, or after an ordinary spell. */
function backOf({ chair }: StayView, need: Need | null, { horizon, chairSpellMinutes }: DemandInput): Due[] {
  if (!need || !chair) return [];
  const at = minutesInto(horizon, chair.backBy ?? chair.since + chairSpellMinutes * MINUTE);
  return [{ kind: 'back-to-bed', at: Math.max(0, at), spread: 5, chance: 1, need, follows: null }];
}

/** Turned in bed by two: every so many hours, not everybody at once. */
function turnsOf(bed: BedView, need: Need | null, { rules, horizon }: DemandInput): Due[] {
  if (!need || need.hands < 2) return [];
  const every = rules.turnHours.value * 60;
  const turn = { ...need, group: null, items: [], minutes: rules.turnMinutes.value };
  let phase = 0;
  for (const letter of bed.bed) phase = (phase * 31 + letter.charCodeAt(0)) % every;
  const due: Due[] = [];
  for (let at = phase; at < minutesInto(horizon, horizon.to); at += every)
    due.push({ kind: 'turn', at, spread: 15, chance: 1, need: turn, follows: null });
  return due;
}
