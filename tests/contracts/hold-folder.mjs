// A process that opens a data folder as a server does (the built program), for folder-lock.test.ts.
// Says "open" or "refused <reason>"; told "block <ms>" it keeps its event loop busy, saying "blocked" first.
import { createInterface } from 'node:readline';
import { openDatabase } from '@footboard/server/platform/database';

const say = (line) => process.stdout.write(`${line}\n`);
try {
  await openDatabase({ dataDir: process.argv[2] });
  say('open');
} catch (error) {
  say(`refused ${error.message}`);
  process.exit(3);
}
for await (const line of createInterface({ input: process.stdin })) {
  const [, ms] = /^block (\d+)$/.exec(line) ?? [];
  // The line must be out before the loop is blocked.
  await new Promise((done) => process.stdout.write('blocked\n', done));
  const until = Date.now() + Number(ms);
  while (Date.now() < until);
  say('free');
}
