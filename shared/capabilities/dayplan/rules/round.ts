/**
 * The round: whom to see next. Gates first, then a rank whose every point is told; the same facts give
 * the same order, ties stand in the order of beds. Everybody in a bed is on the list or in the register
 * beside it, once. It proposes; whoever goes decides.
 */
import type { StaffId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import { HOUR, MINUTE } from '../../../kernel/times.ts';
import type { VisitView } from '../../board/activity-view.ts';
import type { Because } from '../../board/because.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { BedView, BoardView, StayView } from '../../board/view.ts';
import { isUp } from '../../sessions/rules/activities.ts';
import type { WardCalendar } from '../../wards/context.ts';
import { sayTime } from '../../wards/rules/calendar.ts';
import { DEFAULT_RULES, type RulesDocument } from '../../wards/rules/rules-document.ts';
import { pairingsOf, plannedOn, visitsOn, type Hands, type Pairing } from './pairing.ts';
import { gateOf, gettingUp, type Gate, type GateKind, type GateInput } from './round-gates.ts';
import { awakeHours, missing, reasonsOf, type Reason } from './round-rank.ts';
import { goes } from './visits.ts';

interface Placed {
  readonly bed: BedView['bed'];
  readonly label: string;
  readonly bay: string;
  readonly stay: StayView['stay'];
  readonly visit: VisitView | null;
  /** Whoever asks goes there, first or second. */
  readonly yours: boolean;
}
export interface RoundEntry extends Placed {
  /** All of them, the strongest first. */
  readonly reasons: readonly Reason[];
  readonly points: number;
  /** The move that the day asks for, as far as the plan allows; its people and aid. */
  readonly move: Pick<TaskPlan, 'task' | 'people' | 'aid'>;
  /** Who could do it, in words. */
  readonly who: string;
  /** Why the one before comes first; null for the first. */
  readonly notHigher: string | null;
  /** What would change the place on the list. */
  readonly changes: string;
  /** Ask a nurse before starting: the reasons. */
  readonly askFirst: readonly string[];
  /** Where two go and no second person is named: when whoever asks could go, and with whom. */
  readonly pairs: readonly Pairing[];
}
export interface NotListed extends Placed {
  readonly kind: GateKind;
  readonly because: Because;
  readonly until: string;
}
export interface Round {
  readonly entries: readonly RoundEntry[];
  readonly notListed: readonly NotListed[];
  /** Beds with nobody in them: with these every bed of the ward is named once. */
  readonly empty: readonly Pick<Placed, 'bed' | 'label'>[];
}

/** The list as it is looked at again later: the same facts, whoever asks, give the same value. */
export const roundOn = (input: Omit<RoundInput, 'on'>): Round =>
  roundOf({ ...input, on: input.hands ? new Set(input.hands.keys()) : null });

export interface RoundInput {
  readonly board: BoardView;
  readonly t: EpochMs;
  readonly calendar: WardCalendar;
  readonly rules?: RulesDocument;
  /** Who asks, so that their own visit comes first; null: nobody in particular. */
  readonly asker: StaffId | null;
  /** Who is known to be on; null where nobody is named. */
  readonly on: ReadonlySet<StaffId> | null;
  /** The same with their times, so that two can be matched. */
  readonly hands?: Hands | null;
}

/** So many times are offered for one visit. */
const PAIRS = 4;
/** A booking that begins within this long is the next thing to do. */
const SOON = 10 * MINUTE;

interface Ranked {
  readonly placed: Placed;
  readonly stay: StayView;
  readonly reasons: readonly Reason[];
  readonly points: number;
  readonly last: boolean;
}

export function roundOf(asked: RoundInput): Round {
  const { board, t, calendar, rules = DEFAULT_RULES, asker, on, hands = null } = asked;
  const night = calendar.night(t);
  const say = (at: EpochMs): string => sayTime(calendar.zone, at);
  const input = { t, night, rules, say };
  const ranked: Ranked[] = [];
  const notListed: NotListed[] = [];
  const empty: Round['empty'][number][] = [];
  for (const bed of board.beds) {
    const { stay } = bed;
    if (!stay) {
      empty.push({ bed: bed.bed, label: bed.label });
      continue;
    }
    const placed = placedOf(bed, stay, asker);
    const stopped = gateOf(stay, input) ?? takenBySomebody(placed, say) ?? bookedLater(placed, t, say);
    if (stopped) {
      notListed.push({ ...placed, ...stopped });
      continue;
    }
    const reasons = reasonsOf(stay, input);
    const points = Math.round(reasons.reduce((sum, r) => sum + r.points, 0) * 10) / 10;
    ranked.push({ placed, stay, reasons, points, last: isolationLast(stay, t, rules) });
  }
  const order = ranked.toSorted(
    (a, b) =>
      Number(b.placed.yours) - Number(a.placed.yours) ||
      Number(a.last) - Number(b.last) ||
      b.points - a.points,
  );
  const visits = visitsOn(board);
  const planned = plannedOn(board);
  const pairs: EntryInput['pairs'] = ({ stay, visit: own }) =>
    hands ? pairingsOf({ t, hands, visits, planned, stay, rules, first: asker, own }).slice(0, PAIRS) : [];
  return {
    entries: order.map((one, i) => entryOf(one, order[i - 1] ?? null, { ...input, on, pairs })),
    notListed,
    empty,
  };
}

const placedOf = ({ bed, label, bay }: BedView, stay: StayView, asker: StaffId | null): Placed => ({
  bed,
  label,
  bay,
  stay: stay.stay,
  visit: stay.visit,
  yours: stay.visit !== null && goes(stay.visit, asker),
});

function takenBySomebody({ visit, yours }: Placed, say: (at: EpochMs) => string): Gate | null {
  if (!visit || yours) return null;
  const words = `Somebody goes: ${say(visit.from)} to ${say(visit.until)}`;
  return {
    kind: 'taken',
    because: { rule: 'round/taken', facts: [visit.event], words },
    until: 'Once it is given back or over',
  };
}

/** Somebody's own booking is not done before its time. */
function bookedLater({ visit, yours }: Placed, t: EpochMs, say: (at: EpochMs) => string): Gate | null {
  if (!visit || !yours || visit.from <= t + SOON) return null;
  const words = `Booked by you: ${say(visit.from)} to ${say(visit.until)}`;
  return {
    kind: 'booked',
    because: { rule: 'round/booked', facts: [visit.event], words },
    until: `From ${say(visit.from)} on`,
  };
}

/** Seen last, for the gown and the cleaning; never when that would leave them out. */
function isolationLast(stay: StayView, t: EpochMs, rules: RulesDocument): boolean {
  if (!stay.isolation) return false;
  const hours = awakeHours(stay, t);
  const day = stay.lately?.yesterday;
  const missedYesterday = !!day && !(day.recorded && day.timesUp > 0);
  return !missedYesterday && (hours ?? Infinity) < rules.round.isolationLastHours.value;
}

const TASK_OF: Readonly<Record<string, TaskPlan['task']>> = {
  walk: 'walk',
  stairs: 'walk',
  march: 'stand',
  stand: 'stand',
  chair: 'bed-chair',
  toilet: 'bed-chair',
  'lifted-to-chair': 'bed-chair',
  'edge-sit': 'edge-of-bed',
};

export type Move = Pick<TaskPlan, 'task' | 'people' | 'aid'>;
/** What stays in bed needs no lift and no second person; the bed raises the back. */
const NOT_MOVED: Move = { task: 'in-bed', people: 'one', aid: 'none' };

/** What today's goal asks for, or the most demanding below it that the plan allows; never more than the goal. */
export function moveOf(stay: StayView): Move {
  const { goal } = stay.today;
  if (goal && !isUp(goal.activity)) return NOT_MOVED;
  const allowed = gettingUp(stay);
  const asked = TASK_OF[goal?.activity ?? ''] ?? 'bed-chair';
  const order: readonly TaskPlan['task'][] = ['walk', 'stand', 'bed-chair', 'edge-of-bed'];
  return allowed.find((p) => order.indexOf(p.task) >= order.indexOf(asked)) ?? allowed.at(-1)!;
}

const WHO: Readonly<Record<TaskPlan['people'], string>> = {
  'on-own': 'An aide alone',
  'stand-by': 'An aide alone',
  one: 'An aide alone',
  two: 'Two people',
  'three-or-more': 'Three people or more',
};

function whoCould({ people }: Move, on: ReadonlySet<StaffId> | null): string {
  const needs = people === 'two' ? 2 : people === 'three-or-more' ? 3 : 1;
  if (needs === 1) return WHO[people];
  if (on === null) return `${WHO[people]}; who is on is not recorded`;
  return on.size < needs ? `${WHO[people]}; only ${on.size} named for this shift` : WHO[people];
}

/** What stays in bed is an aide's alone only as long as nobody is turned or moved up, which is the plan's. */
function whoCouldInBed({ plan }: StayView, on: ReadonlySet<StaffId> | null): string {
  const moved = plan?.day.find((p) => p.task === 'in-bed');
  if (!moved || WHO[moved.people] === WHO.one) return WHO.one;
  return `${WHO.one} while nobody is turned or moved up in bed; for that: ${whoCould(moved, on)}`;
}

interface EntryInput extends GateInput {
  readonly on: ReadonlySet<StaffId> | null;
  readonly pairs: (of: Placed) => readonly Pairing[];
}

function entryOf(one: Ranked, before: Ranked | null, input: EntryInput): RoundEntry {
  const { placed, stay, reasons, points } = one;
  const move = moveOf(stay);
  const { task, people, aid } = move;
  return {
    ...placed,
    reasons,
    points,
    move: { task, people, aid },
    who: move === NOT_MOVED ? whoCouldInBed(stay, input.on) : whoCould(move, input.on),
    notHigher: before && whyAfter(one, before),
    changes: whatChanges(one, input),
    askFirst:
      stay.mayStart?.word === 'ask-first'
        ? stay.mayStart.reasons.filter((r) => r.word === 'ask-first').map((r) => r.words)
        : [],
    pairs: people === 'two' && !placed.visit?.second ? input.pairs(placed) : [],
  };
}

function whyAfter(one: Ranked, before: Ranked): string {
  const bed = `After bed ${before.placed.label}`;
  if (before.placed.yours && !one.placed.yours) return `${bed}: that visit is yours`;
  if (one.last && !before.last) return `${bed}: isolation is seen last on the round`;
  if (one.points === before.points) return `${bed}: the same rank, in the order of beds`;
  const of = (rule: string): number => one.reasons.find((r) => r.rule === rule)?.points ?? 0;
  const most = before.reasons.toSorted((a, b) => b.points - of(b.rule) - (a.points - of(a.rule)))[0];
  return most && most.points > of(most.rule)
    ? `${bed}: ${most.words}`
    : `${bed}: more stands against this one now`;
}

function whatChanges({ reasons, last, stay }: Ranked, { t, night, rules, say }: EntryInput): string {
  const waits = reasons.filter((r) => r.until !== null && r.points < 0);
  if (waits.length > 0) return `Moves up from ${say(Math.max(...waits.map((r) => r.until!)))} on`;
  const hours = awakeHours(stay, t);
  if (last && hours !== null) {
    const awake = rules.round.isolationLastHours.value;
    const at = t + (awake - hours) * HOUR;
    // Nobody is awake the whole night, and nobody is listed in it.
    return at < night.until
      ? `Not last any more from ${say(at)} on`
      : `Not last any more after ${awake} h awake without getting up`;
  }
  return missing(stay) > 0
    ? 'A time up recorded takes them off the list for a while'
    : "Today's goal is met; a time up recorded takes them off the list for a while";
}
