/** The ordinary day: checks, confirms, sessions, refusals, toilets, for each person by what they can do. */
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import type { Reading, StageRecord } from '@footboard/shared/capabilities/assessments/values';
import type { Activity } from '@footboard/shared/capabilities/sessions/values';
import { MINUTE, toIso, type EpochMs } from '@footboard/shared/kernel/times';
import {
  AIDES,
  DAY_NURSES,
  LARKFIELD,
  MILLBROOK,
  NIGHT_NURSES,
  type DemoPerson,
  type Reach,
} from './cast.ts';
import { at } from './days.ts';
import type { Entry } from './entry.ts';
import type { Chance } from './random.ts';

const STAGES = DEFAULT_PROTOCOL.stages;

function reading(
  kind: 'lying' | 'standing',
  minute: number,
  systolic: number,
  diastolic: number,
  rate: number,
  when: EpochMs,
): Reading {
  return { kind: 'pressure', posture: kind, minute, systolic, diastolic, heartRate: rate, at: toIso(when) };
}

/** A staged check that clears up to `reach` and finds the next stage not met. */
export function assessment(
  who: Pick<DemoPerson, 'stay' | 'waits'>,
  when: EpochMs,
  reach: Reach,
  how: {
    depth: 'full' | 'full-with-pressure';
    secured?: boolean;
    firstTimeUp?: boolean;
    pressureDrop?: boolean;
    oneLeg?: boolean;
  },
): object {
  const stages: StageRecord[] = [];
  // Entered at the end of the check: with a pressure set it began about 12 minutes before.
  const begun = when - 12 * MINUTE;
  for (const [index, stage] of STAGES.entries()) {
    const met = index <= reach;
    const hold = index >= 3 && how.secured ? stage.securedBy[0] : undefined;
    const oneLeg = how.oneLeg === true && stage.oneLegRoute;
    stages.push({
      stage: stage.id,
      outcome: met ? 'met' : 'not-met',
      how: hold === undefined ? 'free' : 'secured',
      ...(hold === undefined ? {} : { securedWith: hold }),
      ...(oneLeg && met ? { oneLeg: 'right' as const } : {}),
      // Whoever gets further needs nobody for the earlier stages.
      people: reach - index >= 2 ? 0 : reach >= 4 ? 1 : 2,
      findings: stage.parts.flatMap((part, n) =>
        (part.sided ? (['left', 'right'] as const) : [undefined]).map((side) => ({
          part: part.id,
          ...(side === undefined ? {} : { side }),
          ...(oneLeg && part.shows === 'leg-bears' && side === 'left'
            ? { result: 'not-applicable' as const, reason: 'order' as const }
            : { result: met || n > 0 ? ('met' as const) : ('not-met' as const) }),
        })),
      ),
      symptom: false,
      at: toIso(begun + (index < 3 ? index : index + 5) * MINUTE),
    });
    if (!met) break;
  }
  const withPressure = how.depth === 'full-with-pressure' && reach >= 3;
  const drop = how.pressureDrop ? 22 : 6;
  const readings: Reading[] = withPressure
    ? [
        reading('lying', 5, 128, 76, 74, begun + 2 * MINUTE),
        reading('standing', 1, 128 - drop, 74, 84, begun + 5 * MINUTE),
        reading('standing', 3, 126 - drop, 73, 82, begun + 7 * MINUTE),
      ]
    : [];
  return {
    stay: who.stay,
    protocol: { id: DEFAULT_PROTOCOL.id, version: DEFAULT_PROTOCOL.version },
    depth: withPressure ? 'full-with-pressure' : 'full',
    stages,
    readings,
    ...(withPressure ? { risingSymptoms: [] } : {}),
    cooperation: { waitsForHelp: who.waits, followsInstructions: who.waits === 'no' ? 'no' : 'yes' },
    wears: ['shoes'],
    walkingSupport: reach >= 4 ? 'frame' : 'none',
    answers: [],
    firstTimeUp: how.firstTimeUp ?? false,
  };
}

