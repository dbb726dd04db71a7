/**
 * A life on a ward in which every field that takes a person's words is given one that is found nowhere
 * else, and a search that finds such a word however it is written.
 */
import { randomUUID } from 'node:crypto';
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Database } from '@footboard/server/platform/database';
import type { AccessWorld, Client } from './access-kit.ts';
import { CODE, FIRST, passwordOf } from './access-kit.ts';
import { WARD, aSession } from './http-kit.ts';
import type { StillClock } from './http-kit.ts';

/**
 * The word in what is kept of a person in a bed, of a member of the staff, and in what may stand in
 * clear. Letters beyond ASCII show whether an escaped form slips through; the middle keeps the stem whole.
 */
export const STEM = { person: 'Quzzlewick', staff: 'Brindlefax', clear: 'Zandvoortia' } as const;
export type Kind = keyof typeof STEM;
let planted = 0;
const plant = (kind: Kind, where: string) => `Ñandú${STEM[kind]} ${where} ${++planted} ü試`;

/** Every way the stem may stand in bytes. Base64 at each of its three alignments, without the edges. */
export function formsOf(word: string): readonly { readonly form: string; readonly bytes: Buffer }[] {
  const utf8 = Buffer.from(word, 'utf8');
  const utf16 = Buffer.from(word, 'utf16le');
  const base64 = [0, 1, 2].map((shift) => {
    const text = Buffer.concat([Buffer.alloc(shift), utf8]).toString('base64');
    // Signs that also depend on the neighbours are left off on both sides.
    return text.slice(Math.ceil((shift * 8) / 6), Math.floor(((shift + utf8.length) * 8) / 6));
  });
  const texts: (readonly [string, string])[] = [
    ['UTF-8', word],
    ['lower case', word.toLowerCase()],
    ['upper case', word.toUpperCase()],
    ['hex', utf8.toString('hex')],
    ['hex in capitals', utf8.toString('hex').toUpperCase()],
    ['JSON escapes', [...word].map((c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`).join('')],
    ['percent escapes', [...utf8].map((b) => `%${b.toString(16)}`).join('')],
    ['read backwards', [...word].toReversed().join('')],
    ...base64.map((text, n): [string, string] => [`base64 at ${n}`, text]),
  ];
  return [
    ...texts.map(([form, text]) => ({ form, bytes: Buffer.from(text, 'utf8') })),
    { form: 'UTF-16LE', bytes: utf16 },
    { form: 'UTF-16BE', bytes: Buffer.from(utf16).swap16() },
  ];
}
/** Where a stem stands in these bytes: the form, and what is around it. Empty is what a test hopes for. */
export function foundIn(bytes: Buffer, kind: Kind): readonly string[] {
  return formsOf(STEM[kind]).flatMap(({ form, bytes: wanted }) => {
    const at = bytes.indexOf(wanted);
    if (at < 0) return [];
    return [`${kind} as ${form}: ${bytes.subarray(Math.max(0, at - 60), at + 80).toString('latin1')}`];
  });
}
export const foundInText = (text: string, kind: Kind) => foundIn(Buffer.from(text, 'utf8'), kind);

const filesBelow = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    statSync(join(folder, name)).isFile(),
  );

/** The same over every file below a folder, byte by byte, and over the names of the files. */
export function foundBelow(folder: string, kind: Kind): { readonly files: number; readonly found: string[] } {
  const files = filesBelow(folder);
  const found = files.flatMap((name) => [
    ...foundInText(name, kind),
    ...foundIn(readFileSync(join(folder, name)), kind).map((at) => `${name}: ${at}`),
  ]);
  return { files: files.length, found };
}
export const filesWith = (folder: string, bytes: Buffer): readonly string[] =>
  filesBelow(folder).filter((name) => readFileSync(join(folder, name)).includes(bytes));

/** Every row of every table as the database writes it, bytes too as they are. */
export async function everyRow(database: Database): Promise<ReadonlyMap<string, Buffer>> {
  const columns = await database.query<{ relation: string; name: string; type: string }>(
    `select c.table_name as relation, c.column_name as name, c.data_type as type
       from information_schema.columns c join information_schema.tables t using (table_schema, table_name)
      where c.table_schema = 'public' and t.table_type = 'BASE TABLE' order by 1, 2`,
  );
  const parts = new Map<string, Buffer[]>();
  for (const { relation, name, type } of columns) {
    const rows = await database.query<{ value: unknown }>(`select "${name}" as value from "${relation}"`);
    const kept = parts.get(relation) ?? [];
    for (const { value } of rows) {
      if (value === null) continue;
      kept.push(
        type === 'bytea'
          ? Buffer.from(value as Uint8Array)
          : Buffer.from(typeof value === 'string' ? value : JSON.stringify(value), 'utf8'),
      );
    }
    parts.set(relation, kept);
  }
  return new Map([...parts].map(([relation, kept]) => [relation, Buffer.concat(kept)]));
}

/** One answer of the server, whole. */
export interface Heard {
  readonly method: string;
  readonly url: string;
  readonly status: number;
  readonly headers: string;
  readonly text: string;
}

/** Keeps every answer that any client of this test gets; call what comes back to stop. */
export function listen(): { readonly heard: Heard[]; stop(): void } {
  const real = globalThis.fetch;
  const heard: Heard[] = [];
  globalThis.fetch = async (input, init) => {
    const answer = await real(input, init);
    const headers = [...answer.headers].map(([name, value]) => `${name}: ${value}`).join('\n');
    const text = await answer.clone().text();
    heard.push({ method: init?.method ?? 'GET', url: String(input), status: answer.status, headers, text });
    return answer;
  };
  return { heard, stop: () => void (globalThis.fetch = real) };
}

export const STAY = 'stay-of-the-planted';
export const EXPORT = `/api/wards/${WARD}/stays/${STAY}/export`;
/** Staff ids of the two whose names are planted: a nurse of the ward, and somebody of no ward. */
export const [NURSE, STRANGER] = ['planted-nurse', 'planted-stranger'] as const;

/** Every field that takes words, by somebody who may; then every way to be told no, with words in it. */
export async function liveOnTheWard(
  world: AccessWorld,
  clock: StillClock,
): Promise<{ readonly nurse: Client; readonly stranger: Client }> {
  const ines = await world.as('ines');
  const first = await world.as(FIRST);
  await ines.enter('change-ward', { name: `${STEM.clear} ward` });
  await ines.enter('add-staff-member', { staff: NURSE, name: plant('staff', 'list'), role: 'nurse' });
  await ines.enter('change-staff-member', { staff: NURSE, name: plant('staff', 'list again') });

  const nurse = await joins(world, `/api/wards/${WARD}/accounts`, NURSE);
  const stranger = await joins(world, '/api/accounts', STRANGER);
  await nurse.post('/api/session/secret', {
    password: passwordOf(NURSE),
    newBadge: `badge-${STEM.staff}-0042`,
  });

  const wish = plant('person', 'wish');
  await ines.enter('begin-stay', {
    stay: STAY,
    person: 'person-of-the-planted',
    bed: 'bed-1A',
    from: 'home',
    identity: { name: plant('person', 'name'), recordNumber: `R-${STEM.person}`, born: '1941-03-09' },
  });
  const stay = STAY;
  clock.at += 60 * 60_000;
  const usual = { moves: 'walks', transfers: 'alone' };
  const { events } = await nurse.enter('record-usual-way', { stay, usual, wish });
  await nurse.enter('record-trigger', { stay, kind: 'new-symptom', note: plant('person', 'trigger') });
  await nurse.enter('place-hold', {
    stay,
    hold: 'hold-1',
    scope: 'walking',
    reason: 'other',
    note: plant('person', 'hold'),
  });
  await nurse.enter('change-order', {
    stay,
    order: { about: 'activity', most: 'chair' },
    orderedBy: plant('person', 'prescriber'),
  });
  await nurse.enter('set-scope', {
    stay,
    scope: 'clinicians-plan',
    fence: 'traction',
    plan: plant('person', 'plan'),
  });
  await nurse.enter('set-scope', { stay, scope: 'comfort', plan: plant('person', 'comfort') });
  await nurse.enter('set-scope', { stay, scope: 'staged' });
  const session = aSession(stay, new Date(clock.at - 10 * 60_000).toISOString());
  const done = await nurse.enter('record-session', { ...session, said: plant('person', 'said') });
  const target = events[0]!.id;
  const reason = 'unclear';
  await nurse.enter('make-addendum', { stay, target, reason, text: plant('person', 'addendum') });
  await nurse.enter('make-amendment', { stay, target, reason, text: plant('person', 'amendment') });
  await nurse.enter('make-correction', {
    stay,
    target,
    reason: 'wrong-value',
    replacement: { usual: { ...usual, moves: 'frame' } },
    text: plant('person', 'correction'),
  });
  await nurse.enter('make-retraction', {
    stay,
    target: done.events[0]!.id,
    reason: 'never-happened',
    text: plant('person', 'retraction'),
  });

  const opening = await stranger.post(`/api/wards/${WARD}/glass`, {
    reason: 'emergency',
    words: plant('person', 'opening'),
  });
  if (opening.status !== 200) throw new Error(`opening: ${JSON.stringify(opening.body)}`);
  await stranger.get(`/api/wards/${WARD}/stays/${STAY}`);
  const { glass } = opening.body as { glass: string };
  const words = plant('person', 'review');
  const reviewed = await ines.post(`/api/wards/${WARD}/glass/${glass}/review`, { words });
  if (reviewed.status !== 204) throw new Error(`review: ${JSON.stringify(reviewed.body)}`);

  await beRefused(clock, [nurse, stranger, first, world.browser()]);
  return { nurse, stranger };
}

async function joins(world: AccessWorld, path: string, staff: string): Promise<Client> {
  const first = await world.as(FIRST);
  const made = await first.post(path, { staff, name: plant('staff', 'account') });
  const link = (made.body as { path?: string }).path;
  if (!link) throw new Error(`account ${staff}: ${made.status} ${JSON.stringify(made.body)}`);
  const browser = world.browser();
  const accepted = await browser.post('/api/invitations/accept', {
    token: link.slice(link.indexOf('#') + 1),
    name: plant('staff', 'own name'),
    signInName: signInNameOf(staff),
    password: passwordOf(staff),
    code: CODE,
  });
  if (accepted.status >= 300) throw new Error(`join ${staff}: ${JSON.stringify(accepted.body)}`);
  return browser;
}
export const signInNameOf = (staff: string) => `${STEM.staff}@${staff}`;

/** Words where they do not belong, and where they do beside something wrong. */
async function beRefused(clock: StillClock, clients: readonly Client[]): Promise<void> {
  const name = plant('person', 'error');
  const now = new Date(clock.now()).toISOString();
  const envelope = {
    commandId: randomUUID(),
    occurred: { at: now },
    entered: { at: now, offsetMinutes: 0 },
    source: { kind: 'person' },
    expect: 'latest',
  };
  for (const client of clients) {
    const commands = `/api/wards/${WARD}/commands`;
    await client.post(`${commands}/begin-stay`, `{"data": {"identity": {"name": "${name}"`);
    await client.post(`${commands}/begin-stay`, {
      ...envelope,
      data: { identity: { name: [name] }, stay: name },
    });
    await client.post(`${commands}/record-trigger`, {
      ...envelope,
      data: { stay: STAY, kind: name, note: name },
    });
    await client.post(`${commands}/record-trigger`, {
      ...envelope,
      occurred: { at: name },
      source: { kind: name },
    });
    await client.post(`${commands}/record-trigger`, {
      ...envelope,
      commandId: randomUUID(),
      data: { stay: 'nobody', kind: 'fall', note: name },
    });
    await client.send('record-trigger', { stay: STAY, kind: 'fall', note: name.repeat(200) });
    await client.send(
      'record-trigger',
      { stay: STAY, kind: 'fall', note: name },
      { source: { kind: 'paper', serial: name } },
    );
    await client.send('begin-stay', {
      stay: 'another',
      person: 'another',
      bed: 'bed-1A',
      from: 'home',
      identity: { name },
    });
    await client.send('record-assessment', {
      stay: STAY,
      protocol: { id: name, version: 1 },
      depth: 'full',
      stages: [
        {
          stage: name,
          outcome: 'met',
          how: 'free',
          people: 0,
          aid: name,
          findings: [],
          symptom: false,
          at: now,
        },
      ],
      note: name,
    });
    await client.post(`/api/wards/${WARD}/glass`, { reason: name, words: name });
    await client.post(`/api/wards/${WARD}/glass/none/review`, { words: name });
    await client.post(`/api/wards/${WARD}/stays/${STAY}/erase`, { reason: name, words: name });
    await client.post(`/api/wards/${WARD}/stays/nobody/erase`, { reason: 'asked-by-person', words: name });
    await client.post('/api/session', { signInName: signInNameOf(NURSE), password: name });
    await client.post('/api/session', { signInName: name, password: [name] });
    await client.post('/api/invitations/accept', { token: name, signInName: name, password: name });
    await client.post('/api/session/secret', { password: name, newPassword: name });
    await client.post(`/api/wards/${WARD}/accounts`, { staff: name, name });
    await client.post('/api/accounts', { staff: NURSE, name });
    await client.post('/api/pairings', { kind: name });
    await client.post('/api/signing', { badge: name, code: name });
    await client.get(`/api/wards/${WARD}/staff`, {
      'x-footboard-staff': STEM.person,
      'user-agent': STEM.person,
    });
  }
}
