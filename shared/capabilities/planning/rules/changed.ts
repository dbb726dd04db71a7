/** What if: the same day with one thing changed. Pure; the plan before is kept where it can be. */
import type { StayId } from '../../../kernel/ids.ts';
import type { DayProblem, NeededVisit, Placement, PlannedVisitId, Slots } from '../problem.ts';

export type Change =
  | { readonly kind: 'person-away'; readonly staff: string; /** From this slot on. */ readonly from: number }
  | { readonly kind: 'item-lost'; readonly item: string; /** From this slot on. */ readonly from: number }
  | {
      readonly kind: 'one-more-arrival';
      /** Slot of the arrival. */ readonly at: number;
      readonly hours: number;
    };

export const EXTRA = 'what-if-arrival';
const before = (all: readonly Slots[], from: number): Slots[] =>
  all.flatMap((one) => (one.from >= from ? [] : [{ from: one.from, until: Math.min(one.until, from) }]));

export function changed(problem: DayProblem, change: Change, base: readonly Placement[]): DayProblem {
  const previous = base.map((one) => ({ ...one, pinned: false }));
  switch (change.kind) {
    case 'person-away':
      return {
        ...problem,
        previous,
        staff: problem.staff.map((one) =>
          one.staff === change.staff ? { ...one, on: before(one.on, change.from) } : one,
        ),
      };
    case 'item-lost':
      return {
        ...problem,
        previous,
        items: problem.items.map((one) =>
          one.item === change.item ? { ...one, free: before(one.free, change.from) } : one,
        ),
      };
    case 'one-more-arrival':
      return { ...problem, previous, visits: [...problem.visits, ...arrival(problem, change)] };
  }
}

/** Whoever comes needs a first check within the ward's hours. */
function arrival({ grid, visits }: DayProblem, { at, hours }: Extract<Change, { kind: 'one-more-arrival' }>) {
  const until = Math.min(grid.slots, at + hours * 4);
  if (at >= until) return [];
  const like = visits.find(({ kind }) => kind === 'check');
  const one: NeededVisit = {
    visit: EXTRA as PlannedVisitId,
    stay: EXTRA as StayId,
    bay: '-',
    isolation: false,
    kind: 'check',
    activity: null,
    aid: 'none',
    firstTimeUp: false,
    people: 1,
    lead: ['nurse', 'charge-nurse', 'therapist'],
    crew: ['aide', 'nurse', 'charge-nurse', 'therapist'],
    length: like?.length ?? 1,
    windows: [{ from: at, until }],
    restBefore: 0,
    restAfter: 0,
    after: [],
    sets: null,
    weight: like?.weight ?? 150,
    debt: like?.debt ?? 0.5,
    around: null,
    seenLast: false,
  };
  return [one];
}

/** In the plan before and not in this one: who would go unmoved, or unchecked. */
export const goesWithout = (base: readonly Placement[], now: readonly Placement[]): PlannedVisitId[] => {
  const still = new Set(now.map(({ visit }) => visit));
  return base.filter(({ visit }) => !still.has(visit)).map(({ visit }) => visit);
};
