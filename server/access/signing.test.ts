import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { MINUTE } from '@footboard/shared/kernel/times';
import { Answered } from '../commanding/problems.ts';
import { openAccounts } from './accounts.ts';
import { openDevices } from './devices.ts';
import type { KnownDevice } from './identity.ts';
import { openParts } from './parts.testkit.ts';
import type { TestParts } from './parts.testkit.ts';
import type { Accounts, Signing } from './ports.ts';
import { TRIES, openSigning } from './signing.ts';

const ALDER = 'alder' as WardId;
const CODE = '482617';
const WRONG = '482616';
const BADGE = 'badge-of-noor-000317';

let parts: TestParts;
let accounts: Accounts;
let signing: Signing;
let noor: StaffId;
let ada: StaffId;
let phone: KnownDevice;
let tablet: KnownDevice;
let people = 0;
/** The ward's list; a test takes people off it. */
let members: Set<StaffId>;

async function withCode(name: string, code?: string): Promise<StaffId> {
  const staff = `${name}-${++people}` as StaffId;
  const { account } = await accounts.make({ staff, name, wide: false });
  const { token } = await accounts.invite(account);
  await accounts.accept({ token, signInName: staff, password: 'lanterns under rain', code });
  return staff;
}
async function shared(kind: 'shared' | 'wall' = 'shared'): Promise<KnownDevice> {
  const devices = openDevices(parts);
  const { code, poll } = await devices.beginPairing(kind, 'address 1');
  const level = kind === 'wall' ? 'bed-only' : 'whole';
  await devices.approve(ALDER, 'ines' as StaffId, { code, kind, level, place: 'bay 1' });
  const claimed = await devices.claim(poll);
  await devices.stop();
  if (claimed.state !== 'paired') throw new Error(claimed.state);
  return claimed.device;
}
const isMember = (staff: StaffId) => members.has(staff);
const open = (code: string, device = phone, who: Parameters<Signing['open']>[1] = { staff: noor }) =>
  signing.open(device, who, code, isMember);
const answer = (promise: Promise<unknown>) =>
  promise.then(
    () => 'opened',
    (error: unknown) => {
      if (!(error instanceof Answered)) throw error;
      return `${error.answer.type.slice('/problems/'.length)}: ${error.answer.detail} ${error.answer.remedy}`;
    },
  );
async function wrong(times: number, device = phone) {
  const answers: string[] = [];
  for (let i = 0; i < times; i++) answers.push(await answer(open(WRONG, device)));
  return answers;
}

beforeAll(async () => {
  parts = await openParts();
  accounts = openAccounts(parts);
  [phone, tablet] = [await shared(), await shared()];
}, 60_000);
afterAll(() => parts?.close());
beforeEach(async () => {
  signing = openSigning(parts, accounts);
  [noor, ada] = [await withCode('noor', CODE), await withCode('ada', CODE)];
  members = new Set([noor, ada]);
});

describe('a right code', () => {
  it('opens two minutes exactly, for that person, on that device', async () => {
    const { token, staff, until } = await open(CODE);
    expect([staff, until - parts.clock.at]).toEqual([noor, 2 * MINUTE]);
    parts.clock.at = until - 1;
    expect(await signing.person(token, phone)).toEqual({
      account: null,
      staff: noor,
      wide: false,
      via: 'signing',
      session: null,
      until,
    });
    expect(await signing.person(token, tablet)).toBeNull();
    parts.clock.at = until;
    expect(await signing.person(token, phone)).toBeNull();
  });
  it('given that somebody else signed on that device before, ends what they opened', async () => {
    const before = await open(CODE);
    await open(CODE, phone, { staff: ada });
    expect(await signing.person(before.token, phone)).toBeNull();
  });
  it('given a sign-off, is over at once', async () => {
    const { token } = await open(CODE);
    await signing.close(token);
    expect(await signing.person(token, phone)).toBeNull();
  });
  it('given that the account is switched off, signs no more', async () => {
    const { token } = await open(CODE);
    await accounts.setActive((await accounts.byStaff(noor))!.account, false);
    expect(await signing.person(token, phone)).toBeNull();
  });
  it('makes nobody an administrator of the whole server', async () => {
    const { account } = await accounts.make({ staff: `w-${++people}` as StaffId, name: 'W', wide: true });
    const { token } = await accounts.invite(account);
    await accounts.accept({ token, signInName: `w-${people}`, password: 'lanterns under rain', code: CODE });
    const { staff } = (await accounts.byId(account))!;
    members.add(staff);
    const opened = await open(CODE, phone, { staff });
    expect(await signing.person(opened.token, phone)).toMatchObject({ staff, wide: false });
  });
  it('with a scanned badge needs no name', async () => {
    const { account } = (await accounts.byStaff(noor))!;
    await accounts.changeSecret(account, { password: 'lanterns under rain', newBadge: BADGE });
    expect((await open(CODE, phone, { badge: BADGE })).staff).toBe(noor);
  });
});

