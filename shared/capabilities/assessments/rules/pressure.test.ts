import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { DEFAULT_PROTOCOL } from './protocol.ts';
import { judgeRising, type RisingInput } from './pressure.ts';

type Pair = readonly [systolic: number, diastolic: number];
const CLOCK = Date.UTC(2026, 2, 3, 9, 0);
const at = (minutes: number) => new Date(CLOCK + minutes * 60_000).toISOString();
const taken = (
  posture: 'lying' | 'seated' | 'standing',
  [systolic, diastolic]: Pair,
  when: number,
): Reading => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic,
  at: at(when),
});
const lying = (of: Pair, when = 0) => taken('lying', of, when);
const seated = (of: Pair, when: number) => taken('seated', of, when);
/** Standing up at `rose`, measured `minute` later. */
const standing = (minute: number, of: Pair, rose = 10): Reading =>
  ({
    ...taken('standing', of, rose + minute),
    minute,
  }) as Reading;

const judge = (readings: readonly Reading[], extra: Partial<RisingInput> = {}) =>
  judgeRising({
    readings,
    symptoms: [],
    demanded: false,
    set: DEFAULT_PROTOCOL.pressureSet,
    rules: DEFAULT_RULES.rising,
    ...extra,
  });
const demanded = { demanded: true };

const FELL = [lying([130, 80]), standing(1, [108, 78]), standing(3, [112, 78])];
const again = (one: Pair, three: Pair | null): Reading[] => [
  standing(1, one, 20),
  ...(three ? [standing(3, three, 20)] : []),
];

// What follows: design, row "what it does" (common practice, no source).
describe('what follows from the pressures on rising', () => {
  it('a fall without symptoms and no second try: sit, then once more; until then the caution holds', () => {
    const { follows } = judge(FELL, demanded);
    expect(follows).toEqual({
      stage: 'retry-once',
      sitMinutes: 2,
      caution: 'PRESSURE DROP',
      peopleMore: 1,
      tellPrescriber: true,
      words: [
        'A fall without symptoms: sit for 2 min, then stand and measure once more',
        'Until then standing counts with the caution. PRESSURE DROP: one more person on rising',
        'Tell the prescriber',
      ],
    });
  });
  it('says the minutes of rest that the ward set', () => {
    const rules = {
      ...DEFAULT_RULES.rising,
      retrySitMinutes: { ...DEFAULT_RULES.rising.retrySitMinutes, value: 5 },
    };
    expect(judge(FELL, { ...demanded, rules }).follows).toMatchObject({ sitMinutes: 5 });
  });
  it.each([
    ['falls again', again([109, 78], [110, 78])],
    ['does not fall again', again([126, 80], [128, 80])],
  ])('after a second try that %s standing is cleared with the caution', (_, second) => {
    const v = judge([...FELL, ...second], demanded);
    expect(v.fall).toBe('yes');
    expect(v.worst).toMatchObject({ systolicFall: 22, systolicMinute: 1 });
    expect(v.standNotCleared).toEqual([]);
    expect(v.follows).toMatchObject({
      stage: 'cleared-with-caution',
      sitMinutes: null,
      caution: 'PRESSURE DROP',
      peopleMore: 1,
      tellPrescriber: true,
    });
    expect(v.follows.words).toEqual([
      'Tried once more after sitting. PRESSURE DROP: one more person on rising',
      'Tell the prescriber',
    ]);
  });
  it('a second try without its last reading is not yet the second try', () => {
    expect(judge([...FELL, ...again([126, 80], null)], demanded).follows.stage).toBe('retry-once');
  });
  it('outside a pressure set a second try reaches as far as the fall did', () => {
    const [rest, one] = FELL as [Reading, Reading];
    expect(judge([rest, one, ...again([126, 80], null)]).follows.stage).toBe('cleared-with-caution');
    const late = standing(3, [108, 78]);
    const both = [rest, late, seated([128, 80], 15), standing(1, [126, 80], 20)];
    expect(judge(both).follows.stage).toBe('retry-once');
    expect(judge([...both, standing(3, [126, 80], 20)]).follows.stage).toBe('cleared-with-caution');
  });
  it('a second try with symptoms, or with a low pressure, is not cleared', () => {
    const second = again([109, 78], [110, 78]);
    expect(judge([...FELL, ...second], { ...demanded, symptoms: ['faint'] }).follows).toMatchObject({
      stage: 'not-cleared',
      caution: 'PRESSURE DROP',
      peopleMore: 1,
      tellPrescriber: true,
    });
    expect(judge([...FELL, ...again([89, 60], [110, 78])], demanded).follows.stage).toBe('not-cleared');
  });
  it('tells in order: make safe, why, the caution, the prescriber', () => {
    const low = judge([lying([120, 70]), standing(1, [88, 60]), standing(3, [95, 62])], demanded);
    expect(low.follows.words).toEqual([
      'Make safe: sit or lie the person down. No further standing now',
      'Standing is not cleared: systolic 88 at 1 min standing (limit 90)',
      'PRESSURE DROP: one more person on rising',
      'Tell the prescriber',
    ]);
  });
  it('tells the prescriber of a fall in an incomplete set, and of symptoms without a fall', () => {
    const part = judge([lying([120, 70]), standing(3, [98, 60])], demanded).follows.words;
    expect(part.slice(-2)).toEqual(['PRESSURE DROP: one more person on rising', 'Tell the prescriber']);
    const unwell = judge([lying([120, 70]), standing(1, [118, 70]), standing(3, [118, 70])], {
      ...demanded,
      symptoms: ['dizzy'],
    });
    expect(unwell.follows.words).toEqual([
      'Make safe: sit or lie the person down. No further standing now',
      'Standing is not cleared: symptoms on rising (dizzy)',
      'Tell the prescriber',
    ]);
  });
  it('an incomplete set asks for the whole set, not for the prescriber', () => {
    const v = judge([lying([120, 70]), standing(1, [118, 70])], { ...demanded, symptoms: undefined });
    expect(v.follows).toMatchObject({
      stage: 'not-cleared',
      caution: null,
      peopleMore: 0,
      tellPrescriber: false,
    });
    expect(v.follows.words).toEqual([
      'Standing is not cleared: the pressure set is incomplete: standing 3 min missing',
      'Standing is not cleared: symptoms on rising were not asked',
      'Take the whole set again, and ask about symptoms, before standing counts',
    ]);
  });
  it('with no pressure at rest or standing nothing is said for or against standing', () => {
    expect(judge([])).toMatchObject({ fall: 'not-taken', worst: null, complete: false });
    expect(judge([]).follows.words).toEqual([
      'No pressure was taken at rest and standing: nothing is said for or against it',
    ]);
    expect(judge([]).follows).toMatchObject({ stage: 'not-judged', caution: null, peopleMore: 0 });
    expect(judge([standing(1, [120, 70])])).toMatchObject({
      fall: 'not-taken',
      follows: { stage: 'not-judged' },
    });
    expect(judge([lying([120, 70])]).fall).toBe('not-taken');
    expect(judge([lying([120, 70]), standing(1, [118, 70])]).follows).toEqual({
      stage: 'cleared',
      sitMinutes: null,
      caution: null,
      peopleMore: 0,
      tellPrescriber: false,
      words: [],
    });
  });
});

