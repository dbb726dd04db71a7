/**
 * The ward's clock against PostgreSQL's AT TIME ZONE: every clock change of ten years, both ways.
 * PostgreSQL keeps a time zone database of its own, apart from the one in Node. Both versions are
 * printed; a change that only one of them knows fails here by name.
 */
import { Client } from 'pg';
import { Temporal } from 'temporal-polyfill';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { localDate, resolveLocal, wardCalendar } from '@footboard/shared/capabilities/wards/rules/calendar';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { boundaryAt, instantsOf, offsetAt, wallAt } from '@footboard/shared/capabilities/wards/rules/zone';
import { ownDatabase } from './postgres.ts';

const MINUTE = 60_000;
const HOUR = 60 * MINUTE;
const FROM = Date.parse('2020-01-01T00:00:00Z');
const TO = Date.parse('2030-01-01T00:00:00Z');

/** With how many changes each has from 2020 to 2029, so that none is lost by both databases. */
const ZONES: readonly (readonly [string, number])[] = [
  ['Europe/London', 20],
  ['Europe/Berlin', 20],
  ['America/New_York', 20],
  // Half an hour off the full hours.
  ['America/St_Johns', 20],
  // The change itself is of half an hour.
  ['Australia/Lord_Howe', 20],
  ['Pacific/Chatham', 20],
  // At midnight.
  ['America/Santiago', 20],
  // By two hours.
  ['Antarctica/Troll', 20],
  // Given up in 2022.
  ['Asia/Tehran', 6],
  // Around Ramadan, as far as both databases foretell it.
  ['Africa/Casablanca', 21],
  ['Asia/Tokyo', 0],
  ['UTC', 0],
];
const names = ZONES.map(([zone]) => zone);

let database: Awaited<ReturnType<typeof ownDatabase>>;
let client: Client;
const rows = async <T>(sql: string, values: readonly unknown[] = []): Promise<T[]> =>
  (await client.query<T & object>(sql, [...values])).rows;

/** What PostgreSQL shows on the clocks of a zone at these instants, as milliseconds read as UTC. */
async function pgWalls(zone: string, instants: readonly number[]): Promise<number[]> {
  const found = await rows<{ wall: string }>(
    `select (extract(epoch from (timestamptz 'epoch' + ms * interval '1 millisecond') at time zone $1) * 1000)::bigint as wall
     from unnest($2::double precision[]) with ordinality as x(ms, nr) order by nr`,
    [zone, instants],
  );
  return found.map((r) => Number(r.wall));
}
/** The instant that PostgreSQL takes each of these wall clocks for. */
async function pgInstants(zone: string, walls: readonly number[]): Promise<number[]> {
  const found = await rows<{ at: string }>(
    `select (extract(epoch from (timestamp 'epoch' + ms * interval '1 millisecond') at time zone $1) * 1000)::bigint as at
     from unnest($2::double precision[]) with ordinality as x(ms, nr) order by nr`,
    [zone, walls],
  );
  return found.map((r) => Number(r.at));
}
/** PostgreSQL's own changes of a zone, to the minute. */
async function pgChanges(zone: string): Promise<number[]> {
  const found = await rows<{ at: string }>(
    `with hourly as (
       select h, (h at time zone $1) - lag(h at time zone $1) over (order by h) as step
       from generate_series($2::timestamptz, $3::timestamptz, interval '1 hour') as g(h)
     ), minutes as (
       select m, (m at time zone $1) - ((m - interval '1 minute') at time zone $1) as step
       from hourly, generate_series(h - interval '59 minutes', h, interval '1 minute') as g(m)
       where hourly.step <> interval '1 hour'
     )
     select (extract(epoch from m) * 1000)::bigint as at from minutes where step <> interval '1 minute' order by m`,
    [zone, new Date(FROM).toISOString(), new Date(TO).toISOString()],
  );
  return found.map((r) => Number(r.at));
}
function nodeChanges(zone: string): number[] {
  const changes: number[] = [];
  let next = Temporal.Instant.fromEpochMilliseconds(FROM).toZonedDateTimeISO(zone);
  for (;;) {
    const change = next.getTimeZoneTransition('next');
    if (!change || change.epochMilliseconds >= TO) return changes;
    changes.push(change.epochMilliseconds);
    next = change;
  }
}

