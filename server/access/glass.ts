import { notBuilt } from './not-built.ts';
import type { Glass } from './ports.ts';
import type { AccessParts } from './parts.ts';

export function openGlass(_parts: AccessParts): Glass {
  return notBuilt('glass');
}
