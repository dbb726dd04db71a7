/**
 * The five-minute morning review of the whole ward, in plain words, bed by bed in the ward's order;
 * only what is to be checked comes in the order in which to check it.
 */
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { HuddlePage } from '../../../wire/http.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { BedView, BoardView, StayView } from '../../board/view.ts';
import type { Task } from '../../handling/values.ts';
import type { WardCalendar } from '../../wards/context.ts';
import { NOT_REVIEWED } from '../../orders/rules/order-review.ts';
import { sayDayTime } from '../../wards/rules/calendar.ts';
import { DEFAULT_RULES, type RulesDocument } from '../../wards/rules/rules-document.ts';
import { dueFirst } from './due-first.ts';
import { liftedMoves, movesForTwo, OUT_OF_BED } from './needs.ts';

type Line = HuddlePage['overdue'][number];
/** What stands on the board alone; what was agreed and what changed is beside it (review.ts). */
export type HuddleLists = Omit<
  HuddlePage,
  'ward' | 'position' | 'at' | 'since' | 'changes' | 'actions' | 'expected'
>;
interface Occupied {
  readonly bed: BedView;
  readonly stay: StayView;
}

/** As a screen names the moves, within a sentence. */
const MOVE: Readonly<Partial<Record<Task, string>>> = {
  'edge-of-bed': 'edge of bed',
  'bed-chair': 'bed to chair',
  toilet: 'toilet',
  'in-bed': 'turn or move up in bed',
  lateral: 'across to a trolley',
};

/** `rules`: the ward's, for how long not up is worth saying. */
export function huddleOf(
  board: BoardView,
  t: EpochMs,
  calendar: WardCalendar,
  rules: RulesDocument = DEFAULT_RULES,
): HuddleLists {
  const occupied: Occupied[] = board.beds.flatMap((bed) => (bed.stay ? [{ bed, stay: bed.stay }] : []));
  const when = (at: EpochMs): string => sayDayTime(calendar.zone, at);
  const notUpAfter = rules.activity.notUpHours.value * HOUR;
  const lines = (of: (o: Occupied) => Said | null): Line[] =>
    occupied.flatMap((o) => {
      const line = of(o);
      return line ? [lineOf(o, line)] : [];
    });
  const holds = occupied.flatMap((o) =>
    o.stay.holds.toSorted((a, b) => a.reviewAt - b.reviewAt).map((hold) => ({ o, hold })),
  );
  const holdLine = ({ o, hold }: (typeof holds)[number]): Line => ({
    ...lineOf(o, {
      words:
        `Hold on ${plain(hold.scope)} (${plain(hold.reason)}), ` +
        `${hold.reviewDue ? 'HOLD REVIEW DUE since' : 'review'} ${when(hold.reviewAt)}`,
      because: [{ rule: 'huddle/hold', facts: [hold.event], words: `Placed ${when(hold.placedAt)}` }],
    }),
    owner: hold.owner,
  });
  const dayEnds = calendar.wardDay(t).to;
  const leaving = occupied.filter(({ stay }) => stay.leaving && stay.leaving.at - t <= LEAVING_WITHIN);

  return {
    needLift: lines(({ stay }) => needLift(stay)),
    overdue: dueFirst(occupied, t, when).map(({ bed, stay, because }) =>
      lineOf(
        { bed, stay },
        { words: because.words, because: [because, ...stay.due.because, ...stay.trust.because] },
      ),
    ),
    holds: holds.map(holdLine),
    holdsToday: [
      ...holds.filter(({ hold }) => hold.reviewAt < dayEnds).map(holdLine),
      ...lines(({ stay }) => notReviewed(stay)),
    ],
    leavingShort: leaving
      .filter(({ stay }) => shortOfGoal(stay))
      .toSorted((a, b) => a.stay.leaving!.at - b.stay.leaving!.at)
      .map((o) => lineOf(o, leavingShort(o.stay, when))),
    leavingOthers: leaving.filter(({ stay }) => !shortOfGoal(stay)).length,
    notUp: lines(({ stay }) => notUp(stay, t, notUpAfter, when)),
    twoPeople: lines(({ stay }) => twoPeople(stay)),
    arrived: lines(({ stay }) =>
      t - stay.began < 24 * HOUR && stay.began <= t
        ? { words: `Arrived ${when(stay.began)}: ${stateOf(stay)}`, because: [] }
        : null,
    ),
    totals: {
      occupied: board.beds.filter((b) => b.state === 'occupied').length,
      away: board.beds.filter((b) => b.state === 'away').length,
      empty: board.beds.filter((b) => b.state === 'empty').length,
      notKnown: occupied.filter(({ stay }) => stay.trust.state === 'not-known').length,
      sessionsDone: sum(occupied, ({ today }) => today.timesUp),
      sessionsNotDone: sum(occupied, ({ today }) => Object.values(today.notDone).reduce((a, b) => a + b, 0)),
      notRecorded: occupied.filter(({ stay }) => stay.scope.kind !== 'comfort' && !stay.today.recorded)
        .length,
      boardWrong: sum(occupied, ({ today }) => today.boardWrong),
      goalsMet: occupied.filter(({ stay }) => stay.today.met === true).length,
    },
  };
}

