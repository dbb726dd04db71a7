// Appending, against bare inserts into the same columns and indexes, and against a general
// event-sourcing library. One PostgreSQL, one pool size, named statements, fsync as the server has it.
import { randomBytes, randomUUID } from 'node:crypto';
import { Client, Pool } from 'pg';
import { getPostgreSQLEventStore } from '@event-driven-io/emmett-postgresql';
import { hashText, canonical } from '@footboard/server/log/canonical';
import { openLog } from '@footboard/server/log/open-log';
import { openDatabase } from '@footboard/server/platform/database';
import { migrate } from '@footboard/server/platform/migrate';
import { median, percentile } from './support/table.mjs';

const ADDRESS = process.env.TEST_DATABASE_URL ?? 'postgres://root@127.0.0.1:5432/postgres';
const STREAM_LENGTH = 50;
const BATCH = 100;
const CALLERS = 32;
const POOL = 8;

const COLUMNS = [
  ['ward', 'text'], ['position', 'bigint'], ['stream', 'text'], ['version', 'integer'], ['id', 'text'],
  ['type', 'text'], ['schema_version', 'integer'], ['payload', 'text'], ['payload_hash', 'text'],
  ['occurred', 'bigint'], ['precision', 'text'], ['entered', 'bigint'], ['entered_offset', 'integer'],
  ['recorded', 'bigint'], ['author_staff', 'text'], ['author_role', 'text'], ['source', 'text'],
  ['command_id', 'text'], ['chain', 'bytea'],
]; // prettier-ignore
const names = COLUMNS.map(([name]) => name).join(', ');
const BARE_ONE = {
  name: 'bare_one',
  text: `insert into bare_event (${names}) values (${COLUMNS.map((_, i) => `$${i + 1}`).join(', ')})`,
};
const BARE_BATCH = {
  name: 'bare_batch',
  text: `insert into bare_event (${names}) select * from unnest(${COLUMNS.map(([, type], i) => `$${i + 1}::${type}[]`).join(', ')})`,
};

const author = { staff: 'nurse-ada', role: 'nurse' };
const source = { kind: 'person', device: 'tablet-3' };
const AT = Date.parse('2026-03-02T08:15:00Z');
/** A session with its usual fields: about 380 bytes. */
const payload = () => ({
  session: {
    outcome: 'done', occasion: 'planned', activities: ['edge-sit', 'stand', 'walk'],
    startedAt: '2026-03-02T08:00:00Z', endedAt: '2026-03-02T08:14:00Z', minutesOutOfBed: 14, metres: 30,
    help: { people: 1, aid: 'walking-support' }, effort: 4, breathless: 2, painBefore: 3, painAfter: 3,
    events: [], left: 'chair', backToBedBy: '2026-03-02T09:14:00Z', firstTimeUp: false,
  },
}); // prettier-ignore

/** Streams of one ward, filled one after the other. */
function streams(ward) {
  let count = 0;
  return {
    ward,
    next() {
      const stream = `stay/${ward}-${Math.floor(count / STREAM_LENGTH)}`;
      const version = (count % STREAM_LENGTH) + 1;
      count += 1;
      return { stream, version, count };
    },
  };
}

function commandOf(ward) {
  return {
    commandId: randomUUID(), ward, name: 'record-session', bodyHash: 'ab'.repeat(32), author,
    outcome: 'accepted', result: { outcome: 'accepted', events: [] },
  }; // prettier-ignore
}
function eventOf(at) {
  const { stream, version } = at.next();
  return {
    ward: at.ward, stream, version, id: randomUUID(), type: 'session-recorded', schemaVersion: 1,
    payload: payload(), occurred: AT, precision: 'exact', entered: AT, enteredOffsetMinutes: 60, author, source,
  }; // prettier-ignore
}
/** A bare row carries all that an event row carries, its digest too; only nobody looks after it. */
function bareRow(at) {
  const { stream, version, count } = at.next();
  const text = canonical(payload());
  return [
    at.ward, count, stream, version, randomUUID(), 'session-recorded', 1, text, hashText(text), AT, 'exact', AT, 60,
    AT, author.staff, author.role, canonical(source), randomUUID(), randomBytes(32),
  ]; // prettier-ignore
}

/** A database of its own with the log in it; also used by the other benchmarks. */
export async function benchDatabase() {
  const admin = new Client(ADDRESS);
  await admin.connect();
  const name = `footboard_bench_${randomBytes(4).toString('hex')}`;
  await admin.query(`create database ${name} template template0 encoding 'UTF8'`);
  const url = new URL(ADDRESS);
  url.pathname = `/${name}`;
  const database = await openDatabase({ databaseUrl: url.href, dataDir: 'unused' });
  await migrate(database);
  return {
    url: url.href,
    database,
    log: openLog(database),
    async drop() {
      await database.close();
      await admin.query(`drop database ${name} with (force)`);
      await admin.end();
    },
  };
}

/** Runs `work` `times` times from `callers` callers; gives events a second and each call's milliseconds. */
export async function rate(times, callers, eventsPerCall, work) {
  const took = [];
  let left = times;
  const started = performance.now();
  await Promise.all(
    Array.from({ length: callers }, async (_, caller) => {
      while (left-- > 0) {
        const begun = performance.now();
        await work(caller);
        took.push(performance.now() - begun);
      }
    }),
  );
  return { perSecond: (times * eventsPerCall * 1000) / (performance.now() - started), took };
}

