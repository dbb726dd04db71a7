/** Entries that wait for a signature, from a shared device to the timeline, over real HTTP with sign-in on. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EventId } from '@footboard/shared/kernel/ids';
import { ownEntries, pairingBegun } from '@footboard/shared/wire/access';
import { boardPage, stayPage } from '@footboard/shared/wire/http';
import { check } from '@footboard/server/capabilities/given.testkit';
import { openAccessWorld, staffWith } from './access-kit.ts';
import type { AccessWorld, Client, StaffName } from './access-kit.ts';
import { WARD, asProblem, aSession, beginStay } from './http-kit.ts';
import type { Sent } from './http-kit.ts';

let world: AccessWorld;
let phone: Client;
const PATH = `/api/wards/${WARD}/own-entries`;
const codeOf = (sent: Sent): string => `${sent.status} ${asProblem(sent).type.slice('/problems/'.length)}`;
const waitingFor = async (who: StaffName | Client) =>
  ownEntries.parse((await (typeof who === 'string' ? await world.as(who) : who).get(PATH)).body);
const lineOf = async (event: EventId) => {
  const { body } = await (await world.as('noor')).get(`/api/wards/${WARD}/stays/s1`);
  return stayPage.parse(body).timeline.find((line) => line.event === event)!;
};
const rowOf = async () => {
  const { body } = await (await world.as('noor')).get(`/api/wards/${WARD}/board`);
  return boardPage.parse(body).board.beds.find((bed) => bed.stay?.stay === 's1')!.stay!;
};
/** Entered on the ward's own device, with a name chosen and no code typed. */
const claims = async (who: StaffName, name: string, data: object): Promise<EventId> => {
  const sent = await phone.enter(name, data, {}, WARD, { 'x-footboard-staff': who });
  return sent.events[0]!.id;
};

beforeAll(async () => {
  world = await openAccessWorld({ limits: 'off' });
  const noor = await world.as('noor');
  await noor.enter('begin-stay', beginStay('s1'));
  phone = world.browser();
  const { code, poll } = pairingBegun.parse((await phone.post('/api/pairings', { kind: 'shared' })).body);
  const request = { code, kind: 'shared', level: 'whole', place: 'bay 1' };
  await (await world.as('ines')).post(`/api/wards/${WARD}/devices`, request);
  await phone.post('/api/pairings/claim', { poll });
}, 120_000);
afterAll(() => world?.close());

describe('an entry under a name that nobody had checked', () => {
  let checked: EventId;
  beforeAll(async () => {
    checked = await claims('noor', 'record-assessment', check('s1', 'walk', Date.now()));
    await claims('noor', 'record-trigger', { stay: 's1', kind: 'new-symptom', note: 'pale at the window' });
  });

  it('CLAIMED-1 clears nothing on the board, and waits for the person it names alone', async () => {
    expect((await rowOf()).tier.notch).toBeNull();
    const { unconfirmed, toCosign } = await waitingFor('noor');
    expect(unconfirmed.map(({ words }) => words)).toEqual([
      'Trigger: new symptom. pale at the window',
      'Staged check (full): cleared up to walk',
    ]);
    expect(unconfirmed[1]).toMatchObject({ stay: 's1', event: checked });
    expect(toCosign).toEqual([]);
    for (const who of ['ada', 'theo', 'ines'] as const) {
      expect((await waitingFor(who)).unconfirmed).toEqual([]);
    }
  });

  it('CLAIMED-2 is confirmed by them, signed in; nobody else, and not from the device', async () => {
    const data = { stay: 's1', event: checked };
    for (const who of ['theo', 'ines', 'ada'] as const) {
      expect(codeOf(await (await world.as(who)).send('confirm-entry', data))).toBe('422 not-your-entry');
    }
    const claimed = await phone.send('confirm-entry', data, {}, WARD, { 'x-footboard-staff': 'noor' });
    expect(codeOf(claimed)).toBe('401 sign-in-first');
    expect((await lineOf(checked)).confirmation).toEqual({ state: 'unconfirmed', by: null, at: null });

    const noor = await world.as('noor');
    await noor.enter('confirm-entry', data);
    expect((await lineOf(checked)).confirmation).toEqual({
      state: 'confirmed',
      by: { staff: 'noor', role: 'nurse', name: 'Noor Haddad' },
      at: expect.any(Number),
    });
    expect((await waitingFor('noor')).unconfirmed.map(({ words }) => words)).toEqual([
      'Trigger: new symptom. pale at the window',
    ]);
    expect(codeOf(await noor.send('confirm-entry', data))).toBe('422 already-confirmed');
  });

  it('CLAIMED-3 confirmed, it counts once nothing after it is open, and asks for a look', async () => {
    // The symptom came after the check and is open: the board stays where it was.
    const before = await rowOf();
    expect(before.tier.notch ?? 0).toBe(0);
    expect(before.trust.conflicts.map(({ words }) => words)).toContainEqual(
      expect.stringMatching(/^An entry confirmed, and something .* still open/),
    );
    const noor = await world.as('noor');
    const [symptom] = (await waitingFor('noor')).unconfirmed;
    await noor.enter('make-retraction', { stay: 's1', target: symptom!.event, reason: 'wrong-person' });
    const after = await rowOf();
    expect(after.tier).toMatchObject({ word: 'Walk', by: { staff: 'noor', role: 'nurse' } });
    expect(after.trust.state).toBe('re-check');
    // Withdrawn, it waits for nobody.
    expect((await waitingFor('noor')).unconfirmed).toEqual([]);
  });
});

