// The whole command (outcome, fold of 50 events, decide, append) against a bare begin / insert / commit
// of the same columns. Each command speaks of a stay with 50 events that no cache has seen.
import { randomBytes, randomUUID } from 'node:crypto';
import { DECIDERS } from '@footboard/server/capabilities/deciders';
import { NOBODY } from '@footboard/server/access/identity';
import { openPolicy } from '@footboard/server/capabilities/people/author-policy';
import { Commands } from '@footboard/server/commanding/handle-command';
import { Streams } from '@footboard/server/commanding/streams';
import { canonical, hashText } from '@footboard/server/log/canonical';
import { openLog } from '@footboard/server/log/open-log';
import { openLogger } from '@footboard/server/platform/logging';
import { systemClock } from '@footboard/server/platform/clock';
import { openVault } from '@footboard/server/vault/open-vault';
import { Pool } from 'pg';
import { benchDatabase, interleave, rate } from './append.mjs';
import { median, percentile } from './support/table.mjs';

const WARD = 'bench-ward';
const STAFF = 'nurse-ada';
const iso = (at) => new Date(at).toISOString();

const sessionAt = (at) => ({
  outcome: 'done',
  occasion: 'planned',
  activities: ['stand', 'walk'],
  startedAt: iso(at),
  minutesOutOfBed: 14,
  metres: 30,
  effort: 4,
  events: [],
  firstTimeUp: false,
});

const envelope = (data) => ({
  commandId: randomUUID(),
  occurred: { at: iso(Date.now()) },
  entered: { at: iso(Date.now()), offsetMinutes: 0 },
  source: { kind: 'person' },
  expect: 'latest',
  data,
});

/** Stays with 50 events each, appended in batches past the command handler. */
async function fill(log, count) {
  const begun = Date.now() - 3_600_000;
  const about = {
    ward: WARD,
    precision: 'exact',
    entered: begun,
    enteredOffsetMinutes: 0,
    author: { staff: STAFF, role: 'nurse' },
    source: { kind: 'person' },
  };
  const stays = [];
  for (let i = 0; i < count; i++) {
    const stay = `s${randomBytes(6).toString('hex')}`;
    const stream = `stay/${stay}`;
    const events = [
      {
        ...about,
        stream,
        version: 1,
        id: randomUUID(),
        type: 'stay-begun',
        schemaVersion: 1,
        occurred: begun,
        payload: { stay, person: `p-${stay}`, bed: 'b1', from: 'home' },
      },
    ];
    for (let v = 2; v <= 50; v++) {
      const at = begun + v * 60_000;
      events.push({
        ...about,
        stream,
        version: v,
        id: randomUUID(),
        type: 'session-recorded',
        schemaVersion: 1,
        occurred: at,
        payload: { session: sessionAt(at) },
      });
    }
    await log.append({
      command: {
        commandId: randomUUID(),
        ward: WARD,
        name: 'fill',
        bodyHash: 'ab'.repeat(32),
        author: about.author,
        outcome: 'accepted',
        result: {},
      },
      events,
    });
    stays.push(stay);
  }
  return stays;
}

export async function run({ rounds = 15, single = 120 } = {}) {
  const bench = await benchDatabase();
  const pool = new Pool({ connectionString: bench.url, max: 8 });
  try {
    const { database } = bench;
    const log = openLog(database, openVault(database, randomBytes(32)));
    const columns = await database.query(
      "select column_name from information_schema.columns where table_name = 'event' order by ordinal_position",
    );
    await database.query('create table bare_event (like event including indexes)');
    const names = columns.map((column) => column.column_name);
    const insert = {
      name: 'bare_one',
      text: `insert into bare_event (${names.join(', ')}) values (${names.map((_, i) => `$${i + 1}`).join(', ')})`,
    };

    const commands = new Commands({
      log,
      streams: new Streams(log),
      boards: { waitFor: async () => true },
      clock: systemClock,
      authors: openPolicy,
      deciders: DECIDERS,
      logger: openLogger('silent'),
    });
    const send = async (name, data, staff) => {
      const answer = await commands.handle({
        ward: WARD,
        name,
        body: envelope(data),
        claim: { ...NOBODY, access: 'open', claimed: staff },
      });
      if ('problem' in answer) throw new Error(`${name}: ${answer.problem.detail}`);
    };
    await send('set-up-ward', {
      name: 'Bench',
      zone: 'Etc/UTC',
      beds: [{ bed: 'b1', label: '1', bay: 'One' }],
    });
    await send('add-staff-member', { staff: STAFF, name: 'Ada Bench', role: 'charge-nurse' });
    const stays = await fill(log, rounds * single);

    let place = 0;
    const bare = async () => {
      place += 1;
      const at = Date.now();
      const text = canonical({ session: sessionAt(at) });
      const row = [
        WARD, place, `stay/bare-${Math.floor(place / 50)}`, (place % 50) + 1, randomUUID(), 'session-recorded', 1, text,
        hashText(text), at, 'exact', at, 0, at, STAFF, 'nurse', canonical({ kind: 'person' }), randomUUID(), randomBytes(32),
      ]; // prettier-ignore
      const client = await pool.connect();
      try {
        await client.query('begin');
        await client.query({ ...insert, values: row });
        await client.query('commit');
      } finally {
        client.release();
      }
    };
    const whole = () =>
      send('record-session', { stay: stays.pop(), session: sessionAt(Date.now() - 1_000) }, STAFF);

    const seen = await interleave(
      [
        { name: 'bare begin / insert / commit', pass: () => rate(single, 1, 1, bare) },
        { name: 'whole command, fold of 50 events', pass: () => rate(single, 1, 1, whole) },
      ],
      rounds,
    );
    const rows = [...seen].map(([what, { rates, took }]) => ({
      what,
      'per second': Math.round(median(rates)),
      'lowest round': Math.round(Math.min(...rates)),
      'highest round': Math.round(Math.max(...rates)),
      'p50 ms': percentile(took, 0.5),
      'p99 ms': percentile(took, 0.99),
    }));
    const ratio = rows[1]['per second'] / rows[0]['per second'];
    return {
      rows,
      ratios: [
        {
          measure: 'whole command : bare begin / insert / commit',
          value: ratio,
          target: 0.5,
          holds: ratio >= 0.5,
        },
      ],
    };
  } finally {
    await pool.end();
    await bench.drop();
  }
}
