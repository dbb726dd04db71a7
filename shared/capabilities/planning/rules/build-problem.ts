/**
 * What the rest of the ward day asks for, as a problem a plan can solve: from the rows of the board,
 * who is on, the equipment and the ward's rules. Pure. It asks only for what the board's own rules
 * allow; whom no plan may place stands in `notPlanned` with the reason.
 */
import type { ItemId } from '../../aids/values.ts';
import type { Usable } from '../../aids/rules/usable.ts';
import type { ExpectedArrival } from '../../dayplan/rules/huddle-state.ts';
import { MINUTE } from '../../../kernel/times.ts';
import type { WardState } from '../../wards/context.ts';
import { MOST_VISITS, type Blocked, type DayProblem, type NeededVisit } from '../problem.ts';
import type { AcceptedPlan } from './accepted.ts';
import { gridFrom, inside, type Grid } from './grid.ts';
import type { NotPlanned, PlanInput, VisitAbout } from './plan-input.ts';
import { staffOf } from './plan-staff.ts';
import { arrival, ofStay } from './visits-of-stay.ts';

export interface BuiltProblem {
  readonly problem: DayProblem;
  readonly about: readonly VisitAbout[];
  readonly notPlanned: readonly NotPlanned[];
  /** Asked for beyond the most that a plan may hold: those that weigh least. They stand in `about`, not in the problem. */
  readonly beyond: readonly NeededVisit[];
}

export function buildProblem(input: PlanInput): BuiltProblem {
  const { t, calendar, rules, ward } = input;
  const grid = gridFrom(t, calendar);
  const visits: NeededVisit[] = [];
  const about: VisitAbout[] = [];
  const blocked: Blocked[] = [];
  const notPlanned: NotPlanned[] = [];
  for (const one of input.stays) {
    const made = ofStay(one, input, grid);
    if (typeof made === 'string') {
      notPlanned.push({ stay: one.stay.stay, label: one.bed.label, why: made });
      continue;
    }
    visits.push(...made.visits);
    about.push(...made.about);
    blocked.push(...made.blocked);
    if (made.left) notPlanned.push({ stay: one.stay.stay, label: one.bed.label, why: made.left });
  }
  for (const one of input.expected) {
    const made = arrival(one, input, grid);
    if (!made) continue;
    visits.push(made);
    about.push({ visit: made.visit, label: labelOf(one, ward), nth: null, expected: true });
  }
  const { kept, beyond } = withinMost(visits);
  return {
    problem: {
      grid: { start: grid.start, slots: grid.slots },
      visits: [...kept],
      // Also of visits beyond the most: one that is put in by hand is stopped like the others.
      blocked,
      staff: staffOf(input, grid),
      items: input.items.map(({ item, usable }) => itemOf(item, usable, input, grid)),
      weights: {
        version: rules.version,
        otherBay: rules.planning.otherBayPoints.value,
        seenLast: rules.planning.seenLastPoints.value,
        spread: rules.planning.spreadPoints.value,
        fairness: rules.planning.fairnessPoints.value,
        moved: rules.planning.movedPoints.value,
        otherCrew: rules.planning.otherCrewPoints.value,
      },
      previous: previousOf(input.accepted, kept, grid),
    },
    about,
    notPlanned,
    beyond,
  };
}

/** What weighs most stays, of equal weight what comes first; nobody's later visit without what it has to follow. */
function withinMost(visits: readonly NeededVisit[]) {
  if (visits.length <= MOST_VISITS) return { kept: visits, beyond: [] };
  const most = new Set(
    visits
      .toSorted((a, b) => b.weight - a.weight)
      .slice(0, MOST_VISITS)
      .map(({ visit }) => visit),
  );
  const kept = new Set<string>();
  for (const { visit, after } of visits) {
    if (most.has(visit) && after.every((first) => kept.has(first))) kept.add(visit);
  }
  return {
    kept: visits.filter(({ visit }) => kept.has(visit)),
    beyond: visits.filter(({ visit }) => !kept.has(visit)),
  };
}

const labelOf = (one: ExpectedArrival, ward: WardState): string =>
  ward.beds.find(({ bed }) => bed === one.bed)?.label ?? '';

/** In use it is taken to be back after one lift's time; what is not known to be usable is not planned with. */
function itemOf(
  item: ItemId,
  usable: Usable['word'],
  { t, rules }: PlanInput,
  grid: Grid,
): DayProblem['items'][number] {
  const from = usable === 'in-use' ? t + rules.planning.liftMinutes.value * MINUTE : grid.start;
  const free = usable === 'usable' || usable === 'in-use' ? inside({ from, to: grid.end }, grid) : null;
  return {
    item,
    aid: 'none',
    free: free ? [free] : [],
    cleaning: Math.ceil(rules.planning.cleaningMinutes.value / 15),
    cleaningAfterIsolation: Math.ceil(rules.planning.cleaningIsolationMinutes.value / 15),
  };
}

/** Of the accepted plan: what is still asked for and still ahead. */
function previousOf(accepted: AcceptedPlan | null, visits: readonly NeededVisit[], grid: Grid) {
  const asked = new Set(visits.map(({ visit }) => visit));
  return (accepted?.placements ?? []).flatMap(({ visit, start, crew, items }) => {
    const at = (start - grid.start) / (15 * MINUTE);
    if (!asked.has(visit) || !Number.isInteger(at) || at < 0 || at >= grid.slots) return [];
    return [{ visit, start: at, crew: [...crew], items: [...items], pinned: false }];
  });
}
