/** The right to a data folder, between real processes of the built program. */
import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { setTimeout } from 'node:timers/promises';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FolderInUse } from '@footboard/server/platform/database-errors';
import { lockFolder } from '@footboard/server/platform/folder-lock';

const SCRIPT = join(import.meta.dirname, 'hold-folder.mjs');
/** How long the first process stays deaf while others try; a minute when asked for a deep run. */
const BLOCKED_MS = process.env['FOOTBOARD_DEEP'] === '1' ? 60_000 : 3_000;

interface Holder {
  readonly child: ChildProcess;
  says(): Promise<string>;
}

const kill = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) return resolve();
    child.once('exit', () => resolve());
    child.kill('SIGKILL');
  });

describe('the lock on a data folder', () => {
  let folder: string;
  const children: ChildProcess[] = [];
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'footboard-folder-'));
  });
  afterEach(async () => {
    for (const child of children.splice(0)) await kill(child);
    rmSync(folder, { recursive: true, force: true });
  });

  const start = (): Holder => {
    const child = spawn(process.execPath, [SCRIPT, folder], { stdio: ['pipe', 'pipe', 'inherit'] });
    children.push(child);
    const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
    return { child, says: async () => ((await lines.next()).value as string | undefined) ?? '(ended)' };
  };

  it('LOCK-1 a second start is refused in one line that names the folder, and opens nothing', async () => {
    const first = lockFolder(folder);
    const second = start();
    expect(await second.says()).toBe(`refused ${new FolderInUse(folder).message}`);
    expect(new FolderInUse(folder).message).toContain(folder);
    expect(existsSync(join(folder, 'database'))).toBe(false);
    expect(() => lockFolder(folder)).toThrow(FolderInUse);
    first.release();
    lockFolder(folder).release();
  });

  it(
    'LOCK-2 a server too busy to answer still holds its folder',
    { timeout: BLOCKED_MS + 60_000 },
    async () => {
      const first = start();
      expect(await first.says()).toBe('open');
      first.child.stdin!.write(`block ${BLOCKED_MS}\n`);
      expect(await first.says()).toBe('blocked');
      const until = Date.now() + BLOCKED_MS - 500;
      let tries = 0;
      let refused = 0;
      while (Date.now() < until) {
        tries += 1;
        try {
          lockFolder(folder).release();
        } catch (error) {
          if (error instanceof FolderInUse) refused += 1;
        }
        await setTimeout(20);
      }
      expect(tries).toBeGreaterThan(0);
      expect(refused).toBe(tries);
      expect(await first.says()).toBe('free');
    },
  );

  it('LOCK-3 the folder of a killed server opens at once', async () => {
    const first = start();
    expect(await first.says()).toBe('open');
    await kill(first.child);
    expect(await start().says()).toBe('open');
  });
});
