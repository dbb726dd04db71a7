import type { StaffId } from '@footboard/shared/kernel/ids';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import type { StaffList } from '@footboard/shared/wire/http';
import type { Vault } from '../../vault/vault.ts';
import { BY_GROUPS, FIRST_RUN } from './author-policy.ts';

export const TEXT_REMOVED = '(text removed)';

/** Names of a ward's staff by id. One whose key was destroyed reads "(text removed)". */
export async function staffNames(ward: WardState, vault: Vault): Promise<ReadonlyMap<StaffId, string>> {
  const members = [...ward.staff];
  const names = await vault.open(members.map(([, { name }]) => name.ref));
  return new Map([
    [FIRST_RUN.staff, 'first set-up'],
    [BY_GROUPS.staff, 'single sign-on'],
    ...members.map(([staff, { name }]): [StaffId, string] => [staff, names.get(name.ref) ?? TEXT_REMOVED]),
  ]);
}

export async function staffOf(ward: WardState, vault: Vault): Promise<StaffList> {
  const names = await staffNames(ward, vault);
  const staff = [...ward.staff].map(([id, { role, active, standing }]) => ({
    staff: id,
    name: names.get(id)!,
    role,
    active,
    standing,
  }));
  return { staff: staff.toSorted((a, b) => a.name.localeCompare(b.name)) };
}
