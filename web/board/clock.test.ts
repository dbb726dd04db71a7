import { describe, expect, it } from 'vitest';
import { ago, elapsed, wardDayTime, wardMoment, wardTime } from './clock.ts';

const at = (iso: string) => Date.parse(iso);

describe('the ward’s clock', () => {
  // EU Directive 2000/84/EC: summer time ends on the last Sunday of October at 01:00 UTC.
  it('in the repeated hour writes the offset, so that the two 01:40 are told apart', () => {
    expect(wardTime(at('2026-10-25T00:40:00Z'), 'Europe/Lisbon')).toBe('01:40 (UTC+1)');
    expect(wardTime(at('2026-10-25T01:40:00Z'), 'Europe/Lisbon')).toBe('01:40 (UTC+0)');
    expect(wardTime(at('2026-10-25T02:40:00Z'), 'Europe/Lisbon')).toBe('02:40');
  });

  // Lord Howe Island moves its clock by half an hour, at 02:00 local time on the first Sunday of April (IANA tz database).
  it('knows a repeated half hour', () => {
    expect(wardTime(at('2026-04-04T14:45:00Z'), 'Australia/Lord_Howe')).toMatch(/^01:45 \(UTC\+11\)$/);
    expect(wardTime(at('2026-04-04T15:15:00Z'), 'Australia/Lord_Howe')).toMatch(/^01:45 \(UTC\+10:30\)$/);
  });

  it('writes midnight as 00:00', () => {
    expect(wardTime(at('2026-11-25T00:00:00Z'), 'Europe/Lisbon')).toBe('00:00');
  });

  it('adds the date when it is another day on the ward', () => {
    const now = at('2026-11-25T00:30:00Z');
    expect(wardMoment(at('2026-11-24T23:50:00Z'), 'Europe/Lisbon', now)).toBe('Tue 24 Nov 23:50');
    expect(wardMoment(at('2026-11-25T00:10:00Z'), 'Europe/Lisbon', now)).toBe('00:10');
  });
});

describe('a time on a tile', () => {
  const now = at('2026-11-25T12:00:00Z');
  it.each([
    ['2026-11-25T18:00:00Z', '18:00'],
    ['2026-11-26T07:32:00Z', 'Thu 07:32'],
    ['2026-11-24T07:32:00Z', 'Tue 07:32'],
    ['2026-11-18T07:32:00Z', 'Wed 18 Nov 07:32'],
  ])('%s is %s', (iso, words) => expect(wardDayTime(at(iso), 'Europe/Lisbon', now)).toBe(words));
});

describe('ages', () => {
  it.each([
    [59_000, 'now'],
    [60_000, '1 min'],
    [59 * 60_000 + 59_000, '59 min'],
    [3_600_000, '1 h'],
    [47 * 3_600_000, '47 h'],
    [48 * 3_600_000, '2 days'],
  ])('%i ms is %s', (ms, words) => expect(elapsed(ms)).toBe(words));

  it('an instant ahead of the clock is just now, never a negative age', () => {
    expect(ago(1_000_000, 0)).toBe('just now');
  });
});
