/** `npm run demo`: an invented ward that lives, in its own data folder, on its own clock. */
import { existsSync, mkdirSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { readConfig } from '@footboard/server/platform/config';
import { StartRefused } from '@footboard/server/platform/start-refused';
import { startFootboard } from '@footboard/server/start';
import { playDemo } from './play.ts';
import { readDemoSettings } from './settings.ts';

try {
  const settings = readDemoSettings(process.env);
  const folder = resolve(settings.folder);
  claim(folder);
  const config = {
    ...readConfig({ ...process.env, DATABASE_URL: '', MASTER_KEY_FILE: '' }),
    dataDir: folder,
  };
  const demo = playDemo(settings, (line) => console.log(line));
  const server = await startFootboard({
    config,
    clock: demo.clock,
    demo: true,
    // Invented data on a machine of one's own: nobody has to sign in to look around.
    access: 'open',
    beforeBoards: demo.prepare,
  });
  console.log(
    `Demo: an invented ward on its own clock, ${settings.speed} times real speed. Every screen says DEMO.`,
  );
  const live = demo.live(server.url);
  const stop = () => {
    live.stop();
    void server.close().then(() => process.exit(0));
  };
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
} catch (error) {
  if (!(error instanceof StartRefused)) throw error;
  // The demo's folder has a setting of its own; the server's refusals name the server's.
  console.error(`The demo cannot start: ${error.message.replace(/\bDATA_DIR\b/, 'DEMO_DATA_DIR')}`);
  process.exit(2);
}

/** The demo writes invented entries: into an empty folder or one that a demo made, nothing else. */
function claim(folder: string): void {
  const mark = join(folder, 'this-is-a-demo');
  if (existsSync(mark)) return;
  if (existsSync(folder) && readdirSync(folder).length > 0) {
    throw new StartRefused(
      `DEMO_DATA_DIR is "${folder}", which holds something that no demo made: write an empty or new folder`,
    );
  }
  mkdirSync(folder, { recursive: true });
  writeFileSync(mark, 'Invented data, made by `npm run demo`. Delete this folder to start over.\n');
}