const tz = { node: process.versions.tz ?? 'unknown', postgres: 'unknown' };
/** PostgreSQL does not tell the version of its time zone database: it is read where it was built to look. */
async function pgTzVersion(): Promise<string> {
  try {
    const [found] = await rows<{ first: string | null }>(
      `select pg_read_file(dir || '/tzdata.zi', 0, 40, true) as first from (
         select coalesce(
           (select substring(setting from '--with-system-tzdata=([^'' ]+)') from pg_config where name = 'CONFIGURE'),
           (select setting || '/timezone' from pg_config where name = 'SHAREDIR')) as dir) as where_it_looks`,
    );
    return found?.first?.match(/version (\S+)/)?.[1] ?? 'not told (built in, with the server)';
  } catch {
    return 'not told (this user may not read it)';
  }
}

beforeAll(async () => {
  database = await ownDatabase();
  client = new Client(database.url);
  await client.connect();
  tz.postgres = await pgTzVersion();
  const [server] = await rows<{ server_version: string; timezone_abbreviations: string }>(
    `select current_setting('server_version') as server_version,
            current_setting('timezone_abbreviations') as timezone_abbreviations`,
  );
  process.stdout.write(
    `Time zone databases: Node ${process.version} has tz ${tz.node} (ICU ${process.versions.icu}); ` +
      `PostgreSQL ${server!.server_version} has tz ${tz.postgres}, abbreviations ${server!.timezone_abbreviations}\n`,
  );
});
afterAll(async () => {
  await client?.end();
  await database?.drop();
});

const iso = (at: number): string => new Date(at).toISOString();
const minuteOf = (wall: number): string => iso(wall).slice(0, 16);
const steps = (middle: number, hours: number): number[] =>
  Array.from({ length: 8 * hours + 1 }, (_, i) => middle + (i - 4 * hours) * 15 * MINUTE);

describe('PostgreSQL AT TIME ZONE: the time zone databases', () => {
  it.each(ZONES)(
    'of Node and of PostgreSQL know the same changes of %s from 2020 to 2029: %d',
    async (zone, count) => {
      const [here, there] = [nodeChanges(zone), await pgChanges(zone)];
      const only = [
        ...here.filter((at) => !there.includes(at)).map((at) => `${iso(at)} only in Node's tz ${tz.node}`),
        ...there
          .filter((at) => !here.includes(at))
          .map((at) => `${iso(at)} only in PostgreSQL's tz ${tz.postgres}`),
      ];
      expect(only, `the two time zone databases differ on ${zone}: bring the older one up to date`).toEqual(
        [],
      );
      expect(here).toHaveLength(count);
    },
  );
});

describe('PostgreSQL AT TIME ZONE: three hours around every change', () => {
  it.each(names)('TIME-3 in %s the wall clock at an instant is the same', async (zone) => {
    const instants = (await around(zone)).flatMap((change) => [
      ...steps(change, 3),
      ...[-1000, -1, 1, 1000].map((ms) => change + ms),
    ]);
    const walls = await pgWalls(zone, instants);
    expect(instants.map((at) => `${iso(at)} is ${minuteOf(wallAt(zone, at))}`)).toEqual(
      instants.map((at, i) => `${iso(at)} is ${minuteOf(walls[i]!)}`),
    );
    expect(instants.map((at) => offsetAt(zone, at))).toEqual(instants.map((at, i) => walls[i]! - at));
  });

  it.each(names)('TIME-3 in %s the instants of a wall clock are the same: none, one or two', async (zone) => {
    for (const change of await around(zone)) {
      // Which instants show a wall clock is read off PostgreSQL's own, over a wider stretch.
      const wide = steps(change, 9);
      const shown = await pgWalls(zone, wide);
      const middle = shown[wide.indexOf(change)]!;
      const walls = steps(middle, 3);
      const taken = await pgInstants(zone, walls);
      const expected = walls.map((wall) => wide.filter((_, i) => shown[i] === wall));
      expect(walls.map((wall) => said(wall, instantsOf(zone, wall)))).toEqual(
        walls.map((wall, i) => said(wall, expected[i]!)),
      );
      // Of two PostgreSQL takes the second, the ward's boundaries the first; of none both read the
      // clock by the offset before the change (as RFC 5545, 3.3.5 has it for calendars).
      const boundaries = walls.map((wall, i) => (expected[i]!.length === 2 ? expected[i]![0]! : taken[i]!));
      expect(walls.map((wall) => boundaryAt(zone, wall))).toEqual(boundaries);
      expect(taken).toEqual(walls.map((_, i) => expected[i]!.at(-1) ?? boundaries[i]));
      for (const [i, wall] of walls.entries()) {
        const [first, second] = expected[i]!;
        const entered = resolveLocal(zone, minuteOf(wall));
        const asked = second === undefined ? { at: first } : { refused: 'repeated-hour' };
        expect(entered).toMatchObject(first === undefined ? { refused: 'skipped-hour' } : asked);
        const which = (['first', 'second'] as const).map((w) => resolveLocal(zone, minuteOf(wall), w));
        expect(which).toMatchObject(
          first === undefined
            ? [{ refused: 'skipped-hour' }, { refused: 'skipped-hour' }]
            : [{ at: first }, { at: second ?? first }],
        );
      }
    }
  });
});

