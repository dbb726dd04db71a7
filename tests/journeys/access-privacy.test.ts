/** Who looked, the opened ward, one stay to hand over, erasure and what is kept: over real HTTP. */
import { createHash } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { WardId } from '@footboard/shared/kernel/ids';
import { SOCKET, WIRE_VERSION } from '@footboard/shared/wire/messages';
import { accessLog, glassLine, glassList, retentionPage } from '@footboard/shared/wire/access';
import { boardPage, stayPage } from '@footboard/shared/wire/http';
import { stayExport } from '@footboard/shared/wire/stay-export';
import type { StayExport } from '@footboard/shared/wire/stay-export';
import { HOUR, MINUTE } from '@footboard/shared/kernel/times';
import { FIRST, passwordOf, openAccessWorld } from './access-kit.ts';
import type { AccessWorld, Client } from './access-kit.ts';
import { Screen } from './push-kit.ts';
import { StillClock, WARD, asProblem, beginStay } from './http-kit.ts';

const clock = new StillClock(Date.parse('2026-11-25T06:00:00Z'));
const accessClock = new StillClock(Date.parse('2026-11-25T06:00:00Z'));
const at = (path: string) => `/api/wards/${WARD}/${path}`;
const stranger = 'milo';

let world: AccessWorld;
let [ines, noor, rafa, ada, milo]: Client[] = [];
beforeAll(async () => {
  world = await openAccessWorld({ clock, accessClock, limits: 'off', env: { KEEP_DAYS: '30' } });
  const first = await world.as(FIRST);
  await first.enter('set-up-ward', { name: 'Rowan', zone: 'Europe/Lisbon', beds: [bed] }, {}, 'rowan');
  await first.enter('add-staff-member', { staff: stranger, name: 'Milo Reyes', role: 'nurse' }, {}, 'rowan');
  await world.invited(stranger, 'Milo Reyes', { ward: 'rowan' });
  [ines, noor, rafa, ada] = await Promise.all([
    world.as('ines'),
    world.as('noor'),
    world.as('rafa'),
    world.as('ada'),
  ]);
  milo = world.browser();
  await milo.signIn(stranger);
  await ines!.enter('begin-stay', beginStay('stay-1'));
  await ines!.enter('begin-stay', beginStay('stay-2', '1B'));
  clock.at += MINUTE;
}, 180_000);
afterAll(() => world.close());
const bed = { bed: 'bed-9', label: '9', bay: 'Bay 9' };

const lines = async (query = '') => accessLog.parse((await rafa!.get(at(`access-log${query}`))).body).lines;
const openings = async () => glassList.parse((await rafa!.get(at('glass'))).body).glass;
const refused = async (sent: Promise<{ status: number; type: string; body: Record<string, unknown> }>) => {
  const answer = await sent;
  return `${answer.status} ${asProblem(answer).type.replace('/problems/', '')}`;
};
const handedOver = async (stay: string): Promise<StayExport> =>
  stayExport.parse((await rafa!.get(at(`stays/${stay}/export`))).body);

