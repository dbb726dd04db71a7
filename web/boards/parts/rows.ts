/** Invented rows for the page that shows every part: one for each state a bed can be in. */
import { rowFor } from '@footboard/shared/capabilities/board/rules/for-wall';
import type { TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { BedView, StayView } from '@footboard/shared/capabilities/board/view';
import type { BedId, EventId, StaffId, StayId } from '@footboard/shared/kernel/ids';

export const NOW = Date.parse('2026-11-25T12:00:00Z');
export const ZONE = 'Europe/Lisbon';
const HOUR = 3_600_000;
const event = 'e1' as EventId;
const staff = 'n1' as StaffId;
export const why = (words: string) => [{ rule: 'parts/invented', facts: [event], words }];

const task = (of: TaskPlan['task'], over: Partial<TaskPlan>): TaskPlan => ({
  task: of,
  hold: false,
  people: 'one',
  aid: 'walking-support',
  with: [],
  towards: null,
  cautions: [],
  because: why('one person and a frame'),
  ...over,
});
export const plan = (over: Partial<TaskPlan> = {}): StayView['plan'] => ({
  day: [task('bed-chair', over), task('toilet', over)],
  night: [task('bed-chair', over), task('toilet', { ...over, people: 'two' })],
});

export const stay = (over: Partial<StayView> = {}): StayView => ({
  stay: 's1' as StayId,
  version: 4,
  began: NOW - 48 * HOUR,
  away: null,
  scope: { kind: 'staged', fence: null, plan: null },
  tier: {
    word: 'Stand',
    notch: 0.6,
    protocol: { id: 'default', version: 1 },
    oneLeg: null,
    secured: false,
    at: NOW - 5 * HOUR,
    by: { staff, role: 'nurse' },
    because: why('Stand cleared with all before it'),
  },
  trust: { state: 'current', openTriggers: [], conflicts: [], because: why('checked today') },
  holds: [],
  orders: [],
  plan: plan(),
  checkBeforeMoving: false,
  onOwn: null,
  walkingSupport: 'frame',
  cautions: [],
  due: { state: 'not-due', at: NOW + 2 * HOUR, because: why('24 h after the last check') },
  lastUp: { at: NOW - 2 * HOUR, event, activity: 'chair' },
  lastEvent: null,
  today: {
    wardDayFrom: NOW - 5 * HOUR,
    goal: { activity: 'stand', timesUp: 3, minutesOutOfBed: 90, metres: 120 },
    goalProposed: false,
    recorded: true,
    timesUp: 2,
    minutesOutOfBed: 45,
    metres: null,
    notDone: {},
    boardWrong: 0,
    met: false,
    because: why('two sessions today'),
  },
  usualWay: null,
  attachments: [],
  firstTimeUpPending: false,
  mayStart: { word: 'may-start', reasons: [], notTaken: [] },
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
  lately: { last: null, saidNo: null, meal: null, yesterday: null },
  wall: 'as-ward',
  shown: 'whole',
  ...over,
});

const bed = (label: string, of: StayView | null): BedView => ({
  bed: `bed-${label}` as BedId,
  label,
  bay: 'A',
  ceilingTrack: false,
  state: of ? (of.away ? 'away' : 'occupied') : 'empty',
  carers: null,
  stay: of,
});
const hold = (over: Partial<StayView['holds'][number]> = {}): StayView['holds'][number] => ({
  hold: 'h1',
  scope: 'out-of-bed',
  reason: 'waiting-for-review',
  owner: staff,
  placedAt: NOW - HOUR,
  reviewAt: NOW + HOUR,
  reviewDue: false,
  event,
  note: null,
  ...over,
});
const trust = (state: StayView['trust']['state']): StayView['trust'] => ({
  state,
  openTriggers: [],
  conflicts: [],
  because: why('a trigger fired'),
});
const noTier = { ...stay().tier, word: null, notch: null, at: null, by: null };
const notKnown = { ...noTier, word: 'Not known' };

/** By the key of its caption in words.ts. */
export const TILES = [
  ['empty-bed', bed('A1', null)],
  ['away', bed('A2', stay({ away: { since: NOW - HOUR, reason: 'test', dueBack: NOW + HOUR } }))],
  ['plan', bed('A3', stay())],
  [
    'own-way',
    bed(
      'A4',
      stay({
        plan: plan({ people: 'on-own', aid: 'none' }),
        onOwn: { where: ['ward'], when: ['day'], event },
        tier: { ...stay().tier, word: 'Walk', notch: 1 },
      }),
    ),
  ],
  [
    'hold',
    bed('A5', stay({ holds: [hold()], plan: plan({ hold: true, people: 'two', aid: 'sling-lift' }) })),
  ],
  [
    'hold-due',
    bed(
      'A6',
      stay({
        holds: [hold({ reviewAt: NOW - HOUR, reviewDue: true })],
        plan: plan({ hold: true, people: 'two', aid: 'sling-lift' }),
      }),
    ),
  ],
  ['hold-beside', bed('A7', stay({ holds: [hold({ scope: 'walking' })], plan: plan({ people: 'two' }) }))],
  [
    'check',
    bed(
      'A8',
      stay({
        checkBeforeMoving: true,
        trust: trust('not-known'),
        tier: notKnown,
        plan: plan({ people: 'two', aid: 'sling-lift' }),
      }),
    ),
  ],
  [
    'overdue',
    bed(
      'B1',
      stay({
        trust: trust('re-check'),
        due: { state: 'overdue', at: NOW - 3 * HOUR, because: why('24 h after the last check') },
      }),
    ),
  ],
  [
    'clinicians',
    bed(
      'B2',
      stay({
        scope: { kind: 'clinicians-plan', fence: null, plan: null },
        tier: noTier,
        plan: null,
        mayStart: null,
      }),
    ),
  ],
  [
    'comfort',
    bed(
      'B3',
      stay({ scope: { kind: 'comfort', fence: null, plan: null }, tier: noTier, plan: null, mayStart: null }),
    ),
  ],
  ['first-up', bed('B4', stay({ firstTimeUpPending: true, plan: plan({ people: 'two' }) }))],
  ['isolation', bed('B5', stay({ isolation: true }))],
  [
    'not-recorded',
    bed(
      'B6',
      stay({
        lastUp: null,
        today: { ...stay().today, recorded: false, timesUp: 0, minutesOutOfBed: null, met: null },
      }),
    ),
  ],
  ['visitors', rowFor(bed('B7', stay()), 'visitors')],
  ['ask', rowFor(bed('B8', stay({ wall: 'nothing' })), 'bed-only')],
] as const satisfies readonly (readonly [string, BedView])[];

export const TIERS = ['Supported', 'Upright', 'Edge', 'Stand', 'Turn', 'Walk'];
export const tierAt = (notch: number | null, word: string | null): StayView['tier'] => ({
  ...stay().tier,
  notch,
  word,
});
