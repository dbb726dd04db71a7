/** What only several connections can prove: races, unknown outcomes, bells between processes. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { Client } from 'pg';
import type { WardId } from '@footboard/shared/kernel/ids';
import { CommandSeen, LogUnavailable, OutcomeUnknown, VersionConflict } from '@footboard/server/log/log';
import type { Log } from '@footboard/server/log/log';
import { openLog } from '@footboard/server/log/open-log';
import { openDatabase } from '@footboard/server/platform/database';
import type { Database } from '@footboard/server/platform/database';
import { migrate } from '@footboard/server/platform/migrate';
import { entry, newWard, outcome, rejection, request } from '../contracts/log-fixture.ts';
import { ownDatabase } from './postgres.ts';

/** A server process as the database sees it: its own pool, its own gate. */
interface Process {
  readonly database: Database;
  readonly log: Log;
}

describe('the log on PostgreSQL, raced', () => {
  let own: Awaited<ReturnType<typeof ownDatabase>>;
  let direct: Client;
  const processes: Process[] = [];
  const start = async (): Promise<Process> => {
    const database = await openDatabase({ databaseUrl: own.url, dataDir: 'unused' });
    const process = { database, log: openLog(database) };
    processes.push(process);
    return process;
  };
  let one: Process;
  let two: Process;

  beforeAll(async () => {
    own = await ownDatabase();
    one = await start();
    await migrate(one.database);
    two = await start();
    direct = new Client(own.url);
    await direct.connect();
  });
  afterAll(async () => {
    await direct?.end();
    for (const { database } of processes) await database.close();
    await own?.drop();
  });

  /** Resolves once `count` sessions other than ours wait for a lock. */
  const waiting = async (count: number): Promise<void> => {
    for (;;) {
      const { rows } = await direct.query<{ n: string }>(
        `select count(*) as n from pg_stat_activity
          where datname = current_database() and wait_event_type = 'Lock'`,
      );
      if (Number(rows[0]!.n) >= count) return;
    }
  };

  it('LOG-14 sixteen writers race and a reader never sees a hole', async () => {
    const ward = newWard();
    const each = 25;
    let writing = true;
    const seen: number[] = [];
    const refused: unknown[] = [];
    const reader = (async () => {
      for (;;) {
        const last = !writing;
        const events = await two.log.readWard(ward, seen.at(-1) ?? 0, 1_000);
        seen.push(...events.map((event) => event.position));
        if (last) return;
      }
    })();
    await Promise.all(
      Array.from({ length: 16 }, async (_, writer) => {
        // Eight writers in each process, so that they meet at the row and not at one gate.
        const { log } = writer % 2 ? one : two;
        for (let n = 0; n < each; n++) {
          await log.append(request(ward, `stay/w${writer}`, n * 2 + 1, 2));
          // A refused append each time: the position it asked for must not stay empty.
          refused.push(await rejection(log.append(request(ward, `stay/w${writer}`, 1))));
        }
      }),
    );
    writing = false;
    await reader;
    expect(seen).toEqual(Array.from({ length: 16 * each * 2 }, (_, n) => n + 1));
    expect(refused.every((reason) => reason instanceof VersionConflict)).toBe(true);
    const report = await one.log.verify(ward);
    expect(report).toMatchObject({ events: 16 * each * 2, faults: [] });
  });

  it('LOG-15 two wards do not wait for each other, one ward does', async () => {
    const [held, free] = [newWard(), newWard()];
    await one.log.append(request(held, 'stay/s1'));
    await direct.query('begin');
    let heldDone = false;
    try {
      await direct.query('select 1 from ward_head where ward = $1 for update', [held]);
      const behind = one.log.append(request(held, 'stay/s1', 2)).then(() => (heldDone = true));
      const beside = await one.log.append(request(free, 'stay/s1'));
      expect(beside.events[0]!.position).toBe(1);
      await waiting(1);
      expect(heldDone).toBe(false);
      await direct.query('commit');
      await behind;
    } finally {
      await direct.query('rollback');
    }
    expect(heldDone).toBe(true);
  });

  it('LOG-8 recorded is when the head was had, not when the wait for it began', async () => {
    const ward = newWard();
    await one.log.append(request(ward, 'stay/s1'));
    await direct.query('begin');
    try {
      await direct.query('select 1 from ward_head where ward = $1 for update', [ward]);
      const behind = one.log.append(request(ward, 'stay/s1', 2));
      await waiting(1);
      const { rows } = await direct.query<{ now: string }>('select footboard_now() as now');
      await direct.query('commit');
      expect((await behind).events[0]!.recorded).toBeGreaterThanOrEqual(Number(rows[0]!.now));
    } finally {
      await direct.query('rollback');
    }
  });

  it('LOG-4 a twin in another process waits for the first and then has its outcome', async () => {
    const ward = newWard();
    await one.log.append(request(ward, 'stay/s0'));
    const command = outcome(ward);
    await direct.query('begin');
    try {
      await direct.query('select 1 from ward_head where ward = $1 for update', [ward]);
      const first = one.log.append({ command, events: [entry(ward, 'stay/s1', 1)] });
      await waiting(1);
      const twin = rejection(two.log.append({ command, events: [entry(ward, 'stay/s1', 1)] }));
      await waiting(2);
      await direct.query('commit');
      expect((await first).events[0]!.position).toBe(2);
      const error = await twin;
      expect(error).toBeInstanceOf(CommandSeen);
      expect((error as CommandSeen).stored).toEqual({ ...command, position: 2 });
    } finally {
      await direct.query('rollback');
    }
    expect(await one.log.head(ward)).toBe(2);
  });

  it('LOG-3 of writers racing for one version exactly one gets it', async () => {
    const ward = newWard();
    const answers = await Promise.allSettled(
      Array.from({ length: 12 }, (_, n) => (n % 2 ? one : two).log.append(request(ward, 'stay/s1', 1))),
    );
    expect(answers.filter((a) => a.status === 'fulfilled')).toHaveLength(1);
    const refused = answers.flatMap((a) => (a.status === 'rejected' ? [a.reason as unknown] : []));
    expect(refused.every((reason) => reason instanceof VersionConflict)).toBe(true);
    expect(await one.log.head(ward)).toBe(1);
  });

  it('LOG-6 appends over the same wards in any order end without deadlock', async () => {
    const wards = [newWard(), newWard(), newWard()];
    const orders = [
      [0, 1, 2],
      [2, 1, 0],
      [1, 0, 2],
      [0, 2, 1],
    ];
    await Promise.all(
      Array.from({ length: 24 }, async (_, n) => {
        const { log } = n % 2 ? one : two;
        const order = orders[n % orders.length]!.map((at) => wards[at]!);
        for (let round = 0; round < 5; round++) {
          await log.append({
            command: outcome(order[0]!),
            events: order.map((ward) => entry(ward, `stay/t${n}`, round + 1)),
          });
        }
      }),
    );
    for (const ward of wards) {
      expect(await one.log.verify(ward)).toMatchObject({ events: 24 * 5, faults: [] });
    }
  });

  it('LOG-16 an append cut off before its commit: unknown, asked for by id, then sent again', async () => {
    const ward = newWard();
    await one.log.append(request(ward, 'stay/s0'));
    const again = { command: outcome(ward), events: [entry(ward, 'stay/s1', 1)] };
    await direct.query('begin');
    try {
      await direct.query('select 1 from ward_head where ward = $1 for update', [ward]);
      const cut = rejection(one.log.append(again));
      await waiting(1);
      await direct.query(
        `select pg_terminate_backend(pid) from pg_stat_activity
          where datname = current_database() and wait_event_type = 'Lock'`,
      );
      expect(await cut).toBeInstanceOf(OutcomeUnknown);
    } finally {
      await direct.query('rollback');
    }
    expect(await one.log.outcomeOf(ward, again.command.commandId)).toBeNull();
    await one.log.append(again);
    expect(await one.log.outcomeOf(ward, again.command.commandId)).toMatchObject({ position: 2 });
  });

  it('LOG-16 an append whose answer was lost after the commit: unknown, and the id has its outcome', async () => {
    const proxy = await deafProxy(own.url);
    const database = await openDatabase({ databaseUrl: proxy.url, dataDir: 'unused' });
    try {
      const log = openLog(database);
      const ward = newWard();
      await log.append(request(ward, 'stay/s0'));
      const lost = { command: outcome(ward), events: [entry(ward, 'stay/s1', 1)] };
      proxy.swallowAnswers();
      const error = rejection(log.append(lost));
      // The commit happens behind the swallowed answer; the reader over the other pool sees it.
      while ((await one.log.head(ward)) < 2);
      proxy.cut();
      expect(await error).toBeInstanceOf(OutcomeUnknown);
      expect(await one.log.outcomeOf(ward, lost.command.commandId)).toMatchObject({
        outcome: 'accepted',
        position: 2,
      });
      expect(await rejection(one.log.append(lost))).toBeInstanceOf(CommandSeen);
    } finally {
      await database.close();
      proxy.close();
    }
  });

  it('LOG-17 a refused connection is LogUnavailable: nothing was written', async () => {
    const proxy = await deafProxy(own.url);
    const database = await openDatabase({ databaseUrl: proxy.url, dataDir: 'unused' });
    const log = openLog(database);
    try {
      const ward = newWard();
      await log.append(request(ward, 'stay/s1'));
      proxy.close();
      // The pool may hold a connection that has just died: its outcome is unknown, the next are refused.
      await rejection(log.append(request(ward, 'stay/s1', 2)));
      expect(await rejection(log.append(request(ward, 'stay/s1', 2)))).toBeInstanceOf(LogUnavailable);
      expect(await rejection(log.head(ward))).toBeInstanceOf(LogUnavailable);
      expect(await one.log.head(ward)).toBe(1);
    } finally {
      await database.close();
    }
  });

  it('LOG-12 growth rings in another process, and rings for every ward after the bell was cut', async () => {
    const ward = newWard();
    const heard = ringsOf(two.log);
    // The listener is there once the database shows its session.
    await listenerPid();
    await one.log.append(request(ward, 'stay/s1'));
    await heard.next(ward);

    const cut = await listenerPid();
    await direct.query('select pg_terminate_backend($1)', [cut]);
    // Nothing is appended now: the ring after the return alone tells of the ward.
    await heard.next(ward);
    expect(await listenerPid()).not.toBe(cut);
    await one.log.append(request(ward, 'stay/s1', 2));
    await heard.next(ward);
    heard.stop();
  });

  const listenerPid = async (): Promise<number> => {
    for (;;) {
      const { rows } = await direct.query<{ pid: number }>(
        `select pid from pg_stat_activity
          where datname = current_database() and state = 'idle' and query ilike 'listen %' and pid <> pg_backend_pid()`,
      );
      if (rows[0]) return rows[0].pid;
    }
  };
});

