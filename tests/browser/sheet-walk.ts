/** A ward with somebody in every state that a sheet is opened in, and a walk over its sheets that looks at each. */
import { AxeBuilder } from '@axe-core/playwright';
import type { Browser, Page } from 'playwright-core';
import { check, hours } from '@footboard/shared/capabilities/board/rules/history.testkit';
import { toIso } from '@footboard/shared/kernel/times';
import { aSession, beginStay, openWard, WARD, type Ward } from '../journeys/http-kit.ts';
import { confirmPerson } from './bedside-support.ts';
import { missedByGloves, missedWhileTapping } from './gloves.ts';
import { openBrowser, openScreen } from './support.ts';

/** WCAG 2.2 A and AA. */
const WCAG = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const then = (h: number) => ({
  source: { kind: 'import', serial: 'old-1' },
  occurred: { at: toIso(hours(h)) },
  fromOutbox: false,
});

/**
 * Ward Alder on a Monday at 11:00: 1A and 2A may walk, 1B and 2B come to the edge of the bed, 2B with a hold and a line;
 * 2C is empty. A lift and a sling are on the list, and everybody is named.
 */
export async function wardOfEverything(): Promise<Ward> {
  const started = Date.now();
  const ward = await openWard({ rate: 1, now: () => hours(40) + (Date.now() - started) });
  await ward.enter('add-staff-member', { staff: 'theo', name: 'Theo Brandt', role: 'therapist' });
  await ward.enter('add-staff-member', { staff: 'bea', name: 'Bea Holm', role: 'aide' });
  await ward.enter('add-staff-member', { staff: 'hana', name: 'Hana Weiss', role: 'handling-coordinator' });
  for (const label of ['2B', '2C'])
    await ward.enter('add-bed', { bed: `bed-${label}`, label, bay: 'Bay 2', ceilingTrack: false });
  for (const [stay, bed, upTo] of [
    ['stay-1', '1A', 'walk'],
    ['stay-2', '1B', 'edge'],
    ['stay-3', '2A', 'walk'],
    ['stay-4', '2B', 'edge'],
  ] as const) {
    const identity = { name: `Rosa ${bed}`, born: '1940-02-03' };
    await ward.enter('begin-stay', { ...beginStay(stay, bed), identity }, 'noor', then(38));
    await ward.enter('record-weight', { stay, weight: { kg: 70, how: 'measured' } }, 'noor', then(38));
    const payload = check(upTo, 39).payload as object;
    await ward.enter('record-assessment', { stay, ...payload }, 'noor', then(39));
  }
  await ward.enter('record-session', aSession('stay-1', toIso(hours(39))), 'ada', then(39));
  const until = toIso(hours(46));
  const hold = { hold: 'hold-1', scope: 'walking', reason: 'after-fall', reviewAt: until };
  await ward.enter('place-hold', { stay: 'stay-4', ...hold }, 'noor');
  const line = { attachment: 'line-1', kind: 'iv-line', disconnects: 'nurse' };
  await ward.enter('add-attachment', { stay: 'stay-4', ...line }, 'noor');
  await ward.enter('name-carers', {
    until,
    beds: [
      { bed: 'bed-1A', nurse: 'noor', aide: 'ada' },
      { bed: 'bed-2A', nurse: null, aide: 'bea' },
    ],
  });
  const from = toIso(hours(40));
  const on = ['noor', 'ada', 'bea'].map((staff) => ({ staff, from, until, breaks: [] }));
  await ward.enter('set-people-on', { people: on });
  const piece = { model: 'A', home: 'Store', attachment: 'loops', inspectionDue: '2099-01-01' };
  const lift = { ...piece, label: 'Lift 1', kind: 'floor-lift', powered: true, safeLoadKg: 200 };
  await ward.enter('add-item', { item: 'lift-1', is: lift }, 'hana');
  const fits = { fitsFromKg: 50, fitsToKg: 100, worksWithModels: ['A'] };
  const sling = { ...piece, label: 'Sling 1', kind: 'sling', style: 'whole-body', safeLoadKg: 227, ...fits };
  await ward.enter('add-item', { item: 'sling-1', is: sling }, 'hana');
  return ward;
}

