/**
 * What the rest of the ward day asks for, as a problem a plan can solve: from the rows of the board,
 * who is on, the equipment and the ward's rules. Pure. It asks only for what the board's own rules
 * allow; whom no plan may place stands in `notPlanned` with the reason.
 */
import type { ItemId } from '../../aids/values.ts';
import type { Usable } from '../../aids/rules/usable.ts';
import type { BedView, StayView, TaskPlan } from '../../board/view.ts';
import type { ExpectedArrival } from '../../dayplan/rules/huddle-state.ts';
import { moveOf } from '../../dayplan/rules/round.ts';
import { gettingUp } from '../../dayplan/rules/round-gates.ts';
import type { StayId } from '../../../kernel/ids.ts';
import { HOUR, MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { Period, WardCalendar, WardState } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import {
  MOST_VISITS,
  type Blocked,
  type DayProblem,
  type NeededVisit,
  type PlannedVisitId,
} from '../problem.ts';
import type { notPlannedWhy } from '../not-planned.ts';
import type { AcceptedPlan } from './accepted.ts';
import { gridFrom, inside, touched, type Grid } from './grid.ts';
import { staffOf } from './plan-staff.ts';
import { wallWindows } from './windows.ts';

/** One occupied bed with what of the list does each task of its plan. */
export interface PlanStay {
  readonly bed: BedView;
  readonly stay: StayView;
  readonly fit: readonly {
    readonly task: TaskPlan['task'];
    readonly need: string;
    readonly sets: readonly { readonly item: ItemId; readonly sling: ItemId | null }[];
  }[];
}
export interface PlanInput {
  readonly t: EpochMs;
  readonly ward: WardState;
  readonly calendar: WardCalendar;
  readonly rules: RulesDocument;
  readonly stays: readonly PlanStay[];
  readonly expected: readonly ExpectedArrival[];
  readonly items: readonly { readonly item: ItemId; readonly usable: Usable['word'] }[];
  readonly accepted: AcceptedPlan | null;
}

export interface NotPlanned {
  readonly stay: StayId;
  readonly label: string;
  readonly why: (typeof notPlannedWhy)[number];
}
/** What a screen says of a visit beside its id. */
export interface VisitAbout {
  readonly visit: PlannedVisitId;
  readonly label: string;
  /** Which time up of the day it is; null for a check. */
  readonly nth: number | null;
  readonly expected: boolean;
}
export interface BuiltProblem {
  readonly problem: DayProblem;
  readonly about: readonly VisitAbout[];
  readonly notPlanned: readonly NotPlanned[];
}

const QUALIFIED = ['nurse', 'charge-nurse', 'therapist'] as const;
const BEDSIDE = ['aide', ...QUALIFIED] as const;
const idOf = (stay: string, end: string): PlannedVisitId => `${stay.slice(0, 56)}-${end}` as PlannedVisitId;
const slotsOf = (minutes: number): number => Math.max(1, Math.ceil(minutes / 15));

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
  const kept = visits.slice(0, MOST_VISITS);
  const keptIds = new Set(kept.map(({ visit }) => visit));
  return {
    problem: {
      grid: { start: grid.start, slots: grid.slots },
      visits: kept,
      blocked: blocked.map((b) => ({ ...b, visits: b.visits?.filter((id) => keptIds.has(id)) ?? null })),
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
  };
}

const labelOf = (one: ExpectedArrival, ward: WardState): string =>
  ward.beds.find(({ bed }) => bed === one.bed)?.label ?? '';

interface OfStay {
  readonly visits: readonly NeededVisit[];
  readonly about: readonly VisitAbout[];
  readonly blocked: readonly Blocked[];
  /** Some of what the day asks for is left to people. */
  readonly left: NotPlanned['why'] | null;
}

function ofStay(one: PlanStay, input: PlanInput, grid: Grid): OfStay | NotPlanned['why'] {
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
    about: visits.map(({ visit, kind }) => ({
      visit,
      label: bed.label,
      nth: kind === 'check' ? null : Number(/-g(\d+)$/.exec(visit)![1]),
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
  const inBed = IN_BED.has(goal.activity);
  if (!inBed && gettingUp(stay).length === 0) return 'no-move';
  const move = inBed ? NOT_MOVED : moveOf(stay);
  if (move.people === 'three-or-more') return 'three-or-more';
  const lifted = move.aid === 'sling-lift' || move.aid === 'bariatric-lift' || move.aid === 'standing-aid';
  const length = slotsOf(lifted ? rules.planning.liftMinutes.value : rules.planning.visitMinutes.value);
  const first = Math.max(0, slotAfter(readyAt(stay, rules), grid));
  if (first + length > grid.slots) return [];
  const rest = Math.ceil(rules.round.restMinutes.value / 15);
  const owed = stay.debt?.owed ?? false;
  const { goalPoints, laterGoalLess, debtPoints } = rules.planning;
  return Array.from({ length: missing }, (_, i): NeededVisit => {
    const firstTimeUp = stay.firstTimeUpPending && i === 0;
    return {
      visit: idOf(stay.stay, `g${timesUp + begun + i + 1}`),
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
      // Trust ran out or a trigger fired: nobody gets up before a nurse has looked.
      after: check && stay.trust.state !== 'current' ? [check.visit] : [],
      sets: setsOf(one, move, ward),
      weight: goalPoints.value * Math.max(0.1, 1 - laterGoalLess.value * (timesUp + i)),
      debt: i === 0 ? debtPoints.value * (owed ? 1 : 0.25) : 0,
      around: i === 0 ? null : first + Math.floor(((grid.slots - first) * i) / missing),
      seenLast: stay.isolation && !owed,
    };
  });
}

/** What stays in bed needs no lift and no second person; the bed raises the back. */
const IN_BED: ReadonlySet<string> = new Set(['bed-exercise', 'back-raised']);
const NOT_MOVED: Pick<TaskPlan, 'task' | 'people' | 'aid'> = { task: 'in-bed', people: 'one', aid: 'none' };

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

/** Null: nothing of the list is needed, or the ward keeps no list. A walking aid is a person's own. */
function setsOf(
  { fit }: PlanStay,
  { task, aid }: Pick<TaskPlan, 'task' | 'aid'>,
  ward: WardState,
): NeededVisit['sets'] {
  if (aid === 'none') return null;
  const of = fit.find((f) => f.task === task);
  if (!of || of.need === 'nothing-listed' || of.need === 'walking-aid' || ward.items.size === 0) return null;
  return of.sets.slice(0, 60).map(({ item, sling }) => (sling === null ? [item] : [item, sling]));
}

function checkVisit({ stay, bed }: PlanStay, { rules }: PlanInput, grid: Grid): NeededVisit | null {
  const { due } = stay;
  const wanted = due.state === 'due' || due.state === 'overdue' || (due.at !== null && due.at < grid.end);
  // "At the next move": the check goes before it, where something is asked of the person today.
  const before = due.state === 'at-next-move' && stay.trust.state !== 'current';
  if (!wanted && !before) return null;
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
    windows: [{ from: 0, until: due.state === 'overdue' || before ? grid.slots : last }],
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
function arrival(one: ExpectedArrival, { ward, rules }: PlanInput, grid: Grid): NeededVisit | null {
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

function blockedOf(
  { stay }: PlanStay,
  { t, calendar, rules, ward }: PlanInput,
  grid: Grid,
  visits: readonly NeededVisit[],
): Blocked[] {
  const goals = visits.filter(({ kind }) => kind === 'goal').map(({ visit }) => visit);
  const at = (period: Period, why: Blocked['why'], of: Blocked['visits']): Blocked[] => {
    const slots = touched(period, grid);
    return slots && (of === null || of.length > 0) ? [{ stay: stay.stay, at: slots, why, visits: of }] : [];
  };
  const nights: Period[] = [];
  for (let from = grid.start; from < grid.end; from = calendar.night(from).until) {
    const { is, until } = calendar.night(from);
    if (is) nights.push({ from, to: until });
  }
  // Whatever keeps everybody in bed; passing its review time frees nobody.
  const held = stay.holds.some(({ scope }) => scope !== 'walking' && scope !== 'standing');
  const notNow = stay.mayStart?.word === 'not-now';
  return [
    ...(held || notNow ? at({ from: grid.start, to: grid.end }, 'hold', goals) : []),
    ...(stay.away
      ? at({ from: grid.start, to: Math.max(t, stay.away.dueBack ?? grid.end) }, 'off-ward', null)
      : []),
    ...(stay.leaving ? at({ from: stay.leaving.at, to: grid.end }, 'off-ward', null) : []),
    ...(stay.visit && stay.visit.until > t
      ? at({ from: stay.visit.from, to: stay.visit.until }, 'appointment', null)
      : []),
    ...wallWindows(rules.planning.meals.value, ward.zone, grid).flatMap((p) => at(p, 'meal', goals)),
    ...wallWindows(rules.planning.rest.value, ward.zone, grid).flatMap((p) => at(p, 'rest', goals)),
    ...nights.flatMap((p) => at(p, 'night', goals)),
  ];
}

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
