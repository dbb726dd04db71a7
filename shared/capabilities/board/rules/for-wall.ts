/**
 * What a wall may show of a bed's row, by its level: people, aid and what stops stay as they are; who,
 * why and everything a passer-by has no use for goes. Common practice, no source: least data by
 * distance (design, personal data). Pure. Every field is named here, so that a new one shows on no wall
 * before somebody has decided that it may.
 */
import type { EventId, StaffId, StayId } from '../../../kernel/ids.ts';
import type { BoardLevel } from '../../people/policy/document.ts';
import type { PlannedView } from '../activity-view.ts';
import type { HoldView, TaskPlan } from '../moving-view.ts';
import type { BedView, BoardView, StayView } from '../view.ts';

type WallLevel = Exclude<BoardLevel, 'whole'>;

/** Stands where a row must name something and a wall must not. */
const NOT_SHOWN = 'not-shown';
const noEvent = NOT_SHOWN as EventId;

const kept = new Map<WallLevel, WeakMap<BedView, BedView>>();

/**
 * A row as a screen of that level may have it. Rows are replaced, never changed, so each is made once
 * a level and given to every screen.
 */
export function rowFor(bed: BedView, level: BoardLevel): BedView {
  if (level === 'whole') return bed;
  if (!bed.stay) return bed.carers === null ? bed : { ...bed, carers: null };
  const rows = kept.get(level) ?? new WeakMap<BedView, BedView>();
  kept.set(level, rows);
  const known = rows.get(bed);
  if (known) return known;
  const made = redacted(bed, bed.stay, level);
  rows.set(bed, made);
  return made;
}

type Facts = Pick<BoardView, 'dayPlan'>;

/** A whole board, or the changes of one, for a level. Who accepted the day's plan is on no wall. */
export function rowsFor<
  B extends Facts & { readonly beds: readonly BedView[]; readonly board?: Facts | undefined },
>(board: B, level: BoardLevel): B {
  if (level === 'whole') return board;
  const beds = board.beds.map((bed) => rowFor(bed, level));
  return { ...withoutPlan(board), ...(board.board ? { board: withoutPlan(board.board) } : {}), beds };
}
const withoutPlan = <F extends Facts>(facts: F): F => (facts.dayPlan ? { ...facts, dayPlan: null } : facts);

/** What `shown` says in rows of a level. */
export const shownAt = (level: BoardLevel): 'whole' | 'bed-only' | 'visitors' =>
  level === 'initials' ? 'bed-only' : level;

function redacted(bed: BedView, stay: StayView, level: WallLevel): BedView {
  // Visitors do not read that somebody has a comfort plan: for them the answer is at the bedside.
  const unsaid = stay.wall === 'nothing' || (level === 'visitors' && stay.scope.kind !== 'staged');
  if (unsaid) return { ...bed, carers: null, state: 'occupied', stay: atTheBedside(stay, level) };
  return { ...bed, carers: null, stay: level === 'visitors' ? forVisitors(stay) : withinTheWard(stay) };
}

const planLines = (plans: readonly TaskPlan[]): TaskPlan[] =>
  plans.map(({ task, hold, people, aid, with: others }) => ({
    task,
    hold,
    people,
    aid,
    with: [...others],
    towards: null,
    cautions: [],
    because: [],
  }));

/** That something is stopped and how far; not why, by whom or since when. Until when only within the ward. */
const holdLines = (holds: readonly HoldView[], within: boolean): HoldView[] =>
  holds.map(({ scope, reviewDue, reviewAt }, i) => ({
    hold: `${NOT_SHOWN}-${i + 1}`,
    scope,
    reason: 'other',
    owner: NOT_SHOWN as StaffId,
    placedAt: 0,
    reviewAt: within ? reviewAt : 0,
    reviewDue,
    event: noEvent,
    note: null,
  }));

/** When the next planned visit is, and that it is held; not what for, who goes, with what or why. */
function plannedLines([next]: readonly PlannedView[] = []): Pick<StayView, 'planned'> {
  if (!next) return {};
  const { from, until, stopped } = next;
  return {
    planned: [
      {
        visit: NOT_SHOWN,
        kind: 'care',
        from,
        until,
        crew: [],
        with: [],
        stopped: stopped && { rule: '', facts: [], words: '' },
      },
    ],
  };
}

