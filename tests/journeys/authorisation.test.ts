/**
 * Every address, every entry and every live message, for everybody: the policy document is the only
 * thing that says who gets through, and an address that names no action of it fails here.
 */
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { role } from '@footboard/shared/kernel/author';
import type { WardId } from '@footboard/shared/kernel/ids';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { POLICY, WITHOUT_A_WARD, policyRow } from '@footboard/shared/capabilities/people/policy/document';
import type { Actor } from '@footboard/shared/capabilities/people/policy/document';
import { pairingBegun } from '@footboard/shared/wire/access';
import { SOCKET } from '@footboard/shared/wire/messages';
import type { Route } from '@footboard/shared/wire/route';
import { ROUTES } from '@footboard/shared/wire/routes';
import { fitting } from '../fuzz/from-schema.ts';
import { FIRST, openAccessWorld, staffWith } from './access-kit.ts';
import type { AccessWorld, Client } from './access-kit.ts';
import { WARD } from './http-kit.ts';
import type { Sent } from './http-kit.ts';
import { Screen } from './push-kit.ts';

/** Actors of the policy, and those it knows nothing of. */
type Who = Actor | 'wide' | 'outsider' | 'nobody';
const EVERYBODY: readonly Who[] = [...role.options, 'device', 'wall', 'wide', 'outsider', 'nobody'];

let world: AccessWorld;
const clients = new Map<Who, Client>();
const client = (who: Who): Client => clients.get(who)!;

beforeAll(async () => {
  world = await openAccessWorld({ limits: 'off' });
  const first = await world.as(FIRST);
  const paired = async (kind: 'wall' | 'shared') => {
    const browser = world.browser();
    const { code, poll } = pairingBegun.parse((await browser.post('/api/pairings', { kind })).body);
    // The most a wall may have: what its level leaves out is tested with the screens.
    const asked = { code, kind, level: kind === 'wall' ? 'initials' : 'whole', place: 'the corridor' };
    await first.post(`/api/wards/${WARD}/devices`, asked);
    await browser.post('/api/pairings/claim', { poll });
    return browser;
  };
  for (const one of role.options) clients.set(one, await world.as(staffWith(one)));
  // A nurse, but of the ward next door.
  const beds = [{ bed: 'bed-9Z', label: '9Z', bay: 'Bay 9' }];
  await first.enter('set-up-ward', { name: 'Birch', zone: 'Europe/Lisbon', beds }, {}, 'birch');
  await first.enter('add-staff-member', { staff: 'olga', name: 'Olga Fern', role: 'nurse' }, {}, 'birch');
  await world.invited('olga', 'Olga Fern', { ward: 'birch' });
  clients.set('outsider', await world.as('olga' as never));
  clients.set('wide', first);
  clients.set('wall', await paired('wall'));
  clients.set('device', await paired('shared'));
  clients.set('nobody', world.browser());
});
afterAll(() => world?.close());

/** What the policy document says, and nothing else. */
function mayBy(who: Who, action: string): boolean {
  const actors = policyRow(action)!.actors;
  if (who === 'wide') return actors.includes('administrator');
  if (who === 'outsider' || who === 'nobody') return false;
  return actors.includes(who);
}
/** Whether an answer is the gate's "no" (anything else came from behind it). */
const turnedAway = ({ status, body }: Sent): boolean =>
  (status === 401 || status === 403) &&
  ['sign-in-first', 'not-allowed', 'not-on-this-ward', 'not-your-role'].some(
    (code) => body['type'] === `/problems/${code}`,
  );
const at = (path: string): string =>
  path.replace('{ward}', WARD).replace(/\{(stay|device|glass|account)\}/g, 'nothing-there');

const ask = (who: Who, { method, path }: Pick<Route, 'method' | 'path'>): Promise<Sent> =>
  method === 'get'
    ? client(who).get(at(path))
    : method === 'post'
      ? client(who).post(at(path), { not: 'complete' })
      : client(who).delete(at(path));