/** Interleaves the cases, each round starting with another one; medians over the rounds. */
export async function interleave(cases, rounds) {
  const seen = new Map(cases.map(({ name }) => [name, { rates: [], took: [] }]));
  for (let round = 0; round < rounds; round++) {
    for (let i = 0; i < cases.length; i++) {
      const one = cases[(i + round) % cases.length];
      const { perSecond, took } = await one.pass();
      const { rates, took: all } = seen.get(one.name);
      rates.push(perSecond);
      for (const ms of took) all.push(ms);
    }
  }
  return seen;
}

export async function run({ rounds = 25, single = 250, batches = 6, crowd = 600 } = {}) {
  const bench = await benchDatabase();
  const { log, database } = bench;
  await database.query('create table bare_event (like event including all)');
  const pool = new Pool({ connectionString: bench.url, max: POOL });
  const emmett = getPostgreSQLEventStore(bench.url);
  try {
    await emmett.schema.migrate();
    const bare = streams('bare');
    const ours = streams('ours');
    const oursBatch = streams('batch');
    const busy = streams('busy');
    const eight = Array.from({ length: 8 }, (_, n) => streams(`ward-${n}`));
    const lib = streams('lib');

    const onClient = async (work) => {
      const client = await pool.connect();
      try {
        await work(client);
      } finally {
        client.release();
      }
    };
    const bareOne = () => pool.query({ ...BARE_ONE, values: bareRow(bare) });
    const bareTransaction = () =>
      onClient(async (client) => {
        await client.query('begin');
        await client.query({ ...BARE_ONE, values: bareRow(bare) });
        await client.query('commit');
      });
    const bareBatch = () => {
      const rows = Array.from({ length: BATCH }, () => bareRow(bare));
      return pool.query({
        ...BARE_BATCH,
        values: COLUMNS.map((_, column) => rows.map((row) => row[column])),
      });
    };
    const appendTo = (at, count = 1) => {
      const command = commandOf(at.ward);
      return log.append({ command, events: Array.from({ length: count }, () => eventOf(at)) });
    };
    // A crowd may reorder within a ward, so each caller keeps to streams of its own.
    const crowdOn = (wards) => {
      const own = Array.from({ length: CALLERS }, (_, caller) => {
        const ward = wards[caller % wards.length].ward;
        const at = streams(`${ward}-c${caller}-${randomUUID().slice(0, 8)}`);
        return { ward, next: at.next };
      });
      return (caller) => appendTo(own[caller]);
    };
    const emmettOne = () => {
      const { stream, version } = lib.next();
      return emmett.appendToStream(stream, [{ type: 'session-recorded', data: payload() }], {
        expectedStreamVersion: version === 1 ? 'STREAM_DOES_NOT_EXIST' : BigInt(version - 1),
      });
    };

    const cases = [
      { name: 'bare insert, autocommitted', pass: () => rate(single, 1, 1, bareOne) },
      { name: 'bare begin / insert / commit', pass: () => rate(single, 1, 1, bareTransaction) },
      { name: 'append, one writer', pass: () => rate(single, 1, 1, () => appendTo(ours)) },
      { name: 'emmett-postgresql appendToStream', pass: () => rate(single, 1, 1, emmettOne) },
      { name: 'bare batches of 100', pass: () => rate(batches, 1, BATCH, bareBatch) },
      {
        name: 'append, batches of 100',
        pass: () => rate(batches, 1, BATCH, () => appendTo(oursBatch, BATCH)),
      },
      { name: '32 callers, one ward', pass: () => rate(crowd, CALLERS, 1, crowdOn([busy])) },
      { name: '32 callers, 8 wards', pass: () => rate(crowd, CALLERS, 1, crowdOn(eight)) },
    ];
    for (const { pass } of cases) await pass();
    const seen = await interleave(cases, rounds);

    const rows = [...seen].map(([name, { rates, took }]) => ({
      case: name,
      'events/s': Math.round(median(rates)),
      min: Math.round(Math.min(...rates)),
      max: Math.round(Math.max(...rates)),
      'p50 ms': percentile(took, 0.5),
      'p99 ms': percentile(took, 0.99),
    }));
    // Ratios of the same round, so that a slow spell of the machine weighs on both sides.
    const ratio = (what, over, target) => {
      const [a, b] = [seen.get(what).rates, seen.get(over).rates];
      const value = median(a.map((one, round) => one / b[round]));
      return { ratio: `${what} : ${over}`, value, target: `>= ${target}`, holds: value >= target };
    };
    const p99 = percentile(seen.get('32 callers, one ward').took, 0.99);
    const ratios = [
      ratio('append, one writer', 'bare begin / insert / commit', 1),
      {
        ...ratio('append, one writer', 'bare insert, autocommitted', 0.6),
        target: 'aim 0.6',
        holds: undefined,
      },
      ratio('append, one writer', 'emmett-postgresql appendToStream', 1),
      ratio('append, batches of 100', 'bare batches of 100', 0.75),
      ratio('32 callers, one ward', 'append, one writer', 0.9),
      ratio('32 callers, 8 wards', '32 callers, one ward', 1.5),
      { ratio: '32 callers, one ward: p99 ms', value: p99, target: '< 150', holds: p99 < 150 },
    ];
    const faults = (await Promise.all(['ours', 'batch', 'busy'].map((ward) => log.verify(ward)))).flatMap(
      (r) => r.faults,
    );
    if (faults.length)
      throw new Error(`the log does not verify after the run: ${JSON.stringify(faults.slice(0, 3))}`);
    return { rows, ratios };
  } finally {
    await emmett.close();
    await pool.end();
    await bench.drop();
  }
}

if (process.argv[1] === import.meta.filename) {
  const { table } = await import('./support/table.mjs');
  const { rows, ratios } = await run(
    process.env.QUICK ? { rounds: 9, single: 150, batches: 4, crowd: 400 } : {},
  );
  console.log(`${table(rows)}\n\n${table(ratios)}`);
}
