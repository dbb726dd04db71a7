/** What one person's day asks for: times up towards the goal, the check that is due, and when none of it may be. Pure. */
import type { TaskPlan } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import type { ExpectedArrival } from '../../dayplan/rules/huddle-state.ts';
import { moveOf } from '../../dayplan/rules/round.ts';
import { gettingUp } from '../../dayplan/rules/round-gates.ts';
import type { StayId } from '../../../kernel/ids.ts';
import { HOUR, MINUTE, type EpochMs } from '../../../kernel/times.ts';
import { isUp } from '../../sessions/rules/activities.ts';
import type { WardState } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Blocked, NeededVisit, PlannedVisitId } from '../problem.ts';
import { blockedOf } from './blocked-of.ts';
import type { Grid } from './grid.ts';
import type { NotPlanned, PlanInput, PlanStay, VisitAbout } from './plan-input.ts';
import { idOf, nthOf } from './visit-ids.ts';

const QUALIFIED = ['nurse', 'charge-nurse', 'therapist'] as const;
const BEDSIDE = ['aide', ...QUALIFIED] as const;
const slotsOf = (minutes: number): number => Math.max(1, Math.ceil(minutes / 15));

interface OfStay {
  readonly visits: readonly NeededVisit[];
  readonly about: readonly VisitAbout[];
  readonly blocked: readonly Blocked[];
  /** Some of what the day asks for is left to people. */
  readonly left: NotPlanned['why'] | null;
}

/** What one stay asks for, or why none of it is planned. */
export function ofStay(one: PlanStay, input: PlanInput, grid: Grid): OfStay | NotPlanned['why'] {
  const { stay, bed } = one;
  if (stay.version === 0 || stay.shown !== 'whole') return 'not-known';
  if (stay.scope.kind === 'comfort') return 'comfort';
  if (stay.scope.kind === 'clinicians-plan') return 'clinicians-plan';
  const check = checkVisit(one, input, grid);
  const goals = goalVisits(one, input, grid, check);
  const visits = [...(check ? [check] : []), ...(typeof goals === 'string' ? [] : goals)];
  if (visits.length === 0) return typeof goals === 'string' ? goals : 'no-goal';
  return {
    visits,
    about: visits.map(({ visit }) => ({
      visit,
      label: bed.label,
      nth: nthOf(visit),
      expected: false,
    })),
    blocked: blockedOf(one, input, grid, visits),
    left: typeof goals === 'string' && goals !== 'no-goal' ? goals : null,
  };
}

function goalVisits(
  one: PlanStay,
  { t, rules, ward }: PlanInput,
  grid: Grid,
  check: NeededVisit | null,
): readonly NeededVisit[] | NotPlanned['why'] {
  const { stay, bed } = one;
  const { goal, timesUp, met } = stay.today;
  // A visit that somebody has taken is the next time up: it is on its way.
  const begun = stay.visit && stay.visit.until > t ? 1 : 0;
  const missing = goal && met !== true ? goal.timesUp - timesUp - begun : 0;
  if (!goal || missing <= 0) return 'no-goal';
  if (stay.signs.some(({ kind }) => kind === 'refusals')) return 'talk-first';
  const inBed = !isUp(goal.activity);
  if (!inBed && gettingUp(stay).length === 0) return 'no-move';
  const move = moveOf(stay);
  if (move.people === 'three-or-more') return 'three-or-more';
  // No time is left for the look that has to come first.
  if (stay.trust.state !== 'current' && !check) return [];
  const lifted = LIFTS.has(move.aid);
  const length = slotsOf(lifted ? rules.planning.liftMinutes.value : rules.planning.visitMinutes.value);
  const first = Math.max(0, slotAfter(readyAt(stay, rules), grid));
  if (first + length > grid.slots) return [];
  const rest = Math.ceil(rules.round.restMinutes.value / 15);
  const owed = stay.debt?.owed ?? false;
  const { goalPoints, laterGoalLess, debtPoints } = rules.planning;
  const nameOf = (i: number): PlannedVisitId => idOf(stay.stay, `g${timesUp + begun + i + 1}`);
  return Array.from({ length: missing }, (_, i): NeededVisit => {
    const firstTimeUp = stay.firstTimeUpPending && i === 0;
    return {
      visit: nameOf(i),
      stay: stay.stay,
      bay: bed.bay,
      isolation: stay.isolation,
      kind: 'goal',
      activity: goal.activity,
      aid: move.aid,
      firstTimeUp,
      people: move.people === 'two' || firstTimeUp ? 2 : 1,
      lead: firstTimeUp ? [...QUALIFIED] : [...BEDSIDE],
      crew: [...BEDSIDE],
      length,
      windows: [{ from: first, until: grid.slots }],
      restBefore: rest,
      restAfter: rest,
      after: [
        // Trust ran out or a trigger fired: nobody gets up before a nurse has looked.
        ...(check && stay.trust.state !== 'current' ? [check.visit] : []),
        // The second time up comes after the first, which may ask for more people.
        ...(i > 0 ? [nameOf(i - 1)] : []),
      ],
      sets: setsOf(one, move, ward),
      weight: goalPoints.value * Math.max(0.1, 1 - laterGoalLess.value * (timesUp + i)),
      debt: i === 0 ? debtPoints.value * (owed ? 1 : 0.25) : 0,
      around: i === 0 ? null : first + Math.floor(((grid.slots - first) * i) / missing),
      seenLast: stay.isolation && !owed,
    };
  });
}

