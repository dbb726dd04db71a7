/**
 * Shifts of a 12-hour, an 8-hour and a split roster, right across both clock changes. The instants of
 * the 2026 changes are written out by hand from the tz database's rules: European Union last Sunday
 * of March and October at 01:00 UTC; United States second Sunday of March and first Sunday of
 * November at 02:00 local; Lord Howe Island first Sunday of April and October at 02:00, by half an
 * hour; Japan none.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../../../kernel/runs.testkit.ts';
import { HOUR } from '../../../kernel/times.ts';
import { sayTime, wardCalendar } from './calendar.ts';
import { DEFAULT_RULES } from './rules-document.ts';
import { instantsOf, wallAt } from './zone.ts';

const TWELVE = ['07:00', '19:00'];
const EIGHT = ['07:00', '15:00', '23:00'];
const SPLIT = ['07:00', '11:00', '15:30', '21:30'];
const at = (iso: string) => Date.parse(iso);
const rosterIn = (zone: string, shiftsFrom: readonly string[]) =>
  wardCalendar({
    zone,
    wardDayFrom: '07:00',
    nightFrom: '21:00',
    nightTo: '07:00',
    rules: {
      ...DEFAULT_RULES,
      roster: { shiftsFrom: { ...DEFAULT_RULES.roster.shiftsFrom, value: [...shiftsFrom] } },
    },
  }).shift;

/** The shifts from one instant to another: when each begins, and how many hours it lasts. */
function shifts(zone: string, roster: readonly string[], from: string, to: string) {
  const shift = rosterIn(zone, roster);
  const out: string[] = [];
  for (let next = shift(at(from)); next.from < at(to); next = shift(next.to)) {
    out.push(`${sayTime(zone, next.from)} ${(next.to - next.from) / HOUR} h`);
  }
  return out;
}

describe('shifts across the spring change', () => {
  it.each([
    ['12 h', TWELVE, ['19:00 11 h', '07:00 12 h']],
    ['8 h', EIGHT, ['15:00 8 h', '23:00 7 h', '07:00 8 h', '15:00 8 h']],
    ['split', SPLIT, ['15:30 6 h', '21:30 8.5 h', '07:00 4 h', '11:00 4.5 h', '15:30 6 h']],
  ])('in London, %s', (_name, roster, expected) => {
    expect(shifts('Europe/London', roster, '2026-03-28T20:00:00Z', '2026-03-29T18:00:00Z')).toEqual(expected);
  });
  it.each([
    ['12 h', TWELVE, ['19:00 11 h', '07:00 12 h']],
    ['8 h', EIGHT, ['15:00 8 h', '23:00 7 h', '07:00 8 h', '15:00 8 h']],
    ['split', SPLIT, ['15:30 6 h', '21:30 8.5 h', '07:00 4 h', '11:00 4.5 h', '15:30 6 h']],
  ])('in New York, %s', (_name, roster, expected) => {
    expect(shifts('America/New_York', roster, '2026-03-08T01:00:00Z', '2026-03-08T23:00:00Z')).toEqual(
      expected,
    );
  });
  it.each([
    ['12 h', TWELVE, ['19:00 11.5 h', '07:00 12 h']],
    ['8 h', EIGHT, ['15:00 8 h', '23:00 7.5 h', '07:00 8 h', '15:00 8 h']],
    ['split', SPLIT, ['15:30 6 h', '21:30 9 h', '07:00 4 h', '11:00 4.5 h', '15:30 6 h']],
  ])('on Lord Howe Island, by half an hour, %s', (_name, roster, expected) => {
    expect(shifts('Australia/Lord_Howe', roster, '2026-10-03T09:00:00Z', '2026-10-04T07:30:00Z')).toEqual(
      expected,
    );
  });
});

describe('shifts across the autumn change', () => {
  it.each([
    ['12 h', TWELVE, ['19:00 13 h', '07:00 12 h']],
    ['8 h', EIGHT, ['15:00 8 h', '23:00 9 h', '07:00 8 h', '15:00 8 h']],
    ['split', SPLIT, ['15:30 6 h', '21:30 10.5 h', '07:00 4 h', '11:00 4.5 h', '15:30 6 h']],
  ])('in London, %s', (_name, roster, expected) => {
    expect(shifts('Europe/London', roster, '2026-10-24T19:00:00Z', '2026-10-25T19:00:00Z')).toEqual(expected);
  });
  it.each([
    ['12 h', TWELVE, ['19:00 13 h', '07:00 12 h']],
    ['8 h', EIGHT, ['15:00 8 h', '23:00 9 h', '07:00 8 h', '15:00 8 h']],
    ['split', SPLIT, ['15:30 6 h', '21:30 10.5 h', '07:00 4 h', '11:00 4.5 h', '15:30 6 h']],
  ])('in New York, %s', (_name, roster, expected) => {
    expect(shifts('America/New_York', roster, '2026-11-01T00:00:00Z', '2026-11-01T23:59:00Z')).toEqual(
      expected,
    );
  });
  it.each([
    ['12 h', TWELVE, ['19:00 12.5 h', '07:00 12 h']],
    ['8 h', EIGHT, ['15:00 8 h', '23:00 8.5 h', '07:00 8 h', '15:00 8 h']],
    ['split', SPLIT, ['15:30 6 h', '21:30 10 h', '07:00 4 h', '11:00 4.5 h', '15:30 6 h']],
  ])('on Lord Howe Island, by half an hour, %s', (_name, roster, expected) => {
    expect(shifts('Australia/Lord_Howe', roster, '2026-04-04T09:00:00Z', '2026-04-05T08:00:00Z')).toEqual(
      expected,
    );
  });
});

