/** What only several connections can prove of pairing and short codes: one key, one device, every try counted. */
import { pino } from 'pino';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { openDevices } from '@footboard/server/access/devices';
import { accessKeys } from '@footboard/server/access/keys';
import type { Devices, Signing } from '@footboard/server/access/ports';
import { TRIES, openSigning } from '@footboard/server/access/signing';
import { Answered } from '@footboard/server/commanding/problems';
import { systemClock } from '@footboard/server/platform/clock';
import { readConfig } from '@footboard/server/platform/config';
import { openDatabase } from '@footboard/server/platform/database';
import type { Database } from '@footboard/server/platform/database';
import { migrate } from '@footboard/server/platform/migrate';
import { newMasterKey } from '@footboard/server/vault/master-key';
import { ownDatabase } from './postgres.ts';

const ALDER = 'alder' as WardId;
const INES = 'ines' as StaffId;
const NOOR = 'noor' as StaffId;

describe('devices and codes on PostgreSQL, raced by two server processes', () => {
  let own: Awaited<ReturnType<typeof ownDatabase>>;
  const keys = accessKeys(newMasterKey());
  const processes: { database: Database; devices: Devices; signing: Signing }[] = [];

  async function start(): Promise<void> {
    const database = await openDatabase({ databaseUrl: own.url, dataDir: 'unused' });
    if (processes.length === 0) await migrate(database);
    const config = readConfig({ DATABASE_URL: own.url });
    const parts = { database, keys, clock: systemClock, config, logger: pino({ level: 'silent' }) };
    // Everybody's code is wrong, and it takes a moment to find out.
    const checkCode = async () => {
      await database.query('select pg_sleep(0.01)::text');
      return { staff: NOOR, right: false };
    };
    processes.push({ database, devices: openDevices(parts), signing: openSigning(parts, { checkCode }) });
  }
  const everywhere = <T>(times: number, work: (one: (typeof processes)[number]) => Promise<T>) =>
    Promise.all(Array.from({ length: times }, (_, i) => work(processes[i % processes.length]!)));
  const typeOf = (error: unknown) => {
    if (!(error instanceof Answered)) throw error;
    return error.answer.type;
  };
  const request = { kind: 'shared', level: 'whole', place: 'bay 1' } as const;

  beforeAll(async () => {
    own = await ownDatabase();
    await start();
    await start();
  });
  afterAll(async () => {
    for (const { devices, database } of processes) {
      await devices.stop();
      await database.close();
    }
    await own?.drop();
  });

  it('a code approved by many at once makes one device, and its key comes out once', async () => {
    for (let round = 0; round < 10; round++) {
      const before = (await processes[0]!.devices.list(ALDER)).length;
      const { code, poll } = await processes[0]!.devices.beginPairing('shared', `address ${round}`);
      const approved = await everywhere(8, ({ devices }) =>
        devices.approve(ALDER, INES, { ...request, code }).then(() => 'approved', typeOf),
      );
      expect(approved.filter((one) => one === 'approved')).toHaveLength(1);
      expect(await processes[1]!.devices.list(ALDER)).toHaveLength(before + 1);
      const claimed = await everywhere(8, ({ devices }) => devices.claim(poll));
      expect(claimed.filter(({ state }) => state === 'paired')).toHaveLength(1);
      expect(claimed.filter(({ state }) => state === 'over')).toHaveLength(7);
    }
  });

  it('wrong codes sent to both at once are all counted, and lock', async () => {
    const [device] = await processes[0]!.devices.list(ALDER);
    const told = await everywhere(20, ({ signing }) =>
      signing.open(device!, { staff: NOOR }, '111111', () => true).then(() => 'opened', typeOf),
    );
    expect(told.filter((one) => one === '/problems/wrong-code').length).toBeLessThan(TRIES);
    expect(new Set(told)).toEqual(new Set(['/problems/wrong-code', '/problems/code-locked']));
  });

  it('what screens said is written as it is on the embedded database', async () => {
    const [one, two] = processes;
    const [device] = await one!.devices.list(ALDER);
    one!.devices.saw(device!.device, { feed: 12, page: '0.3.0' });
    await one!.devices.stop();
    const line = (await two!.devices.list(ALDER)).find((l) => l.device === device!.device);
    expect(line).toMatchObject({ painted: 12, page: '0.3.0', seen: expect.any(Number) });
  });

  it('a key taken back in one process is refused by the other once it asks the database', async () => {
    const [one, two] = processes;
    const { code, poll } = await one!.devices.beginPairing('shared', 'address last');
    const { device } = await one!.devices.approve(ALDER, INES, { ...request, code });
    const claimed = await two!.devices.claim(poll);
    if (claimed.state !== 'paired') throw new Error(claimed.state);
    expect(await one!.devices.device(claimed.key)).not.toBeNull();
    await one!.devices.revoke(ALDER, device, INES);
    expect(await one!.devices.device(claimed.key)).toBeNull();
    expect(await two!.devices.device(claimed.key)).toBeNull();
  });
});
