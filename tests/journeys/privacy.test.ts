/**
 * The planted name: personal words put into every field that takes some, then looked for in every byte
 * of the data folder, every log line, and every answer that is not meant to show them.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { stayExport } from '@footboard/shared/wire/stay-export';
import { openAccessWorld } from './access-kit.ts';
import type { AccessWorld, Client } from './access-kit.ts';
import { StillClock, WARD } from './http-kit.ts';
import {
  EXPORT,
  STAY,
  STEM,
  everyRow,
  filesWith,
  formsOf,
  foundBelow,
  foundIn,
  foundInText,
  listen,
  liveOnTheWard,
} from './planted-kit.ts';
import type { Heard, Kind } from './planted-kit.ts';

const PERSONAL = ['person', 'staff'] as const;
const STAY_PAGE = `/api/wards/${WARD}/stays/${STAY}`;
/** The pages that are there to show a person's words, or a member of the staff's name, and no other. */
const MEANT: Readonly<Record<(typeof PERSONAL)[number], readonly string[]>> = {
  person: [STAY_PAGE, EXPORT, `/api/wards/${WARD}/glass`, `/api/wards/${WARD}/access-log`],
  staff: [
    STAY_PAGE,
    EXPORT,
    `/api/wards/${WARD}/glass`,
    `/api/wards/${WARD}/access-log`,
    `/api/wards/${WARD}/staff`,
    // Whose entry waits for a second signature, or says otherwise than one's own.
    `/api/wards/${WARD}/own-entries`,
    `/api/wards/${WARD}/accounts`,
    '/api/accounts',
    '/api/me',
    '/api/session',
    '/api/invitations/read',
    '/api/invitations/accept',
  ],
};

const clock = new StillClock(Date.now());
const folder = mkdtempSync(join(tmpdir(), 'footboard-planted-'));
const said: string[] = [];
const ears = listen();
let world: AccessWorld;
let nurse: Client;
let stranger: Client;
/** The key of the stay as the database has it; empty once it is destroyed. */
let wrapped: Buffer | undefined;
const wrappedKey = async () =>
  (
    await world.footboard.database.query<{ wrapped_key: Uint8Array }>(
      'select wrapped_key from text_key where subject = $1 and wrapped_key is not null',
      [`stay/${STAY}`],
    )
  ).map((row) => Buffer.from(row.wrapped_key));
let open = true;
const close = async () => {
  if (open) await world.close();
  open = false;
};

beforeAll(async () => {
  world = await openAccessWorld({
    clock,
    limits: 'off',
    env: { DATA_DIR: folder, FOOTBOARD_LOG: 'trace' },
    logTo: { write: (line) => void said.push(line) },
  });
  ({ nurse, stranger } = await liveOnTheWard(world, clock));
}, 180_000);
afterAll(async () => {
  ears.stop();
  await close();
  rmSync(folder, { recursive: true, force: true });
});

const heardOf = (kind: Kind, { url, text }: Heard) => foundInText(text, kind).map((at) => `${url}: ${at}`);

