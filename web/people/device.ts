import type { DeviceId } from '@footboard/shared/kernel/ids';

const KEY = 'footboard.device';

/** This device's own id, made once and kept in its browser. Storage that is switched off gives one for this page only. */
let here: DeviceId | null = null;
export function thisDevice(): DeviceId {
  if (here) return here;
  try {
    here = localStorage.getItem(KEY) as DeviceId | null;
    if (!here) {
      here = newId() as DeviceId;
      localStorage.setItem(KEY, here);
    }
  } catch {
    here ??= newId() as DeviceId;
  }
  return here;
}

/** A random id. `crypto.randomUUID` exists only over https or on localhost; random bytes exist everywhere. */
export function newId(): string {
  if (typeof crypto.randomUUID === 'function') return crypto.randomUUID();
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
