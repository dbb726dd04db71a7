import { notBuilt } from './not-built.ts';
import type { AccessLog } from './ports.ts';
import type { AccessParts } from './parts.ts';

export function openAccessLog(_parts: AccessParts): AccessLog {
  return notBuilt('access-log');
}
