/** The words a screen puts to the values of a board row. One place, so that two screens never name a thing differently. */
import type { TodayView } from '@footboard/shared/capabilities/board/activity-view';
import type { DueView, HoldView, TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { BedView, StayView } from '@footboard/shared/capabilities/board/view';
import { following } from '../i18n/following.ts';
import { told } from '../i18n/told.ts';
import { say } from './say.ts';

export type Trust = StayView['trust']['state'];

export const PEOPLE: Readonly<Record<TaskPlan['people'], string>> = following(
  ['on-own', 'stand-by', 'one', 'two', 'three-or-more'],
  (key) => say(`people-${key}`),
);

export const AID: Readonly<Record<TaskPlan['aid'], string>> = following(
  [
    'none',
    'walking-support',
    'belt',
    'seated-transfer-aid',
    'standing-aid',
    'slide-sheet',
    'lateral-transfer-aid',
    'sling-lift',
    'bariatric-lift',
  ],
  (key) => say(`aid-${key}`),
);

export const SUPPORT: Readonly<Record<NonNullable<StayView['walkingSupport']>, string>> = following(
  ['none', 'stick', 'two-sticks', 'crutches', 'frame', 'wheeled-frame'],
  (key) => say(`support-${key}`),
);

export const TASK: Readonly<Record<TaskPlan['task'], string>> = following(
  ['in-bed', 'edge-of-bed', 'bed-chair', 'toilet', 'lateral', 'stand', 'walk', 'from-floor', 'in-chair'],
  (key) => say(`task-${key}`),
);

export const TRUST: Readonly<Record<Trust, string>> = following(['current', 're-check', 'not-known'], (key) =>
  say(`trust-${key}`),
);

export const HOLD_SCOPE: Readonly<Record<HoldView['scope'], string>> = following(
  ['walking', 'standing', 'out-of-bed', 'raising-the-back', 'all-including-turning'],
  (key) => say(`hold-${key}`),
);

export const HOLD_REASON: Readonly<Record<HoldView['reason'], string>> = following(
  [
    'waiting-for-review',
    'unstable',
    'bleeding',
    'fracture-unclear',
    'clot-suspected',
    'after-fall',
    'after-procedure',
    'order',
    'other',
  ],
  (key) => say(`reason-${key}`),
);

export const AWAY_REASON: Readonly<Record<string, string>> = following(
  ['test', 'theatre', 'dialysis', 'home-visit', 'other'],
  (key) => say(`away-${key}`),
);

export const BED_STATE: Readonly<Record<BedView['state'], string>> = following(
  ['empty', 'occupied', 'away'],
  (key) => say(`bed-${key}`),
);

export const ROLE: Readonly<Record<string, string>> = following(
  [
    'aide',
    'nurse',
    'therapist',
    'charge-nurse',
    'handling-coordinator',
    'manager',
    'records',
    'administrator',
  ],
  (key) => say(`role-${key}`),
);

/** Which task of the plan the wall leads with: bed to chair by day, the toilet at night (the move a night asks for). */
export function leadingPlan(stay: StayView, night: boolean): TaskPlan | null {
  if (!stay.plan) return null;
  const list = night ? stay.plan.night : stay.plan.day;
  const wanted: TaskPlan['task'] = night ? 'toilet' : 'bed-chair';
  return list.find((plan) => plan.task === wanted) ?? list.find((plan) => plan.task === 'bed-chair') ?? null;
}

/** Names of equipment as the rules write them, by the key of the word that a screen puts to them. */
const AID_NAME: Readonly<Record<TaskPlan['aid'], string>> = {
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
const SUPPORT_NAMES = ['no support', 'stick', 'two sticks', 'crutches', 'frame', 'wheeled frame'];

/**
 * The equipment of a task as the rules name it, the main thing first, each once: "walking support"
 * beside "frame" is "frame", "standing aid" beside "powered standing aid" or "standing aid rated for
 * the weight" is the fuller one. Never empty.
 */
export function aidNames(plan: TaskPlan, support: StayView['walkingSupport']): readonly string[] {
  const own = support && support !== 'none' ? support.replaceAll('-', ' ') : null;
  const names = [
    plan.aid === 'none' && plan.with.length > 0 ? '' : AID_NAME[plan.aid],
    ...plan.with.map((word) => word.replaceAll('-', ' ')),
    plan.aid === 'walking-support' && own ? own : '',
  ];
  const named = names.some((name) => SUPPORT_NAMES.includes(name));
  const kept = names.filter(
    (name, i) =>
      name !== '' &&
      names.indexOf(name) === i &&
      !(name === AID_NAME['walking-support'] && named) &&
      !names.some((other) => saysMore(other, name) && !SUPPORT_NAMES.includes(name)),
  );
  return kept.length > 0 ? kept : [AID_NAME[plan.aid]];
}

/** "powered standing aid" says more than "standing aid", "belt, stand and turn" more than "belt". */
const saysMore = (other: string, name: string): boolean =>
  other !== name &&
  (other.endsWith(` ${name}`) || other.startsWith(`${name} `) || other.startsWith(`${name},`));

const KEYS = new Map<string, () => string>([
  ...Object.entries(AID_NAME).map(([key, name]) => [name, () => AID[key as TaskPlan['aid']]] as const),
  ...SUPPORT_NAMES.slice(1).map(
    (name) => [name, () => SUPPORT[name.replaceAll(' ', '-') as keyof typeof SUPPORT]] as const,
  ),
]);

/** The same in the language of the screen. What no table has is a rule's own words. */
export const aidList = (plan: TaskPlan, support: StayView['walkingSupport']): readonly string[] =>
  aidNames(plan, support).map((name) => KEYS.get(name)?.() ?? told(name));

/** "powered standing aid + frame". */
export const aidWords = (plan: TaskPlan, support: StayView['walkingSupport']): string =>
  aidList(plan, support).join(' + ');

/** "2 people, sling lift". */
export const planWords = (plan: TaskPlan, support: StayView['walkingSupport']): string =>
  say('plan-line', { people: PEOPLE[plan.people], aid: aidWords(plan, support) });

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
  if (!today.recorded) return say('not-recorded');
  return today.goal
    ? say('of-goal', { n: today.timesUp, goal: today.goal.timesUp })
    : say('times-up', { n: today.timesUp });
}

/** "check by 14:00", "check overdue since 11:20", "check at next move", or nothing to say. `time` writes an instant. */
export function dueWords(due: DueView, time: (at: number) => string): string {
  switch (due.state) {
    case 'none':
      return '';
    case 'at-next-move':
      return say('due-next-move');
    case 'overdue':
      return due.at === null ? say('due-overdue') : say('due-overdue-since', { time: time(due.at) });
    default:
      return due.at === null ? '' : say('due-by', { time: time(due.at) });
  }
}

/** Why the board reads LAST KNOWN, and what to do, in one sentence each. */
export const LAST_KNOWN_WHY: Readonly<
  Record<'never-heard' | 'no-heartbeat' | 'no-database' | 'no-evaluation' | 'projection-trails', string>
> = following(['never-heard', 'no-heartbeat', 'no-database', 'no-evaluation', 'projection-trails'], (key) =>
  say(`old-${key}`),
);

const TIERS = ['Supported', 'Upright', 'Edge', 'Stand', 'Turn', 'Walk', 'Not known'] as const;
/** A tier by its word. A ward that wrote a protocol of its own has words of its own: those stay. */
export function tierWord(word: string): string {
  const known = TIERS.find((one) => one === word);
  return known ? say(`tier-${known}`) : told(word);
}