describe('PRIVACY-1 the records role sees who looked at what', () => {
  it('given two people who open a stay, when its lines are read, then both stand there by name and the look at another stay does not', async () => {
    await noor!.get(at('stays/stay-1'));
    await ada!.get(at('stays/stay-1'));
    await ada!.get(at('stays/stay-2'));
    const seen = await lines('?stay=stay-1');
    expect(seen.map(({ what, name, stay }) => [what, name, stay])).toEqual([
      ['read-stay', 'Ada Lund', 'stay-1'],
      ['read-stay', 'Noor Haddad', 'stay-1'],
    ]);
  });

  it('given a stay that was refused or is not there, when it was asked for, then nobody looked', async () => {
    const alva = await world.as('alva');
    expect(await refused(alva.get(at('stays/stay-2')))).toBe('403 not-allowed');
    expect(await refused(noor!.get(at('stays/stay-404')))).toBe('404 no-such-stay');
    expect(await lines('?stay=stay-404')).toEqual([]);
    expect((await lines('?stay=stay-2')).map(({ staff }) => staff)).toEqual(['ada']);
  });

  it('given a board read again and again, now and as it was, when the log is read, then it is one line each for the hour', async () => {
    for (let n = 0; n < 3; n++) {
      boardPage.parse((await noor!.get(at('board'))).body);
      boardPage.parse((await noor!.get(at(`board?p=${3 + n}`))).body);
    }
    const boards = (await lines()).filter(
      ({ what, staff }) => what.startsWith('read-board') && staff === 'noor',
    );
    expect(boards.map(({ what }) => what).toSorted()).toEqual(['read-board-then', 'read-board-whole']);
  });

  it('given a board that is shown live, when the screen joins and joins again, then it is one line, and none for a board without people', async () => {
    const join = async (client: Client) => {
      const screen = new Screen(WARD as WardId, world.footboard.url, {
        cookie: client.cookie,
        origin: world.footboard.url,
      });
      const asked = { wireVersion: WIRE_VERSION, requestId: 'r1', ward: WARD, feed: null };
      for (let n = 0; n < 2; n++)
        expect(await screen.ask(SOCKET.join, asked)).toMatchObject({ answer: 'snapshot' });
      screen.socket.disconnect();
    };
    await join(await world.as('theo'));
    await join(await world.as('alva'));
    const looked = (await lines()).filter(({ what }) => what === 'read-board-whole');
    expect(looked.filter(({ staff }) => staff === 'theo').length).toBe(1);
    expect(looked.filter(({ staff }) => staff === 'alva')).toEqual([]);
  });

  it('given a board that is not the whole one, when somebody sees it, then nobody has looked at anybody', async () => {
    const alva = await world.as('alva');
    expect((await alva.get(at('board'))).status).toBe(200);
    expect(
      (await lines()).filter(({ staff, what }) => staff === 'alva' && what !== 'read-access-log'),
    ).toEqual([]);
  });

  it('given somebody read the access log, when it is read again, then that reading stands in it, with the stay asked for', async () => {
    await lines('?stay=stay-2');
    expect((await lines())[0]).toMatchObject({ what: 'read-access-log', name: 'Rafa Otero', stay: 'stay-2' });
  });

  it('given any other role, when it asks for the access log, then it is refused', async () => {
    for (const who of ['ada', 'noor', 'theo', 'ines', 'hanne', 'mira', 'alva', FIRST] as const)
      expect(await refused((await world.as(who)).get(at('access-log')))).toBe('403 not-allowed');
    expect(await refused(world.browser().get(at('access-log')))).toBe('401 sign-in-first');
  });

  it('given a part of the address that cannot be, when it is sent, then it is named', async () => {
    for (const query of ['?before=-1', '?before=x', '?stay=a%20b'])
      expect(await refused(rafa!.get(at(`access-log${query}`)))).toBe('422 invalid-query');
  });
});

