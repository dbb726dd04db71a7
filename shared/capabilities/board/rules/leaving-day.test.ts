/** The goal of the day on which a person leaves: its part for the waking hours there. Ours, practice (design: goals). */
import { describe, expect, it } from 'vitest';
import { wardCalendar } from '../../wards/rules/calendar.ts';
import { germanBook } from '../../../i18n/phrases/german.ts';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from './evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  hours,
  recordOf,
  session,
  stayOf,
  ward,
  type Told,
} from './history.testkit.ts';

// START is 18:00 in Berlin: the ward day of the day after runs from 14 h to 38 h (07:00 to 07:00).
const goal: Told = {
  type: 'goal-set',
  at: 2,
  role: 'nurse',
  payload: { goal: { activity: 'stand', timesUp: 4, minutesOutOfBed: 120 } },
};
const stands: Told = { ...check('stand', 1), id: 'stands' };
const expected = (at: number, leaves: number | null, id = 'leaves'): Told => ({
  type: 'leaving-expected',
  at,
  id,
  payload: { at: leaves === null ? null : toIso(hours(leaves)) },
});
const left = (at: number): Told => ({
  type: 'stay-ended',
  at,
  id: 'left',
  payload: { bed: 'bed-1', to: 'home' },
});
const ask = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(stands, goal, ...told), ward, calendar, hours(h));
const today = (h: number, ...told: readonly Told[]) => ask(h, ...told).view.today;

describe('the goal on the day of leaving', () => {
  it('given nobody expects the person to leave, then the goal is whole', () => {
    expect(today(16).goal).toEqual({ activity: 'stand', timesUp: 4, minutesOutOfBed: 120 });
  });
  it('given the person leaves at noon, then a part is asked, with that entry as the reason', () => {
    // 07:00 to 14:00: half of the 14 waking hours.
    const seen = today(16, expected(15, 21));
    expect(seen.goal).toEqual({ activity: 'stand', timesUp: 2, minutesOutOfBed: 60 });
    expect(seen.because).toContainEqual({
      rule: 'goal/part-of-day',
      facts: ['leaves'],
      words: 'Here for part of this ward day: 2 of 4 times asked',
    });
    expect(today(16, expected(15, 21), session(15, { activities: ['stand'], minutesOutOfBed: 60 })).met).toBe(
      false,
    );
  });
  it('given the person has left, then the part is by when they left, whatever was expected', () => {
    const seen = today(22, expected(15, 34), left(21));
    expect(seen.goal?.timesUp).toBe(2);
    expect(seen.because).toContainEqual(
      expect.objectContaining({ rule: 'goal/part-of-day', facts: ['left'] }),
    );
  });
  it.each([
    ['taken back', expected(15, null)],
    ['for another day', expected(15, 40)],
  ])('given the expectation is %s, then the goal is whole', (_what, told) => {
    expect(today(16, expected(14.5, 21, 'first'), told).goal?.timesUp).toBe(4);
  });
  it('given the person is still there after the time that was expected, then the goal is whole again', () => {
    const told = expected(15, 21);
    expect(today(20.9, told).goal?.timesUp).toBe(2);
    expect(today(21, told).goal?.timesUp).toBe(4);
    expect(ask(16, told).nextChange).toBeLessThanOrEqual(hours(21));
  });
  it('given arrival and leaving on one day, then both are named', () => {
    const of = stayOf(stands, goal, expected(1.5, 2.5));
    const seen = evaluateStay(of, ward, calendar, hours(2)).view.today;
    expect(seen.goal?.timesUp).toBe(1);
    const part = seen.because.find((b) => b.rule === 'goal/part-of-day')!;
    expect(part.facts).toHaveLength(2);
    expect(part.facts).toContain('leaves');
  });
  it.each([
    ['on the day before', 10],
    ['at the very time the ward day began', 14],
  ])(
    'given they left %s, then no part of this ward day was theirs to leave, and nothing is counted down',
    (_when, at) => {
      const seen = today(16, left(at));
      expect(seen.goal?.timesUp).toBe(4);
      expect(seen.because.map((b) => b.rule)).not.toContain('goal/part-of-day');
    },
  );
  it('given they are expected to leave at the very time the ward day ends, then only the arrival makes it a part', () => {
    const partOf = (leaves: number) =>
      evaluateStay(
        recordOf([{ ...begun(), id: 'arrived' }, stands, goal, expected(1.5, leaves)]),
        ward,
        calendar,
        hours(3),
      ).view.today.because.find((b) => b.rule === 'goal/part-of-day')?.facts;
    expect(partOf(14)).toEqual(['arrived']);
    expect(partOf(13.9)).toEqual(['arrived', 'leaves']);
  });
  it('given they arrived at the very time the ward day began, then only the leaving makes it a part', () => {
    const partOf = (arrives: number) =>
      evaluateStay(
        recordOf([
          { ...begun(), id: 'arrived', at: arrives },
          { ...check('stand', 14.5), id: 'stands' },
          expected(15, 21),
        ]),
        ward,
        calendar,
        hours(16),
      ).view.today.because.find((b) => b.rule === 'goal/part-of-day')?.facts;
    expect(partOf(14)).toEqual(['leaves']);
    expect(partOf(14.1)).toEqual(['arrived', 'leaves']);
  });
  it('given the ward day begins in the night and they go before it is over, then nothing is asked, and it says why', () => {
    const early = { ...ward, wardDayFrom: '05:00' };
    // The clocks go back: 05:00 is 12 h after START, 06:00 is 13 h.
    const of = stayOf(stands, goal, expected(3, 13));
    const seen = evaluateStay(of, early, wardCalendar(early), hours(12.5)).view.today;
    expect(seen.goal).toBeNull();
    expect(seen.because).toContainEqual({
      rule: 'goal/part-of-day',
      facts: ['leaves'],
      words: 'Leaves in the night: nothing asked on this ward day',
    });
    expect(germanBook().say('Leaves in the night: nothing asked on this ward day')).toBe(
      'Geht in der Nacht: an diesem Stationstag nichts verlangt',
    );
  });
  it('given a goal in part, then a step goes up from the whole one', () => {
    const three: Told = { ...goal, at: 14.3, payload: { goal: { activity: 'stand', timesUp: 3 } } };
    const easy = { activities: ['stand'], effort: 2 };
    const told = [check('stand', 14.2), three, session(14.5, easy), session(15, easy), expected(15.2, 21)];
    const seen = ask(16, ...told).view;
    expect(seen.today.goal?.timesUp).toBe(2);
    expect(seen.proposal).toMatchObject({ step: 'up', goal: { activity: 'stand', timesUp: 4 } });
  });
});
