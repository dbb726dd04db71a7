import { notBuilt } from './not-built.ts';
import type { Accounts, Signing } from './ports.ts';
import type { AccessParts } from './parts.ts';

export function openSigning(_parts: AccessParts, _accounts: Pick<Accounts, 'checkCode'>): Signing {
  return notBuilt('signing');
}
