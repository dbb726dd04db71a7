/** Names for ids that stand in records of access: by the ward's staff list, else by the account. */
import type { StaffId } from '@footboard/shared/kernel/ids';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { staffNames } from '../capabilities/people/queries.ts';
import type { Vault } from '../vault/vault.ts';
import type { Accounts } from './ports.ts';

/** Whoever opened the ward for an emergency, or runs the server, is on no staff list of it. */
export async function namesOf(
  from: { readonly ward: WardState; readonly vault: Vault; readonly accounts: Pick<Accounts, 'byStaff'> },
  staff: readonly StaffId[],
): Promise<ReadonlyMap<StaffId, string>> {
  const listed = await staffNames(from.ward, from.vault);
  const named = await Promise.all(
    staff.map(async (id): Promise<readonly [StaffId, string][]> => {
      const name = listed.get(id) ?? (await from.accounts.byStaff(id))?.name;
      return name === undefined ? [] : [[id, name]];
    }),
  );
  return new Map(named.flat());
}
