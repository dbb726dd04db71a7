/**
 * A pressure set is whole only with a reading at rest before the standing ones. The order: CDC, Measuring
 * Orthostatic Blood Pressure, 2017 (lie 5 min, then stand). How long before, and how far a reading's time
 * may lie from its minute: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { MINUTE, toIso } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { assessment, MORNING, tierInput, upTo } from './assessment.testkit.ts';
import { checkAssessment } from './check-record.ts';
import { judgeRising } from './pressure.ts';
import { DEFAULT_PROTOCOL, protocolLookup } from './protocol.ts';
import { judgeTier } from './tier.ts';

const taken = (posture: string, systolic: number, when: number, minute?: number): Reading =>
  ({
    kind: 'pressure',
    posture,
    systolic,
    diastolic: 70,
    at: toIso(MORNING + when * MINUTE),
    ...(minute === undefined ? {} : { minute }),
  }) as Reading;
const lying = (when: number, systolic = 120) => taken('lying', systolic, when);
/** Said to have stood this many minutes, taken at that time. */
const stood = (minute: number, when: number, systolic = 118) => taken('standing', systolic, when, minute);

const SET = DEFAULT_PROTOCOL.pressureSet;
const judge = (readings: readonly Reading[], set = SET, rules = DEFAULT_RULES.rising) =>
  judgeRising({ readings, symptoms: [], demanded: true, set, rules });
const missing = (readings: readonly Reading[], set = SET, rules = DEFAULT_RULES.rising) =>
  judge(readings, set, rules).missing;

describe('the reading at rest of a pressure set', () => {
  it('given it only after standing, then the set lacks one before, and says no "no fall"', () => {
    const late = judge([stood(1, 11), stood(3, 13), lying(14)]);
    expect(late).toMatchObject({ missing: ['lying before standing'], complete: false, fall: 'incomplete' });
    expect(late.follows.stage).toBe('not-cleared');
    expect(late.follows.words).toContain(
      'Standing is not cleared: the pressure set is incomplete: lying before standing missing',
    );
  });
  it('given it longer before than the limit, then it lacks one, and the limit is said', () => {
    expect(missing([lying(0), stood(1, 30), stood(3, 32)])).toEqual([]);
    expect(missing([lying(0), stood(1, 31), stood(3, 33)])).toEqual([
      'lying before standing (at most 30 min)',
    ]);
    const rules = {
      ...DEFAULT_RULES.rising,
      restingWithinMinutes: { ...DEFAULT_RULES.rising.restingWithinMinutes, value: 10 },
    };
    expect(missing([lying(0), stood(1, 11), stood(3, 13)], SET, rules)).toEqual([
      'lying before standing (at most 10 min)',
    ]);
  });
  it('given an old one and one after standing, then both still find a fall', () => {
    expect(judge([lying(-1260, 150), stood(1, 11), stood(3, 13)])).toMatchObject({
      fall: 'yes',
      complete: false,
    });
    expect(judge([stood(1, 11), stood(3, 13), lying(20, 150)])).toMatchObject({
      fall: 'yes',
      complete: false,
    });
  });
  it('given an old one and a new one before standing, then the set is whole', () => {
    expect(missing([lying(-60), lying(5), stood(1, 11), stood(3, 13)])).toEqual([]);
  });
  it('given a second standing up after a rest, then that one is whole', () => {
    expect(missing([stood(1, 1), stood(3, 3), lying(10), stood(1, 21), stood(3, 23)])).toEqual([]);
    // The rest between counts for the second only, and the second has but one minute.
    expect(missing([stood(1, 1), stood(3, 3), lying(10), stood(1, 21)])).toEqual(['standing 3 min']);
  });
  it('given a set that begins seated, then a seat before standing is enough, and one after is not', () => {
    const seatedSet = { ...SET, lying: false };
    const sat = (when: number) => taken('seated', 120, when);
    expect(missing([sat(5), stood(1, 11), stood(3, 13)], seatedSet)).toEqual([]);
    expect(missing([stood(1, 11), stood(3, 13), sat(14)], seatedSet)).toEqual([
      'lying or seated before standing',
    ]);
    expect(missing([sat(-40), stood(1, 11), stood(3, 13)], seatedSet)).toEqual([
      'lying or seated before standing (at most 30 min)',
    ]);
    // Where lying is asked for, a seat is no rest.
    expect(missing([lying(-60), sat(5), stood(1, 11), stood(3, 13)])).toEqual([
      'lying before standing (at most 30 min)',
    ]);
  });
});

