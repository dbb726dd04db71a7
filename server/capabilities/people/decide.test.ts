import { describe, it, expect } from 'vitest';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import * as commands from '@footboard/shared/capabilities/people/commands';
import { staffMemberChanged } from '@footboard/shared/capabilities/people/events';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { isQualified, role } from '@footboard/shared/kernel/author';
import { AIDE, CHARGE_NURSE, given, NURSE, STAFF } from '../given.testkit.ts';
import { refuseRole } from './policy.ts';

const by = CHARGE_NURSE;

describe('the staff list', () => {
  it('when someone is added, then the name is kept apart under their own key', () => {
    const entered = given().when(
      commands.addStaffMember,
      { staff: 'mira', name: 'Mira Oak', role: 'aide' },
      { by },
    );
    entered.appends([
      'staff-member-added',
      'ward/larch',
      { staff: 'mira', role: 'aide', name: { ref: expect.any(String) } },
    ]);
    entered.keeps(['staff/mira', 'Mira Oak']);
  });
  it('when an id is on the list already, then that is refused', () => {
    given()
      .when(commands.addStaffMember, { staff: 'nurse', name: 'Mira Oak', role: 'nurse' }, { by })
      .refuses('staff-known', '/staff');
  });
  it('when a role changes, then only that is recorded', () => {
    given()
      .when(commands.changeStaffMember, { staff: 'aide', role: 'nurse' }, { by })
      .appends(['staff-member-changed', 'ward/larch', { staff: 'aide', role: 'nurse' }]);
  });
  it('when someone unknown is changed, then that is refused', () => {
    given()
      .when(commands.changeStaffMember, { staff: 'nobody', active: false }, { by })
      .refuses('staff-unknown', '/staff');
  });
  it('when the entry already says so, then that is said', () => {
    given()
      .when(commands.changeStaffMember, { staff: 'aide', role: 'aide', active: true }, { by })
      .refuses('nothing-to-change');
  });
  it('when the last who may keep the list would go, then somebody must stay', () => {
    const out = (who: string) =>
      newEvent(staffMemberChanged, streamKey('ward', 'larch'), { staff: who as StaffId, active: false });
    const last = given(out('administrator'), out('manager'));
    last
      .when(commands.changeStaffMember, { staff: 'charge-nurse', active: false }, { by })
      .refuses('last-to-keep-list', '/active');
    last
      .when(commands.changeStaffMember, { staff: 'charge-nurse', role: 'nurse' }, { by })
      .refuses('last-to-keep-list', '/role');
    last.when(commands.changeStaffMember, { staff: 'nurse', active: false }, { by }).accepts();
    given(out('administrator'))
      .when(commands.changeStaffMember, { staff: 'charge-nurse', active: false }, { by })
      .accepts();
  });
  it('when somebody who keeps the list gives a role to themselves, then that is for another', () => {
    given()
      .when(commands.changeStaffMember, { staff: 'charge-nurse', role: 'manager' }, { by })
      .refuses('own-role', '/role');
    given()
      .when(commands.changeStaffMember, { staff: 'charge-nurse', role: 'manager' }, { by: STAFF.manager })
      .accepts();
  });
  it('when an aide or a nurse changes a role, then that is not theirs to do', () => {
    for (const who of [AIDE, NURSE]) {
      given()
        .when(commands.changeStaffMember, { staff: 'aide', role: 'nurse' }, { by: who })
        .refuses('not-your-role');
    }
  });
});

/** Roles and actions: users' roles table (common practice, no source). */
describe('who may do what', () => {
  const allowed = (command: string) => role.options.filter((r) => refuseRole(command, r) === null);

  it('anyone can make it safer', () => {
    for (const safer of ['record-trigger', 'place-hold', 'remove-on-own']) {
      expect(allowed(safer)).toEqual(role.options);
    }
  });
  it('only a qualified person can make it freer', () => {
    const freer = [
      'record-assessment',
      'confirm-plan',
      'record-seen-walking',
      'change-order',
      'renew-hold',
      'end-hold',
      'set-on-own',
      'set-goal',
      'set-scope',
      'remove-attachment',
    ];
    for (const command of freer) {
      expect(allowed(command).length).toBeGreaterThan(0);
      expect(allowed(command).every((r) => isQualified({ role: r }))).toBe(true);
    }
  });
  it('a therapist does not say that a person walked in', () => {
    expect(allowed('record-seen-walking')).toEqual(['nurse', 'charge-nurse']);
  });
  it('every command names somebody, and what the others do instead', () => {
    for (const command of COMMAND_TYPES.keys()) {
      expect(allowed(command)).not.toEqual([]);
      for (const r of role.options) {
        const { remedy } = refuseRole(command, r) ?? { remedy: 'Nothing.' };
        expect(remedy).toMatch(/^[A-Z].+[.]$/);
      }
    }
  });
  it('a command that the table does not know is for nobody', () => {
    expect(refuseRole('open-the-window', 'charge-nurse')?.refused).toBe('not-your-role');
  });
});