/** One page that goes from sheet to sheet. What it finds is kept until it is asked for. */
export class Walk {
  readonly #found: string[] = [];
  private constructor(
    readonly ward: Ward,
    readonly browser: Browser,
    readonly page: Page,
    readonly faults: readonly string[],
    readonly gloves: boolean,
  ) {}

  static async begin(size: { width: number; height: number }, gloves: boolean): Promise<Walk> {
    const ward = await wardOfEverything();
    const browser = await openBrowser();
    const { page, faults } = await openScreen(browser, size);
    return new Walk(ward, browser, page, faults, gloves);
  }
  async end(): Promise<void> {
    await this.browser.close();
    await this.ward.footboard.close();
  }
  /** Everything found since this was last asked. */
  found(): string[] {
    return this.#found.splice(0);
  }

  dialog = () => this.page.getByRole('dialog');
  tap = (name: string | RegExp) =>
    this.page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name }).click();
  async closed(): Promise<void> {
    await this.dialog().waitFor({ state: 'detached' });
  }
  async close(): Promise<void> {
    await this.dialog().getByRole('button', { name: 'Close', exact: true }).click();
    await this.closed();
  }
  async go(path: string, holds: string | RegExp): Promise<void> {
    await this.page.goto(`${this.ward.footboard.url}/wards/${WARD}/${path}`);
    await this.page.getByText(holds).first().waitFor();
  }
  async iAm(name: RegExp): Promise<void> {
    await this.page.getByRole('banner').getByRole('button').first().click();
    await this.dialog().getByRole('button', { name }).click();
    await this.closed();
  }
  async menu(item: string): Promise<void> {
    await this.tap('More');
    await this.page.getByRole('menuitem', { name: item, exact: true }).click();
    await this.dialog().waitFor();
  }
  /** The sheet asks who is before you, once for each person. */
  async confirm(): Promise<void> {
    await this.dialog().waitFor();
    const asks = this.page.getByRole('region', { name: 'Who is in front of you?' });
    if (await asks.isVisible()) await confirmPerson(this.page);
  }

  /** Every fold of the page at once. */
  unfold = () =>
    this.page.evaluate(() => {
      for (const fold of document.querySelectorAll('details')) fold.open = true;
    });

  /** Holds what lies uppermost against what gloves need of it and, by day and by night, against axe. */
  async looks(name: string): Promise<void> {
    if (this.gloves) this.#keep(name, await missedByGloves(this.page));
    this.#keep(`${name}, by day`, await this.#axe((axe) => axe.withTags(WCAG)));
    await this.#theme('night');
    // A theme changes colours and nothing else.
    this.#keep(`${name}, by night`, await this.#axe((axe) => axe.withRules(['color-contrast'])));
    await this.#theme('day');
  }
  /** Taps whatever there is to choose and to unfold, looking at what each tap brings up, and then at the whole. */
  async tries(name: string): Promise<void> {
    if (this.gloves) this.#keep(name, await missedByGloves(this.page));
    this.#keep(name, await missedWhileTapping(this.page, this.gloves));
    await this.looks(`${name}, all tapped`);
  }
  #theme = (to: 'day' | 'night') =>
    this.page.evaluate((theme) => (document.documentElement.dataset['theme'] = theme), to);
  #keep(name: string, faults: readonly string[]): void {
    this.#found.push(...faults.map((fault) => `${name}: ${fault}`));
  }
  /** On the sheet, card or menu that is open; without one, on the page. */
  async #axe(rules: (axe: AxeBuilder) => AxeBuilder): Promise<string[]> {
    const axe = rules(new AxeBuilder({ page: this.page })).setLegacyMode(true);
    for (const layer of ['[role=dialog]', '[role=menu]'])
      if ((await this.page.locator(layer).count()) > 0) axe.include(layer);
    // Through a menu the arrow keys lead, not Tab (ARIA practices, menu): the walk presses End in one.
    if ((await this.page.getByRole('menu').count()) > 0) axe.disableRules(['scrollable-region-focusable']);
    const { violations } = await axe.analyze();
    return violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map((one) => one.html.slice(0, 200)).join(' | ')}`,
    );
  }
}