/** When somebody may be asked again: rest after the last time up, a pause after what was not done. */
function readyAt({ lastUp, lately, chair }: StayView, rules: RulesDocument): EpochMs {
  const last = lately?.last;
  return Math.max(
    lastUp ? lastUp.at + rules.round.restMinutes.value * MINUTE : 0,
    chair?.backBy ?? 0,
    last?.notDone ? last.to + rules.round.againAfterMinutes[last.notDone]!.value * MINUTE : 0,
    lately?.saidNo ? lately.saidNo.at + rules.round.againAfterMinutes['said-no']!.value * MINUTE : 0,
  );
}
const slotAfter = (at: EpochMs, { start }: Grid): number => Math.ceil((at - start) / (15 * MINUTE));

/** What a ward keeps a list of: without an answer about it nothing fits. */
export const LIFTS: ReadonlySet<string> = new Set(['sling-lift', 'bariatric-lift', 'standing-aid']);
/** Null: nothing of the list is needed, or the ward keeps no list. A walking aid is a person's own. */
function setsOf(
  { fit }: PlanStay,
  { task, aid }: Pick<TaskPlan, 'task' | 'aid'>,
  ward: WardState,
): NeededVisit['sets'] {
  if (aid === 'none' || ward.items.size === 0) return null;
  const of = fit.find((f) => f.task === task);
  if (!of) return LIFTS.has(aid) ? [] : null;
  if (of.need === 'nothing-listed' || of.need === 'walking-aid') return null;
  return of.sets.slice(0, 60).map(({ item, sling }) => (sling === null ? [item] : [item, sling]));
}

function checkVisit({ stay, bed }: PlanStay, { rules }: PlanInput, grid: Grid): NeededVisit | null {
  const { due } = stay;
  const wanted = due.state === 'due' || due.state === 'overdue' || (due.at !== null && due.at < grid.end);
  // The check goes before the next move, whenever it is due, where the plan is not to be relied on.
  const before = stay.trust.state !== 'current';
  if (!wanted && !before) return null;
  const anyTime = due.state === 'overdue' || (before && due.state === 'at-next-move');
  const length = slotsOf(rules.planning.checkMinutes.value);
  if (length > grid.slots) return null;
  const last =
    due.at === null ? grid.slots : Math.max(length, Math.min(grid.slots, slotAfter(due.at, grid) + 4));
  return {
    ...QUIET,
    visit: idOf(stay.stay, 'c'),
    stay: stay.stay,
    bay: bed.bay,
    isolation: stay.isolation,
    people: stay.firstTimeUpPending ? 2 : 1,
    firstTimeUp: stay.firstTimeUpPending,
    length,
    // Overdue it may come at any time; else up to an hour after it is due.
    windows: [{ from: 0, until: anyTime ? grid.slots : last }],
    weight: rules.planning.checkPoints.value,
    debt: rules.planning.debtPoints.value * (due.state === 'overdue' ? 1 : 0.25),
  };
}

const QUIET = {
  kind: 'check',
  activity: null,
  aid: 'none',
  lead: [...QUALIFIED],
  crew: [...BEDSIDE],
  restBefore: 0,
  restAfter: 0,
  after: [],
  sets: null,
  around: null,
  seenLast: false,
} satisfies Partial<NeededVisit>;

/** Whoever comes is checked within the ward's hours of the arrival; there is no stay yet. */
export function arrival(one: ExpectedArrival, { ward, rules }: PlanInput, grid: Grid): NeededVisit | null {
  const from = Math.max(0, slotAfter(one.at, grid));
  const length = slotsOf(rules.planning.checkMinutes.value);
  const until = Math.min(grid.slots, slotAfter(one.at + rules.validity.firstCheckHours.value * HOUR, grid));
  if (from + length > until) return null;
  return {
    ...QUIET,
    visit: idOf(one.expected, 'a'),
    stay: one.expected as StayId,
    bay: ward.beds.find(({ bed }) => bed === one.bed)?.bay ?? '-',
    isolation: false,
    people: 1,
    firstTimeUp: false,
    length,
    windows: [{ from, until }],
    weight: rules.planning.checkPoints.value,
    debt: rules.planning.debtPoints.value * 0.25,
  };
}
