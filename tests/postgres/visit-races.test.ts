/** Two servers on one database, an aide with a phone on each, and one person to see next. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { Client } from 'pg';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { asProblem, beginStay, openWard, startServer, StillClock, WARD } from '../journeys/http-kit.ts';
import type { Sent, Ward } from '../journeys/http-kit.ts';
import { ownDatabase } from './postgres.ts';

const clock = new StillClock(Date.parse('2026-11-25T10:00:00Z'));
const AIDES = ['ada', 'bea'] as const;
let own: Awaited<ReturnType<typeof ownDatabase>>;
let folder: string;
let servers: readonly [Ward, Ward];
let direct: Client;

beforeAll(async () => {
  own = await ownDatabase();
  folder = mkdtempSync(`${tmpdir()}/footboard-race-`);
  const env = { DATABASE_URL: own.url, DATA_DIR: folder };
  const first = await openWard(clock, env);
  servers = [first, await startServer(clock, env)];
  await first.enter('add-staff-member', { staff: 'bea', name: 'Bea Holm', role: 'aide' });
  for (const [i, bed] of ['1A', '1B', '2A'].entries()) {
    await first.enter('begin-stay', beginStay(`stay-${i}`, bed), 'noor');
  }
  direct = new Client(own.url);
  await direct.connect();
});
afterAll(async () => {
  await direct?.end();
  for (const { footboard } of servers ?? []) await footboard.close();
  await own?.drop();
  if (folder) rmSync(folder, { recursive: true, force: true });
});

/** Resolves once so many sessions wait for a lock. */
async function waiting(count: number): Promise<void> {
  for (;;) {
    const { rows } = await direct.query<{ n: string }>(
      `select count(*) as n from pg_stat_activity
        where datname = current_database() and wait_event_type = 'Lock'`,
    );
    if (Number(rows[0]!.n) >= count) return;
  }
}
/** Whose the visit is, as this server's board has it. */
async function goerOf(server: Ward, stay: string): Promise<string | undefined> {
  const { body } = await server.get(`/api/wards/${WARD}/board`);
  const { beds } = body['board'] as {
    beds: { stay: { stay: string; visit: { by: string } | null } | null }[];
  };
  return beds.find((bed) => bed.stay?.stay === stay)?.stay?.visit?.by;
}
const take = (stay: string, round: number): Promise<Sent>[] =>
  servers.map((server, i) => server.send('take-visit', { stay, visit: `${round}-${i}` }, AIDES[i]!));

async function oneHasIt(stay: string, sent: readonly Sent[]): Promise<void> {
  const won = AIDES[sent.findIndex(({ status }) => status === 200)]!;
  const refused = asProblem(sent.find(({ status }) => status === 422)!);
  expect(refused.type).toBe('/problems/visit-taken');
  expect(refused.detail).toMatch(/^an aide has it until 25 Nov \d\d:\d\d$/);
  expect(refused.remedy).toMatch(/^Choose the next person on the list/);
  // Both boards name the same aide, that of whoever was refused as well.
  for (const server of servers) await expect.poll(() => goerOf(server, stay), { timeout: 20_000 }).toBe(won);
}

/** Given back on the other server than it was taken on. */
async function giveBack(stay: string, round: number, sent: readonly Sent[]): Promise<void> {
  const won = sent.findIndex(({ status }) => status === 200);
  const visit = `${round}-${won}`;
  await servers[1 - won]!.enter('give-back-visit', { stay, visit, reason: 'by-mistake' }, AIDES[won]!);
  for (const server of servers) {
    await expect.poll(() => goerOf(server, stay), { timeout: 20_000 }).toBeUndefined();
  }
}

describe('one visit, two servers', () => {
  it('given both have read that nobody goes, when both say "I go", then one has it and the other is told', async () => {
    await direct.query('begin');
    let sent: Promise<Sent[]>;
    try {
      // Whoever holds the head of the ward's log keeps both waiting after they have decided.
      await direct.query('select 1 from ward_head where ward = $1 for update', [WARD]);
      sent = Promise.all(take('stay-0', 0));
      await waiting(2);
    } finally {
      await direct.query('commit');
    }
    expect((await sent).map(({ status }) => status).toSorted()).toEqual([200, 422]);
    await oneHasIt('stay-0', await sent);
    // Whoever won: nobody has it afterwards.
    await giveBack('stay-0', 0, await sent);
  });

  it('given it goes on like that, when it is given back and taken again by both, then it is never that of two', async () => {
    for (let round = 1; round <= 8; round++) {
      const sent = await Promise.all(take('stay-1', round));
      expect(sent.map(({ status }) => status).toSorted()).toEqual([200, 422]);
      await oneHasIt('stay-1', sent);
      await giveBack('stay-1', round, sent);
    }
  });

  it('ROUND-4 given both have read that somebody is free, when both name them for the same time at other beds, then one does', async () => {
    await servers[0].enter('add-staff-member', { staff: 'cyn', name: 'Cyn Vale', role: 'aide' });
    await direct.query('begin');
    let sent: Promise<Sent[]>;
    try {
      await direct.query('select 1 from ward_head where ward = $1 for update', [WARD]);
      sent = Promise.all(
        servers.map((server, i) =>
          server.send('take-visit', { stay: `stay-${i}`, visit: `with-cyn-${i}`, second: 'cyn' }, AIDES[i]!),
        ),
      );
      await waiting(2);
    } finally {
      await direct.query('commit');
    }
    const refused = (await sent).filter(({ status }) => status !== 200);
    expect(refused).toHaveLength(1);
    expect(asProblem(refused[0]!)).toMatchObject({
      type: '/problems/booked-then',
      errors: [expect.objectContaining({ pointer: '/data/second' })],
    });
  });

  it('given the same tap was sent to both, when one aide is on both, then it is one entry', async () => {
    const commandId = '0196b2a4-7c1e-7d00-8f00-5f6f6a6e7a01';
    const visit = { stay: 'stay-2', visit: 'twice' };
    const at = new Date(clock.now()).toISOString();
    const same = { commandId, occurred: { at }, entered: { at, offsetMinutes: 0 } };
    const sent = await Promise.all(servers.map((server) => server.send('take-visit', visit, 'ada', same)));
    expect(sent.map(({ status }) => status)).toEqual([200, 200]);
    expect(sent.map(({ body }) => body['position'])).toEqual([
      sent[0]!.body['position'],
      sent[0]!.body['position'],
    ]);
    expect(sent.filter(({ body }) => body['repeated'] === true)).toHaveLength(1);
  });
});
