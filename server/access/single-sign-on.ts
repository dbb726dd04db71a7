import type { SingleSignOn } from './ports.ts';
import type { AccessParts } from './parts.ts';

/** Null when no provider is set. @throws StartRefused when one is set and cannot be used. */
export async function openSingleSignOn(_parts: AccessParts): Promise<SingleSignOn | null> {
  return null;
}