describe('GLASS-1 a ward opened for an emergency', () => {
  const why = { reason: 'emergency', words: 'Fall in bay 1, called from Rowan' };

  it('given somebody who is not on the ward, when they ask for a stay, then no; once opened with a reason, yes, and the name is there', async () => {
    expect(await refused(milo!.get(at('stays/stay-1')))).toBe('403 not-on-this-ward');
    const sent = await milo!.post(at('glass'), why);
    const opened = glassLine.parse(sent.body);
    expect([sent.status, opened.name, opened.ends - opened.began, opened.looked]).toEqual([
      200,
      'Milo Reyes',
      HOUR,
      0,
    ]);
    expect(stayPage.parse((await milo!.get(at('stays/stay-1'))).body).identity?.name).toBe('Rosa Pinto');
    expect((await lines('?stay=stay-1'))[0]).toMatchObject({ what: 'read-stay', name: 'Milo Reyes' });
    expect((await lines()).find(({ what }) => what === 'break-glass')).toMatchObject({
      staff: stranger,
      words: why.words,
    });
  });

  it('given an opened ward, when something is asked that would make freer, hand out or look after the ward, then it is refused; a caution is taken', async () => {
    const onOwn = { stay: 'stay-1', where: 'room', when: 'day' };
    for (const sent of [
      milo!.send('set-on-own', onOwn),
      milo!.send('move-stay', { stay: 'stay-1', from: 'bed-1A', to: 'bed-2A' }),
      milo!.get(at('stays/stay-1/export')),
      milo!.get(at('access-log')),
      milo!.get(at('glass')),
      milo!.get(at('devices')),
    ])
      expect((await sent).status).toBeGreaterThanOrEqual(400);
    await milo!.enter('record-trigger', { stay: 'stay-1', kind: 'fall' });
  });

  it('given no words, no such reason, or a ward that is not there, when it is opened, then that is said and nothing opens', async () => {
    const before = (await openings()).length;
    expect(await refused(milo!.post(at('glass'), { reason: 'emergency' }))).toBe('422 invalid-request');
    expect(await refused(milo!.post(at('glass'), { reason: 'curious', words: 'I wonder' }))).toBe(
      '422 invalid-request',
    );
    expect(await refused(milo!.post('/api/wards/nowhere/glass', why))).toBe('404 no-such-ward');
    expect(await refused(world.browser().post(at('glass'), why))).toBe('401 sign-in-first');
    expect((await openings()).length).toBe(before);
  });

  it('given somebody of the ward, when they would open it, then they are told they need not', async () => {
    const answer = await noor!.post(at('glass'), why);
    expect(asProblem(answer)).toMatchObject({ status: 403, detail: expect.stringContaining('need not') });
  });

  it('GLASS-2 given what was looked at, when it is reviewed, then never by oneself, by somebody else once', async () => {
    const [opening] = await openings();
    expect(opening).toMatchObject({ staff: stranger, name: 'Milo Reyes', looked: 1, reviewed: null });
    const path = at(`glass/${opening!.glass}/review`);
    expect(await refused(noor!.post(path, { words: 'Right' }))).toBe('403 not-allowed');
    expect(await refused(milo!.post(path, { words: 'Right' }))).toBe('403 not-allowed');
    // Now on the ward, and as a charge nurse: still not one's own.
    await ines!.enter('add-staff-member', { staff: stranger, name: 'Milo Reyes', role: 'charge-nurse' });
    const again = world.browser();
    await again.signIn(stranger);
    expect(await refused(again.post(path, { words: 'Right' }))).toBe('403 own-glass');
    expect((await ines!.post(path, { words: 'Called for: spoken with both' })).status).toBe(204);
    expect(await refused(rafa!.post(path, { words: 'Also seen' }))).toBe('409 conflict');
    expect((await openings())[0]!.reviewed).toMatchObject({
      by: 'Ines Amaral',
      words: 'Called for: spoken with both',
    });
    expect(await refused(ines!.post(at('glass/none/review'), { words: 'Right' }))).toBe('404 no-such-glass');
    await ines!.enter('change-staff-member', { staff: stranger, active: false });
  });

  it('given the hour is over, when the stay is asked for, then it is shut', async () => {
    accessClock.at += HOUR;
    const again = world.browser();
    await again.signIn(stranger);
    expect(await refused(again.get(at('stays/stay-1')))).toBe('403 not-on-this-ward');
    for (const [who, client] of [
      ['ines', ines],
      ['noor', noor],
      ['rafa', rafa],
      ['ada', ada],
    ] as const)
      expect((await client!.signIn(who, passwordOf(who))).status).toBe(200);
  });
});

