import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { StayId } from '@footboard/shared/kernel/ids';
import {
  healthPage,
  protocolsInForce,
  rulesInForce,
  totalsPage,
  verifyPage,
} from '@footboard/shared/wire/documents';
import { boardPage, huddlePage, staffList, stayPage, wardList } from '@footboard/shared/wire/http';
import { roundActs, roundPage } from '@footboard/shared/wire/round';
import { READS } from '@footboard/shared/wire/routes';
import { StillClock, WARD, aSession, asProblem, beginStay, openWard } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

const at = (time: string) => Date.parse(`2026-11-25T${time}:00Z`);
const clock = new StillClock(at('06:00'));
let ward: Ward;
let beforeFall: number;

beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('begin-stay', { ...beginStay('stay-1'), usual: { moves: 'walks', transfers: 'alone' } });
  clock.at = at('09:00');
  await ward.enter(
    'record-session',
    { ...aSession('stay-1', '2026-11-25T08:30:00Z'), said: 'my knee is better' },
    'ada',
  );
  beforeFall = await ward.footboard.log.head(WARD as never);
  clock.at = at('09:30');
  await ward.enter('record-trigger', { stay: 'stay-1', kind: 'fall', note: 'slipped by the window' }, 'ada');
  clock.at = at('10:00');
});
afterAll(() => ward.footboard.close());

const headersOf = async (path: string) => (await fetch(`${ward.footboard.url}${path}`)).headers;

/** Something done by the list of the round, so that there is a list to look at again. */
async function actOfRound(): Promise<string> {
  const { seen } = roundPage.parse((await ward.get(`/api/wards/${WARD}/round`)).body);
  const notDone = { outcome: 'not-done', notDone: { group: 'bad-moment' }, occasion: 'planned' };
  const session = { ...notDone, activities: [], startedAt: new Date(clock.at).toISOString(), events: [] };
  await ward.enter('record-session', { stay: 'stay-1', session, list: seen }, 'ada');
  const acts = async () => roundActs.parse((await ward.get(`/api/wards/${WARD}/round/acts`)).body).acts;
  await expect.poll(async () => (await acts()).length).toBe(1);
  return (await acts())[0]!.event;
}

