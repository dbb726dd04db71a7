// One invented ward with as many events as asked: 24 beds, stays of about 200 events that follow one
// another in their beds, written straight into the table (the append has a benchmark of its own).
import { createHash } from 'node:crypto';
import { canonical } from '@footboard/server/log/canonical';

const BEDS = 24;
const PER_STAY = 200;
const FROM = Date.parse('2025-01-06T06:00:00Z');
const STEP = 20 * 60_000;
const PAGE = 5_000;

const COLUMNS = [
  ['ward', 'text'], ['position', 'bigint'], ['stream', 'text'], ['version', 'integer'], ['id', 'text'],
  ['type', 'text'], ['schema_version', 'integer'], ['payload', 'text'], ['payload_hash', 'text'],
  ['occurred', 'bigint'], ['precision', 'text'], ['entered', 'bigint'], ['entered_offset', 'integer'],
  ['recorded', 'bigint'], ['author_staff', 'text'], ['author_role', 'text'], ['source', 'text'],
  ['command_id', 'text'], ['chain', 'bytea'],
]; // prettier-ignore

const session = (at, n) => ({
  session: {
    outcome: 'done', occasion: n % 3 === 0 ? 'with-care' : 'planned', activities: n % 2 ? ['chair'] : ['stand', 'walk'],
    startedAt: new Date(at).toISOString(), minutesOutOfBed: 10 + (n % 40), metres: 5 * (n % 9),
    effort: n % 8, events: [], left: 'chair', firstTimeUp: false,
  },
}); // prettier-ignore

/** Without end: whoever reads takes as many as are wanted. */
function* events(ward) {
  const versions = new Map();
  let made = 0;
  const told = (stream, type, payload, at) => {
    const version = (versions.get(stream) ?? 0) + 1;
    versions.set(stream, version);
    made++;
    return { ward, position: made, stream, version, type, payload, at };
  };
  yield told(`ward/${ward}`, 'ward-set-up', {
    name: 'Bench', zone: 'Europe/Berlin', wardDayFrom: '07:00', nightFrom: '21:00', nightTo: '07:00',
  }, FROM); // prettier-ignore
  for (let n = 0; n < BEDS; n++) {
    const payload = {
      bed: `b${n}`,
      label: `${n + 1}`,
      bay: `Bay ${(n >> 2) + 1}`,
      ceilingTrack: n % 6 === 0,
    };
    yield told(`ward/${ward}`, 'bed-added', payload, FROM);
  }
  // Each bed is somewhere else in its occupant's stay; beds take turns, one event each.
  const beds = Array.from({ length: BEDS }, (_, n) => ({ bed: `b${n}`, turn: -n * 8, stay: null, stays: 0 }));
  for (let at = FROM; ; at += STEP) {
    for (const one of beds) {
      const n = one.turn++;
      if (n < 0) continue;
      const step = n % PER_STAY;
      if (step === 0) {
        one.stay = `${one.bed}-${one.stays++}`;
        versions.delete(`stay/${one.stay}`);
        yield told(
          `stay/${one.stay}`,
          'stay-begun',
          { stay: one.stay, person: `p-${one.stay}`, bed: one.bed, from: 'home' },
          at,
        );
        yield told(`bed/${one.bed}`, 'bed-taken', { bed: one.bed, stay: one.stay }, at);
      } else if (step === PER_STAY - 1) {
        yield told(`stay/${one.stay}`, 'stay-ended', { bed: one.bed, to: 'home' }, at);
        yield told(`bed/${one.bed}`, 'bed-freed', { bed: one.bed, stay: one.stay }, at);
        versions.delete(`stay/${one.stay}`);
      } else if (step % 40 === 7) {
        yield told(`stay/${one.stay}`, 'trigger-recorded', { kind: 'new-symptom' }, at);
      } else if (step % 40 === 17) {
        yield told(
          `stay/${one.stay}`,
          'weight-recorded',
          { weight: { kg: 60 + (n % 50), how: 'weighed' } },
          at,
        );
      } else {
        yield told(`stay/${one.stay}`, 'session-recorded', session(at, n), at);
      }
    }
  }
}

const sha256 = (text) => createHash('sha256').update(text).digest('hex');

export async function fillWard(database, ward, count) {
  const source = canonical({ kind: 'person', device: 'tablet-3' });
  const chain = Buffer.alloc(32, 7);
  const rowOf = ({ ward: of, position, stream, version, type, payload, at }) => {
    const text = canonical(payload);
    return [
      of, position, stream, version, `e${position}`, type, 1, text, sha256(text), at, 'exact', at, 60, at + 60_000,
      'nurse-ada', 'nurse', source, `c${position}`, chain,
    ]; // prettier-ignore
  };
  const insert = `insert into event (${COLUMNS.map(([name]) => name).join(', ')})
    select * from unnest(${COLUMNS.map(([, type], i) => `$${i + 1}::${type}[]`).join(', ')})`;
  let rows = [];
  let head = 0;
  const flush = async () => {
    if (rows.length)
      await database.query(
        insert,
        COLUMNS.map((_, column) => rows.map((row) => row[column])),
      );
    rows = [];
  };
  for (const event of events(ward)) {
    if (event.position > count) break;
    rows.push(rowOf(event));
    head = event.position;
    if (rows.length === PAGE) await flush();
  }
  await flush();
  await database.query('insert into ward_head (ward, position, chain, recorded) values ($1, $2, $3, $4)', [
    ward, head, chain, FROM,
  ]); // prettier-ignore
  await database.query('analyze event');
  return head;
}
