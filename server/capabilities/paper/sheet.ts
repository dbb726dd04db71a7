/** What a sheet says, from a board row. Pure: the same board and instant print the same lines. */
import type { TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { BedView, BoardView, StayView } from '@footboard/shared/capabilities/board/view';
import { sayDayTime } from '@footboard/shared/capabilities/wards/rules/calendar';
import { HOUR, type EpochMs } from '@footboard/shared/kernel/times';
import { paperTold, paperWords, type PaperWord } from './words.ts';

/** A sheet counts no longer than a shift and a half. Common practice, no source; the ward's safety lead owns it. */
export const SHEET_AT_MOST_MS = 12 * HOUR;

/** One task of a plan; no task is said of the rest. */
export interface PlanWords {
  readonly task: string;
  readonly how: string;
}

export interface SheetLine {
  readonly bed: string;
  readonly label: string;
  /** Tier, trust and how old: the small line beside the label. */
  readonly standing: readonly string[];
  /** Printed heavy, before any plan. */
  readonly stops: readonly string[];
  readonly plans: readonly { readonly of: string; readonly words: readonly PlanWords[] }[];
  readonly minds: readonly string[];
  /** Up to when this line may be used; null where only the sheet's own end counts. */
  readonly until: string | null;
}

const PRINTED: readonly TaskPlan['task'][] = ['bed-chair', 'toilet', 'edge-of-bed', 'in-bed', 'walk'];
const HOLD_WORD: Readonly<Record<StayView['holds'][number]['scope'], PaperWord>> = {
  walking: 'walking',
  standing: 'standing_',
  'out-of-bed': 'out-of-bed',
  'raising-the-back': 'raising-the-back',
  'all-including-turning': 'all-including-turning',
};

/** The English name of each piece once, by which the rules tell them apart; "powered standing aid" says more than "standing aid" beside it. */
const named = (aids: readonly string[]): string[] =>
  [...new Set(aids.map((aid) => aid.replaceAll('-', ' ')))].filter(
    (aid, _i, all) =>
      !all.some((other) => other !== aid && (other.endsWith(` ${aid}`) || other.startsWith(`${aid} `))),
  );

/** At night only what differs: read twice, the same plan hides the one line that is another. */
function atNight(
  day: readonly PlanWords[],
  night: readonly PlanWords[],
  say: ReturnType<typeof paperWords>,
): readonly PlanWords[] {
  const tasks = (list: readonly PlanWords[]) => list.map(({ task }) => task).join('; ');
  // A task that only one of them has would leave "otherwise" open.
  if (tasks(day) !== tasks(night)) return night;
  const other = night.filter(({ how }, i) => how !== day[i]!.how);
  if (other.length === night.length) return night;
  return [...other, { task: '', how: say(other.length === 0 ? 'as-by-day' : 'rest-by-day') }];
}

/** Cautions that stand on the sheet of everybody who has a plan: said once, above all beds. */
export function saidOfAll(board: BoardView): readonly string[] {
  const all = board.beds.flatMap(({ stay }) => (stay?.plan ? [new Set(cautionsOf(stay))] : []));
  // Of two people, what both have is still each one's own.
  if (all.length < 3) return [];
  return [...all[0]!].filter((words) => all.every((one) => one.has(words))).map(paperTold(board.language));
}

const cautionsOf = (stay: StayView): readonly string[] => [
  ...stay.cautions.map(({ words }) => words),
  ...[...(stay.plan?.day ?? []), ...(stay.plan?.night ?? [])].flatMap((plan) => plan.cautions),
];

export function sheetLines(
  board: BoardView,
  t: EpochMs,
  nameOf: (staff: string) => string,
): readonly SheetLine[] {
  const say = paperWords(board.language);
  const told = paperTold(board.language);
  const time = (at: EpochMs) => told(sayDayTime(board.zone, at));
  const ofAll = new Set(saidOfAll(board));

  const planOf = (plan: TaskPlan, support: StayView['walkingSupport']): PlanWords => {
    const aid =
      plan.aid === 'walking-support' && support && support !== 'none'
        ? support.replaceAll('-', ' ')
        : paperWords('en')(plan.aid);
    const how = [
      say(plan.people),
      named([aid, ...plan.with])
        .map(told)
        .join(' + '),
      ...(plan.towards ? [say('towards', { side: say(plan.towards) })] : []),
    ].join(', ');
    return { task: say(plan.task as PaperWord), how: plan.hold ? `${say('hold')} (${how})` : how };
  };
  const plansOf = (stay: StayView) => {
    if (!stay.plan) return [];
    const of = (list: readonly TaskPlan[]) =>
      PRINTED.flatMap((task) => list.filter((plan) => plan.task === task)).map((plan) =>
        planOf(plan, stay.walkingSupport),
      );
    const [day, night] = [of(stay.plan.day), of(stay.plan.night)];
    return [
      { of: say('day'), words: day },
      { of: say('night'), words: atNight(day, night, say) },
    ];
  };
  const stopsOf = (stay: StayView) => [
    ...(stay.scope.kind === 'clinicians-plan' ? [say('clinicians')] : []),
    ...(stay.scope.kind === 'comfort' ? [say('comfort')] : []),
    ...stay.holds.map(
      ({ scope, reviewAt, reviewDue }) =>
        `${say(HOLD_WORD[scope])}, ${reviewDue ? say('review-due') : say('review', { time: time(reviewAt) })}`,
    ),
    ...(stay.checkBeforeMoving ? [say('check')] : []),
  ];
  const dueOf = ({ due }: StayView): string[] => {
    if (due.state === 'none') return [];
    if (due.state === 'at-next-move') return [say('due-next')];
    if (due.state === 'overdue' || due.at === null) return [say('due-over')];
    return [say('due-by', { time: time(due.at) })];
  };
  const carersOf = ({ carers }: BedView): string[] => [
    ...(carers?.nurse ? [say('nurse', { name: nameOf(carers.nurse) })] : []),
    ...(carers?.aide ? [say('aide', { name: nameOf(carers.aide) })] : []),
  ];
  const line = (bed: BedView): SheetLine => {
    const { stay } = bed;
    if (!stay) {
      return {
        bed: bed.bed,
        label: bed.label,
        standing: [say('empty')],
        stops: [],
        plans: [],
        minds: [],
        until: null,
      };
    }
    const { at } = stay.tier;
    const cautions = new Set(
      cautionsOf(stay)
        .map(told)
        .filter((words) => !ofAll.has(words)),
    );
    // Its own end: the first instant at which the rules themselves would say something else.
    const ends = [stay.due.at, ...stay.holds.map(({ reviewAt }) => reviewAt)].filter(
      (end): end is number => end !== null && end > t && end < t + SHEET_AT_MOST_MS,
    );
    return {
      bed: bed.bed,
      label: bed.label,
      standing: [
        ...(stay.tier.word ? [told(stay.tier.word)] : []),
        say(stay.trust.state),
        at === null
          ? say('not-checked')
          : say('checked-before', { h: Math.max(0, Math.floor((t - at) / HOUR)) }),
        ...dueOf(stay),
        ...(bed.state === 'away' ? [say('away')] : []),
      ],
      stops: stopsOf(stay),
      plans: plansOf(stay),
      minds: [
        ...(stay.isolation ? [say('isolation')] : []),
        ...(stay.firstTimeUpPending ? [say('first-up')] : []),
        ...cautions,
        ...carersOf(bed),
      ],
      until: ends.length > 0 ? time(Math.min(...ends)) : null,
    };
  };
  return board.beds.map(line);
}