describe('queries', () => {
  it('list the wards, and whether data is invented or storage for trial', async () => {
    const { body } = await ward.get('/api/wards');
    expect(wardList.parse(body)).toEqual({
      wards: [{ ward: WARD, name: 'Alder', zone: 'Europe/Lisbon', beds: 3 }],
      demo: false,
      trialStorage: true,
      open: true,
    });
  });

  it('show the board as screens have it', async () => {
    const page = boardPage.parse((await ward.get(`/api/wards/${WARD}/board`)).body);
    expect(page.p).toBe(await ward.footboard.log.head(WARD as never));
    expect(page.board.beds.map((bed) => `${bed.label} ${bed.state}`)).toEqual([
      '1A occupied',
      '1B empty',
      '2A empty',
    ]);
  });

  it('show the board as of an earlier position and instant', async () => {
    const asked = `p=${beforeFall}&at=2026-11-25T09:15:00Z`;
    const then = boardPage.parse((await ward.get(`/api/wards/${WARD}/board?${asked}`)).body);
    const now = boardPage.parse((await ward.get(`/api/wards/${WARD}/board`)).body);
    const triggers = (page: typeof then) =>
      page.board.beds[0]!.stay!.trust.openTriggers.map((trigger) => trigger.kind);
    expect(triggers(then)).not.toContain('fall');
    expect(triggers(now)).toContain('fall');
    expect(then).toMatchObject({ p: beforeFall, t: at('09:15') });
  });

  it('give the staff by name from the vault', async () => {
    const { staff } = staffList.parse((await ward.get(`/api/wards/${WARD}/staff`)).body);
    expect(staff.map((one) => `${one.name}, ${one.role}`)).toEqual([
      'Ada Lund, aide',
      'Ines Amaral, charge-nurse',
      'Noor Haddad, nurse',
    ]);
  });

  it('give a stay with the person, the texts, and every entry in plain words', async () => {
    const page = stayPage.parse((await ward.get(`/api/wards/${WARD}/stays/stay-1`)).body);
    expect(page.erased).toBe(false);
    expect(page.identity).toEqual({ name: 'Rosa Pinto', recordNumber: 'R-100', born: '1941-03-09' });
    expect(page.bed?.label).toBe('1A');
    expect(Object.values(page.texts).toSorted()).toEqual(['my knee is better', 'slipped by the window']);
    const lines = page.timeline.map((line) => `${line.author.name}: ${line.words}`);
    expect(lines).toContain('Ada Lund: Trigger: fall. slipped by the window');
    expect(lines.some((line) => line.startsWith('Ines Amaral: Arrived in bed 1A'))).toBe(true);
  });

  it('give the stay without name and texts once they were erased, its facts still whole', async () => {
    await ward.enter('begin-stay', { ...beginStay('erased', '2A'), identity: { name: 'Bruno Reis' } });
    await ward.enter('record-trigger', { stay: 'erased', kind: 'faint', note: 'pale' }, 'ada');
    await ward.footboard.vault.destroyKey('stay/erased');
    const page = stayPage.parse((await ward.get(`/api/wards/${WARD}/stays/erased`)).body);
    expect(page.erased).toBe(true);
    expect(page.identity).toBeNull();
    expect(Object.values(page.texts)).toEqual(['(text removed)']);
    expect(page.timeline.map((line) => line.words)).toContain('Trigger: faint. (text removed)');
    const sent = await ward.send('record-trigger', { stay: 'erased', kind: 'fall', note: 'more' }, 'ada');
    expect(asProblem(sent)).toMatchObject({ type: '/problems/text-erased', status: 409 });
    const { faults } = verifyPage.parse((await ward.get(`/api/verify/${WARD}`)).body);
    expect(faults).toEqual([]);
  });

  it('speak the huddle through', async () => {
    const page = huddlePage.parse((await ward.get(`/api/wards/${WARD}/huddle`)).body);
    expect(page.totals.occupied + page.totals.empty + page.totals.away).toBe(3);
    expect(page.at).toBe(at('10:00'));
  });

  it('total a ward day by its own hours, not by midnight', async () => {
    // The default ward day runs from 07:00; 06:00 still belongs to the day begun on the 24th.
    const today = totalsPage.parse((await ward.get(`/api/wards/${WARD}/totals`)).body);
    expect(today).toMatchObject({ day: '2026-11-25', from: at('07:00') });
    const stay = today.stays.find((one) => one.stay === ('stay-1' as StayId));
    expect(stay).toMatchObject({ recorded: true, sessions: { done: 1 }, metres: 20 });
    const yesterday = totalsPage.parse((await ward.get(`/api/wards/${WARD}/totals?day=2026-11-24`)).body);
    expect(yesterday).toMatchObject({ day: '2026-11-24', to: at('07:00') });
    expect(yesterday.stays.find((one) => one.stay === ('stay-1' as StayId))?.recorded ?? false).toBe(false);
  });

  it('give the documents in force, each limit with its source', async () => {
    const rules = rulesInForce.parse((await ward.get(`/api/wards/${WARD}/rules`)).body);
    expect(rules.published).toBe(false);
    expect(rules.document.start.systolicBelow.source).not.toBe('');
    const protocols = protocolsInForce.parse((await ward.get(`/api/wards/${WARD}/protocols`)).body);
    expect(protocols.documents).toHaveLength(1);
    expect(protocols.documents[0]).toMatchObject(protocols.inForce);
  });

  it('verify the log, and find it cut short against an anchor from further on', async () => {
    const whole = verifyPage.parse((await ward.get(`/api/verify/${WARD}`)).body);
    expect(whole.faults).toEqual([]);
    expect(whole.events).toBe(whole.head.position);
    const beyond = `position=${whole.head.position + 1}&chain=${whole.head.chain}`;
    const cut = verifyPage.parse((await ward.get(`/api/verify/${WARD}?${beyond}`)).body);
    expect(cut.faults.length).toBeGreaterThan(0);
  });

  it('say live and ready', async () => {
    expect(healthPage.parse((await ward.get('/health/live')).body)).toEqual({ status: 'live' });
    expect(healthPage.parse((await ward.get('/health/ready')).body)).toEqual({ status: 'ready' });
  });

  it('HTTP-2 are all in the API document, and all of those answer', async () => {
    const { body } = await ward.get('/api/openapi.json');
    const paths = Object.keys(body['paths'] as object);
    const named = { '{ward}': WARD, '{stay}': 'stay-1', '{code}': 'conflict', '{event}': await actOfRound() };
    for (const { path, answer: shape } of READS) {
      expect(paths).toContain(path);
      const asked = Object.entries(named).reduce((so, [name, value]) => so.replace(name, value), path);
      const answer = await ward.get(asked);
      expect({ path, status: answer.status }).toEqual({ path, status: 200 });
      // What has no shape is no JSON: the sheet on paper.
      const fault = shape ? shape.safeParse(answer.body).error : answer.type.replace('application/pdf', '');
      expect({ path, fault: fault || null }).toEqual({ path, fault: null });
    }
  });
});