describe('a minute standing that its own time contradicts', () => {
  it('given 1 min and 3 min a long time apart, then the later is not that minute', () => {
    expect(missing([lying(0), stood(1, 20), stood(3, 27)])).toEqual([]);
    expect(missing([lying(0), stood(1, 20), stood(3, 49)])).toEqual([
      'standing 3 min (its time does not fit)',
    ]);
  });
  it('given more minutes standing than have passed since the rest, then it is not that minute', () => {
    const ten = { ...SET, standingMinutes: [10] };
    expect(missing([lying(0), stood(10, 5)], ten)).toEqual([]);
    expect(missing([lying(0), stood(10, 4)], ten)).toEqual(['standing 10 min (its time does not fit)']);
  });
  it('given a first standing reading of no said minute, then one long after is not 1 min', () => {
    const unsaid = taken('standing', 118, 11);
    expect(missing([lying(0), unsaid, stood(1, 17), stood(3, 19)])).toEqual([]);
    expect(missing([lying(0), unsaid, stood(1, 18), stood(3, 19)])).toEqual([
      'standing 1 min (its time does not fit)',
    ]);
  });
});

describe('a pressure drop found earlier', () => {
  const full = (at: number, readings: readonly Reading[], extra = {}) =>
    assessment(
      upTo('stand'),
      { at },
      { depth: 'full-with-pressure', risingSymptoms: [], readings: [...readings], ...extra },
    );
  const fell = full(0, [lying(0, 150), stood(1, 11), stood(3, 13)]);
  const after = (check: ReturnType<typeof full>, own: object[] = []) =>
    judgeTier({ ...tierInput([fell, check]), protocols: protocolLookup(own as never) }).pressureDrop;
  const from = 24 * 60;

  it('is gone after a whole set that shows none', () => {
    expect(after(full(24.5, [lying(from), stood(1, from + 11), stood(3, from + 13)]))).toBeNull();
  });
  it.each([
    ['with its lying reading only afterwards', [stood(1, from + 11), stood(3, from + 13), lying(from + 14)]],
    ['with a lying reading of 21 h before', [lying(from - 1260), stood(1, from + 11), stood(3, from + 13)]],
    ['with its 3 min at 30 min', [lying(from), stood(1, from + 11), stood(3, from + 41)]],
  ])('stands after a set %s', (_, readings) => {
    expect(after(full(25, readings))).toMatchObject({ fact: fell.id });
  });
  it('stands after a whole set of an own protocol that stops in the first seconds', () => {
    const version = DEFAULT_PROTOCOL.version;
    const pressureSet = { ...SET, standingMinutes: [0.1], within: 0.05 };
    const own = [{ id: 'own', version, document: { ...DEFAULT_PROTOCOL, id: 'own', pressureSet } }];
    const early = [lying(from), stood(0.1, from + 11)];
    const check = (readings: readonly Reading[]) =>
      full(24.5, readings, { protocol: { id: 'own', version } });
    expect(after(check(early), own)).toMatchObject({ fact: fell.id });
    expect(after(check([...early, stood(1, from + 12)]), own)).toBeNull();
  });
});

describe('at the door', () => {
  it('given Stand met with its lying reading only afterwards, then the check is refused and says why', () => {
    const readings = [stood(1, 11), stood(3, 13), lying(14)];
    const { data } = assessment(
      upTo('stand'),
      { at: 0 },
      { depth: 'full-with-pressure', risingSymptoms: [], readings },
    );
    expect(checkAssessment(DEFAULT_PROTOCOL, { ...data, stay: 'stay-1' } as never)).toMatchObject({
      refused: 'pressure-set-incomplete',
      detail: expect.stringContaining('lying before standing'),
    });
  });
});