/** An order of bed that nobody renewed in this ward day. */
const notReviewed = (stay: StayView): Said | null =>
  stay.cautions.find((c) => c.because.some((b) => b.rule === NOT_REVIEWED)) ?? null;

type Said = Pick<Line, 'words' | 'because'>;
/** A line, whom it is about, and the nurse who looks after the bed. */
const lineOf = ({ bed, stay }: Occupied, said: Said): Line => ({
  bed: bed.bed,
  label: bed.label,
  stay: stay.stay,
  owner: bed.carers?.nurse ?? null,
  ...said,
});

/** Who goes home this soon and is short of the goal is spoken of while there is time. Source: users' research, huddle. */
const LEAVING_WITHIN = 48 * HOUR;
const below = (stay: StayView) => stay.signs.find((sign) => sign.kind === 'below-baseline');
const shortOfGoal = (stay: StayView): boolean =>
  stay.scope.kind !== 'comfort' &&
  ((stay.today.goal !== null && stay.today.met !== true) || below(stay) !== undefined);

function leavingShort(stay: StayView, when: (at: EpochMs) => string): Said {
  const { today, leaving } = stay;
  const sign = below(stay);
  const done = !today.recorded
    ? 'nothing recorded today'
    : today.goal
      ? `${today.timesUp} of ${today.goal.timesUp} today`
      : `${today.timesUp === 1 ? '1 time' : `${today.timesUp} times`} up today`;
  return {
    words: `Leaves ${when(leaving!.at)}: ${done}${sign ? '; below the usual way' : ''}`,
    because: [
      {
        rule: 'huddle/leaving',
        facts: [leaving!.event],
        words: `Expected to leave ${when(leaving!.at)}`,
      },
      ...(sign ? sign.because : []),
      ...today.because,
    ],
  };
}

function needLift(stay: StayView) {
  return inWords(stay, liftedMoves(stay.plan?.day ?? []), (p) => plain(p.aid));
}

function twoPeople(stay: StayView) {
  return inWords(stay, movesForTwo(stay.plan?.day ?? []), (p) =>
    p.people === 'two' ? 'two people' : 'three people or more',
  );
}

/** "sling lift for every move out of bed; two people for ...": each demand once, with its moves. */
function inWords(stay: StayView, moves: readonly TaskPlan[], demand: (p: TaskPlan) => string) {
  if (moves.length === 0) return null;
  const demands = [...new Set(moves.map(demand))];
  const words = demands.map((d) => `${d} for ${named(moves.filter((p) => demand(p) === d))}`).join('; ');
  const unknown = stay.checkBeforeMoving ? 'CHECK BEFORE MOVING; if it cannot wait: ' : '';
  return { words: `${unknown}${words}`, because: moves[0]!.because };
}

function named(moves: readonly TaskPlan[]): string {
  const tasks = moves.map((p) => p.task);
  if (!OUT_OF_BED.every((task) => tasks.includes(task))) return tasks.map((task) => MOVE[task]).join(', ');
  const others = tasks.filter((task) => !OUT_OF_BED.includes(task)).map((task) => MOVE[task]);
  return ['every move out of bed', ...others].join(', ');
}

function notUp(stay: StayView, t: EpochMs, after: number, when: (at: EpochMs) => string) {
  const stopped = stay.holds.some(
    (h) => h.scope === 'out-of-bed' || h.scope === 'raising-the-back' || h.scope === 'all-including-turning',
  );
  if (stopped || stay.scope.kind !== 'staged') return null;
  const since = stay.lastUp?.at ?? stay.began;
  if (t - since < after) return null;
  const facts: EventId[] = stay.lastUp ? [stay.lastUp.event] : [];
  return {
    words: stay.lastUp
      ? `Not up since ${when(since)} (${plain(stay.lastUp.activity)})`
      : `No time up recorded since arrival ${when(since)}`,
    because: [
      { rule: 'huddle/not-up', facts, words: `Not up for ${after / HOUR} h and no hold that says so` },
    ],
  };
}

const stateOf = (stay: StayView): string =>
  stay.scope.kind === 'comfort'
    ? 'comfort plan'
    : stay.scope.kind === 'clinicians-plan'
      ? "clinician's plan only"
      : stay.trust.state === 'not-known'
        ? 'not checked here yet'
        : `checked, ${stay.trust.state === 'current' ? 'current' : 're-check'}`;

const sum = (of: readonly Occupied[], count: (stay: StayView) => number): number =>
  of.reduce((total, { stay }) => total + count(stay), 0);
const plain = (code: string): string => code.replaceAll('-', ' ');