describe('where a code does not work', () => {
  it('on a wall', async () => {
    expect(await answer(open(CODE, await shared('wall')))).toMatch(/^not-a-shared-device/);
  });
  it('for somebody who is not on the list of the ward, right or wrong', async () => {
    members.delete(noor);
    expect(await answer(open(CODE))).toMatch(/^not-on-this-ward/);
    expect(await answer(open(WRONG))).toMatch(/^not-on-this-ward/);
  });
  it('for somebody who has none: said like a wrong one', async () => {
    const theo = await withCode('theo');
    members.add(theo);
    expect(await answer(open(CODE, phone, { staff: theo }))).toMatch(/^wrong-code: .* 4 tries are left/);
  });
  it('with a badge that nobody has', async () => {
    expect(await answer(open(CODE, phone, { badge: 'no-such-badge' }))).toMatch(/^wrong-code/);
  });
});

describe('wrong codes', () => {
  it('say how many tries are left, then lock that person on that device', async () => {
    const answers = await wrong(TRIES);
    expect(answers.slice(0, -1).map((one) => one.match(/(\d tries are|One try is) left/)?.[0])).toEqual([
      '4 tries are left',
      '3 tries are left',
      '2 tries are left',
      'One try is left',
    ]);
    expect(answers.at(-1)).toMatch(/^code-locked: .*Sign in fully.*Raising caution.*stays possible/);
    expect(await answer(open(CODE))).toMatch(/^code-locked/);
  });
  it('lock nobody else, and nowhere else', async () => {
    await wrong(TRIES);
    expect(await answer(open(CODE, tablet))).toBe('opened');
    expect(await answer(open(CODE, phone, { staff: ada }))).toBe('opened');
  });
  it('are forgotten with a right one', async () => {
    await wrong(TRIES - 1);
    await open(CODE);
    expect((await wrong(1))[0]).toContain('4 tries are left');
  });
  it('sent together are counted one after the other', async () => {
    const many = await Promise.all(Array.from({ length: 12 }, () => answer(open(WRONG))));
    expect(many.filter((one) => one.startsWith('wrong-code'))).toHaveLength(TRIES - 1);
    expect(many.filter((one) => one.startsWith('code-locked'))).toHaveLength(12 - TRIES + 1);
  });
  it('with a badge lock as well, and a locked badge opens nothing', async () => {
    const badge = `${BADGE}-${noor}`;
    const { account } = (await accounts.byStaff(noor))!;
    await accounts.changeSecret(account, { password: 'lanterns under rain', newBadge: badge });
    for (let i = 0; i < TRIES; i++) await answer(open(WRONG, phone, { badge }));
    expect(await answer(open(CODE, phone, { badge }))).toMatch(/^code-locked/);
  });
  it('are cleared on every device by a full sign-in', async () => {
    await wrong(TRIES);
    await wrong(TRIES, tablet);
    await signing.unlock(noor);
    expect(await answer(open(CODE))).toBe('opened');
    expect(await answer(open(CODE, tablet))).toBe('opened');
  });
});
