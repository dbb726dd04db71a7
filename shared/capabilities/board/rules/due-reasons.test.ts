/** What a due time names as its reason: who is off the ward, an arrival, a shift. Hours are common practice, no source. */
import { describe, expect, it } from 'vitest';
import { before, due, first, rulesWith, seen, withTrigger } from './due.testkit.ts';
import { begun, hours, recordOf, session, stayOf, trigger, type Told } from './history.testkit.ts';

const off = (at: number): Told => ({
  type: 'went-off-ward',
  at,
  id: `off-${at}`,
  payload: { reason: 'test' },
});
const back = (at: number): Told => ({ type: 'came-back', at, payload: {} });

describe('given someone who is off the ward', () => {
  it('the check waits for the next move from the very instant of leaving, by the entry of that', () => {
    expect(due(stayOf(first, off(4)), before(4)).state).toBe('not-due');
    expect(due(stayOf(first, off(4)), 4)).toEqual({
      state: 'at-next-move',
      at: null,
      because: [
        {
          rule: 'due/away',
          facts: ['off-4'],
          words: 'Off the ward since 24 Oct 22:00: before the next move',
        },
      ],
    });
  });
  it('the last leaving is named, whatever was entered before and since', () => {
    const told = stayOf(first, off(3), back(4), session(5), off(6), session(7));
    expect(due(told, 8).because).toMatchObject([{ rule: 'due/away', facts: ['off-6'] }]);
  });
});

describe('the first check', () => {
  const early: Told = {
    type: 'weight-recorded',
    at: -2,
    payload: { weight: { kg: 70, how: 'measured' } },
  };
  it('is counted from the arrival, not from what was known before it', () => {
    expect(due(recordOf([early, begun()]), 1).at).toBe(hours(4));
  });
  it('is counted from the first entry where no arrival was entered', () => {
    expect(due(recordOf([early, session(1)]), 1).at).toBe(hours(2));
  });
  it('where both times of the ward are the same, is due by the one for the first check', () => {
    const rules = withTrigger('arrival', 4);
    const { arrival } = rules.validity.triggers;
    const signed = { ...arrival, source: 'the ward’s own time for an arrival' };
    const own = {
      ...rules,
      validity: { ...rules.validity, triggers: { ...rules.validity.triggers, arrival: signed } },
    };
    expect(due(stayOf(), 1, own).because.map((b) => b.words)).toEqual([
      'First check within 4 h of arrival (common practice, no source)',
    ]);
  });
});

describe('given a first day after surgery', () => {
  const surgery = { ...trigger('return-from-surgery', 1), id: 'surgery' };
  const checked = stayOf(surgery, { ...first, at: 2 });
  const long = rulesWith({ unsettledHours: 24 });
  it('the check before the first move of the next shift is told while it is still ahead', () => {
    expect(due(checked, 3, long)).toMatchObject({
      state: 'not-due',
      at: hours(26),
      because: [
        {
          rule: 'due/each-shift',
          facts: ['surgery'],
          words: 'First day after surgery: before the first move of each shift',
        },
        { rule: 'due/validity', facts: ['first'] },
      ],
    });
    expect(seen(checked, hours(3), long).trust.state).toBe('current');
  });
  it('a move out of a bed that is called “theatre” is no surgery', () => {
    const moved: Told = { type: 'stay-moved', at: 3, payload: { from: 'theatre', to: 'bed-2' } };
    expect(due(stayOf(first, moved), 4, long).because.map((b) => b.rule)).toEqual(['due/validity']);
  });
});