describe('what goes with every answer', () => {
  it('HTTP-4 keeps names out of caches', async () => {
    expect((await headersOf(`/api/wards/${WARD}/staff`)).get('cache-control')).toBe('no-store');
    expect((await headersOf('/api/nothing')).get('cache-control')).toBe('no-store');
  });

  it('lets scripts come from here only, and nobody frame the board', async () => {
    const headers = await headersOf('/health/live');
    const policy = headers.get('content-security-policy') ?? '';
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    // What a camera's code reader is compiled to may run (wasm-unsafe-eval); text as script or style may not.
    expect(policy).not.toMatch(/'unsafe-/);
    expect(headers.get('x-powered-by')).toBeNull();
  });

  it('lets no other origin read it', async () => {
    const answer = await fetch(`${ward.footboard.url}/api/wards`, {
      headers: { origin: 'https://elsewhere.example' },
    });
    expect(answer.headers.get('access-control-allow-origin')).toBeNull();
  });
});

describe('the screens (built by npm install)', () => {
  it('are one page at every address of their own, never kept, so that an update reaches every wall', async () => {
    for (const path of ['/', '/set-up', `/wards/${WARD}/wall`]) {
      const answer = await fetch(`${ward.footboard.url}${path}`);
      expect({ path, status: answer.status, kept: answer.headers.get('cache-control') }).toEqual({
        path,
        status: 200,
        kept: 'no-store',
      });
      expect(await answer.text()).toContain('<div id="app"');
    }
  });

  it('have scripts and styles named by their content, kept for good', async () => {
    const page = await (await fetch(ward.footboard.url)).text();
    const files = [...page.matchAll(/(?:src|href)="(\/assets\/[^"]+)"/g)].map((match) => match[1]!);
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) expect((await headersOf(file)).get('cache-control')).toContain('immutable');
  });

  it('miss a file rather than send the page in its place', async () => {
    expect(asProblem(await ward.get('/assets/not-there.js')).status).toBe(404);
    expect(asProblem(await ward.get('/../package.json')).status).toBe(404);
  });
});

describe('readiness', () => {
  it('HTTP-3 is a 503 problem while a board trails its log', async () => {
    ward.footboard.boards.pauseProjector(WARD as never);
    try {
      const entered = await ward.enter('record-trigger', { stay: 'stay-1', kind: 'faint' }, 'ada');
      expect(entered.shown).toBe(false);
      clock.at += 60_000;
      expect(asProblem(await ward.get('/health/ready'))).toMatchObject({
        status: 503,
        type: '/problems/not-ready',
        detail: expect.stringContaining(WARD),
      });
      expect((await ward.get('/health/live')).status).toBe(200);
    } finally {
      ward.footboard.boards.resumeProjector(WARD as never);
    }
  });
});
