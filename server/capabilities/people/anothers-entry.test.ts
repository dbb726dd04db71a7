import { describe, expect, it } from 'vitest';
import type { DeviceId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { Gate } from '../../access/gate.ts';
import { NOBODY } from '../../access/identity.ts';
import type { Identity, KnownPerson } from '../../access/identity.ts';
import { accountsPolicy } from './author-policy.ts';

const ALDER = 'alder' as WardId;
const nurse = { role: 'nurse', active: true, standing: 'own', name: { ref: 'n' } };
const ward = {
  ward: ALDER,
  staff: new Map([
    ['ada', nurse],
    ['noor', nurse],
  ]),
} as unknown as WardState;
const noor: KnownPerson = {
  account: 'a2',
  staff: 'noor' as StaffId,
  wide: false,
  via: 'session',
  session: 's2',
  until: 0,
};
const shared = { device: 'd1' as DeviceId, kind: 'shared', ward: ALDER, level: 'whole' } as const;
const policy = accountsPolicy(new Gate({ open: async () => null }));
const said = (more: Partial<Identity>, command: string) =>
  policy.authorOf({ ...NOBODY, person: noor, ...more }, command, ALDER, ward);
const ada = 'ada' as StaffId;

describe("another person's entry that waited on a device", () => {
  it('is not taken for that of whoever has signed in since: it asks for its author', async () => {
    for (const command of ['end-hold', 'record-session', 'place-hold']) {
      expect(await said({ claimed: ada }, command)).toMatchObject({
        problem: { type: '/problems/sign-in-first', status: 401 },
      });
    }
  });

  it('goes for the person signed in when it names them, or nobody', async () => {
    expect(await said({ claimed: noor.staff }, 'end-hold')).toMatchObject({ author: { staff: 'noor' } });
    expect(await said({ claimed: null }, 'end-hold')).toMatchObject({ author: { staff: 'noor' } });
  });

  it('that only raises help is recorded unconfirmed on a shared device, whoever signs there now', async () => {
    expect(await said({ claimed: ada, device: shared }, 'place-hold')).toEqual({
      author: { staff: 'ada', role: 'aide' },
      entitled: 'nurse',
      adds: { unconfirmed: true },
    });
    expect(await said({ claimed: ada, device: shared }, 'end-hold')).toMatchObject({
      problem: { type: '/problems/sign-in-first' },
    });
  });

  it("is not vouched for by another person's session that ran out", async () => {
    expect(await said({ claimed: ada, ranOut: true }, 'place-hold')).toMatchObject({
      problem: { type: '/problems/sign-in-first' },
    });
  });

  it('is answered from what was stored for its author', () => {
    expect(policy.claimed({ ...NOBODY, person: noor, claimed: ada })).toBe('ada');
  });
});
