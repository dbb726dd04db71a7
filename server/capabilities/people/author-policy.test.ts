import { describe, expect, it } from 'vitest';
import type { Role } from '@footboard/shared/kernel/author';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { FIRST_RUN, staffListPolicy } from './author-policy.ts';

const wardOf = (...staff: readonly [id: string, role: Role, active?: boolean][]): WardState => ({
  ward: 'w' as WardId,
  name: 'W',
  zone: 'Europe/Berlin',
  wardDayFrom: '07:00',
  nightFrom: '21:00',
  nightTo: '07:00',
  beds: [],
  staff: new Map(
    staff.map(([id, role, active = true]) => [id as StaffId, { role, active, name: { ref: `name-${id}` } }]),
  ) as unknown as WardState['staff'],
  protocols: [],
  rules: null,
});
const who = (staff: string | null, command: string, ward: WardState | null) =>
  staffListPolicy.authorOf({ staff }, command, ward);
const refused = (code: string) => ({ problem: { type: `/problems/${code}` } });

describe('the author by the staff list', () => {
  const ward = wardOf(['ines', 'charge-nurse'], ['ada', 'aide'], ['leif', 'nurse', false]);

  it('is the member the request names, in the role the list gives', () => {
    expect(who('ada', 'record-session', ward)).toEqual({ staff: 'ada', role: 'aide' });
  });
  it('is nobody when nobody, a stranger, or somebody who left is named', () => {
    expect(who(null, 'record-session', ward)).toMatchObject(refused('no-author'));
    expect(who('eve', 'record-session', ward)).toMatchObject(refused('unknown-author'));
    expect(who('leif', 'record-session', ward)).toMatchObject(refused('inactive-author'));
  });
  it('is never the first-run author once somebody keeps the staff list', () => {
    expect(who(null, 'add-staff-member', ward)).toMatchObject(refused('no-author'));
    expect(who('first-run', 'add-staff-member', ward)).toMatchObject(refused('unknown-author'));
  });
});

describe('the first run', () => {
  it('sets a ward up and adds its first staff', () => {
    expect(who(null, 'set-up-ward', null)).toEqual(FIRST_RUN);
    expect(who(null, 'add-staff-member', wardOf())).toEqual(FIRST_RUN);
  });
  it('may do nothing else', () => {
    expect(who(null, 'record-session', wardOf())).toMatchObject(refused('no-author'));
    expect(who(null, 'change-ward', wardOf())).toMatchObject(refused('no-author'));
  });
  it('goes on while the list holds nobody who may add to it', () => {
    expect(who(null, 'add-staff-member', wardOf(['ada', 'aide']))).toEqual(FIRST_RUN);
    expect(who('ada', 'add-staff-member', wardOf(['ada', 'aide']))).toEqual(FIRST_RUN);
    expect(who('ada', 'record-session', wardOf(['ada', 'aide']))).toEqual({ staff: 'ada', role: 'aide' });
  });
  it('comes back when the last who could add to it is no longer active', () => {
    expect(who(null, 'add-staff-member', wardOf(['ines', 'charge-nurse', false]))).toEqual(FIRST_RUN);
  });
});
