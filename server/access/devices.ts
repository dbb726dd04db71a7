import { notBuilt } from './not-built.ts';
import type { Devices } from './ports.ts';
import type { AccessParts } from './parts.ts';

export function openDevices(_parts: AccessParts): Devices {
  return notBuilt('devices');
}