describe('PRIVACY-3 a planted name stays where it belongs', () => {
  it.each(formsOf('Quzzlewick'))('the search itself finds a name written as $form', ({ bytes }) => {
    const around = Buffer.concat([Buffer.from('x\u0000y'), bytes, Buffer.from('z')]);
    expect(foundIn(around, 'person').length).toBeGreaterThan(0);
    expect(foundIn(around, 'staff')).toEqual([]);
  });
  it.each([0, 1, 2])('the search finds a name inside a longer text in base64, %i bytes in', (shift) => {
    const text = Buffer.from(`${'-'.repeat(shift)}Ñandú Quzzlewick wish`, 'utf8').toString('base64');
    expect(foundInText(text, 'person').length).toBeGreaterThan(0);
  });

  it('given words in every field, when the pages that are meant to show them are asked, then they show them', async () => {
    const rafa = await world.as('rafa');
    const page = await nurse.get(STAY_PAGE);
    expect(foundInText(JSON.stringify(page.body), 'person')).not.toEqual([]);
    const handed = stayExport.parse((await rafa.get(EXPORT)).body);
    const shown = JSON.stringify(handed);
    for (const where of ['name', 'wish', 'trigger', 'hold', 'prescriber', 'plan', 'comfort', 'said'])
      expect(shown).toContain(`${STEM.person} ${where} `);
    for (const where of ['addendum', 'amendment', 'correction', 'retraction'])
      expect(shown).toContain(`${STEM.person} ${where} `);
    expect(shown).toContain(`R-${STEM.person}`);
    for (const [path, words] of [
      [`/api/wards/${WARD}/glass`, ['opening', 'review']],
      [`/api/wards/${WARD}/access-log`, ['opening', 'review']],
    ] as const) {
      const text = JSON.stringify((await rafa.get(path)).body);
      for (const where of words) expect(text).toContain(`${STEM.person} ${where} `);
    }
    expect(JSON.stringify((await nurse.get(`/api/wards/${WARD}/staff`)).body)).toContain(STEM.staff);
  });

  it('given all other pages, when they are asked, then none shows a word of it, and none puts one in a header or an address', async () => {
    const ines = await world.as('ines');
    const paths = ['board', 'huddle', 'totals', 'rules', 'protocols', 'own-entries', 'devices', 'retention'];
    for (const client of [ines, nurse, stranger, world.browser(), await world.as('rafa')]) {
      for (const path of paths) await client.get(`/api/wards/${WARD}/${path}`);
      for (const path of [
        '/api/wards',
        '/health/live',
        '/health/ready',
        '/api/openapi.json',
        '/metrics',
        '/',
      ])
        await client.get(path);
      await client.get(`/api/verify/${WARD}`);
      await client.get('/problems/invalid-command');
    }
    expect(ears.heard.filter(({ status }) => status < 300).length).toBeGreaterThan(40);
    expect(ears.heard.filter(({ status }) => status >= 400).length).toBeGreaterThan(60);
    for (const kind of PERSONAL) {
      const elsewhere = ears.heard.filter(
        ({ url, status }) => status >= 400 || !MEANT[kind].includes(new URL(url).pathname),
      );
      expect(elsewhere.flatMap((one) => heardOf(kind, one))).toEqual([]);
      expect(ears.heard.flatMap(({ url, headers }) => foundInText(`${url}\n${headers}`, kind))).toEqual([]);
    }
    // The control: a ward's name is no secret, and is found.
    expect(ears.heard.flatMap((one) => heardOf('clear', one)).length).toBeGreaterThan(0);
  });

  it('given a server that breaks with a name in its hands, when it says so, then neither answer nor log has the name', async () => {
    const { vault, database } = world.footboard;
    const [openText, query] = [vault.open.bind(vault), database.query.bind(database)];
    const name = `${STEM.person} in hand`;
    const broken: (() => never)[] = [
      () => JSON.parse(name) as never,
      () => {
        throw new Error(`cannot read "${name}"`, { cause: new TypeError(`"${name}" is no ref`) });
      },
      () => {
        throw Object.assign(new Error(`value "${name}" is out of range`), {
          severity: 'ERROR',
          code: '22003',
          detail: name,
          params: [name],
          query: name,
        });
      },
    ];
    const before = said.length;
    for (const breaks of broken) {
      Object.assign(vault, { open: async () => breaks() });
      expect((await nurse.get(STAY_PAGE)).status).toBe(500);
      Object.assign(vault, { open: openText });
      const fails = async (sql: string, ...rest: [(readonly unknown[])?]) =>
        /insert into event|footboard_append/.test(sql) ? breaks() : query(sql, ...rest);
      Object.assign(database, { query: fails });
      expect((await nurse.send('record-trigger', { stay: STAY, kind: 'fall', note: name })).status).toBe(500);
      Object.assign(database, { query });
    }
    const lines = said.slice(before).join('');
    expect(lines).toContain('request broken');
    expect(lines).toContain('command broken');
    expect(foundInText(lines, 'person')).toEqual([]);
  });

  it('given everything that was said at the most talkative level, when the log is searched, then it has no name', () => {
    expect(said.length).toBeGreaterThan(20);
    for (const kind of PERSONAL) expect(foundInText(said.join(''), kind)).toEqual([]);
  });

  it('given every row of every table, when it is searched, then it has no name; what may stand in clear is found', async () => {
    const rows = await everyRow(world.footboard.database);
    expect(rows.get('text_kept')!.length).toBeGreaterThan(500);
    expect(rows.get('account')!.length).toBeGreaterThan(500);
    const found = (kind: Kind) =>
      [...rows].flatMap(([table, bytes]) => foundIn(bytes, kind).map((at) => `${table}: ${at}`));
    for (const kind of PERSONAL) expect(found(kind)).toEqual([]);
    expect(found('clear').length).toBeGreaterThan(0);
  });

  it('given an erased stay, when it is handed over again, then no word of the person is in it and the log still verifies', async () => {
    const rafa = await world.as('rafa');
    const ines = await world.as('ines');
    await ines.enter('end-stay', { stay: STAY, bed: 'bed-1A', to: 'home' });
    [wrapped] = await wrappedKey();
    expect(wrapped!.length).toBeGreaterThan(32);
    const erased = await rafa.post(`${STAY_PAGE}/erase`, { reason: 'asked-by-person', words: 'In writing' });
    expect(erased.status).toBe(204);
    expect(await wrappedKey()).toEqual([]);
    const handed = await rafa.get(EXPORT);
    expect(stayExport.parse(handed.body)).toMatchObject({ erased: true, identity: null });
    expect(foundInText(JSON.stringify(handed.body), 'person')).toEqual([]);
    expect(foundInText(JSON.stringify((await nurse.get(STAY_PAGE)).body), 'person')).toEqual([]);
    expect((await rafa.get(`/api/verify/${WARD}`)).body['faults']).toEqual([]);
  });

  it('given the folder of a server that has closed, when every byte of every file is searched, then it has no name', async () => {
    await close();
    const clear = foundBelow(folder, 'clear');
    expect(clear.files).toBeGreaterThan(100);
    expect(clear.found.length).toBeGreaterThan(0);
    for (const kind of PERSONAL) expect(foundBelow(folder, kind).found).toEqual([]);
  });

  it('given an erased stay, when the folder is searched for its key, then no table has it; what the database wrote ahead is told of in docs/privacy.md', () => {
    expect(filesWith(folder, wrapped!).filter((name) => !name.includes('pg_wal'))).toEqual([]);
  });
});
