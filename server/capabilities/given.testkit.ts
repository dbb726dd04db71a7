/**
 * given(what happened).when(command, data).appends(events) or .refuses(code). The invented ward Larch has
 * beds b1 to b4, everyone in STAFF, and a clock that starts at T0; Rowan is the ward next door.
 */
import { expect } from 'vitest';
import type { z } from 'zod';
import type { CommandType } from '@footboard/shared/kernel/command-type';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { EventType, PayloadOf } from '@footboard/shared/kernel/event-type';
import { role } from '@footboard/shared/kernel/author';
import type { Author, Role, Source } from '@footboard/shared/kernel/author';
import type { BedId, EventId, PersonId, StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';
import { HOUR, MINUTE, toIso } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { RefusalCode } from '@footboard/shared/capabilities/refusals';
import { assessmentRecorded } from '@footboard/shared/capabilities/assessments/events';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import type { recordAssessment } from '@footboard/shared/capabilities/assessments/commands';
import type { StageRecord } from '@footboard/shared/capabilities/assessments/values';
import { staffMemberAdded } from '@footboard/shared/capabilities/people/events';
import { stayBegun, stayEnded } from '@footboard/shared/capabilities/stays/events';
import { bedAdded, bedFreed, bedTaken, wardSetUp } from '@footboard/shared/capabilities/wards/events';
import { staff, World } from './world.testkit.ts';
import type { Step } from './world.testkit.ts';

export const LARCH = 'larch' as WardId;
export const ROWAN = 'rowan' as WardId;
/** 09:00 on the ward's clock, winter time. */
export const T0: EpochMs = Date.UTC(2026, 2, 3, 8);
export const hours = (n: number): EpochMs => T0 + n * HOUR;
export const iso = (n: number): string => toIso(hours(n));

export const bed = (id: string) => id as BedId;
export const stay = (id: string) => id as StayId;
export const entry = (id: string) => id as EventId;

export const STAFF = Object.fromEntries(role.options.map((r) => [r, staff(r)])) as Record<Role, Author>;
export const NURSE = STAFF.nurse;
export const AIDE = STAFF.aide;
export const THERAPIST = STAFF.therapist;
export const CHARGE_NURSE = STAFF['charge-nurse'];

interface When {
  readonly at?: EpochMs;
  readonly by?: Author;
  readonly id?: string;
  readonly ward?: WardId;
  readonly source?: Source;
}

/** As the server records an entry under a name that nobody had checked: an aide's, marked unconfirmed. */
export const claimedBy = ({ staff: claimed }: Author): Required<Pick<When, 'by' | 'source'>> => ({
  by: { staff: claimed, role: 'aide' },
  source: { kind: 'person', unconfirmed: true },
});

/** Any event of a stay, in so many words. */
export const fact = <T extends EventType>(
  type: T,
  of: string,
  payload: PayloadOf<T>,
  when: When = {},
): Step => ({
  ...newEvent(type, streamKey('stay', of), payload),
  ...occurredBy(when),
});
const occurredBy = ({ at, by, id, ward, source }: When) => ({
  ...(at === undefined ? {} : { occurred: at }),
  ...(by === undefined ? {} : { by }),
  ...(id === undefined ? {} : { id }),
  ...(ward === undefined ? {} : { ward }),
  ...(source === undefined ? {} : { source }),
});

export function wardSetUpAs(id: WardId, name: string): Step[] {
  const stream = streamKey('ward', id);
  const before = { ward: id, occurred: T0 - 48 * HOUR };
  return [
    {
      ...newEvent(wardSetUp, stream, {
        name,
        zone: 'Europe/Berlin',
        wardDayFrom: '07:00',
        nightFrom: '21:00',
        nightTo: '07:00',
      }),
      ...before,
    },
    ...['b1', 'b2', 'b3', 'b4'].map((b, i) => ({
      ...newEvent(bedAdded, stream, {
        bed: bed(b),
        label: `${name[0]}${i + 1}`,
        bay: 'South bay',
        ceilingTrack: false,
      }),
      ...before,
    })),
    ...role.options.map((r) => ({
      ...newEvent(staffMemberAdded, stream, {
        staff: r as string as StaffId,
        role: r,
        name: { ref: `name-of-${r}` },
      }),
      ...before,
    })),
  ];
}

export function arrived(who: string, into: string, when: When = {}): Step[] {
  const occurred = occurredBy({ at: T0, ...when });
  const begun = newEvent(stayBegun, streamKey('stay', who), {
    stay: stay(who),
    person: `person-${who}` as PersonId,
    bed: bed(into),
    from: 'home',
  });
  const { id: _id, ...guarded } = occurred;
  return [
    { ...begun, ...occurred },
    { ...newEvent(bedTaken, streamKey('bed', into), { bed: bed(into), stay: stay(who) }), ...guarded },
  ];
}
export function left(who: string, from: string, when: When = {}): Step[] {
  const occurred = occurredBy(when);
  return [
    { ...newEvent(stayEnded, streamKey('stay', who), { bed: bed(from), to: 'home' }), ...occurred },
    { ...newEvent(bedFreed, streamKey('bed', from), { bed: bed(from), stay: stay(who) }), ...occurred },
  ];
}

type Check = z.input<(typeof recordAssessment)['data']>;
/** A check by the default protocol, every part met up to and including the named stage. */
export function check(who: string, upTo: string, at: EpochMs, more: Partial<Check> = {}): Check {
  const last = DEFAULT_PROTOCOL.stages.findIndex((s) => s.id === upTo);
  if (last < 0) throw new Error(`the default protocol has no stage ${upTo}`);
  return {
    stay: who,
    protocol: { id: DEFAULT_PROTOCOL.id, version: DEFAULT_PROTOCOL.version },
    depth: 'full',
    stages: DEFAULT_PROTOCOL.stages.slice(0, last + 1).map((s): StageRecord => ({
      stage: s.id,
      outcome: 'met',
      how: 'free',
      people: 1,
      findings: s.parts.flatMap((part) =>
        part.sided
          ? (['left', 'right'] as const).map((side) => ({ part: part.id, side, result: 'met' as const }))
          : [{ part: part.id, result: 'met' as const }],
      ),
      symptom: false,
      at: toIso(at),
    })),
    readings: [
      {
        kind: 'pressure',
        posture: 'standing',
        minute: 1,
        systolic: 128,
        diastolic: 74,
        at: toIso(at),
      },
    ],
    cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
    ...more,
  };
}
/** The stages of such a check, with the last one not met. */
export const upToFailed = (upTo: string, at: EpochMs): StageRecord[] =>
  (check('anyone', upTo, at).stages as StageRecord[]).map((s) =>
    s.stage === upTo
      ? { ...s, outcome: 'not-met', findings: s.findings.map((f) => ({ ...f, result: 'not-met' as const })) }
      : s,
  );
export function checked(
  who: string,
  upTo: string,
  when: When & { at: EpochMs },
  more: Partial<Check> = {},
): Step {
  const { stay: _stay, note: _note, ...payload } = check(who, upTo, when.at, more);
  return fact(
    assessmentRecorded,
    who,
    { readings: [], wears: [], answers: [], firstTimeUp: false, ...payload } as PayloadOf<
      typeof assessmentRecorded
    >,
    when,
  );
}

type Given = Step | readonly Step[];

/** A world in which the two wards stand and these things have happened. */
export function worldWith(...steps: readonly Given[]): World {
  const world = new World();
  for (const step of [wardSetUpAs(LARCH, 'Larch'), wardSetUpAs(ROWAN, 'Rowan'), ...steps].flat()) {
    world.add(step as Step, { ward: LARCH, by: NURSE, occurred: T0 });
  }
  return world;
}

interface Entering extends When {
  readonly now?: EpochMs;
}
type Expected = readonly [type: string, stream: string, payload: object, ward?: WardId];

export const given = (...steps: readonly Given[]) => inWorld(worldWith(...steps));
/** Nothing has been set up yet. */
export const givenNothing = () => inWorld(new World());

function inWorld(world: World) {
  return {
    /** By a nurse, 3 h after T0, decided at once, unless said otherwise. */
    when<C extends CommandType>(command: C, data: z.input<C['data']>, entering: Entering = {}) {
      const occurred = entering.at ?? hours(3);
      const decision = world.decide(command, data, {
        ward: entering.ward ?? LARCH,
        by: entering.by ?? NURSE,
        occurred,
        now: entering.now ?? occurred,
      });
      return {
        decision,
        /** Exactly these events, in this order. */
        appends(...expected: readonly Expected[]) {
          const accepted =
            'accept' in decision
              ? decision.accept.map((e) => [e.type, e.stream, e.payload, ...(e.ward ? [e.ward] : [])])
              : decision;
          expect(accepted).toEqual(expected);
        },
        accepts() {
          expect(decision).toHaveProperty('accept');
        },
        /** What was put aside from the events, by subject. */
        keeps(...expected: readonly [subject: string, text: string][]) {
          expect(world.kept.map((k) => [k.subject, k.text])).toEqual(expected);
        },
        refuses(code: RefusalCode, field?: string) {
          expect(decision).toMatchObject({ refused: code, ...(field === undefined ? {} : { field }) });
          const { detail, remedy } = decision as { detail: string; remedy: string };
          expect(detail.length).toBeGreaterThan(10);
          expect(remedy).toMatch(/^[A-Z].*[.]$/);
        },
      };
    },
  };
}

export { HOUR, MINUTE };