describe('every address', () => {
  it.each(ROUTES)('$method $path stands under $action of the policy', ({ action }) => {
    expect(policyRow(action) !== undefined || Object.hasOwn(WITHOUT_A_WARD, action)).toBe(true);
  });
  it('of the policy that is no entry and no live message has an address', () => {
    const served = new Set(ROUTES.map(({ action }) => action));
    const due = [
      ...POLICY.filter(({ kind }) => kind !== 'command' && kind !== 'live').map(({ action }) => action),
      ...Object.keys(WITHOUT_A_WARD),
    ];
    // Asked for as a part of another address: the board of then is the board with a time.
    expect(due.filter((action) => !served.has(action) && action !== 'read-board-then')).toEqual([]);
  });

  const ofAWard = ROUTES.filter(({ action }) => policyRow(action) !== undefined);
  it.each(ofAWard)('$method $path lets through whom $action names', async (route) => {
    const through: Who[] = [];
    for (const who of EVERYBODY) if (!turnedAway(await ask(who, route))) through.push(who);
    expect(through).toEqual(EVERYBODY.filter((who) => mayBy(who, route.action)));
  });

  it.each(ROUTES.filter(({ action }) => WITHOUT_A_WARD[action as never] === 'signed-in'))(
    '$method $path is for whoever has signed in',
    async (route) => {
      for (const who of ['nobody', 'wall', 'device'] as const) {
        expect([who, (await ask(who, route)).body['type']]).toEqual([who, '/problems/sign-in-first']);
      }
      expect((await ask('outsider', route)).body['type']).not.toBe('/problems/sign-in-first');
    },
  );
  it.each(ROUTES.filter(({ action }) => WITHOUT_A_WARD[action as never] === 'wide'))(
    '$method $path is for an administrator of the server',
    async (route) => {
      const through: Who[] = [];
      for (const who of EVERYBODY) if (!turnedAway(await ask(who, route))) through.push(who);
      expect(through).toEqual(['wide']);
    },
  );
  it('gives the board of another time only to whom read-board-then names', async () => {
    const through: Who[] = [];
    for (const who of EVERYBODY) {
      const sent = await client(who).get(`/api/wards/${WARD}/board?at=2026-11-25T10:00:00Z`);
      if (!turnedAway(sent)) through.push(who);
    }
    expect(through).toEqual(EVERYBODY.filter((who) => mayBy(who, 'read-board-then')));
  });
});

/** Values that get as far as the rules: whoever is turned away is turned away for the role. */
const sample = (name: string): unknown => {
  // A time zone is nothing that chance finds.
  if (name === 'set-up-ward') {
    return { name: 'Cedar', zone: 'Europe/Lisbon', beds: [{ bed: 'bed-1', label: '1', bay: 'Bay 1' }] };
  }
  const { data } = COMMAND_TYPES.get(name)!;
  const made = fc.sample(
    fitting(data, () => undefined),
    { numRuns: 400, seed: 7 },
  );
  const whole = made.find((one) => data.safeParse(one).success);
  if (whole === undefined) throw new Error(`no value found that fits ${name}`);
  return JSON.parse(JSON.stringify(whole));
};

describe('every entry', () => {
  it.each([...COMMAND_TYPES.keys()])('%s is taken only from whom the policy names', async (name) => {
    const data = sample(name);
    const through: Who[] = [];
    for (const who of EVERYBODY) if (!turnedAway(await client(who).send(name, data))) through.push(who);
    expect(through).toEqual(EVERYBODY.filter((who) => mayBy(who, name)));
  });
});

describe('every live message', () => {
  it('is of the policy document', () => {
    const fromScreens = ['join', 'leave', 'painted'].filter((name) => Object.hasOwn(SOCKET, name));
    expect(fromScreens).toHaveLength(POLICY.filter(({ kind }) => kind === 'live').length);
  });
  it('joins only whom the policy names', async () => {
    const through: Who[] = [];
    for (const who of EVERYBODY) {
      const screen = new Screen(WARD as WardId, world.footboard.url, {
        cookie: client(who).cookie,
        origin: world.footboard.url,
      });
      const { answer } = await screen.join();
      if (answer !== 'refused') through.push(who);
      screen.socket.disconnect();
    }
    expect(through).toEqual(EVERYBODY.filter((who) => mayBy(who, 'join-ward')));
  });
});
