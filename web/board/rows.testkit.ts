/** Invented board rows for tests: small, and as different from each other as a ward is. */
import type { TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { BedView, BoardView, StayView } from '@footboard/shared/capabilities/board/view';
import type { Heartbeat, Snapshot } from '@footboard/shared/wire/messages';
import type { BedId, EventId, StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';

export const NOON = Date.parse('2026-11-25T12:00:00Z');
export const HOUR = 3_600_000;
const why = (words: string) => [{ rule: 'test-rule', facts: ['e1' as EventId], words }];

export const planFor = (task: TaskPlan['task'], over: Partial<TaskPlan> = {}): TaskPlan => ({
  task,
  hold: false,
  people: 'one',
  aid: 'walking-support',
  with: [],
  towards: null,
  cautions: [],
  because: why('one person with a frame'),
  ...over,
});

export const stayRow = (over: Partial<StayView> = {}): StayView => ({
  stay: 's1' as StayId,
  version: 4,
  began: NOON - 48 * HOUR,
  away: null,
  scope: { kind: 'staged', fence: null, plan: null },
  tier: {
    word: 'Stand',
    notch: 0.6,
    protocol: { id: 'default', version: 1 },
    oneLeg: null,
    secured: false,
    at: NOON - 5 * HOUR,
    by: { staff: 'n1' as StaffId, role: 'nurse' },
    because: why('Stand was cleared'),
  },
  trust: { state: 'current', openTriggers: [], conflicts: [], because: why('checked today') },
  holds: [],
  orders: [],
  plan: {
    day: [planFor('bed-chair'), planFor('toilet')],
    night: [planFor('bed-chair'), planFor('toilet', { people: 'two' })],
  },
  checkBeforeMoving: false,
  onOwn: null,
  walkingSupport: 'frame',
  cautions: [],
  due: { state: 'not-due', at: NOON + 2 * HOUR, because: why('24 hours after the last check') },
  lastUp: { at: NOON - 2 * HOUR, event: 'e2' as EventId, activity: 'chair' },
  lastEvent: null,
  today: {
    wardDayFrom: NOON - 5 * HOUR,
    goal: { activity: 'stand', timesUp: 3 },
    goalProposed: true,
    recorded: true,
    timesUp: 1,
    minutesOutOfBed: null,
    metres: null,
    notDone: {},
    met: false,
    boardWrong: 0,
    because: why('one session today'),
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

export const bedRow = (
  label: string,
  stay: StayView | null = stayRow(),
  over: Partial<BedView> = {},
): BedView => ({
  bed: `bed-${label}` as BedId,
  label,
  bay: 'Bay 1',
  ceilingTrack: false,
  state: stay ? (stay.away ? 'away' : 'occupied') : 'empty',
  carers: null,
  stay,
  ...over,
});

export const holdRow = (over: Partial<StayView['holds'][number]> = {}): StayView['holds'][number] => ({
  hold: 'h1',
  scope: 'out-of-bed',
  reason: 'waiting-for-review',
  owner: 'n1' as StaffId,
  placedAt: NOON - HOUR,
  reviewAt: NOON + HOUR,
  reviewDue: false,
  event: 'e3' as EventId,
  note: null,
  ...over,
});

export const boardRow = (beds: BedView[], over: Partial<BoardView> = {}): BoardView => ({
  ward: 'w1',
  name: 'Heron ward',
  zone: 'Europe/Lisbon',
  wardDayFrom: '07:00',
  nightFrom: '21:00',
  nightTo: '07:00',
  night: false,
  panel: { inches: 55, metres: 5 },
  units: { weight: 'kg', length: 'm' },
  language: 'en',
  peopleOn: null,
  lifts: null,
  beds,
  ...over,
});

export const snapshotOf = (beds: BedView[], over: Partial<Snapshot> = {}): Snapshot => ({
  ward: 'w1' as WardId,
  feed: 7,
  p: 40,
  t: NOON,
  board: boardRow(beds),
  ...over,
});

export const beatOf = (over: Partial<Heartbeat> = {}): Heartbeat => ({
  ward: 'w1' as WardId,
  clock: NOON,
  rate: 1,
  head: 40,
  projected: 40,
  feed: 7,
  readAt: NOON,
  evaluatedAt: NOON,
  trailingSince: null,
  demo: false,
  ...over,
});
