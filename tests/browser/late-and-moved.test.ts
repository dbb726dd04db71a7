/** Beds change hands while somebody writes, and while a phone is cut off: the entry is its person's, and whoever made it is told. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardPage, type StayPage } from '@footboard/shared/wire/http';
import { beginStay, openWard, WARD, type Ward } from '../journeys/http-kit.ts';
import { Cable } from '../support/cable.ts';
import { sayWho } from './open-kit.ts';
import { confirmPerson } from './bedside-support.ts';
import { screenFaults, openBrowser, openScreen, PHONE_SIZE, shoot, WALL_SIZE } from './support.ts';

/** The server's clock: set to a time of 25 November, and going on from there. */
class SetClock {
  readonly rate = 1;
  #at = 0;
  #since = Date.now();
  constructor(time: string) {
    this.set(time);
  }
  set(time: string): void {
    this.#at = Date.parse(`2026-11-25T${time}:00Z`);
    this.#since = Date.now();
  }
  now(): number {
    return this.#at + Date.now() - this.#since;
  }
}
const clock = new SetClock('09:00');
let ward: Ward;
let browser: Browser;
let cable: Cable;
let wall: Awaited<ReturnType<typeof openScreen>>;

const at = (bed: string, stay: string) => ({ stay, bed: `bed-${bed}` });
beforeAll(async () => {
  ward = await openWard(clock);
  for (const [stay, bed] of [
    ['stay-1', '1A'],
    ['stay-2', '1B'],
    ['stay-3', '2A'],
  ] as const) {
    await ward.enter('begin-stay', beginStay(stay, bed), 'noor');
  }
  browser = await openBrowser();
  cable = await Cable.between(Number(new URL(ward.footboard.url).port));
  wall = await openScreen(browser, WALL_SIZE);
  await wall.page.goto(`${ward.footboard.url}/wards/${WARD}/wall`);
  await tile('2A').waitFor();
});
afterAll(async () => {
  await browser?.close();
  await cable?.close();
  await ward?.footboard.close();
});

const tile = (bed: string) => wall.page.getByRole('article', { name: new RegExp(`^Bed ${bed}`) });
/** A phone with a clock of its own that says what the ward's says, at a bed, in the hands of the nurse. */
async function phone(bed: string) {
  const screen = await openScreen(browser, PHONE_SIZE);
  const { page, context } = screen;
  await context.clock.install({ time: clock.now() });
  await page.goto(`http://127.0.0.1:${cable.port}/wards/${WARD}/bedside/bed-${bed}`);
  await sayWho(page, /Noor Haddad/);
  await page.getByRole('button', { name: 'Session', exact: true }).waitFor();
  return screen;
}
async function beginSession(page: Page) {
  await page.getByRole('button', { name: 'Session', exact: true }).click();
  await confirmPerson(page);
  await page.getByRole('button', { name: 'Lifted to chair', exact: true }).click();
}
const done = (page: Page) => page.getByRole('button', { name: 'Done', exact: true }).click();
const swap = (...[first, second]: ReturnType<typeof at>[]) =>
  ward.enter('swap-stays', { first, second }, 'noor');
async function sessionsOf(stay: string) {
  const { body } = await ward.get(`/api/wards/${WARD}/stays/${stay}`);
  return (body as unknown as StayPage).timeline.filter(({ type }) => type === 'session-recorded');
}

/** What the board says of whoever lies in bed 2A now. */
async function newcomer() {
  const { body } = await ward.get(`/api/wards/${WARD}/board`);
  const { stay } = boardPage.parse(body).board.beds.find(({ label }) => label === '2A')!;
  const { plan, tier, trust, today, lastUp } = stay!;
  return { stay: stay!.stay, plan, tier, trust, today, lastUp };
}

