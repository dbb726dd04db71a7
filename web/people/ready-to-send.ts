import { policyRow } from '@footboard/shared/capabilities/people/policy/document';
import type { WardId } from '@footboard/shared/kernel/ids';
import { useMeStore } from './me-store.ts';
import { needsSignIn, type Proof } from './sign-in-first.ts';
import { useWhoStore } from './who-store.ts';

/**
 * Before a command is made: on a shared device without a signing window the code pad comes first,
 * so that the entry carries the right name and is not kept as unconfirmed without need. Anywhere
 * else it goes out at once, and the server's "sign in first" opens the sign-in.
 */
export async function readyToSend(ward: WardId, command: string): Promise<Proof> {
  const me = useMeStore();
  if (!me.shared || me.device?.ward !== ward || me.proven()) return 'signed';
  return needsSignIn({ ward, command, staff: useWhoStore().chosenId });
}

/** Commands that may go out with a claimed name when the code cannot be checked: they only make safer. */
export const mayGoUnconfirmed = (command: string | undefined): boolean => {
  const row = command === undefined ? undefined : policyRow(command);
  return row?.moves === 'safer' && row.unconfirmed === 'recorded';
};
