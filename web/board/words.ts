/** The words a screen puts to the values of a board row. One place, so that two screens never name a thing differently. */
import type {
  BedView,
  DueView,
  HoldView,
  StayView,
  TaskPlan,
  TodayView,
} from '@footboard/shared/capabilities/board/view';

export type Trust = StayView['trust']['state'];

export const PEOPLE: Record<TaskPlan['people'], string> = {
  'on-own': 'On own',
  'stand-by': 'Stand by',
  one: '1 person',
  two: '2 people',
  'three-or-more': '3 or more',
};

export const AID: Record<TaskPlan['aid'], string> = {
  none: 'no aid',
  'walking-support': 'walking support',
  belt: 'belt',
  'seated-transfer-aid': 'seated transfer aid',
  'standing-aid': 'standing aid',
  'slide-sheet': 'slide sheet',
  'lateral-transfer-aid': 'lateral transfer aid',
  'sling-lift': 'sling lift',
  'bariatric-lift': 'bariatric lift',
};

export const SUPPORT: Record<NonNullable<StayView['walkingSupport']>, string> = {
  none: 'no support',
  stick: 'stick',
  'two-sticks': 'two sticks',
  crutches: 'crutches',
  frame: 'frame',
  'wheeled-frame': 'wheeled frame',
};

export const TASK: Record<TaskPlan['task'], string> = {
  'in-bed': 'Turn or move up in bed',
  'edge-of-bed': 'Edge of bed',
  'bed-chair': 'Bed to chair',
  toilet: 'Toilet',
  lateral: 'Across to a trolley',
  stand: 'Stand',
  walk: 'Walk',
  'from-floor': 'Up from the floor',
  'in-chair': 'Move up in the chair',
};

export const TRUST: Record<Trust, string> = {
  current: 'current',
  're-check': 're-check',
  'not-known': 'not known',
};

export const HOLD_SCOPE: Record<HoldView['scope'], string> = {
  walking: 'no walking',
  standing: 'no standing',
  'out-of-bed': 'stay in bed',
  'raising-the-back': 'keep the back flat',
  'all-including-turning': 'do not move or turn',
};

export const HOLD_REASON: Record<HoldView['reason'], string> = {
  'waiting-for-review': 'waiting for review',
  unstable: 'unstable',
  bleeding: 'bleeding',
  'fracture-unclear': 'fracture unclear',
  'clot-suspected': 'clot suspected',
  'after-fall': 'after a fall',
  'after-procedure': 'after a procedure',
  order: 'order',
  other: 'another reason',
};

export const AWAY_REASON: Record<string, string> = {
  test: 'test',
  theatre: 'theatre',
  dialysis: 'dialysis',
  'home-visit': 'home visit',
  other: 'off the ward',
};

export const BED_STATE: Record<BedView['state'], string> = {
  empty: 'empty',
  occupied: 'occupied',
  away: 'away',
};

export const ROLE: Record<string, string> = {
  aide: 'aide',
  nurse: 'nurse',
  therapist: 'therapist',
  'charge-nurse': 'charge nurse',
  'handling-coordinator': 'handling coordinator',
  manager: 'manager',
  records: 'records',
  administrator: 'administrator',
};

/** Which task of the plan the wall leads with: bed to chair by day, the toilet at night (the move a night asks for). */
export function leadingPlan(stay: StayView, night: boolean): TaskPlan | null {
  if (!stay.plan) return null;
  const list = night ? stay.plan.night : stay.plan.day;
  const wanted: TaskPlan['task'] = night ? 'toilet' : 'bed-chair';
  return list.find((plan) => plan.task === wanted) ?? list.find((plan) => plan.task === 'bed-chair') ?? null;
}

/**
 * The equipment of a task, the main thing first, each named once: "walking support" beside "frame" is
 * "frame", "standing aid" beside "powered standing aid" or "standing aid rated for the weight" is the
 * fuller one. Never empty.
 */