describe('PRIVACY-4 one stay to hand over', () => {
  it('given a stay, when it is exported, then it is a file with an opaque name that no cache keeps, and the export is noted', async () => {
    const answer = await fetch(`${world.footboard.url}${at('stays/stay-1/export')}`, {
      headers: { cookie: rafa!.cookie },
    });
    expect(answer.headers.get('content-disposition')).toBe('attachment; filename="footboard-stay-1.json"');
    expect(answer.headers.get('cache-control')).toBe('no-store');
    expect((await lines('?stay=stay-1')).find(({ what }) => what === 'export-stay')).toMatchObject({
      name: 'Rafa Otero',
    });
  });

  it('given the document alone, when every link is worked out again from it, then each holds, and a changed letter breaks it', async () => {
    await noor!.enter('record-trigger', { stay: 'stay-1', kind: 'faint', note: 'Grey in the face' });
    const handed = await handedOver('stay-1');
    expect(handed.identity?.name).toBe('Rosa Pinto');
    expect(Object.values(handed.texts)).toContain('Grey in the face');
    expect(handed.entries.map(({ type }) => type)).toEqual(
      expect.arrayContaining(['stay-begun', 'trigger-recorded']),
    );
    expect(handed.entries.at(-1)).toMatchObject({
      author: { staff: 'noor', role: 'nurse', name: 'Noor Haddad' },
    });
    expect(handed.entries.at(-1)!.words).toContain('Grey in the face');
    expect(handed.entries.filter((one) => !holds(handed, one))).toEqual([]);
    const [one] = handed.entries;
    expect(holds(handed, { ...one!, payload: one!.payload.replace('bed-1A', 'bed-1B') })).toBe(false);
    expect(holds(handed, { ...one!, author: { ...one!.author, role: 'nurse' } })).toBe(false);
    const { position, chain } = handed.anchor;
    const verified = await rafa!.get(`/api/verify/${WARD}?position=${position}&chain=${chain}`);
    expect(verified.body['faults']).toEqual([]);
  });

  it('given a stay of another ward or none, when it is exported, then there is no such stay; no other role gets one', async () => {
    expect(await refused(rafa!.get(at('stays/stay-404/export')))).toBe('404 no-such-stay');
    expect(await refused(ines!.get(at('stays/stay-1/export')))).toBe('403 not-allowed');
    expect(await refused(rafa!.get('/api/wards/rowan/stays/stay-1/export'))).toBe('403 not-on-this-ward');
  });
});