describe('one standing up and the next', () => {
  it('gives every reading with its posture, minute, values and the standing up that it belongs to', () => {
    const v = judge([...FELL, seated([126, 80], 16), ...again([126, 80], [128, 80])]);
    expect(v.readings.map((r) => [r.posture, r.minute, r.systolic, r.series])).toEqual([
      ['lying', null, 130, 0],
      ['standing', 1, 108, 1],
      ['standing', 3, 112, 1],
      ['seated', null, 126, 0],
      ['standing', 1, 126, 2],
      ['standing', 3, 128, 2],
    ]);
    expect(v.readings[1]).toMatchObject({ diastolic: 78, heartRate: null, at: CLOCK + 11 * 60_000 });
  });
  it('takes readings in order of time, whatever their place in the record, and no other signs', () => {
    const all = [...FELL, seated([126, 80], 16), ...again([126, 80], [128, 80])];
    const rate: Reading = { kind: 'heart-rate', perMinute: 80, at: at(5) };
    expect(judge([rate, ...all.toReversed()]).readings).toEqual(judge(all).readings);
  });
  it('readings written down in another order are still one standing up', () => {
    const v = judge([lying([130, 80]), standing(3, [128, 80], 5), standing(1, [126, 80], 10)], demanded);
    expect(v).toMatchObject({ complete: true, fall: 'no' });
    expect(new Set(v.readings.map((r) => r.series))).toEqual(new Set([0, 1]));
  });
  it('two readings of which nobody said the minute are one standing up', () => {
    const v = judge([
      taken('lying', [130, 80], 0),
      taken('standing', [108, 78], 11),
      taken('standing', [126, 80], 13),
    ]);
    expect(v.readings.map((r) => r.series)).toEqual([0, 1, 1]);
    expect(v.follows.stage).toBe('retry-once');
    expect(v.passing).toContain('gone at standing');
  });
  it('the first minute of one and the third of the next are no whole set', () => {
    const mixed = [
      lying([130, 80]),
      standing(1, [126, 80]),
      seated([128, 80], 13),
      standing(3, [126, 80], 15),
    ];
    expect(judge(mixed, demanded)).toMatchObject({ fall: 'incomplete', missing: ['standing 1 min'] });
  });
  it('a first standing up that was whole stays whole when the second is cut short', () => {
    expect(judge([...FELL, ...again([126, 80], null)], demanded)).toMatchObject({
      complete: true,
      missing: [],
    });
  });
  it('a fall is measured from the higher rest, before the first standing or before this one', () => {
    const [rest] = FELL as [Reading];
    const lowRest = [rest, standing(1, [125, 80]), lying([112, 78], 16), standing(1, [109, 76], 20)];
    expect(judge(lowRest).fired.map((f) => [f.rule, f.by])).toEqual([['systolic-fall', 21]]);
    const highRest = [rest, standing(1, [125, 80]), lying([140, 78], 16), standing(1, [119, 76], 20)];
    expect(judge(highRest).fired.map((f) => [f.rule, f.by])).toEqual([['systolic-fall', 21]]);
  });
  it('a rest written down only afterwards is better than none', () => {
    expect(judge([standing(1, [108, 78]), lying([130, 80], 30)]).fall).toBe('yes');
    expect(judge([standing(1, [108, 78]), seated([130, 80], 30)]).fall).toBe('yes');
    expect(judge([lying([116, 80]), standing(1, [108, 78]), seated([130, 80], 30)]).fall).toBe('no');
  });
});

