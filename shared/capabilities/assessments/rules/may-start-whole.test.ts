/** May we start, over whole stays: the whole answer of the board. */
import { describe, expect, it } from 'vitest';
import { check, type Told } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { ask, checked, pressure, rate, said, start, well } from './may-start-now.testkit.ts';

describe('may we start, on a ward with its default rules', () => {
  it('may start when every sign was taken and nothing stands against it', () => {
    expect(ask(2, [checked()])).toEqual({ word: 'may-start', reasons: [], notTaken: [] });
  });
  it('asks first with nothing recorded, and lists everything that was not taken', () => {
    const view = ask(2, []);
    expect(view.word).toBe('ask-first');
    expect(view.notTaken).toEqual([
      'blood pressure',
      'heart rate',
      'oxygen saturation',
      'breathing rate',
      'temperature',
      'pain',
      'waits for help, follows instructions',
    ]);
    expect(view.reasons.map((r) => r.words)).toEqual([
      'Arrived, not checked here yet',
      'not known whether the person waits for help: never alone',
      'not known whether the person follows instructions',
      'to take first: blood pressure, heart rate, oxygen saturation, breathing rate, temperature, pain',
    ]);
  });
  it('MAY-5 asks first for one sign that is missing: a gap is not a normal reading', () => {
    const view = ask(2, [checked(1, well(1).slice(1))]);
    expect(view.notTaken).toEqual(['blood pressure']);
    expect(view.reasons).toEqual([
      {
        word: 'ask-first',
        words: 'to take first: blood pressure',
        limit: DEFAULT_RULES.start.readingHours.value,
        source: DEFAULT_RULES.start.readingHours.source,
        takenAt: null,
        facts: ['e00001'],
      },
    ]);
  });
  it('is not asked outside the staged check', () => {
    const comfort: Told = { type: 'scope-set', at: 1, payload: { scope: 'comfort' } };
    expect(start(2, [comfort]).view.mayStart).toBeNull();
  });
  it('says what stops before what asks', () => {
    const readings = [...well(1).slice(2), rate(120, 1), pressure(80, 1)];
    expect(said(2, [check('walk', 1, {}, { readings })])).toEqual([
      'not-now: systolic 80 mmHg is below 90',
      'ask-first: heart rate 120 is 111 or more',
    ]);
    expect(ask(2, [check('walk', 1, {}, { readings })]).word).toBe('not-now');
  });
});