export function aidList(plan: TaskPlan, support: StayView['walkingSupport']): readonly string[] {
  const own = support && support !== 'none' ? SUPPORT[support] : null;
  const names = [
    plan.aid === 'none' && plan.with.length > 0 ? '' : AID[plan.aid],
    ...plan.with.map((word) => word.replaceAll('-', ' ')),
    plan.aid === 'walking-support' && own ? own : '',
  ];
  const supports = Object.values(SUPPORT);
  const named = names.some((name) => supports.includes(name));
  const kept = names.filter(
    (name, i) =>
      name !== '' &&
      names.indexOf(name) === i &&
      !(name === AID['walking-support'] && named) &&
      !names.some((other) => saysMore(other, name) && !supports.includes(name)),
  );
  return kept.length > 0 ? kept : [AID[plan.aid]];
}

/** "powered standing aid" says more than "standing aid", "belt, stand and turn" more than "belt". */
const saysMore = (other: string, name: string): boolean =>
  other !== name &&
  (other.endsWith(` ${name}`) || other.startsWith(`${name} `) || other.startsWith(`${name},`));

/** "powered standing aid + frame". */
export const aidWords = (plan: TaskPlan, support: StayView['walkingSupport']): string =>
  aidList(plan, support).join(' + ');

/** "2 people, sling lift". */
export const planWords = (plan: TaskPlan, support: StayView['walkingSupport']): string =>
  `${PEOPLE[plan.people]}, ${aidWords(plan, support)}`;

/** The holds that stand, the widest first. */
const WIDTH: readonly HoldView['scope'][] = [
  'all-including-turning',
  'raising-the-back',
  'out-of-bed',
  'standing',
  'walking',
];
export const widestHold = (stay: StayView): HoldView | null =>
  WIDTH.flatMap((scope) => stay.holds.filter((hold) => hold.scope === scope))[0] ?? null;

/**
 * What the holds that stand stop, in words: the widest of walking, standing and leaving the bed, beside
 * the back, which none of those says. "no walking"; "keep the back flat, stay in bed".
 */
export function holdScopeWords(stay: StayView): string {
  const scopes = new Set(stay.holds.map((hold) => hold.scope));
  if (scopes.has('all-including-turning')) return HOLD_SCOPE['all-including-turning'];
  const widest = (['out-of-bed', 'standing', 'walking'] as const).find((scope) => scopes.has(scope));
  return [scopes.has('raising-the-back') ? ('raising-the-back' as const) : null, widest]
    .flatMap((scope) => (scope ? [HOLD_SCOPE[scope]] : []))
    .join(', ');
}

/** "1 of 3", "2 times up", or "not recorded". Never a number where nothing was recorded. */
export function todayWords(today: TodayView): string {
  if (!today.recorded) return 'not recorded';
  return today.goal ? `${today.timesUp} of ${today.goal.timesUp}` : `${today.timesUp} times up`;
}

/** "check by 14:00", "check overdue since 11:20", "check at next move", or nothing to say. `time` writes an instant. */
export function dueWords(due: DueView, time: (at: number) => string): string {
  switch (due.state) {
    case 'none':
      return '';
    case 'at-next-move':
      return 'check at next move';
    case 'overdue':
      return due.at === null ? 'check overdue' : `overdue since ${time(due.at)}`;
    default:
      return due.at === null ? '' : `check by ${time(due.at)}`;
  }
}

/** Why the board reads LAST KNOWN, and what to do, in one sentence each. */
export const LAST_KNOWN_WHY: Record<
  'never-heard' | 'no-heartbeat' | 'no-database' | 'no-evaluation' | 'projection-trails',
  string
> = {
  'never-heard': 'This screen has not heard the server yet.',
  'no-heartbeat': 'This screen does not hear the server.',
  'no-database': 'The server cannot read its records.',
  'no-evaluation': 'The server has stopped working out the board.',
  'projection-trails': 'New entries are recorded but not yet shown.',
};