const USUAL: readonly Activity[] = ['lifted-to-chair', 'back-raised', 'edge-sit', 'stand', 'chair', 'walk'];

/**
 * Where the session left the person. After every other meal in the chair they sit on for a while; the
 * instant decides it, not chance, so that the week of a seed stays the same.
 */
function leftAt(when: EpochMs, occasion: string, activity: Activity): object {
  const sitsOn = occasion === 'meal' && activity === 'chair' && (when / MINUTE) % 2 === 0;
  return sitsOn ? { left: 'chair', backToBedBy: toIso(when + 50 * MINUTE) } : { left: 'bed' };
}

const WHY_NOT_USED = ['not-to-hand', 'no-time', 'with-others', null, 'could-do-more'] as const;
/** Every third time on the edge of the bed the slide sheet stays in the cupboard; the instant decides it. */
function withoutAid(when: EpochMs, activity: Activity): object {
  const minute = Math.floor(when / MINUTE);
  if (activity !== 'edge-sit' || minute % 3 !== 0) return {};
  const because = WHY_NOT_USED[(minute / 3) % WHY_NOT_USED.length] ?? null;
  return { aidNotUsed: { planned: 'slide-sheet', ...(because === null ? {} : { because }) } };
}

export function session(
  who: Pick<DemoPerson, 'stay'>,
  when: EpochMs,
  reach: Reach,
  more: Partial<{
    outcome: 'done' | 'part' | 'stopped';
    occasion: 'planned' | 'toilet' | 'wash' | 'meal';
    events: string[];
    metres: number;
    minutes: number;
    effort: number;
  }>,
): { stay: string; session: object } {
  const occasion = more.occasion ?? 'planned';
  const activity: Activity =
    occasion === 'toilet' ? 'toilet' : occasion === 'meal' && reach >= 3 ? 'chair' : USUAL[reach]!;
  const minutes = more.minutes ?? (activity === 'chair' || activity === 'lifted-to-chair' ? 45 : 12);
  const up = activity !== 'back-raised';
  return {
    stay: who.stay,
    session: {
      outcome: more.outcome ?? 'done',
      occasion,
      activities: [activity],
      startedAt: toIso(when - Math.min(minutes, 20) * MINUTE),
      endedAt: toIso(when),
      ...(up ? { minutesOutOfBed: minutes } : {}),
      ...(activity === 'walk' || more.metres !== undefined ? { metres: more.metres ?? 40 } : {}),
      ...leftAt(when, occasion, activity),
      ...withoutAid(when, activity),
      ...(more.effort === undefined ? {} : { effort: more.effort }),
      events: more.events ?? [],
      firstTimeUp: false,
    },
  };
}

const NOT_DONE = [
  { group: 'said-no', example: 'tired' },
  { group: 'said-no', example: 'pain' },
  { group: 'bad-moment', example: 'visitor' },
  { group: 'bad-moment', example: 'meal' },
  { group: 'no-people', example: 'one-of-two' },
  { group: 'not-here', example: 'test' },
  { group: 'no-kit', example: 'lift' },
] as const;

const reachOn = (who: DemoPerson, day: number): Reach =>
  Math.round(who.from + ((who.to - who.from) * Math.min(day, 6)) / 6) as Reach;

