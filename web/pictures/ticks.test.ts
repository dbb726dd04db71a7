import { describe, expect, it } from 'vitest';
import { everyHours, hourTicks, timeTicks } from './ticks.ts';

const at = (iso: string) => Date.parse(iso);

describe('marks of a time axis', () => {
  it('stand at full hours of the ward, also where its zone is half an hour off', () => {
    const from = at('2026-11-25T06:10:00Z');
    expect(hourTicks(from, at('2026-11-25T12:00:00Z'), 'Europe/Lisbon', 3)).toEqual([
      at('2026-11-25T09:00:00Z'),
      at('2026-11-25T12:00:00Z'),
    ]);
    expect(hourTicks(from, at('2026-11-25T10:00:00Z'), 'Asia/Kolkata', 3)).toEqual([
      at('2026-11-25T06:30:00Z'),
      at('2026-11-25T09:30:00Z'),
    ]);
  });

  // Lisbon on 25 October 2026: 02:00 is 01:00 again (IANA time zone database).
  it('name both times of a repeated hour with their offsets', () => {
    const ticks = timeTicks(at('2026-10-25T00:00:00Z'), at('2026-10-25T02:00:00Z'), 'Europe/Lisbon', 8);
    expect(ticks.map((one) => one.label)).toEqual(['01:00 (UTC+1)', '01:00 (UTC+0)', '02:00']);
  });

  it('leave out the hour that the spring change skips', () => {
    const ticks = timeTicks(at('2026-03-29T00:00:00Z'), at('2026-03-29T03:00:00Z'), 'Europe/Lisbon', 8);
    expect(ticks.map((one) => one.label)).toEqual(['Sun 29 Mar', '02:00', '03:00', '04:00']);
  });

  it('are no more than there is room for', () => {
    expect(everyHours(0, 24 * 3_600_000, 8)).toBe(3);
    const weeks = timeTicks(at('2026-11-01T00:00:00Z'), at('2026-11-29T00:00:00Z'), 'Europe/Lisbon', 6);
    expect(weeks.length).toBeLessThanOrEqual(6);
    expect(weeks.every((one) => one.day)).toBe(true);
  });
});
