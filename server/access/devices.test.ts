import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { DeviceId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import { MINUTE } from '@footboard/shared/kernel/times';
import { Answered } from '../commanding/problems.ts';
import { openDevices } from './devices.ts';
import { OPEN_PER_ORIGIN } from './pairing.ts';
import { openParts } from './parts.testkit.ts';
import type { TestParts } from './parts.testkit.ts';
import type { Devices } from './ports.ts';

const ALDER = 'alder' as WardId;
const INES = 'ines' as StaffId;
const PLACE = 'north corridor';

let parts: TestParts;
let devices: Devices;
let origins = 0;
const begin = (kind: 'wall' | 'shared' = 'wall') => devices.beginPairing(kind, `address ${++origins}`);
const approve = (code: string, more: Partial<Parameters<Devices['approve']>[2]> = {}) =>
  devices.approve(ALDER, INES, { code, kind: 'wall', level: 'bed-only', place: PLACE, ...more });
async function paired(more: Partial<Parameters<Devices['approve']>[2]> = {}) {
  const { code, poll } = await begin(more.kind);
  await approve(code, more);
  const claimed = await devices.claim(poll);
  if (claimed.state !== 'paired') throw new Error(claimed.state);
  return claimed;
}
const refused = (promise: Promise<unknown>) =>
  promise.then(
    () => 'done',
    (error: unknown) => (error instanceof Answered ? error.answer.type : String(error)),
  );
const everything = async () => {
  const tables = ['device', 'pairing', 'signing_window'];
  const rows = await Promise.all(
    tables.map((table) =>
      parts.database.query<{ row: string }>(`select ${table}::text as row from ${table}`),
    ),
  );
  return rows.flat().map(({ row }) => row).join('\n'); // prettier-ignore
};

beforeAll(async () => {
  parts = await openParts();
}, 60_000);
afterAll(() => parts?.close());
beforeEach(() => {
  devices = openDevices(parts);
});
afterEach(() => devices.stop());

describe('a screen to be paired', () => {
  it('shows eight signs in two groups, none taken for another and none a vowel', async () => {
    const codes = await Promise.all(Array.from({ length: 40 }, async () => (await begin()).code));
    for (const code of codes) expect(code).toMatch(/^[CDFHJKMNPQRTVWXY3479]{4} [CDFHJKMNPQRTVWXY3479]{4}$/);
    expect(new Set(codes).size).toBe(40);
  });
  it('given that nobody has approved it, waits; ten minutes later it is over', async () => {
    const { poll, ends } = await begin();
    expect(ends - parts.clock.at).toBe(10 * MINUTE);
    parts.clock.at = ends - 1;
    expect(await devices.claim(poll)).toEqual({ state: 'waiting' });
    parts.clock.at = ends;
    expect(await devices.claim(poll)).toEqual({ state: 'over' });
  });
  it('given an approval, gets its key exactly once, also when it asks twice at once', async () => {
    const { code, poll } = await begin();
    await approve(code);
    const answers = await Promise.all([devices.claim(poll), devices.claim(poll), devices.claim(poll)]);
    expect(answers.map(({ state }) => state).toSorted()).toEqual(['over', 'over', 'paired']);
    expect(await devices.claim(poll)).toEqual({ state: 'over' });
  });
  it('takes the code as a person types it', async () => {
    const { code, poll } = await begin();
    await approve(` ${code.toLowerCase().replace(' ', '-')} `);
    expect(await devices.claim(poll)).toMatchObject({ state: 'paired', device: { ward: ALDER } });
  });
  it('a poll token of nothing is over', async () => {
    expect(await devices.claim('A'.repeat(43))).toEqual({ state: 'over' });
  });
  it('from one place no more than some at a time, and others are not kept out by them', async () => {
    const from = (origin: string) => refused(devices.beginPairing('wall', origin));
    for (let i = 0; i < OPEN_PER_ORIGIN; i++) expect(await from('address crowd')).toBe('done');
    expect(await from('address crowd')).toBe('/problems/too-many-requests');
    expect(await from('address other')).toBe('done');
    // One that got its key waits no more.
    const { code, poll } = await devices.beginPairing('wall', 'address few');
    for (let i = 1; i < OPEN_PER_ORIGIN; i++) await from('address few');
    expect(await from('address few')).toBe('/problems/too-many-requests');
    await approve(code);
    await devices.claim(poll);
    expect(await from('address few')).toBe('done');
    parts.clock.at += 10 * MINUTE;
    expect(await from('address crowd')).toBe('done');
  });
});

describe('a code', () => {
  const noCode = '/problems/no-such-pairing-code';
  it('given that its ten minutes are over, approves nothing', async () => {
    const { code, ends } = await begin();
    parts.clock.at = ends;
    expect(await refused(approve(code))).toBe(noCode);
  });
  it('approves once, also when two approve it at once', async () => {
    const { code } = await begin();
    const two = await Promise.all([refused(approve(code)), refused(approve(code))]);
    expect(two.toSorted()).toEqual([noCode, 'done']);
    expect(await refused(approve(code))).toBe(noCode);
  });
  it('of a wall does not approve a shared device, and a wrong one approves nothing', async () => {
    const { code } = await begin('wall');
    expect(await refused(approve(code, { kind: 'shared', level: 'whole' }))).toBe(noCode);
    expect(await refused(approve('CCCC CCCC'))).toBe(noCode);
  });
  it('never makes a wall that shows the whole board; a shared device always shows it', async () => {
    const { code } = await begin();
    expect(await refused(approve(code, { level: 'whole' }))).toBe('/problems/invalid-request');
    expect((await paired({ kind: 'shared', level: 'visitors' })).device.level).toBe('whole');
  });
});

describe('a key', () => {
  it('given a device, names it; and stands nowhere in the database', async () => {
    const { code, poll } = await begin();
    await approve(code);
    const before = await everything();
    const claimed = await devices.claim(poll);
    if (claimed.state !== 'paired') throw new Error(claimed.state);
    expect(claimed.key).toMatch(/^[A-Za-z0-9_-]{43}$/);
    expect(await devices.device(claimed.key)).toEqual(claimed.device);
    expect(claimed.device).toMatchObject({ kind: 'wall', ward: ALDER, level: 'bed-only' });
    const hidden = [claimed.key, Buffer.from(claimed.key).toString('hex'), code, code.replace(' ', ''), poll];
    for (const secret of hidden) expect(before + (await everything())).not.toContain(secret);
  });
  it('of nothing names nothing', async () => {
    expect(await devices.device('A'.repeat(43))).toBeNull();
  });
  it('given that it was taken back, works no more from that moment, and others are told', async () => {
    const { key, device } = await paired();
    const told: DeviceId[] = [];
    devices.onRevoke((gone) => told.push(gone));
    expect(await devices.device(key)).not.toBeNull();
    await devices.revoke(ALDER, device.device, INES);
    expect(await devices.device(key)).toBeNull();
    expect(told).toEqual([device.device]);
  });
  it('given that it is taken back while it is being asked for, is not believed afterwards', async () => {
    const { key, device } = await paired();
    const asking = devices.device(key);
    await devices.revoke(ALDER, device.device, INES);
    await asking;
    expect(await devices.device(key)).toBeNull();
  });
  it('given that it was taken back before the screen fetched it, never comes out', async () => {
    const { code, poll } = await begin();
    const { device } = await approve(code);
    await devices.revoke(ALDER, device, INES);
    expect(await devices.claim(poll)).toEqual({ state: 'over' });
  });
  it('of another ward is not taken back from here', async () => {
    const { key, device } = await paired();
    const elsewhere = devices.revoke('birch' as WardId, device.device, INES);
    expect(await refused(elsewhere)).toBe('/problems/no-such-device');
    expect(await devices.device(key)).not.toBeNull();
  });
});

describe('the list of devices', () => {
  const lineOf = async (device: DeviceId, from = devices) =>
    (await from.list(ALDER)).find((line) => line.device === device)!;

  it('tells what a screen painted, at once and after it was written', async () => {
    const { device } = await paired({ place: 'day room' });
    expect(await lineOf(device.device)).toMatchObject({
      place: 'day room',
      approvedBy: INES,
      painted: null,
      connected: false,
      revoked: null,
    });
    parts.clock.at += 1_000;
    devices.saw(device.device, { feed: 41, page: '0.2.0' });
    devices.saw(device.device);
    const painted = { seen: parts.clock.at, painted: 41, paintedAt: parts.clock.at, page: '0.2.0' };
    expect(await lineOf(device.device)).toMatchObject(painted);
    await devices.stop();
    expect(await lineOf(device.device, openDevices(parts))).toMatchObject(painted);
  });
  it('given that the database was away, keeps what screens said until it is back', async () => {
    const { device } = await paired();
    devices.saw(device.device, { feed: 7, page: '0.2.0' });
    parts.away = true;
    await devices.stop();
    parts.away = false;
    expect(await lineOf(device.device)).toMatchObject({ painted: 7 });
    await devices.stop();
    expect(await lineOf(device.device, openDevices(parts))).toMatchObject({ painted: 7 });
    expect(parts.said.join('')).not.toContain(device.device);
  });
  it('tells which have a socket open, until the last of them closes', async () => {
    const { device } = await paired();
    const [one, two] = [devices.connected(device.device), devices.connected(device.device)];
    one();
    one();
    expect((await lineOf(device.device)).connected).toBe(true);
    two();
    expect((await lineOf(device.device)).connected).toBe(false);
  });
});
