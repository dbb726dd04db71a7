/** Histories for tests of the board: one invented ward and its events. */
import type { Role } from '../../../kernel/author.ts';
import type { LoggedEvent, StreamKey } from '../../../kernel/event-type.ts';
import type { DeviceId, EventId, StaffId, StayId, WardId } from '../../../kernel/ids.ts';
import { HOUR, MINUTE, toIso, type EpochMs } from '../../../kernel/times.ts';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/default-protocol.ts';
import { EVENT_TYPES } from '../../registry.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { wardCalendar } from '../../wards/rules/calendar.ts';
import { foldWard } from '../../wards/rules/ward-state.ts';

export const WARD = 'ward-1' as WardId;
/** The evening before the clocks go back in Berlin, so that random times straddle the change. */
export const START: EpochMs = Date.parse('2026-10-24T16:00:00Z');
export const hours = (h: number): EpochMs => START + Math.round(h * HOUR);

export interface Told {
  readonly type: string;
  readonly payload: unknown;
  /** Hours after START. */
  readonly at?: number;
  readonly role?: Role;
  /** By default one person a role. */
  readonly staff?: string;
  readonly id?: string;
  /** Hours after START; by default a minute after it occurred. */
  readonly recorded?: number;
  readonly source?: LoggedEvent['source'];
}

/** Events as a log would hold them: positions from 1, versions per stream. */
export class WardLog {
  readonly events: LoggedEvent[] = [];
  private readonly versions = new Map<StreamKey, number>();

  add(stream: StreamKey, told: Told): LoggedEvent {
    EVENT_TYPES.get(told.type)!.schema.parse(told.payload);
    const version = (this.versions.get(stream) ?? 0) + 1;
    this.versions.set(stream, version);
    const position = this.events.length + 1;
    const occurred = hours(told.at ?? 0);
    const role = told.role ?? 'nurse';
    const event: LoggedEvent = {
      ward: WARD,
      position,
      stream,
      version,
      id: (told.id ?? `e${String(position).padStart(5, '0')}`) as EventId,
      type: told.type,
      payload: told.payload,
      occurred,
      precision: 'exact',
      entered: occurred,
      enteredOffsetMinutes: 120,
      recorded: told.recorded === undefined ? occurred + MINUTE : hours(told.recorded),
      author: { staff: (told.staff ?? `staff-${role}`) as StaffId, role },
      source: told.source ?? { kind: 'device', device: 'phone-1' as DeviceId },
    };
    this.events.push(event);
    return event;
  }
  record(stay: string): StayRecord {
    const events = this.events.filter((e) => e.stream === `stay/${stay}`);
    return { stay: stay as StayId, version: events.length, events };
  }
}

export const begun = (stay = 'stay-1', bed = 'bed-1'): Told => ({
  type: 'stay-begun',
  payload: { stay, person: `person-${stay}`, bed, from: 'home' },
});

/** One stay's stream, begun at START. */
export function stayOf(...told: readonly Told[]): StayRecord {
  const log = new WardLog();
  for (const one of [begun(), ...told]) log.add('stay/stay-1', one);
  return log.record('stay-1');
}

export function setUpWard(log: WardLog, beds = 4): void {
  log.add(`ward/${WARD}`, {
    type: 'ward-set-up',
    payload: {
      name: 'Lindenhof 2',
      zone: 'Europe/Berlin',
      wardDayFrom: '07:00',
      nightFrom: '21:00',
      nightTo: '07:00',
    },
  });
  for (let i = 1; i <= beds; i++) {
    const payload = { bed: `bed-${i}`, label: String(i), bay: 'A', ceilingTrack: i === 1 };
    log.add(`ward/${WARD}`, { type: 'bed-added', payload });
  }
}
const setUp = new WardLog();
setUpWard(setUp);
export const ward = foldWard(WARD, setUp.events)!;
export const calendar = wardCalendar(ward);

type StageSays = { outcome?: 'met' | 'not-met'; how?: 'free' | 'secured'; symptom?: boolean };
const STAGES = DEFAULT_PROTOCOL.stages;
export type StageId = 'clear' | 'upright' | 'edge' | 'stand' | 'turn' | 'walk';

