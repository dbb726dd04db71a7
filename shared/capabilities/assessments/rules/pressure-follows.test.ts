/** What follows from the pressures on rising: for standing, for the caution, for the prescriber. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { again, demanded, FELL, judge, lying, seated, standing } from './pressure.testkit.ts';

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