describe('an entry of agency staff', () => {
  const sol = async () => world.as('sol' as StaffName);
  let walked: EventId;
  beforeAll(async () => {
    const member = { staff: 'sol', name: 'Sol Weber', role: 'nurse', standing: 'agency' };
    await (await world.as('ines')).enter('add-staff-member', member);
    await world.invited('sol', 'Sol Weber');
    const sent = await (await sol()).enter('record-session', aSession('s1', new Date().toISOString()));
    walked = sent.events[0]!.id;
  });

  it('COSIGN-1 counts at once, and waits for a nurse, therapist or charge nurse of the ward’s own', async () => {
    expect((await lineOf(walked)).cosign).toEqual({ kind: 'agency', state: 'waiting', by: null, at: null });
    for (const who of ['noor', 'theo', 'ines'] as const) {
      expect((await waitingFor(who)).toCosign).toMatchObject([
        {
          stay: 's1',
          event: walked,
          words: 'Session done: walk (20 m)',
          by: { staff: 'sol', name: 'Sol Weber', role: 'nurse' },
        },
      ]);
    }
    for (const role of ['aide', 'manager', 'records', 'administrator'] as const) {
      expect(await waitingFor(staffWith(role))).toEqual({ unconfirmed: [], toCosign: [], disagreeing: [] });
    }
    expect(await waitingFor(await sol())).toEqual({ unconfirmed: [], toCosign: [], disagreeing: [] });
  });

  it('COSIGN-1 is signed by somebody else who is qualified, once', async () => {
    const data = { stay: 's1', event: walked };
    expect(codeOf(await (await sol()).send('cosign-entry', data))).toBe('422 cosign-by-another');
    expect((await (await world.as('ada')).send('cosign-entry', data)).status).toBe(403);
    const { version: _v, ...before } = await rowOf();
    await (await world.as('theo')).enter('cosign-entry', data);
    const { version: _w, ...after } = await rowOf();
    expect(after.plan).toEqual(before.plan);
    expect((await lineOf(walked)).cosign).toMatchObject({ state: 'signed', by: { name: 'Theo Brandt' } });
    expect((await waitingFor('noor')).toCosign).toEqual([]);
    expect(codeOf(await (await world.as('noor')).send('cosign-entry', data))).toBe('422 already-cosigned');
  });
});

describe('the list of what waits for a signature', () => {
  it('is for somebody of the ward: not for a device by itself, nor for a name that is only claimed', async () => {
    expect(codeOf(await phone.get(PATH))).toBe('401 sign-in-first');
    expect(codeOf(await phone.get(PATH, { 'x-footboard-staff': 'noor' }))).toBe('401 sign-in-first');
    expect(codeOf(await world.browser().get(PATH))).toBe('401 sign-in-first');
  });
});

describe('what walls show of a person', () => {
  it('is said by a nurse and stands in the row', async () => {
    expect((await rowOf()).wall).toBe('as-ward');
    const data = { stay: 's1', showing: 'nothing' };
    expect((await (await world.as('ada')).send('set-wall-showing', data)).status).toBe(403);
    await (await world.as('noor')).enter('set-wall-showing', data);
    expect((await rowOf()).wall).toBe('nothing');
  });
});