/** Names, initials and bed-only walls alike: no initials are kept on the board, so none are shown. */
function withinTheWard(stay: StayView): StayView {
  const { tier, trust, due, today, away, lastUp } = stay;
  return {
    ...withoutWhys(stay),
    shown: 'bed-only',
    stay: stay.stay,
    version: stay.version,
    began: stay.began,
    holds: holdLines(stay.holds, true),
    away: away && { since: away.since, reason: away.reason, dueBack: away.dueBack },
    tier: {
      ...NO_TIER,
      word: tier.word,
      notch: tier.notch,
      oneLeg: tier.oneLeg,
      secured: tier.secured,
      // How old the check is: every shown thing has an age. By whom stays untold.
      at: tier.at,
    },
    trust: {
      state: trust.state,
      openTriggers: [],
      conflicts: trust.conflicts.map(() => ({
        question: '',
        safer: noEvent,
        other: noEvent,
        words: '',
      })),
      because: [],
    },
    due: { state: due.state, at: due.at, because: [] },
    lastUp: lastUp && { at: lastUp.at, event: noEvent, activity: '' },
    today: {
      ...NO_DAY,
      wardDayFrom: today.wardDayFrom,
      goal: today.goal && { activity: today.goal.activity, timesUp: today.goal.timesUp },
      goalProposed: today.goalProposed,
      recorded: today.recorded,
      timesUp: today.timesUp,
      met: today.met,
    },
    firstTimeUpPending: stay.firstTimeUpPending,
    isolation: stay.isolation,
    // When the next visit is; who goes is between the phones.
    visit: stay.visit && {
      visit: NOT_SHOWN,
      by: NOT_SHOWN as StaffId,
      second: null,
      from: stay.visit.from,
      until: stay.visit.until,
      event: noEvent,
    },
    ...plannedLines(stay.planned),
    // That somebody said no is between them and who asks.
    signs: stay.signs
      .filter(({ kind }) => kind !== 'refusals')
      .map(({ kind }) => ({ kind, words: '', because: [] })),
  };
}

/** Where visitors pass: the bed, people, aid and what stops; nothing of trust, goals or times. */
const forVisitors = (stay: StayView): StayView => ({
  ...withoutWhys(stay),
  shown: 'visitors',
  away: stay.away && { since: 0, reason: 'other', dueBack: null },
});

/** Nothing is said, so nothing may look freer than it is: no plan, and a check before any move. */
const atTheBedside = (stay: StayView, level: WallLevel): StayView => ({
  ...withoutWhys(stay),
  shown: 'ask-at-the-bedside',
  // Also where it is only the plan that is not said: the reason why would say it.
  wall: 'nothing',
  ...(level === 'visitors' ? {} : { stay: stay.stay, version: stay.version }),
  scope: { kind: 'staged', fence: null, plan: null },
  holds: [],
  plan: null,
  walkingSupport: null,
  checkBeforeMoving: true,
});

const NO_TIER: StayView['tier'] = {
  word: null,
  notch: null,
  protocol: null,
  oneLeg: null,
  secured: false,
  at: null,
  by: null,
  because: [],
};
const NO_DAY: StayView['today'] = {
  wardDayFrom: 0,
  goal: null,
  goalProposed: false,
  recorded: false,
  timesUp: 0,
  minutesOutOfBed: null,
  metres: null,
  notDone: {},
  met: null,
  boardWrong: 0,
  because: [],
};

/** What every wall has: how to move the person and what stops. All else is left out. */
const withoutWhys = (stay: StayView): StayView => ({
  stay: NOT_SHOWN as StayId,
  version: 0,
  began: 0,
  away: null,
  scope: { kind: stay.scope.kind, fence: null, plan: null },
  tier: NO_TIER,
  trust: { state: 'not-known', openTriggers: [], conflicts: [], because: [] },
  holds: holdLines(stay.holds, false),
  orders: [],
  plan: stay.plan && { day: planLines(stay.plan.day), night: planLines(stay.plan.night) },
  checkBeforeMoving: stay.checkBeforeMoving,
  onOwn: null,
  walkingSupport: stay.walkingSupport,
  cautions: [],
  due: { state: 'none', at: null, because: [] },
  lastUp: null,
  lastEvent: null,
  today: NO_DAY,
  usualWay: null,
  attachments: [],
  firstTimeUpPending: false,
  mayStart: null,
  nextCheck: null,
  earlyWarning: null,
  proposal: null,
  debt: null,
  signs: [],
  measures: null,
  chair: null,
  toilet: [],
  isolation: false,
  leaving: null,
  therapistLine: null,
  visit: null,
  lately: null,
  wall: stay.wall,
  shown: 'visitors',
});
