/**
 * Near misses and strain: told in one request, read by the handling coordinator alone, and to be
 * found nowhere else: in no log, feed, timeline, export, sheet or answer.
 */
import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { concernCounts, concernList } from '@footboard/shared/wire/concerns';
import { ROUTES } from '@footboard/shared/wire/routes';
import { openAccessWorld } from './access-kit.ts';
import type { AccessWorld, Client } from './access-kit.ts';
import { StillClock, WARD, beginStay } from './http-kit.ts';

const AT = Date.parse('2026-11-25T08:41:00Z');
const PATH = `/api/wards/${WARD}/concerns`;
/** Words that stand nowhere else, in the text of whoever tells it. */
const STEM = 'Quorlenbeck';
const folder = mkdtempSync(join(tmpdir(), 'footboard-concerns-'));
const said: string[] = [];
const clock = new StillClock(AT);
let world: AccessWorld;
let aide: Client;
let nurse: Client;
let coordinator: Client;
let manager: Client;

const tell = (client: Client, more: object = {}) =>
  client.post(PATH, { concern: randomUUID(), kind: 'near-miss', ...more });
const listed = async () => concernList.parse((await coordinator.get(PATH)).body).concerns;
const counts = async (client: Client) =>
  concernCounts.parse((await client.get(`/api/wards/${WARD}/concern-counts`)).body);
const rows = (sql: string) => world.footboard.database.query<Record<string, unknown>>(sql, []);

beforeAll(async () => {
  world = await openAccessWorld({
    clock,
    limits: 'off',
    env: { DATA_DIR: folder, FOOTBOARD_LOG: 'trace' },
    logTo: { write: (line) => void said.push(line) },
  });
  aide = await world.as('ada');
  nurse = await world.as('noor');
  coordinator = await world.as('hanne');
  manager = await world.as('mira');
  await nurse.enter('begin-stay', beginStay('stay-1'));
}, 120_000);
afterAll(async () => {
  await world?.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('a near miss or a strain', () => {
  const concern = randomUUID();

  it('CONCERN-1 is told in one request, without a name, and appends nothing to the log', async () => {
    const before = await rows('select count(*)::int as n from event');
    const outcomes = await rows('select count(*)::int as n from command_outcome');
    expect((await aide.post(PATH, { concern, kind: 'strain' })).status).toBe(204);
    // A second tap of the same telling is no second one.
    expect((await aide.post(PATH, { concern, kind: 'strain' })).status).toBe(204);
    expect(await rows('select count(*)::int as n from event')).toEqual(before);
    expect(await rows('select count(*)::int as n from command_outcome')).toEqual(outcomes);
    expect(await listed()).toEqual([
      { concern, at: Date.parse('2026-11-25T08:00:00Z'), kind: 'strain', about: [], words: [], by: null },
    ]);
  });

  it('takes a reason and words afterwards, and a name only where whoever tells it chose so', async () => {
    const more = { adds: concern, kind: 'strain', about: 'one-pair-of-hands', words: `Alone with ${STEM}` };
    expect((await tell(aide, more)).status).toBe(204);
    expect((await tell(nurse, { about: 'no-room', named: true })).status).toBe(204);
    const [first, second] = (await listed()).toSorted((a, b) => (a.kind > b.kind ? -1 : 1));
    expect(first).toMatchObject({
      concern,
      about: ['one-pair-of-hands'],
      words: [`Alone with ${STEM}`],
      by: null,
    });
    expect(second).toMatchObject({ kind: 'near-miss', by: { staff: 'noor', name: 'Noor Haddad' } });
  });

  it('leaves no trace of who told it without a name, nor the minute or the order', async () => {
    const kept = await rows('select * from handling_concern where staff is null');
    expect(kept).toHaveLength(2);
    // As a word of its own: an id may well hold these three letters.
    expect(JSON.stringify(kept)).not.toMatch(/\bada\b|Ada/);
    expect(kept.map(({ at }) => Number(at) % 3_600_000)).toEqual([0, 0]);
    const looked = await rows("select what, staff from access_record where staff = 'ada'");
    expect(looked.filter(({ what }) => /concern/.test(String(what)))).toEqual([]);
    expect(said.filter((line) => line.includes(concern))).toEqual([]);
  });

  it('CONCERN-2 is read by the handling coordinator alone; the manager has counts without a word', async () => {
    for (const staff of ['ada', 'noor', 'theo', 'ines', 'mira', 'rafa', 'alva'] as const)
      expect([staff, (await (await world.as(staff)).get(PATH)).status]).toEqual([staff, 403]);
    const answer = await manager.get(`/api/wards/${WARD}/concern-counts`);
    expect(JSON.stringify(answer.body)).not.toMatch(new RegExp(`${STEM}|noor|Noor|one-pair-of-hands`));
    expect((await counts(manager)).kinds).toEqual([
      { kind: 'near-miss', count: 1, about: [] },
      { kind: 'strain', count: 1, about: [] },
    ]);
  });

  it('tells a reason apart only where it stands behind three or more', async () => {
    for (let n = 0; n < 2; n++) await tell(aide, { about: 'no-room' });
    expect((await counts(manager)).kinds[0]).toEqual({
      kind: 'near-miss',
      count: 3,
      about: [{ about: 'no-room', count: 3 }],
    });
  });

  it('CONCERN-3 stands in no log, feed, timeline, export or other answer, and in no row in clear', async () => {
    const records = await world.as('rafa');
    const paths = ROUTES.filter(({ method, path }) => method === 'get' && path.includes('{ward}'))
      .map(({ path }) => path.replace('{ward}', WARD).replace('{stay}', 'stay-1'))
      .filter((path) => path !== PATH && !path.includes('{'));
    expect(paths.length).toBeGreaterThan(15);
    for (const client of [nurse, manager, records, coordinator]) {
      for (const path of paths) {
        const found = JSON.stringify((await client.get(path)).body).includes(STEM);
        expect([path, found]).toEqual([path, false]);
      }
    }
    const tables = await rows(
      "select table_name as name from information_schema.tables where table_schema = current_schema() and table_type = 'BASE TABLE'",
    );
    for (const { name } of tables) {
      const clear = await rows(`select 1 as one from "${String(name)}" x where x::text like '%${STEM}%'`);
      expect([name, clear.length]).toEqual([name, 0]);
      const ids = await rows(`select 1 as one from "${String(name)}" x where x::text like '%${concern}%'`);
      expect([name, ids.length > 0]).toEqual([name, name === 'handling_concern']);
    }
    expect(said.filter((line) => line.includes(STEM))).toEqual([]);
  });

  it('is not changed by anybody, and a wall or nobody tells nothing', async () => {
    await expect(rows("update handling_concern set kind = 'near-miss'")).rejects.toThrow(/nothing recorded/);
    expect((await tell(world.browser())).status).toBe(401);
    expect((await tell(aide, { kind: 'injury' })).status).toBe(422);
  });
});
