import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import { assessment, fact, hours, upTo } from '../../assessments/rules/assessment.testkit.ts';
import { earlyWarningRises } from '../../assessments/rules/early-warning.ts';
import { protocolLookup } from '../../assessments/rules/protocol.ts';
import type { Reading } from '../../assessments/values.ts';
import type { Fact } from '../../corrections/facts.ts';
import { triggersOf } from '../../orders/rules/triggers.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { sessionEventKind, type Session } from '../values.ts';
import { sessionsBeyondStop, wentWrong, wrongWords } from './what-went-wrong.ts';

const session = (extra: Partial<Session> = {}, at = 1): Session => ({
  outcome: 'done',
  occasion: 'planned',
  activities: ['walk'],
  startedAt: toIso(hours(at)),
  events: [],
  firstTimeUp: false,
  ...extra,
});
const recorded = (extra: Partial<Session> = {}, { at = 1, id = 'walk', role = 'aide' as Role } = {}): Fact =>
  fact('session-recorded', { session: session(extra, at) }, { at, id, role });
const rate = (perMinute: number, at = 1.1): Reading => ({
  kind: 'heart-rate',
  perMinute,
  at: toIso(hours(at)),
});
const oxygen = (saturation: number, at = 1.1): Reading => ({
  kind: 'oxygen',
  saturation,
  at: toIso(hours(at)),
});
const target = (low: number, at: number, role: Role = 'nurse'): Fact =>
  fact('order-changed', { order: { about: 'oxygen-target', low, high: 98 } }, { at, role });

describe('what a session amounts to (common practice, no source)', () => {
  it('is a fall when the person was lowered to the floor, whatever else is said', () => {
    expect(wentWrong(session({ events: ['lowered-to-floor'], outcome: 'stopped' }))).toBe('fall');
  });
  it('is a failed attempt when it was stopped, or when anything went wrong with the person', () => {
    const amounts = sessionEventKind.options.map((event) => [event, wentWrong(session({ events: [event] }))]);
    expect(Object.fromEntries(amounts)).toEqual({
      dizzy: 'failed-attempt',
      'near-fall': 'failed-attempt',
      'lowered-to-floor': 'fall',
      'line-pulled': 'failed-attempt',
      'low-oxygen': 'failed-attempt',
      pain: 'failed-attempt',
      distress: 'failed-attempt',
      'equipment-fault': null,
    });
    expect(wentWrong(session({ outcome: 'stopped' }))).toBe('failed-attempt');
    expect(wentWrong(session({ outcome: 'part' }))).toBeNull();
  });
});

describe('what went wrong with the person, in words', () => {
  it.each<[Session['events'], string | null]>([
    [['pain', 'near-fall', 'pain'], 'Something went wrong in a session: pain, near fall'],
    [['equipment-fault', 'pain'], 'Something went wrong in a session: pain'],
    [['equipment-fault'], null],
    [[], null],
  ])('of %j is: %s', (events, words) => {
    expect(wrongWords(session({ events }))).toBe(words);
  });
});

describe('a session beyond a stop limit', () => {
  const beyond = (...facts: Fact[]) => [...sessionsBeyondStop(facts, DEFAULT_RULES)];

  it('is told with the limits it passed, each once', () => {
    expect(beyond(recorded({ readings: [rate(130)] }))).toEqual([]);
    expect(beyond(recorded())).toEqual([]);
    expect(beyond(recorded({ readings: [rate(131), rate(131, 1.2), oxygen(84)] }))).toEqual([
      ['walk', 'A stop limit was passed: heart rate 131 is above 130; oxygen saturation 84 % is below 85'],
    ]);
  });
  it("measures against the person's own target of that time", () => {
    const walk = recorded({ readings: [oxygen(90)] });
    expect(beyond(walk)).toEqual([]);
    expect(beyond(target(92, 0.5), walk)).toEqual([
      ['walk', 'A stop limit was passed: oxygen saturation 90 % is below the own target of 92'],
    ]);
    expect(beyond(target(92, 0.5), target(88, 0.6), walk)).toEqual([]);
    expect(beyond(target(92, 0.5), target(88, 0.6, 'aide'), walk)).toHaveLength(1);
    expect(beyond(walk, target(92, 2))).toEqual([]);
  });
  it("measures against the ward's own limits, also when they change", () => {
    const walk = recorded({ readings: [rate(125)] });
    const strict = structuredClone(DEFAULT_RULES);
    strict.stop.heartRateAbove.value = 120;
    expect(sessionsBeyondStop([walk], DEFAULT_RULES).size).toBe(0);
    expect(sessionsBeyondStop([walk], strict).size).toBe(1);
    expect(sessionsBeyondStop([walk], DEFAULT_RULES).size).toBe(0);
  });
});

describe('a trigger that only the limits of the ward make of an entry', () => {
  const on = structuredClone(DEFAULT_RULES);
  on.earlyWarning.on.value = true;
  const open = (...facts: Fact[]) =>
    triggersOf(
      facts,
      [],
      protocolLookup([]),
      earlyWarningRises(facts, on),
      sessionsBeyondStop(facts, on),
    ).open.map((o) => [o.kind, o.at, o.words]);

  it('MAY-6 is a failed attempt for a session beyond a stop limit, answered by a staged check', () => {
    const walk = recorded({ readings: [rate(131)] });
    expect(open(walk)).toEqual([
      ['failed-attempt', hours(1), 'A stop limit was passed: heart rate 131 is above 130'],
    ]);
    expect(open(walk, assessment(upTo('walk'), { at: 2 }))).toEqual([]);
  });
  it('is never less than what the session amounts to by itself', () => {
    expect(open(recorded({ readings: [rate(131)], events: ['lowered-to-floor'] }))).toMatchObject([
      ['fall', hours(1), 'Fall'],
    ]);
    expect(open(recorded({ readings: [rate(131)], outcome: 'stopped' }))).toMatchObject([
      [
        'failed-attempt',
        hours(1),
        'An attempt failed or was stopped. A stop limit was passed: heart rate 131 is above 130',
      ],
    ]);
  });
  it('is a rise of the early-warning score; a lower score later closes nothing', () => {
    const score = (total: number, at: number) =>
      fact('early-warning-recorded', { score: total, anyThree: false, scale: 1 }, { at, id: `s${at}` });
    expect(open(score(6, 1), score(0, 2))).toEqual([
      ['early-warning-rise', hours(1), 'Early-warning score 6, 5 or more'],
    ]);
    expect(open(score(6, 1), assessment(upTo('walk'), { at: 2 }))).toEqual([]);
  });
});
