import { describe, expect, it } from 'vitest';
import type { Role, Standing } from '@footboard/shared/kernel/author';
import type { DeviceId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { accountsPolicy } from '../capabilities/people/author-policy.ts';
import { Gate } from './gate.ts';
import { NOBODY } from './identity.ts';
import type { Identity, KnownDevice, KnownPerson } from './identity.ts';
import type { GlassRecord } from './ports.ts';

const ALDER = 'alder' as WardId;
const BIRCH = 'birch' as WardId;
const ada = 'ada' as StaffId;

const wardWith = (role: Role | null, { active = true, standing = 'own' as Standing } = {}): WardState =>
  ({
    ward: ALDER,
    name: 'Alder',
    staff: new Map(role ? [[ada, { role, active, standing, name: { ref: 'n' } }]] : []),
  }) as unknown as WardState;

const person = (more: Partial<KnownPerson> = {}): KnownPerson => ({
  account: 'a1',
  staff: ada,
  wide: false,
  via: 'session',
  session: 's1',
  until: 0,
  ...more,
});
const device = (
  kind: 'wall' | 'shared',
  ward = ALDER,
  level: KnownDevice['level'] = 'bed-only',
): KnownDevice => ({
  device: 'd1' as DeviceId,
  kind,
  ward,
  level,
});
const who = (more: Partial<Identity>): Identity => ({ ...NOBODY, ...more });
const glassFor = (ward: WardId | null): GlassRecord | null =>
  ward && {
    glass: 'g1',
    ward,
    staff: ada,
    reason: 'emergency',
    words: 'called to bed 4',
    began: 0,
    ends: 1,
    reviewed: null,
  };
const gate = (opened: WardId | null = null) =>
  new Gate({ open: async (ward, staff) => (ward === opened && staff === ada ? glassFor(ward) : null) });
const ask = async (identity: Identity, action: string, ward: WardState | null, g = gate()) => {
  const passed = await g.on(identity, action, ALDER, ward);
  return 'pass' in passed
    ? `${passed.pass.actor} ${passed.pass.level}`
    : passed.problem.type.replace('/problems/', '');
};

describe('who gets through the gate of a ward', () => {
  it('is whoever the ward’s staff list gives a role that may', async () => {
    expect(await ask(who({ person: person() }), 'read-stay', wardWith('nurse'))).toBe('nurse whole');
    expect(await ask(who({ person: person() }), 'keep-accounts', wardWith('nurse'))).toBe('not-allowed');
    expect(await ask(who({ person: person() }), 'read-stay', wardWith('nurse', { active: false }))).toBe(
      'not-on-this-ward',
    );
    expect(await ask(who({ person: person() }), 'read-board', wardWith(null))).toBe('not-on-this-ward');
  });
  it('is nobody who has not signed in, whatever name they claim', async () => {
    expect(await ask(who({}), 'read-board', wardWith('nurse'))).toBe('sign-in-first');
    expect(await ask(who({ claimed: ada, ranOut: true }), 'read-board', wardWith('nurse'))).toBe(
      'sign-in-first',
    );
  });
  it('shows an administrator the place and not the patients', async () => {
    const wide = who({ person: person({ wide: true }) });
    expect(await ask(wide, 'read-board', wardWith(null))).toBe('administrator bed-only');
    expect(await ask(wide, 'read-stay', wardWith(null))).toBe('not-allowed');
    expect(await ask(wide, 'keep-accounts', wardWith(null))).toBe('administrator bed-only');
  });
  it('shows an administrator who is also a nurse of the ward what the nurse may see', async () => {
    expect(await ask(who({ person: person({ wide: true }) }), 'read-stay', wardWith('nurse'))).toBe(
      'nurse whole',
    );
  });
  it('lets a wall read the board of its own ward, at its level, and nothing else', async () => {
    const wall = who({ device: device('wall', ALDER, 'visitors') });
    expect(await ask(wall, 'read-board', wardWith('nurse'))).toBe('wall visitors');
    expect(await ask(wall, 'join-ward', wardWith('nurse'))).toBe('wall visitors');
    for (const action of ['read-stay', 'read-huddle', 'read-staff', 'record-trigger', 'list-devices']) {
      expect([action, await ask(wall, action, wardWith('nurse'))]).toEqual([action, 'not-allowed']);
    }
    const elsewhere = who({ device: device('wall', BIRCH) });
    expect(await ask(elsewhere, 'read-board', wardWith('nurse'))).toBe('not-on-this-ward');
  });
  it('lets a short code count on the ward of its device only', async () => {
    const signed = (ward: WardId) =>
      who({
        person: person({ via: 'signing', account: null, session: null }),
        device: device('shared', ward),
      });
    expect(await ask(signed(ALDER), 'read-stay', wardWith('nurse'))).toBe('nurse whole');
    expect(await ask(signed(BIRCH), 'read-stay', wardWith('nurse'))).toBe('not-on-this-ward');
  });
  it('lets a broken glass read and make safer, and nothing more', async () => {
    const identity = who({ person: person() });
    const opened = gate(ALDER);
    expect(await ask(identity, 'read-stay', wardWith(null), opened)).toBe('aide whole');
    expect(await ask(identity, 'place-hold', wardWith(null), opened)).toBe('aide whole');
    for (const action of [
      'record-session',
      'set-on-own',
      'export-stay',
      'read-access-log',
      'keep-accounts',
    ]) {
      expect([action, await ask(identity, action, wardWith(null), opened)]).toEqual([action, 'not-allowed']);
    }
    expect(await ask(identity, 'read-stay', wardWith(null), gate(BIRCH))).toBe('not-on-this-ward');
  });
});

describe('whose entry it is', () => {
  const policy = accountsPolicy(gate());
  const said = (identity: Identity, command: string, ward = wardWith('nurse')) =>
    policy.authorOf(identity, command, ALDER, ward);

  it('is the signed-in person’s, in the role of the ward’s list', async () => {
    expect(await said(who({ person: person() }), 'record-assessment')).toEqual({
      author: { staff: ada, role: 'nurse' },
      entitled: 'nurse',
      adds: {},
    });
  });
  it('waits for a second signature when the author is agency staff or a student', async () => {
    const ward = wardWith('nurse', { standing: 'agency' });
    expect(await said(who({ person: person() }), 'record-assessment', ward)).toMatchObject({
      author: { role: 'nurse' },
      adds: { cosign: 'agency' },
    });
  });
  it('stands as an aide’s, unconfirmed, when the name is only claimed on a device of the ward', async () => {
    const claimed = who({ claimed: ada, device: device('shared') });
    expect(await said(claimed, 'place-hold')).toEqual({
      author: { staff: ada, role: 'aide' },
      entitled: 'nurse',
      adds: { unconfirmed: true },
    });
    expect(await said(who({ claimed: ada, ranOut: true }), 'record-assessment')).toMatchObject({
      author: { role: 'aide' },
      adds: { unconfirmed: true },
    });
  });
  it('is refused when a claimed name would free, or comes from nowhere known', async () => {
    const first = { problem: { type: '/problems/sign-in-first', status: 401 } };
    expect(await said(who({ claimed: ada, device: device('shared') }), 'end-hold')).toMatchObject(first);
    expect(await said(who({ claimed: ada, device: device('shared') }), 'set-on-own')).toMatchObject(first);
    expect(await said(who({ claimed: ada }), 'place-hold')).toMatchObject(first);
    expect(await said(who({ claimed: ada, device: device('shared', BIRCH) }), 'place-hold')).toMatchObject(
      first,
    );
    expect(await said(who({ claimed: ada, device: device('wall') }), 'place-hold')).toMatchObject(first);
    expect(
      await said(who({ claimed: 'eve' as StaffId, device: device('shared') }), 'place-hold'),
    ).toMatchObject(first);
  });
});
