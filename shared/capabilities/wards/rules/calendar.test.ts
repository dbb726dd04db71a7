/**
 * Clock changes checked against the IANA tz database (through temporal-polyfill and Intl). The
 * instants of the 2026 changes are written out here by hand from its rules: European Union last
 * Sunday of March and October at 01:00 UTC; United States second Sunday of March and first Sunday
 * of November at 02:00 local; Lord Howe Island first Sunday of April and October, by half an hour.
 */
import { Temporal } from 'temporal-polyfill';
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HOUR } from '../../../kernel/times.ts';
import { localDate, resolveLocal, sayDayTime, sayTime, wardCalendar } from './calendar.ts';

const at = (iso: string) => Date.parse(iso);
const calendarIn = (zone: string) =>
  wardCalendar({ zone, wardDayFrom: '07:00', nightFrom: '21:00', nightTo: '07:00' });
const ZONES = [
  'Europe/London',
  'Europe/Berlin',
  'America/New_York',
  'America/Santiago',
  'Australia/Lord_Howe',
  'Pacific/Chatham',
  'Antarctica/Troll',
  'Asia/Kolkata',
  'Asia/Tokyo',
];
const dayLength = (zone: string, iso: string) => {
  const { from, to } = calendarIn(zone).wardDay(at(iso));
  return (to - from) / HOUR;
};

describe('the ward day', () => {
  it.each([
    ['Europe/Berlin', '2026-03-28T12:00:00Z', 23],
    ['Europe/Berlin', '2026-10-24T12:00:00Z', 25],
    ['Europe/Berlin', '2026-06-01T12:00:00Z', 24],
    ['America/New_York', '2026-03-07T18:00:00Z', 23],
    ['America/New_York', '2026-10-31T18:00:00Z', 25],
    ['Australia/Lord_Howe', '2026-10-03T03:00:00Z', 23.5],
    ['Australia/Lord_Howe', '2026-04-04T03:00:00Z', 24.5],
    ['Asia/Kolkata', '2026-03-28T12:00:00Z', 24],
    ['Asia/Kolkata', '2026-10-24T12:00:00Z', 24],
  ])('in %s, the ward day that holds %s lasts %d h', (zone, iso, hours) => {
    expect(dayLength(zone, iso)).toBe(hours);
  });

  it('runs from 07:00 to 07:00 on the ward clock, before 07:00 it is still yesterday', () => {
    const { from, to } = calendarIn('Europe/Berlin').wardDay(at('2026-10-25T05:59:59Z'));
    expect(from).toBe(at('2026-10-24T05:00:00Z'));
    expect(to).toBe(at('2026-10-25T06:00:00Z'));
    expect(localDate('Europe/Berlin', from)).toBe('2026-10-24');
  });

  it('begins by the clock before the change when the change skips its time', () => {
    const calendar = wardCalendar({
      zone: 'Europe/Berlin',
      wardDayFrom: '02:30',
      nightFrom: '21:00',
      nightTo: '07:00',
    });
    expect(calendar.wardDay(at('2026-03-29T12:00:00Z')).from).toBe(at('2026-03-29T01:30:00Z'));
  });

  it('TIME-1 agrees with Temporal for any instant of ten years, and days meet without gap or overlap', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ZONES),
        fc.integer({ min: at('2020-01-01T00:00:00Z'), max: at('2030-01-01T00:00:00Z') }),
        (zone, t) => {
          const calendar = calendarIn(zone);
          const { from, to } = calendar.wardDay(t);
          const local = Temporal.Instant.fromEpochMilliseconds(t).toZonedDateTimeISO(zone);
          const seven = (d: Temporal.PlainDate) =>
            d.toZonedDateTime({ timeZone: zone, plainTime: '07:00' }).epochMilliseconds;
          const day = local.toPlainDate();
          const started = seven(day) <= t ? day : day.subtract({ days: 1 });
          expect(from).toBe(seven(started));
          expect(to).toBe(seven(started.add({ days: 1 })));
          expect(calendar.wardDay(to).from).toBe(to);
          expect(sayTime(zone, t).slice(0, 5)).toBe(local.toPlainTime().toString().slice(0, 5));
        },
      ),
      { numRuns: 300 },
    );
  });
});

describe('ten years of ward days', () => {
  it.each(ZONES)('TIME-1 in %s are 3653 dates and cover all of the time, none of it twice', (zone) => {
    const { wardDay } = calendarIn(zone);
    const first = wardDay(at('2020-01-02T12:00:00Z'));
    let [day, covered] = [first, 0];
    const apart: number[] = [];
    for (let date = 0; date < 3653; date++) {
      covered += day.to - day.from;
      const next = wardDay(day.to);
      apart.push(next.from - day.to, wardDay(day.to - 1).from - day.from);
      day = next;
    }
    expect(covered).toBe(day.from - first.from);
    expect(new Set(apart)).toEqual(new Set([0]));
    expect(localDate(zone, day.from)).toBe(localDate(zone, first.from).replace('2020', '2030'));
  });
});