const said = (wall: number, instants: readonly number[]): string =>
  `${minuteOf(wall)}: ${instants.map(iso).join(' and ') || 'never'}`;
/** Every change of a zone, or for one without any a day of each year. */
async function around(zone: string): Promise<number[]> {
  const changes = await pgChanges(zone);
  if (changes.length > 0) return changes;
  return Array.from({ length: 10 }, (_, i) => Date.parse(`${2020 + i}-03-29T01:00:00Z`));
}

/** All periods from the first that begins in 2020 (UTC) to 2030: each begins where the last one ended. */
function chain(period: (at: number) => { from: number; to: number }): number[] {
  const begins: number[] = [];
  for (let at = period(FROM).to; at < TO; at = period(at).to) {
    expect(period(at).from).toBe(at);
    begins.push(at);
  }
  return begins;
}
/** The same by PostgreSQL: each date's times of day; where it happens twice, the first. */
async function pgChain(zone: string, times: readonly string[]): Promise<number[]> {
  const found = await rows<{ at: string; earlier: string; wall: string }>(
    `select (extract(epoch from w at time zone $1) * 1000)::bigint as at, (extract(epoch from w) * 1000)::bigint as wall
     from generate_series($2::date, $3::date, interval '1 day') as g(d), unnest($4::time[]) as t, lateral (select d::date + t as w) as x`,
    [zone, iso(FROM - 48 * HOUR).slice(0, 10), iso(TO + 48 * HOUR).slice(0, 10), times],
  );
  const at = found.map((r) => Number(r.at));
  const shifts = [30 * MINUTE, HOUR, 2 * HOUR];
  const before: number[][] = [];
  for (const by of shifts) {
    before.push(
      await pgWalls(
        zone,
        at.map((x) => x - by),
      ),
    );
  }
  const firsts = at.map((x, i) => x - (shifts.find((_, k) => before[k]![i] === Number(found[i]!.wall)) ?? 0));
  return [...new Set(firsts)].toSorted((a, b) => a - b).filter((x) => x >= FROM && x < TO);
}
const begin = (zone: string, wardDayFrom: string, shiftsFrom: readonly string[] = ['07:00']) =>
  wardCalendar({
    zone,
    wardDayFrom,
    nightFrom: '21:00',
    nightTo: '07:00',
    rules: {
      ...DEFAULT_RULES,
      roster: { shiftsFrom: { ...DEFAULT_RULES.roster.shiftsFrom, value: [...shiftsFrom] } },
    },
  });

describe('PostgreSQL AT TIME ZONE: ten years of ward days and shifts', () => {
  it.each(names)(
    'TIME-3 in %s the ward days begin when PostgreSQL says, without gap or overlap',
    async (zone) => {
      for (const from of ['07:00', '02:30', '00:00']) {
        const days = chain(begin(zone, from).wardDay);
        const expected = await pgChain(zone, [from]);
        // At most the day at either end falls in or out by the zone's distance from UTC.
        expect(days.map(iso)).toEqual(expected.filter((at) => at > FROM).map(iso));
        expect(days.length).toBeGreaterThanOrEqual(3652);
        expect(new Set(days.map((at) => localDate(zone, at))).size).toBe(days.length);
      }
    },
  );

  it.each([
    ['Europe/London', ['07:00', '19:00']],
    ['America/New_York', ['07:00', '15:00', '23:00']],
    ['Australia/Lord_Howe', ['07:00', '11:00', '15:30', '21:30']],
    ['Europe/London', ['01:30', '13:30']],
    ['America/New_York', ['02:30', '10:30', '18:30']],
    ['Asia/Tokyo', ['07:00', '11:00', '15:30', '21:30']],
  ])('TIME-3 in %s the shifts of %j begin when PostgreSQL says', async (zone, times) => {
    const shifts = chain(begin(zone, '07:00', times).shift);
    expect(shifts.map(iso)).toEqual((await pgChain(zone, times)).filter((at) => at > FROM).map(iso));
  });
});
