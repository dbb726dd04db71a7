import { mkdirSync, openSync, closeSync } from 'node:fs';
import { join } from 'node:path';
import fsExtensions from 'fs-native-extensions';
import { FolderInUse } from './database-errors.ts';

/**
 * The exclusive right to a data folder, held by the operating system for the life of the process:
 * freed at once when it dies, however it dies, and not lost when it is merely busy (which is why
 * this is not a file with a time in it). Two embedded databases on one folder lose writes silently.
 * @throws FolderInUse
 */
export function lockFolder(folder: string): { release(): void } {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  const descriptor = openSync(join(folder, 'in-use.lock'), 'a', 0o600);
  if (!fsExtensions.tryLock(descriptor)) {
    closeSync(descriptor);
    throw new FolderInUse(folder);
  }
  return { release: () => closeSync(descriptor) };
}
