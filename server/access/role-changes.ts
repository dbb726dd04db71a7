import { changeStaffMember } from '@footboard/shared/capabilities/people/commands';
import type { Accounts } from './ports.ts';

/** Whose role on a ward changed, or who left it, signs in again: what their pages show was for another role. */
export const endsSessions =
  (accounts: Pick<Accounts, 'raiseEdition'>) =>
  async (command: string, data: unknown): Promise<void> => {
    if (command !== changeStaffMember.name) return;
    const { staff, role, active } = changeStaffMember.data.parse(data);
    if (role !== undefined || active !== undefined) await accounts.raiseEdition([staff]);
  };
