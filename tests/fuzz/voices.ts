/** Everybody who may knock: nobody, each role signed in, a wall, a shared device, a claimed name, a signing window. */
import type { Role } from '@footboard/shared/kernel/author';
import { pairingBegun } from '@footboard/shared/wire/access';
import { CODE, FIRST, STAFF, staffWith } from '../journeys/access-kit.ts';
import type { AccessWorld, Client, StaffName } from '../journeys/access-kit.ts';
import { WARD } from '../journeys/http-kit.ts';

export interface Voice {
  /** Headers sent along, unless an input brings its own. */
  headers(): Readonly<Record<string, string>>;
  /** Signs in again where an input signed it out. */
  renew(): Promise<void>;
}

export async function everybody(world: AccessWorld, here: string): Promise<Readonly<Record<string, Voice>>> {
  const of = (client: Client, renew: () => Promise<unknown>, more: Record<string, string> = {}): Voice => ({
    headers: () => ({ origin: here, ...(client.cookie ? { cookie: client.cookie } : {}), ...more }),
    renew: async () => void (await renew()),
  });
  const voices: Record<string, Voice> = {
    nobody: { headers: () => ({}), renew: async () => {} },
    'a foreign page': { headers: () => ({ origin: 'https://elsewhere.example' }), renew: async () => {} },
  };
  const roles = new Set<Role>(Object.values(STAFF).map(({ role }) => role));
  for (const role of roles) {
    const staff: StaffName = staffWith(role);
    const client = await world.as(staff);
    voices[role] = of(client, () => client.signIn(staff));
  }
  const first = await world.as(FIRST);
  voices['first administrator'] = of(first, () => first.signIn(FIRST));
  const wall = await paired(world, 'wall');
  voices['wall'] = of(wall, async () => {});
  const shared = await paired(world, 'shared');
  voices['shared device'] = of(shared, async () => {});
  voices['claimed nurse'] = of(shared, async () => {}, { 'x-footboard-staff': 'noor' });
  const signing = await paired(world, 'shared');
  const sign = () => signing.post('/api/signing', { staff: 'ada', code: CODE });
  await sign();
  voices['signing aide'] = of(signing, sign);
  return voices;
}

async function paired(world: AccessWorld, kind: 'wall' | 'shared'): Promise<Client> {
  const screen = world.browser();
  const { code, poll } = pairingBegun.parse((await screen.post('/api/pairings', { kind })).body);
  const keeper = await world.as(staffWith('charge-nurse'));
  const place = `corner of the ${kind}`;
  const level = kind === 'wall' ? 'bed-only' : 'whole';
  const approved = await keeper.post(`/api/wards/${WARD}/devices`, { code, kind, level, place });
  const claimed = await screen.post('/api/pairings/claim', { poll });
  if (approved.status !== 200 || claimed.body['state'] !== 'paired') throw new Error(`${kind} is not paired`);
  return screen;
}