describe('PRIVACY-5 erasure', () => {
  const because = { reason: 'asked-by-person', words: 'Asked in writing on the ward' };

  it('given a person who is still in a bed, when they would be erased for whatever reason, then first the stay ends', async () => {
    for (const reason of ['asked-by-person', 'retention-over', 'entered-by-mistake'])
      expect(await refused(rafa!.post(at('stays/stay-1/erase'), { ...because, reason }))).toBe(
        '409 stay-not-ended',
      );
    expect((await handedOver('stay-1')).erased).toBe(false);
    expect((await noor!.get(at('stays/stay-1'))).body['identity']).not.toBeNull();
  });

  it('given a stay that has ended, when it is erased, then name and texts are gone everywhere, the entries stand and the log verifies', async () => {
    const before = await handedOver('stay-1');
    await ines!.enter('end-stay', { stay: 'stay-1', bed: 'bed-1A', to: 'home' });
    expect(await refused(ines!.post(at('stays/stay-1/erase'), because))).toBe('403 not-allowed');
    expect((await rafa!.post(at('stays/stay-1/erase'), because)).status).toBe(204);

    const page = stayPage.parse((await noor!.get(at('stays/stay-1'))).body);
    expect(page.identity).toBeNull();
    expect(new Set(Object.values(page.texts))).toEqual(new Set(['(text removed)']));
    expect(
      page.timeline.find(
        ({ type, words }) => type === 'trigger-recorded' && words.includes('(text removed)'),
      ),
    ).toBeDefined();
    const after = await handedOver('stay-1');
    expect([after.erased, after.identity]).toEqual([true, null]);
    for (const gone of ['Rosa', 'R-100', 'Grey in the face'])
      expect(JSON.stringify(after)).not.toContain(gone);
    // The very same bytes, with the very same hashes.
    expect(
      after.entries.slice(0, before.entries.length).map(({ payload, chain }) => [payload, chain]),
    ).toEqual(before.entries.map(({ payload, chain }) => [payload, chain]));
    expect(after.entries.filter((one) => !holds(after, one))).toEqual([]);
    const { position, chain } = before.anchor;
    const verified = await rafa!.get(`/api/verify/${WARD}?position=${position}&chain=${chain}`);
    expect(verified.body['faults']).toEqual([]);
    expect((await lines('?stay=stay-1')).find(({ what }) => what === 'erase-stay')).toMatchObject({
      name: 'Rafa Otero',
      words: 'asked by person: Asked in writing on the ward',
    });
  });

  it('given an erased stay, when a late entry has words for it, then they are refused and not kept; without words it is taken', async () => {
    const fall = { stay: 'stay-1', kind: 'fall' };
    const late = { occurred: { at: new Date(clock.at - MINUTE / 2).toISOString() } };
    const [before] = await texts();
    expect(await refused(noor!.send('record-trigger', { ...fall, note: 'Late words' }, late))).toBe(
      '409 text-erased',
    );
    expect(await texts()).toEqual([before]);
    await noor!.enter('record-trigger', fall, late);
  });
  const texts = () =>
    world.footboard.database.query(
      "select count(*)::bigint as n from text_kept where subject = 'stay/stay-1'",
    );

  it('given two wards with a stay of the same id, when one would be erased, then the other’s person is not', async () => {
    const first = await world.as(FIRST);
    await first.signIn(FIRST);
    await first.enter('begin-stay', { ...beginStay('stay-2'), bed: 'bed-9' }, {}, 'rowan');
    await ines!.enter('end-stay', { stay: 'stay-2', bed: 'bed-1B', to: 'home' });
    expect(await refused(rafa!.post(at('stays/stay-2/erase'), because))).toBe('409 conflict');
    expect((await handedOver('stay-2')).erased).toBe(false);
  });
});

describe('PRIVACY-6 what is kept', () => {
  it('given thirty days, when a stay ended longer ago, then it is listed with whether it was erased, and nothing is erased by itself', async () => {
    const kept = async () => retentionPage.parse((await rafa!.get(at('retention'))).body);
    expect(await kept()).toEqual({ keepDays: 30, over: [] });
    const ended = clock.at;
    clock.at += 30 * 24 * HOUR;
    expect((await kept()).over).toEqual([]);
    clock.at += 1;
    expect((await kept()).over).toEqual([
      { stay: 'stay-1', ended, erased: true },
      { stay: 'stay-2', ended, erased: false },
    ]);
    expect((await handedOver('stay-2')).identity?.name).toBe('Rosa Pinto');
    expect(await refused(ines!.get(at('retention')))).toBe('403 not-allowed');
  });
});

/** As `howToVerify` of the document says, written here anew and from nothing else. */
function holds(document: StayExport, entry: StayExport['entries'][number]): boolean {
  const sha = (...parts: (string | Buffer)[]) =>
    parts.reduce((hash, part) => hash.update(part), createHash('sha256')).digest('hex');
  const fields = [
    entry.position,
    document.ward.ward,
    entry.stream,
    entry.version,
    entry.id,
    entry.type,
    entry.schemaVersion,
    entry.payloadHash,
    entry.occurred,
    entry.precision,
    entry.entered,
    entry.enteredOffsetMinutes,
    entry.recorded,
    entry.author.staff,
    entry.author.role,
    entry.source,
    entry.commandId,
  ].map((field) => `${Buffer.byteLength(String(field))}:${field}`);
  return (
    sha(entry.payload) === entry.payloadHash &&
    sha(Buffer.from(entry.previous, 'hex'), fields.join('')) === entry.chain
  );
}
