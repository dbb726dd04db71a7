import { notBuilt } from './not-built.ts';
import type { Accounts } from './ports.ts';
import type { AccessParts } from './parts.ts';

export function openAccounts(_parts: AccessParts): Accounts {
  return notBuilt('accounts');
}