/** Everything one person's ordinary stay brings from day `first` to day `last`, both included. */
export function ordinaryDays(who: DemoPerson, luck: Chance, first: number, last: number): Entry[] {
  const ward = who.bed.startsWith('mb-') ? MILLBROOK : LARKFIELD;
  const entries: Entry[] = [];
  const add = (when: EpochMs, by: string, command: string, data: Entry['data']) =>
    entries.push({ at: when, ward, by, command, data });
  const minute = (from: number, to: number) => luck.between(from, to) * MINUTE;
  const nurse = () => luck.pick(DAY_NURSES);
  const aide = () => luck.pick(AIDES);
  const leg = who.story === 'one-leg' ? { oneLeg: true } : {};
  const staged = who.story !== 'comfort' && who.story !== 'clinicians-plan';

  for (let day = Math.max(first, who.arrives); day <= last; day++) {
    if (who.leaves !== undefined && day > who.leaves) break;
    if (who.story === 'transfers' && day >= 6 && ward === LARKFIELD) break;
    const reach = reachOn(who, day);
    const changed = day > 0 && reach !== reachOn(who, day - 1);
    const arrival = day === who.arrives;
    // The last hours before going live are left as a ward really is: some checks not yet done.
    const early = day === 7 ? luck.is(0.5) : true;
    const away = who.story === 'theatre' && day === 2;

    if (staged && early && !away) {
      if (arrival) {
        const when = day === 0 ? at(0, '07:45') + minute(0, 150) : at(day, '13:00') + minute(60, 200);
        add(
          when,
          nurse(),
          'record-assessment',
          assessment(who, when, reach, { depth: 'full-with-pressure', ...leg }),
        );
      } else if (changed || (who.waits !== 'yes' && day % 2 === 0)) {
        const when = at(day, '07:40') + minute(0, 160);
        add(
          when,
          luck.is(0.3) && day < 4 ? 'rhea' : nurse(),
          'record-assessment',
          assessment(who, when, reach, { depth: 'full', ...leg }),
        );
      } else {
        add(at(day, '07:30') + minute(0, 110), nurse(), 'confirm-plan', {
          stay: who.stay,
          task: reach >= 3 ? 'bed-chair' : 'in-bed',
        });
      }
      if (who.story !== 'quiet' || day < 6)
        add(at(day, '19:40') + minute(0, 70), luck.pick(NIGHT_NURSES), 'confirm-plan', {
          stay: who.stay,
          task: reach >= 2 ? 'bed-chair' : 'in-bed',
        });
    }
    if (who.story === 'comfort' || who.story === 'clinicians-plan') continue;
    if (who.story === 'quiet' && day >= 6) continue;

    const rounds: [string, 'planned' | 'meal'][] = [
      ['08:10', 'meal'],
      ['10:20', 'planned'],
      ['12:20', 'meal'],
      ['15:00', 'planned'],
      ['17:30', 'meal'],
    ];
    for (const [clock, occasion] of rounds) {
      const when = at(day, clock) + minute(5, 75);
      if (arrival && when < at(day, day === 0 ? '10:30' : '17:00')) continue;
      if (away || luck.is(0.18)) continue;
      const refuses = who.story === 'refuses' ? 0.55 : 0.12;
      if (luck.is(refuses)) {
        const why = who.story === 'refuses' ? NOT_DONE[luck.between(0, 1)]! : luck.pick(NOT_DONE);
        add(when, aide(), 'record-session', {
          stay: who.stay,
          session: {
            outcome: 'not-done',
            notDone: why,
            occasion,
            activities: [],
            startedAt: toIso(when),
            events: [],
            firstTimeUp: false,
          },
        });
      } else {
        add(
          when,
          luck.is(0.7) ? aide() : nurse(),
          'record-session',
          session(who, when, reach, {
            occasion,
            outcome: luck.is(0.9) ? 'done' : 'part',
            effort: luck.between(2, 6),
            ...(reach === 5 && occasion === 'planned' ? { metres: luck.between(2, 9) * 10 } : {}),
            ...(reach >= 3 && occasion === 'meal' ? { minutes: luck.between(25, 60) } : {}),
          }),
        );
      }
    }
    if (reach >= 3) {
      for (const clock of ['06:30', '13:50', '20:50', '23:40']) {
        if (luck.is(0.6)) {
          const when = at(day, clock) + minute(0, 25);
          if (arrival && when < at(day, '18:00')) continue;
          add(
            when,
            luck.is(0.5) ? luck.pick(NIGHT_NURSES) : aide(),
            'record-session',
            session(who, when, reach, { occasion: 'toilet' }),
          );
        }
      }
    }
  }
  return entries;
}