function stageRecord(id: string, at: number, { outcome = 'met', how = 'free', symptom = false }: StageSays) {
  const stage = STAGES.find((s) => s.id === id)!;
  const secured = how === 'secured' && stage.securedBy.length > 0;
  const findings = stage.parts.flatMap((p) =>
    (p.sided ? (['left', 'right'] as const) : [undefined]).map((side) => ({
      part: p.id,
      ...(side ? { side } : {}),
      result: outcome,
    })),
  );
  return {
    stage: id,
    outcome,
    how: secured ? 'secured' : 'free',
    ...(secured ? { securedWith: stage.securedBy[0] } : {}),
    people: 1,
    findings,
    symptom,
    at: toIso(hours(at)),
  };
}

/** A check that clears every stage up to `last`; `says` changes single stages. */
export function check(
  last: StageId,
  at: number,
  says: Partial<Record<StageId, StageSays>> = {},
  extra: Record<string, unknown> = {},
): Told {
  const upTo = STAGES.findIndex((s) => s.id === last);
  return {
    type: 'assessment-recorded',
    at,
    payload: {
      protocol: { id: DEFAULT_PROTOCOL.id, version: DEFAULT_PROTOCOL.version },
      depth: 'full',
      stages: STAGES.slice(0, upTo + 1).map((s) => stageRecord(s.id, at, says[s.id as StageId] ?? {})),
      readings: [],
      cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
      wears: ['shoes'],
      answers: [],
      firstTimeUp: false,
      ...extra,
    },
  };
}

export const session = (at: number, extra: Record<string, unknown> = {}): Told => ({
  type: 'session-recorded',
  at,
  role: 'aide',
  payload: {
    session: {
      outcome: 'done',
      occasion: 'planned',
      activities: ['walk'],
      startedAt: toIso(hours(at)),
      events: [],
      firstTimeUp: false,
      ...extra,
    },
  },
});
export const notDone = (at: number, group: string): Told =>
  session(at, { outcome: 'not-done', activities: [], notDone: { group } });
export const trigger = (kind: string, at: number, role: Role = 'aide'): Told => ({
  type: 'trigger-recorded',
  at,
  role,
  payload: { kind },
});
export const order = (at: number, about: Record<string, unknown>, role: Role = 'nurse'): Told => ({
  type: 'order-changed',
  at,
  role,
  payload: { order: about },
});
export const hold = (at: number, scope: string, reviewAt: number, extra: Partial<Told> = {}): Told => ({
  type: 'hold-placed',
  at,
  payload: {
    hold: 'hold-1',
    scope,
    reason: 'waiting-for-review',
    owner: 'staff-nurse',
    reviewAt: toIso(hours(reviewAt)),
  },
  ...extra,
});
export const confirm = (at: number, assessment: string, role: Role = 'nurse'): Told => ({
  type: 'plan-confirmed',
  at,
  role,
  payload: { task: 'walk', assessment },
});
export const onOwn = (at: number, role: Role = 'nurse'): Told => ({
  type: 'on-own-set',
  at,
  role,
  payload: { where: ['room'], when: ['day'] },
});
export const retract = (at: number, target: string, role: Role = 'nurse'): Told => ({
  type: 'retraction-made',
  at,
  role,
  payload: { target, reason: 'never-happened' },
});
export const correct = (
  at: number,
  target: string,
  by: Told,
  role: Role = 'nurse',
  occurred?: number,
): Told => ({
  type: 'correction-made',
  at,
  role,
  payload: {
    target,
    type: by.type,
    schemaVersion: 1,
    replacement: by.payload,
    ...(occurred === undefined ? {} : { occurred: toIso(hours(occurred)) }),
    reason: 'wrong-value',
  },
});

/** As the server records an entry under a name that nobody had checked: an aide's, marked unconfirmed. */
export const unconfirmed = (told: Told, claimed: Role = told.role ?? 'nurse'): Told => ({
  ...told,
  role: 'aide',
  staff: `staff-${claimed}`,
  source: { ...(told.source ?? { kind: 'person' }), unconfirmed: true },
});
export const confirmation = (at: number, target: string, role: Role = 'nurse'): Told => ({
  type: 'entry-confirmed',
  at,
  role,
  payload: { target },
});
export const cosignature = (at: number, target: string, role: Role = 'nurse'): Told => ({
  type: 'entry-cosigned',
  at,
  role,
  payload: { target },
});

export const recordOf = (entries: readonly Told[]): StayRecord => {
  const log = new WardLog();
  for (const one of entries) log.add('stay/stay-1', one);
  return log.record('stay-1');
};

/** The same bytes for the same value, whatever the order of its keys. */
export const canonical = (value: unknown): string =>
  JSON.stringify(value, (_key, v: unknown) =>
    typeof v === 'object' && v !== null && !Array.isArray(v)
      ? Object.fromEntries(Object.entries(v).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : v,
  );