describe('a fall already on sitting up, by the limits from lying (common practice, no source)', () => {
  it.each([
    [[111, 71], []],
    [[110, 71], ['fall-on-sitting']],
    [[111, 70], ['fall-on-sitting']],
  ] as [Pair, string[]][])('lying 130/80, seated %j', (up, rules) => {
    const v = judge([lying([130, 80]), seated(up, 3)]);
    expect(v.fired.map((f) => f.rule)).toEqual(rules);
    expect(v.follows.caution).toBe(rules.length ? 'PRESSURE DROP' : null);
    expect(v.follows.stage).toBe(rules.length ? 'retry-once' : 'not-judged');
  });
  it('once more is asked for after the first standing up, whether that fell or not', () => {
    const sat = [lying([130, 80]), seated([108, 78], 3)];
    for (const systolic of [128, 108]) {
      const first = [...sat, standing(1, [systolic, 78]), standing(3, [systolic, 78])];
      expect(judge(first, demanded).follows.stage).toBe('retry-once');
      const second = [...first, ...again([systolic, 78], [systolic, 78])];
      expect(judge(second, demanded).follows.stage).toBe('cleared-with-caution');
    }
  });
  it('is said with both readings and has no minute standing', () => {
    const [fell] = judge([lying([130, 80]), seated([108, 78], 3)]).fired;
    expect(fell).toMatchObject({
      minute: null,
      words: 'systolic fell 22: from 130/80 lying to 108/78 seated (limit 20)',
    });
    expect(fell?.source).toContain('common practice');
  });
  it('is not asked of a seat before lying or after standing', () => {
    expect(judge([seated([108, 78], -5), lying([130, 80])]).fired).toEqual([]);
    expect(judge([lying([130, 80]), standing(1, [128, 80]), seated([108, 78], 30)]).fired).toEqual([]);
  });
});

describe('standing is not cleared', () => {
  // Design, row "what it does": standing systolic under 90 (common practice, no source).
  it('at a systolic of 89, and is at 90', () => {
    expect(judge([standing(1, [89, 60])]).standNotCleared).toEqual([
      'systolic 89 at 1 min standing (limit 90)',
    ]);
    expect(judge([standing(1, [90, 60])]).standNotCleared).toEqual([]);
  });
  it('and names the lowest of several', () => {
    const v = judge([standing(1, [88, 60]), standing(3, [84, 60]), standing(5, [86, 60])]);
    expect(v.standingLow).toMatchObject({ systolic: 84, minute: 3, limit: 90 });
  });
  it('when symptoms were not asked about in a pressure set: that is not "none"', () => {
    const whole = [lying([130, 80]), standing(1, [130, 80]), standing(3, [130, 80])];
    expect(judge(whole, demanded).standNotCleared).toEqual([]);
    expect(judge(whole, { ...demanded, symptoms: undefined }).standNotCleared).toEqual([
      'symptoms on rising were not asked',
    ]);
    expect(judge(whole, { symptoms: undefined }).standNotCleared).toEqual([]);
  });
  it('with symptoms, each in words', () => {
    expect(judge([], { symptoms: ['blurred-sight', 'nausea'] }).standNotCleared).toEqual([
      'symptoms on rising (blurred sight, nausea)',
    ]);
  });
});

describe("a ward's own set", () => {
  const set = { ...DEFAULT_PROTOCOL.pressureSet, lying: false, standingMinutes: [2] };
  it('that asks for no lying reading still needs one at rest: a fall is measured from something', () => {
    expect(judge([standing(2, [120, 70])], { ...demanded, set }).missing).toEqual(['lying or seated']);
    expect(judge([seated([120, 70], 5), standing(2, [120, 70])], { ...demanded, set })).toMatchObject({
      missing: [],
      fall: 'no',
    });
  });
  it('that asks for 15 s is not met by a reading of which nobody said the minute', () => {
    const early = { ...set, standingMinutes: [0.25] };
    const readings = [lying([120, 70]), taken('standing', [118, 70], 11)];
    expect(judge(readings, { ...demanded, set: early }).missing).toEqual(['standing 0.25 min']);
  });
  it('is asked for by its own minutes', () => {
    const readings = [lying([120, 70]), standing(1, [120, 70]), standing(3, [120, 70])];
    expect(judge(readings, { ...demanded, set }).missing).toEqual(['standing 2 min']);
  });
});