/** Lets a test wait for the next ring of a ward. */
function ringsOf(log: Log) {
  const waiting = new Map<WardId, (() => void)[]>();
  const rung = new Map<WardId, number>();
  const stop = log.onGrowth((ward) => {
    const first = waiting.get(ward)?.shift();
    if (first) first();
    else rung.set(ward, (rung.get(ward) ?? 0) + 1);
  });
  return {
    stop,
    next: (ward: WardId): Promise<void> => {
      const count = rung.get(ward) ?? 0;
      if (count > 0) {
        rung.set(ward, count - 1);
        return Promise.resolve();
      }
      return new Promise((resolve) => {
        waiting.set(ward, [...(waiting.get(ward) ?? []), resolve]);
      });
    },
  };
}

/** A wire to PostgreSQL that can stop bringing answers back, and be cut. */
async function deafProxy(address: string) {
  const net = await import('node:net');
  const target = new URL(address);
  let deaf = false;
  const sockets = new Set<import('node:net').Socket>();
  const server = net.createServer((client) => {
    const upstream = net.connect(Number(target.port || 5432), target.hostname);
    for (const socket of [client, upstream]) {
      sockets.add(socket);
      socket.on('error', () => undefined);
      socket.on('close', () => {
        sockets.delete(socket);
        client.destroy();
        upstream.destroy();
      });
    }
    client.on('data', (data) => upstream.write(data));
    upstream.on('data', (data) => {
      if (!deaf) client.write(data);
    });
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const url = new URL(address);
  url.hostname = '127.0.0.1';
  url.port = String((server.address() as import('node:net').AddressInfo).port);
  const cut = () => {
    deaf = false;
    for (const socket of sockets) socket.destroy();
  };
  return {
    url: url.href,
    swallowAnswers: () => {
      deaf = true;
    },
    cut,
    close: () => {
      server.close();
      cut();
    },
  };
}
