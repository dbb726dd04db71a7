// Child process of the rebuild benchmark: replays up to a position and tells what it held at its most.
import { openLog } from '@footboard/server/log/open-log';
import { openDatabase } from '@footboard/server/platform/database';
import { replay } from '@footboard/server/projecting/replay';

const [url, ward, upTo] = process.argv.slice(2);
const database = await openDatabase({ databaseUrl: url, dataDir: 'unused' });
const log = openLog(database);
let pages = 0;
let heap = 0;
let rss = 0;
const counted = {
  ...log,
  async readPage(...args) {
    if (++pages % 4 === 0) {
      globalThis.gc();
      heap = Math.max(heap, process.memoryUsage().heapUsed);
    }
    rss = Math.max(rss, process.memoryUsage().rss);
    return log.readPage(...args);
  },
};
const fold = await replay(counted, ward, {
  upTo: Number(upTo),
  totals: { t: Date.now(), write: async () => {} },
});
fold.view(Date.now());
await database.close();
const MiB = (bytes) => Math.round(bytes / 2 ** 20);
process.send({ heapMiB: MiB(heap), rssMiB: MiB(rss) });
process.disconnect();