describe('the night', () => {
  it('runs from 21:00 to 07:00 and says until when its answer holds', () => {
    const { night } = calendarIn('Europe/Berlin');
    expect(night(at('2026-06-01T18:59:59Z'))).toEqual({ is: false, until: at('2026-06-01T19:00:00Z') });
    expect(night(at('2026-06-01T19:00:00Z'))).toEqual({ is: true, until: at('2026-06-02T05:00:00Z') });
    expect(night(at('2026-06-02T05:00:00Z')).is).toBe(false);
  });
  it('is an hour longer when the clocks go back', () => {
    const { night } = calendarIn('Europe/Berlin');
    const from = at('2026-10-24T19:00:00Z');
    expect(night(from).until - from).toBe(11 * HOUR);
  });
  it('does not exist when it begins and ends at the same time', () => {
    const { night } = wardCalendar({
      zone: 'UTC',
      wardDayFrom: '07:00',
      nightFrom: '22:00',
      nightTo: '22:00',
    });
    expect(night(at('2026-06-01T23:00:00Z'))).toEqual({ is: false, until: at('2026-06-02T22:00:00Z') });
  });
});

describe('a time on the ward clock', () => {
  it('TIME-2 refuses a skipped time with the remedy and asks which of two that happened twice', () => {
    expect(resolveLocal('Europe/Berlin', '2026-03-29T02:30')).toEqual({
      refused: 'skipped-hour',
      detail: '02:30 did not happen on 2026-03-29: the clocks went forward',
      remedy: 'enter the time after the change (03:30 is the same moment on the new clock)',
    });
    expect(resolveLocal('Europe/Berlin', '2026-10-25T02:30')).toMatchObject({
      refused: 'repeated-hour',
      remedy: 'say which: the first (UTC+02:00) or the second (UTC+01:00)',
    });
  });
  it.each([
    ['Europe/Berlin', '2026-03-29T02:30'],
    ['America/New_York', '2026-03-08T02:30'],
    ['Australia/Lord_Howe', '2026-10-04T02:15'],
  ])('in %s, %s was skipped and is refused', (zone, local) => {
    expect(resolveLocal(zone, local)).toMatchObject({ refused: 'skipped-hour' });
    expect(resolveLocal(zone, local, 'second')).toMatchObject({ refused: 'skipped-hour' });
  });
  it.each([
    ['Europe/Berlin', '2026-10-25T02:30', '2026-10-25T00:30:00Z', '2026-10-25T01:30:00Z'],
    ['America/New_York', '2026-11-01T01:40', '2026-11-01T05:40:00Z', '2026-11-01T06:40:00Z'],
    ['Australia/Lord_Howe', '2026-04-05T01:40', '2026-04-04T14:40:00Z', '2026-04-04T15:10:00Z'],
  ])('in %s, %s happened twice and needs first or second', (zone, local, first, second) => {
    expect(resolveLocal(zone, local)).toMatchObject({ refused: 'repeated-hour' });
    expect(resolveLocal(zone, local, 'first')).toEqual({ at: at(first) });
    expect(resolveLocal(zone, local, 'second')).toEqual({ at: at(second) });
  });
  it('is itself where nothing changes, and in a zone without changes', () => {
    expect(resolveLocal('Asia/Kolkata', '2026-10-25T02:30')).toEqual({ at: at('2026-10-24T21:00:00Z') });
    expect(resolveLocal('Europe/Berlin', '2026-10-25T03:00', 'second')).toEqual({
      at: at('2026-10-25T02:00:00Z'),
    });
  });
  it('that is not in the calendar is refused', () => {
    expect(resolveLocal('Europe/Berlin', '2026-02-30T10:00')).toMatchObject({ refused: 'no-such-time' });
    expect(resolveLocal('Europe/Berlin', '2026-02-20T24:30')).toMatchObject({ refused: 'no-such-time' });
  });
});

describe('a time said', () => {
  it('is the wall clock, with the offset only in the repeated hour', () => {
    expect(sayTime('Europe/Berlin', at('2026-10-25T00:40:00Z'))).toBe('02:40 (UTC+02:00)');
    expect(sayTime('Europe/Berlin', at('2026-10-25T01:40:00Z'))).toBe('02:40 (UTC+01:00)');
    expect(sayTime('Europe/Berlin', at('2026-10-25T02:40:00Z'))).toBe('03:40');
    expect(sayDayTime('America/New_York', at('2026-11-01T06:40:00Z'))).toBe('1 Nov 01:40 (UTC-05:00)');
  });
});