describe('shifts where the clocks never change', () => {
  it.each([
    ['12 h', TWELVE, ['19:00 12 h', '07:00 12 h']],
    ['8 h', EIGHT, ['15:00 8 h', '23:00 8 h', '07:00 8 h']],
    ['split', SPLIT, ['15:30 6 h', '21:30 9.5 h', '07:00 4 h', '11:00 4.5 h', '15:30 6 h']],
  ])('in Tokyo, %s', (_name, roster, expected) => {
    expect(
      shifts('Asia/Tokyo', roster, '2026-03-28T10:30:00Z', '2026-03-29T08:30:00Z').slice(0, expected.length),
    ).toEqual(expected);
  });
});

describe('RFC 5545, 3.3.5, worked examples: a time that a change skips or repeats', () => {
  it('2007-03-11 02:30 in New York is an hour after 01:30, and reads 03:30', () => {
    const shift = rosterIn('America/New_York', ['02:30', '14:30']);
    const { from } = shift(at('2007-03-11T12:00:00Z'));
    expect(from).toBe(at('2007-03-11T06:30:00Z') + HOUR);
    expect(sayTime('America/New_York', from)).toBe('03:30');
  });
  it('2007-11-04 01:30 in New York is the first of the two', () => {
    const shift = rosterIn('America/New_York', ['01:30', '13:30']);
    const { from } = shift(at('2007-11-04T12:00:00Z'));
    expect(from).toBe(at('2007-11-04T05:30:00Z'));
    expect(sayTime('America/New_York', from)).toBe('01:30 (UTC-04:00)');
  });
});

describe('a shift that begins inside the change', () => {
  it.each([
    [
      'Europe/London',
      ['01:30', '13:30'],
      '2026-03-28T14:00:00Z',
      '2026-03-29T14:00:00Z',
      ['13:30 12 h', '02:30 11 h', '13:30 12 h'],
    ],
    [
      'America/New_York',
      ['02:30', '14:30'],
      '2026-03-07T20:00:00Z',
      '2026-03-08T19:00:00Z',
      ['14:30 12 h', '03:30 11 h', '14:30 12 h'],
    ],
    [
      'Australia/Lord_Howe',
      ['02:15', '14:15'],
      '2026-10-03T04:00:00Z',
      '2026-10-04T04:00:00Z',
      ['14:15 12 h', '02:45 11.5 h', '14:15 12 h'],
    ],
  ])(
    'in %s, at a time of %j that is skipped, comes as long after the one before as ever',
    (zone, roster, from, to, expected) => {
      expect(shifts(zone, roster, from, to)).toEqual(expected);
    },
  );
  it.each([
    [
      'Europe/London',
      ['01:30', '13:30'],
      '2026-10-24T13:00:00Z',
      '2026-10-25T14:00:00Z',
      ['13:30 12 h', '01:30 (UTC+01:00) 13 h', '13:30 12 h'],
    ],
    [
      'America/New_York',
      ['01:30', '13:30'],
      '2026-10-31T18:00:00Z',
      '2026-11-01T19:00:00Z',
      ['13:30 12 h', '01:30 (UTC-04:00) 13 h', '13:30 12 h'],
    ],
    [
      'Australia/Lord_Howe',
      ['01:40', '13:40'],
      '2026-04-04T03:00:00Z',
      '2026-04-05T04:00:00Z',
      ['13:40 12 h', '01:40 (UTC+11:00) 12.5 h', '13:40 12 h'],
    ],
  ])('in %s, at a time of %j that happens twice, begins at the first', (zone, roster, from, to, expected) => {
    expect(shifts(zone, roster, from, to)).toEqual(expected);
  });
  it('two that are skipped keep their order, and neither is lost', () => {
    expect(
      shifts('Europe/London', ['01:15', '01:45', '13:00'], '2026-03-28T23:00:00Z', '2026-03-29T11:00:00Z'),
    ).toEqual(['13:00 12.25 h', '02:15 0.5 h', '02:45 10.25 h']);
  });
});

describe('any roster', () => {
  const clock = fc
    .tuple(fc.integer({ min: 0, max: 23 }), fc.constantFrom('00', '15', '30', '45'))
    .map(([h, m]) => `${String(h).padStart(2, '0')}:${m}`);
  const zones = ['Europe/London', 'America/New_York', 'Australia/Lord_Howe', 'Pacific/Chatham', 'Asia/Tokyo'];
  it('TIME-1 has one shift at every instant; shifts meet and begin at one of its times, but for a skipped one', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.uniqueArray(clock, { minLength: 1, maxLength: 8 }),
        fc.integer({ min: at('2020-01-01T00:00:00Z'), max: at('2030-01-01T00:00:00Z') }),
        (zone, roster, t) => {
          const shift = rosterIn(zone, roster);
          const { from, to } = shift(t);
          expect(from <= t && t < to).toBe(true);
          expect(shift(to).from).toBe(to);
          expect(shift(from - 1).to).toBe(from);
          const day = new Date(wallAt(zone, from)).toISOString().slice(0, 10);
          const skipped = roster.some((time) => instantsOf(zone, at(`${day}T${time}:00Z`)).length === 0);
          expect(skipped || roster.includes(sayTime(zone, from).slice(0, 5))).toBe(true);
          expect(to - from).toBeLessThanOrEqual(25 * HOUR);
        },
      ),
      runs(200, 'cases'),
    );
  });
});
