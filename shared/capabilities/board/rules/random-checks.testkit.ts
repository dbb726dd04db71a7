/** Random checks for property tests: how far they came, how, and what pressures were taken on rising. */
import * as fc from 'fast-check';
import { toIso } from '../../../kernel/times.ts';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/default-protocol.ts';
import { check, hours, type StageId, type Told } from './history.testkit.ts';

/** Quarters of an hour, so that instants often coincide. */
export const when = fc.integer({ min: 0, max: 4 * 80 }).map((q) => q / 4);
const stageIds = DEFAULT_PROTOCOL.stages.map((s) => s.id as StageId);
const ON_FEET: ReadonlySet<StageId> = new Set<StageId>(['stand', 'turn', 'walk']);

/** Pressures of one check, or what is there of them. */
interface Pressures {
  readonly rest: readonly ('lying' | 'seated')[];
  readonly systolic: number;
  readonly diastolic: number;
  /** Minutes standing that were measured; with all that a set asks for as often as not. */
  readonly minutes: readonly number[];
  /** By how much each falls at every minute standing: of none, at the limits of each rule, and far beyond. */
  readonly falls: readonly { readonly systolic: number; readonly diastolic: number }[];
  readonly heartRate: number | undefined;
  /** Minutes by which the last reading was written down late: its time may not fit. */
  readonly late: number;
  readonly again: boolean;
}
const STEADY = { systolic: 0, diastolic: 0 };
const fall = fc.record({
  systolic: fc.constantFrom(0, 0, 10, 15, 20, 30, 45),
  diastolic: fc.constantFrom(0, 0, 7, 10, 25),
});
const pressures: fc.Arbitrary<Pressures> = fc.record({
  rest: fc.constantFrom<Pressures['rest']>(['lying'], ['lying'], ['lying', 'seated'], ['seated'], []),
  systolic: fc.constantFrom(100, 130, 130, 168),
  diastolic: fc.constantFrom(60, 80),
  minutes: fc.constantFrom<Pressures['minutes']>([1, 3], [1, 3], [0.25, 1, 3], [1], [3], [0.25], []),
  falls: fc.oneof(fc.constant([STEADY, STEADY, STEADY]), fc.array(fall, { minLength: 3, maxLength: 3 })),
  heartRate: fc.constantFrom(undefined, 80),
  late: fc.constantFrom(0, 0, 0, 12),
  again: fc.constantFrom(false, false, true),
});

/** Readings of a check that began in that hour: at rest, then standing, and perhaps once more. */
function readingsOf(taken: Pressures, last: StageId, at: number): object[] {
  const reading = (of: object, minutes: number, { systolic, diastolic }: Pressures['falls'][number]) => {
    const high = taken.systolic - systolic;
    return {
      kind: 'pressure',
      ...of,
      systolic: high,
      diastolic: Math.min(taken.diastolic - diastolic, high - 5),
      ...(taken.heartRate === undefined ? {} : { heartRate: taken.heartRate + systolic }),
      at: toIso(hours(at + minutes / 60)),
    };
  };
  const rest = taken.rest.map((posture, n) => reading({ posture }, n - 5, STEADY));
  if (!ON_FEET.has(last)) return rest;
  const up = (from: number, falls: Pressures['falls']) =>
    taken.minutes.map((minute, n) => {
      const isLast = n === taken.minutes.length - 1;
      return reading({ posture: 'standing', minute }, from + minute + (isLast ? taken.late : 0), falls[n]!);
    });
  const second = taken.again
    ? [reading({ posture: 'seated' }, 6, STEADY), ...up(9, taken.falls.toReversed())]
    : [];
  return [...rest, ...up(0, taken.falls), ...second];
}

/** Half an hour before the check is written down: its readings lie between, after what comes before standing. */
function withReadings(one: Told, taken: Pressures, last: StageId): Told {
  const began = one.at! - 0.5;
  const { stages, ...rest } = one.payload as { stages: { stage: StageId }[] };
  return {
    ...one,
    payload: {
      ...rest,
      stages: stages.map((s) => (ON_FEET.has(s.stage) ? s : { ...s, at: toIso(hours(began)) })),
      readings: readingsOf(taken, last, began),
    },
  };
}

/** Any check: half of them carry pressures, some of them all that a set asks for, with symptoms or without. */
export const checks: fc.Arbitrary<Told> = fc
  .record({
    last: fc.constantFrom(...stageIds),
    fails: fc.boolean(),
    secured: fc.boolean(),
    symptom: fc.boolean(),
    waits: fc.constantFrom('yes', 'no', 'varies'),
    depth: fc.constantFrom('full', 'full-with-pressure'),
    firstTimeUp: fc.boolean(),
    taken: fc.option(pressures, { freq: 2 }),
    risingSymptoms: fc.constantFrom<readonly string[] | undefined>(
      undefined,
      [],
      [],
      ['dizzy'],
      ['faint', 'nausea'],
    ),
    at: when,
  })
  .map(({ last, fails, secured, symptom, waits, depth, firstTimeUp, taken, risingSymptoms, at }) => {
    const outcome = fails ? 'not-met' : 'met';
    const one = check(
      last,
      at,
      { [last]: { outcome, how: secured ? 'secured' : 'free', symptom } },
      {
        depth,
        firstTimeUp,
        cooperation: { waitsForHelp: waits, followsInstructions: 'yes' },
        ...(taken && risingSymptoms ? { risingSymptoms } : {}),
      },
    );
    return taken ? withReadings(one, taken, last) : one;
  });
