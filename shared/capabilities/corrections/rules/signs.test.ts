/** Which signature is one that an entry was waiting for, and whose word an entry is. */
import { describe, expect, it } from 'vitest';
import { role as roles, type Role } from '../../../kernel/author.ts';
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import {
  confirmation,
  cosignature,
  session,
  stayOf,
  trigger,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { heardAs, isConfirmation, isSignature, signs } from './signatures.ts';

const logged = (told: Told): LoggedEvent => stayOf(told).events[1]!;
const waiting = (source: Partial<LoggedEvent['source']>, role: Role = 'nurse', staff = 'staff-1') =>
  logged({ ...session(1), role, staff, source: { kind: 'person', ...source } });
const by = (told: Told, staff: string, role: Role, source: Partial<LoggedEvent['source']> = {}) =>
  logged({ ...told, staff, role, source: { kind: 'person', ...source } });

describe('an entry under a claimed name', () => {
  it.each(roles.options)('is taken to be by a %s who may not free', (role) => {
    const free = ['nurse', 'therapist', 'charge-nurse'].includes(role);
    expect(heardAs(waiting({ unconfirmed: true }, role))).toEqual({
      staff: 'staff-1',
      role: free ? 'aide' : role,
    });
    expect(heardAs(waiting({}, role))).toEqual({ staff: 'staff-1', role });
  });
});

describe('a signature', () => {
  it('is a confirmation or a second signature', () => {
    const kinds = [confirmation(2, 's'), cosignature(2, 's'), trigger('fall', 2)].map(logged);
    expect(kinds.map(isConfirmation)).toEqual([true, false, false]);
    expect(kinds.map(isSignature)).toEqual([true, true, false]);
  });
});

describe('a confirmation', () => {
  const confirms = (entry: LoggedEvent, staff: string, role: Role = 'nurse', source = {}) =>
    signs(by(confirmation(2, 's'), staff, role, source), entry);
  const claimed = waiting({ unconfirmed: true });
  it('is of an entry under a claimed name, by that very person, under a name that was checked', () => {
    expect(confirms(claimed, 'staff-1')).toBe(true);
    expect(confirms(claimed, 'staff-1', 'aide')).toBe(true);
    expect(confirms(claimed, 'staff-2')).toBe(false);
    expect(confirms(claimed, 'staff-1', 'nurse', { unconfirmed: true })).toBe(false);
    expect(confirms(waiting({}), 'staff-1')).toBe(false);
    expect(confirms(waiting({ cosign: 'student' }), 'staff-1')).toBe(false);
  });
});

describe('a second signature', () => {
  const cosigns = (entry: LoggedEvent, staff: string, role: Role = 'nurse', source = {}) =>
    signs(by(cosignature(2, 's'), staff, role, source), entry);
  it.each(['agency', 'student'] as const)('is of an entry of %s, by somebody else qualified', (cosign) => {
    const entry = waiting({ cosign });
    expect(cosigns(entry, 'staff-2')).toBe(true);
    expect(cosigns(entry, 'staff-2', 'therapist')).toBe(true);
    expect(cosigns(entry, 'staff-1')).toBe(false);
    expect(cosigns(entry, 'staff-2', 'aide')).toBe(false);
    expect(cosigns(entry, 'staff-2', 'nurse', { unconfirmed: true })).toBe(false);
  });
  it('is of no other entry', () => {
    expect(cosigns(waiting({}), 'staff-2')).toBe(false);
    expect(cosigns(waiting({ unconfirmed: true }), 'staff-2')).toBe(false);
    expect(cosigns(waiting({}), 'staff-1')).toBe(false);
    expect(cosigns(waiting({}), 'staff-2', 'aide')).toBe(false);
  });
});
