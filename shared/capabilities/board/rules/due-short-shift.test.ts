/**
 * A check in every shift, where the ward turned it on: a shift shorter than the ward's hours into it is
 * not left out. Source: users' research 3a (every shift, within some hours of its start); rosters of 12 h,
 * 8 h and a split one are common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { due, rulesWith, seen } from './due.testkit.ts';
import { check, hours, stayOf } from './history.testkit.ts';

const TWELVE = ['07:00', '19:00'];
const EIGHT = ['07:00', '15:00', '23:00'];
const SPLIT = ['07:00', '11:00', '15:30', '21:30'];
const every = (shiftsFrom: readonly string[], intoShiftHours: number) =>
  rulesWith({ eachShift: true, unsettledHours: 100, intoShiftHours }, shiftsFrom);

describe('given a check in every shift, the last one in the night shift to 07:00', () => {
  // 07:00 is hour 14 of these histories: they begin at 18:00 in the night of 25 hours.
  const night = stayOf({ ...check('edge', 13), id: 'night' });
  it.each([
    ['split, the morning of four hours', SPLIT, 6, 18],
    ['split, within its hours', SPLIT, 3, 17],
    ['8 h, of hours as long as the shift', EIGHT, 8, 22],
    ['8 h, of longer hours', EIGHT, 10, 22],
    ['12 h', TWELVE, 10, 24],
    ['12 h, of longer hours', TWELVE, 20, 26],
  ])('roster %s: it is due by the end of the next shift at the latest', (_name, roster, into, by) => {
    expect(due(night, 13.5, every(roster, into))).toMatchObject({ state: 'not-due', at: hours(by) });
    expect(seen(night, hours(by), every(roster, into)).trust.state).toBe('re-check');
  });
  it('says so in words', () => {
    expect(due(night, 13.5, every(SPLIT, 6)).because.map((b) => b.words)).toEqual([
      'A check in every shift, the next by its end 25 Oct 11:00: ' +
        'the last one was in the shift to 25 Oct 07:00 (common practice, no source)',
    ]);
    // Of hours as long as the shift itself the hours are named.
    expect(due(night, 13.5, every(EIGHT, 8)).because[0]!.words).toContain('within 8 h of its start');
  });
});
