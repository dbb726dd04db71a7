import { notBuilt } from './not-built.ts';
import type { Sessions } from './ports.ts';
import type { AccessParts } from './parts.ts';

export function openSessions(_parts: AccessParts): Sessions {
  return notBuilt('sessions');
}
