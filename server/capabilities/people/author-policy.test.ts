import { describe, expect, it } from 'vitest';
import type { Role } from '@footboard/shared/kernel/author';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { NOBODY } from '../../access/identity.ts';
import { FIRST_RUN, openPolicy } from './author-policy.ts';

const wardOf = (...staff: readonly [id: string, role: Role, active?: boolean][]): WardState => ({
  ward: 'w' as WardId,
  name: 'W',
  zone: 'Europe/Berlin',
  wardDayFrom: '07:00',
  nightFrom: '21:00',
  nightTo: '07:00',
  panel: { inches: 55, metres: 5 },
  units: { weight: 'kg', length: 'm' },
  language: 'en',
  beds: [],
  items: new Map(),
  lent: new Map(),
  borrowed: new Map(),
  givenBack: new Map(),
  carers: new Map(),
  peopleOn: new Map(),
  notExpected: new Map(),
  dayPlan: null,
  staff: new Map(
    staff.map(([id, role, active = true]) => [
      id as StaffId,
      { role, active, name: { ref: `name-${id}` }, standing: 'own' },
    ]),
  ) as unknown as WardState['staff'],
  protocols: [],
  rules: null,
});
const who = async (staff: string | null, command: string, ward: WardState | null) => {
  const claim = { ...NOBODY, access: 'open' as const, claimed: staff as StaffId | null };
  const said = await openPolicy.authorOf(claim, command, 'w' as WardId, ward);
  return 'problem' in said ? said : said.author;
};
const refused = (code: string) => ({ problem: { type: `/problems/${code}` } });

describe('with sign-in off, the author by the staff list', () => {
  const ward = wardOf(['ines', 'charge-nurse'], ['ada', 'aide'], ['leif', 'nurse', false]);

  it('is the member the request names, in the role the list gives', async () => {
    expect(await who('ada', 'record-session', ward)).toEqual({ staff: 'ada', role: 'aide' });
  });
  it('is nobody when nobody, a stranger, or somebody who left is named', async () => {
    expect(await who(null, 'record-session', ward)).toMatchObject(refused('no-author'));
    expect(await who('eve', 'record-session', ward)).toMatchObject(refused('unknown-author'));
    expect(await who('leif', 'record-session', ward)).toMatchObject(refused('inactive-author'));
  });
  it('is never the first-run author once somebody keeps the staff list', async () => {
    expect(await who(null, 'add-staff-member', ward)).toMatchObject(refused('no-author'));
    expect(await who('first-run', 'add-staff-member', ward)).toMatchObject(refused('unknown-author'));
  });
});

describe('with sign-in off, the first run', () => {
  it('sets a ward up and adds its first staff', async () => {
    expect(await who(null, 'set-up-ward', null)).toEqual(FIRST_RUN);
    expect(await who(null, 'add-staff-member', wardOf())).toEqual(FIRST_RUN);
  });
  it('may do nothing else', async () => {
    expect(await who(null, 'record-session', wardOf())).toMatchObject(refused('no-author'));
    expect(await who(null, 'change-ward', wardOf())).toMatchObject(refused('no-author'));
  });
  it('goes on while the list holds nobody who may add to it', async () => {
    expect(await who(null, 'add-staff-member', wardOf(['ada', 'aide']))).toEqual(FIRST_RUN);
    expect(await who('ada', 'add-staff-member', wardOf(['ada', 'aide']))).toEqual(FIRST_RUN);
    expect(await who('ada', 'record-session', wardOf(['ada', 'aide']))).toEqual({
      staff: 'ada',
      role: 'aide',
    });
  });
  it('comes back when the last who could add to it is no longer active', async () => {
    expect(await who(null, 'add-staff-member', wardOf(['ines', 'charge-nurse', false]))).toEqual(FIRST_RUN);
  });
});
