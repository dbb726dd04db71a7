/**
 * Offsets against the IANA tz database. The changes of 2026 are written out by hand from its rules, as in
 * calendar.test.ts; a boundary in a skipped hour is read by the offset before it (RFC 5545, 3.3.5).
 */
import { describe, expect, it } from 'vitest';
import { HOUR, MINUTE } from '../../../kernel/times.ts';
import { boundaryAt, instantsOf, isRepeated, offsetAt, sayOffset, wallAt } from './zone.ts';

const at = (iso: string) => Date.parse(iso);
/** The clock on the wall, written as if it were UTC. */
const wall = (clock: string) => at(`${clock}Z`);

describe('the offset of a zone', () => {
  it.each([
    ['Europe/Berlin', '2026-10-25T00:59:59.999Z', 2],
    ['Europe/Berlin', '2026-10-25T01:00:00Z', 1],
    ['Europe/Berlin', '2026-03-29T00:59:59.999Z', 1],
    ['Europe/Berlin', '2026-03-29T01:00:00Z', 2],
    ['America/New_York', '2026-11-01T05:59:59.999Z', -4],
    ['America/New_York', '2026-11-01T06:00:00Z', -5],
    ['Australia/Lord_Howe', '2026-04-04T14:59:59.999Z', 11],
    ['Australia/Lord_Howe', '2026-04-04T15:00:00Z', 10.5],
    ['Asia/Kolkata', '2026-06-01T00:00:00Z', 5.5],
    ['UTC', '2026-06-01T00:00:00Z', 0],
  ])('%s at %s is %d h east', (zone, instant, hours) => {
    expect(offsetAt(zone, at(instant))).toBe(hours * HOUR);
    expect(wallAt(zone, at(instant))).toBe(at(instant) + hours * HOUR);
  });
  it('is the same asked in any order, also between two whole milliseconds', () => {
    const change = at('2026-10-25T01:00:00Z');
    const asked = [change, change - 1, change + 0.5, change - 0.5, change - 200 * 24 * HOUR, change];
    // Each order of a zone that nothing asked before; by the rule of the European Union, as Berlin.
    for (const [zone, order] of [
      ['Europe/Vienna', asked],
      ['Europe/Madrid', asked.toReversed()],
      ['Europe/Rome', asked.slice(1)],
    ] as const) {
      // In April it is summer time already.
      const hours = order.map((instant) => offsetAt(zone, instant) / HOUR);
      expect(hours).toEqual(order.map((instant) => (instant < change ? 2 : 1)));
    }
  });
});

describe('a clock on the wall', () => {
  it('is one instant on an ordinary day', () => {
    expect(instantsOf('Europe/Berlin', wall('2026-06-01T12:00'))).toEqual([at('2026-06-01T10:00:00Z')]);
    expect(instantsOf('America/New_York', wall('2026-06-01T12:00'))).toEqual([at('2026-06-01T16:00:00Z')]);
  });
  it('is two where it is repeated, the first one first, up to the end of the hour', () => {
    const both = [at('2026-10-25T00:00:00Z'), at('2026-10-25T01:00:00Z')];
    expect(instantsOf('Europe/Berlin', wall('2026-10-25T02:00'))).toEqual(both);
    expect(instantsOf('Europe/Berlin', wall('2026-10-25T03:00'))).toEqual([at('2026-10-25T02:00:00Z')]);
    expect(instantsOf('Europe/Berlin', wall('2026-10-25T01:59'))).toEqual([at('2026-10-24T23:59:00Z')]);
    expect(both.map((instant) => isRepeated('Europe/Berlin', instant))).toEqual([true, true]);
    expect(isRepeated('Europe/Berlin', at('2026-10-25T02:00:00Z'))).toBe(false);
    expect(isRepeated('Europe/Berlin', at('2026-10-24T23:59:59Z'))).toBe(false);
  });
  it('is none where it is skipped; a boundary there comes by the offset before', () => {
    expect(instantsOf('Europe/Berlin', wall('2026-03-29T02:30'))).toEqual([]);
    expect(boundaryAt('Europe/Berlin', wall('2026-03-29T02:30'))).toBe(at('2026-03-29T01:30:00Z'));
    expect(boundaryAt('America/New_York', wall('2026-03-08T02:30'))).toBe(at('2026-03-08T07:30:00Z'));
    expect(boundaryAt('Australia/Lord_Howe', wall('2026-10-04T02:15'))).toBe(at('2026-10-03T15:45:00Z'));
  });
  it('of a boundary that is repeated is the first of the two', () => {
    expect(boundaryAt('Europe/Berlin', wall('2026-10-25T02:30'))).toBe(at('2026-10-25T00:30:00Z'));
    expect(boundaryAt('Europe/Berlin', wall('2026-10-25T03:30'))).toBe(at('2026-10-25T02:30:00Z'));
  });
});

describe('an offset said', () => {
  it.each([
    [0, 'UTC+00:00'],
    [2 * HOUR, 'UTC+02:00'],
    [-5 * HOUR, 'UTC-05:00'],
    [12 * HOUR + 45 * MINUTE, 'UTC+12:45'],
    [-9 * HOUR - 30 * MINUTE, 'UTC-09:30'],
    [10.5 * HOUR, 'UTC+10:30'],
  ])('of %d ms reads %s', (offset, said) => {
    expect(sayOffset(offset)).toBe(said);
  });
});