// One story on one ward, told in order: each part finds the beds as the one before left them.
describe('A2 two beds are swapped while a nurse writes at one of them', () => {
  it('SCREEN-15 given the form is open, when it is sent, then she is asked, and it is that of the person it was begun for', async () => {
    const { page, context, faults } = await phone('1A');
    await beginSession(page);
    await swap(at('1A', 'stay-1'), at('1B', 'stay-2'));
    const sheet = page.getByRole('dialog');
    await sheet.getByText('now in bed 1B').first().waitFor();
    await done(page);
    const asks = sheet.locator('form');
    await asks.getByText('The person in this bed has changed').waitFor();
    await asks.getByText('They are now in bed 1B.').waitFor();
    await shoot(page, 'swapped-while-writing-390');
    expect(await screenFaults(page)).toEqual([]);
    expect(await sessionsOf('stay-1')).toEqual([]);
    await sheet.getByRole('button', { name: 'Send it for the person I began it for' }).click();

    await expect.poll(() => tile('1B').innerText(), { timeout: 20_000 }).not.toContain('not recorded');
    expect(await tile('1A').innerText()).toContain('not recorded');
    expect([await sessionsOf('stay-1'), await sessionsOf('stay-2')].map(({ length }) => length)).toEqual([
      1, 0,
    ]);
    expect(faults).toEqual([]);
    await context.close();
  });

  it('SCREEN-15 given it can still be undone, when it goes out by itself, then she is told where the person is', async () => {
    const { page, context } = await phone('1A');
    await beginSession(page);
    await done(page);
    await page.getByRole('button', { name: 'Undo' }).waitFor();
    await swap(at('1A', 'stay-2'), at('1B', 'stay-1'));
    await page.getByText(/you entered it at bed 1A.*now in bed 1B/).waitFor();
    expect([await sessionsOf('stay-1'), await sessionsOf('stay-2')].map(({ length }) => length)).toEqual([
      1, 1,
    ]);
    await context.close();
  });

  it('SCREEN-15 given her phone is cut off, when the entry arrives later, then it names the swap', async () => {
    const { page, context, faults } = await phone('1A');
    cable.pull();
    await beginSession(page);
    await done(page);
    await page.getByText('Not sent yet; try again').waitFor({ timeout: 40_000 });
    await page.getByRole('button', { name: 'Close' }).click();
    clock.set('09:20');
    await swap(at('1A', 'stay-1'), at('1B', 'stay-2'));
    await context.clock.setSystemTime(clock.now());
    cable.plugIn();

    await expect.poll(async () => (await sessionsOf('stay-1')).length, { timeout: 60_000 }).toBe(2);
    const told = page.getByText(/you entered it at bed 1A.*now in bed 1B/);
    await told.waitFor();
    await page.getByText(/Session, done, entered at 09:0\d, was sent now/).waitFor();
    await shoot(page, 'swapped-sent-late-390');
    expect(await screenFaults(page)).toEqual([]);
    expect(await sessionsOf('stay-2')).toHaveLength(1);
    await page.getByRole('button', { name: 'Seen' }).click();
    await told.waitFor({ state: 'detached' });
    expect(faults.filter((one) => !/ERR_|WebSocket/.test(one))).toEqual([]);
    await context.close();
  });
});

describe('A3 a person has left, and another lies in the bed, when an entry from before arrives', () => {
  it('SCREEN-15 given a session at 13:50 on a phone cut off, when it arrives at 14:10, then it goes to the stay that ended at 14:00', async () => {
    clock.set('13:50');
    const { page, context } = await phone('2A');
    cable.pull();
    await beginSession(page);
    await done(page);
    await page.getByText('Not sent yet; try again').waitFor({ timeout: 40_000 });
    await page.getByRole('button', { name: 'Close' }).click();

    clock.set('14:00');
    await ward.enter('end-stay', { stay: 'stay-3', bed: 'bed-2A', to: 'home' }, 'noor');
    clock.set('14:05');
    await ward.enter('begin-stay', beginStay('stay-4', '2A'), 'noor');
    const before = await newcomer();

    clock.set('14:10');
    await context.clock.setSystemTime(clock.now());
    cable.plugIn();
    await expect.poll(async () => (await sessionsOf('stay-3')).length, { timeout: 60_000 }).toBe(1);
    const [late] = await sessionsOf('stay-3');
    expect(new Date(late!.occurred).toISOString()).toMatch(/^2026-11-25T13:5\d/);
    await page.getByText(/no longer on this ward. Whoever is in the bed now is not touched/).waitFor();
    await shoot(page, 'left-before-it-arrived-390');
    expect(await screenFaults(page)).toEqual([]);

    expect(await sessionsOf('stay-4')).toEqual([]);
    expect(await newcomer()).toEqual(before);
    await tile('2A').getByText('today not recorded').waitFor();
    await shoot(wall.page, 'left-before-it-arrived-1920');
    expect(wall.faults).toEqual([]);
    await context.close();
  });
});
