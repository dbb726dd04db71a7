/**
 * Every sheet and every step of a check on a phone, as gloves and as a reader meet them: all there is to hit is large
 * enough and far enough from its neighbours, and axe finds nothing by day and by night.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { confirmPerson } from './bedside-support.ts';
import { Walk } from './sheet-walk.ts';
import { PHONE_SIZE } from './support.ts';

let walk: Walk;
beforeAll(async () => {
  walk = await Walk.begin(PHONE_SIZE, true);
});
afterAll(() => walk?.end());

const bedside = (bed: string) => walk.go(`bedside/bed-${bed}`, /^Rosa|arrives here$/);
/** A check of this depth, at its first stage. */
async function check(depth: RegExp): Promise<void> {
  await walk.tap('Check');
  await walk.confirm();
  await walk.tap(depth);
  await walk.page.getByText('Stage 1 of 6').waitFor();
}
/** Each of this name in what lies uppermost, where there is one. */
async function tapEach(within: string, name: string): Promise<void> {
  for (const one of await walk.dialog().locator(within).getByRole('button', { name, exact: true }).all())
    await one.click();
}

describe('SCREEN-27 SCREEN-28 on a phone, with gloves', () => {
  it('the beds, the page of a bed, and who is in front of you', async () => {
    const { page } = walk;
    await walk.go('bedside', 'Bay 1');
    await walk.looks('beds');
    await page.getByRole('banner').getByRole('button').click();
    await walk.looks('who are you');
    await walk.tap(/Noor Haddad/);
    await bedside('2C');
    await walk.looks('empty bed');
    await walk.tap('A person arrives here');
    await walk.tries('arrival');
    await walk.close();
    await bedside('1A');
    await walk.looks('page of 1A');
    await bedside('2B');
    await walk.looks('page of 2B');
    const whys = await page.getByRole('button', { name: /^why/i }).all();
    expect(whys.length).toBeGreaterThan(4);
    await whys[0]!.click();
    await walk.dialog().waitFor();
    await walk.looks('a why');
    await page.keyboard.press('Escape');
    await walk.closed();
    await walk.tap('Confirm the person');
    await walk.looks('confirm');
    await walk.tap('It is somebody else');
    await walk.looks('somebody else');
    await walk.tap('Tapped by mistake');
    await confirmPerson(page);
    await walk.closed();
    await walk.looks('confirmed');
    expect(walk.found()).toEqual([]);
  });

  it('the sheets of the menu', async () => {
    await bedside('2B');
    await walk.tap('More');
    await walk.page.getByRole('menu').waitFor();
    await walk.looks('menu');
    const sheets = await walk.page.getByRole('menuitem').allInnerTexts();
    await walk.page.keyboard.press('End');
    const last = walk.page.getByRole('menuitem').last();
    await expect.poll(() => last.evaluate((one) => one === document.activeElement)).toBe(true);
    await walk.page.keyboard.press('Escape');
    expect(sheets.length).toBeGreaterThan(15);
    for (const sheet of sheets) {
      await walk.menu(sheet);
      await walk.confirm();
      await walk.tries(sheet);
      await walk.close();
    }
    expect(walk.found()).toEqual([]);
  });

  it('a session, undone, and what happened', async () => {
    await bedside('2B');
    await walk.tap('Session');
    await walk.confirm();
    await walk.tries('session');
    await walk.tap('Stopped');
    await walk.tries('session stopped');
    await walk.tap('Back');
    await walk.tap('Not done');
    await walk.tries('session not done');
    await walk.tap('Record not done');
    await walk.page.getByRole('button', { name: 'Send now' }).waitFor();
    await walk.looks('undo');
    await walk.tap('Undo');
    await walk.close();
    await walk.tap('Something happened');
    await walk.confirm();
    await walk.tries('something happened');
    await walk.close();
    expect(walk.found()).toEqual([]);
  });

  it('each stage of a check, and what follows where it stops', async () => {
    const { page } = walk;
    await bedside('1A');
    await walk.tap('Check');
    await walk.confirm();
    await walk.tries('depth');
    await walk.close();
    await check(/^Full, with pressure set/);
    for (let stage = 1; stage <= 6; stage += 1) {
      await page.getByText(`Stage ${stage} of 6`).waitFor();
      await walk.unfold();
      for (const one of await walk
        .dialog()
        .getByRole('group', { name: /^Pressure/ })
        .all()) {
        await one.getByLabel('systolic').fill('120');
        await one.getByLabel('diastolic').fill('80');
      }
      await tapEach('.part', 'Not tested');
      await tapEach('.foot', 'Not tested');
      await walk.looks(`stage ${stage}`);
      await tapEach('.foot', 'Not tested');
      await tapEach('.part', 'Met');
      await tapEach('.stage', 'No symptom');
      await tapEach('.stage', 'Free, on their own');
      await walk.tap('Stage met, go on');
    }
    await page.getByRole('heading', { name: 'Before it is recorded' }).waitFor();
    await walk.looks('before it is recorded');
    await walk.tap('Back to the last stage');
    await walk.tap('Yes, a symptom');
    await page.getByRole('heading', { name: 'Make safe first' }).waitFor();
    await walk.looks('make safe');
    await walk.tap('The person is safe, go on');
    await walk.tap('There was a symptom');
    await walk.looks('after');
    await walk.tap('Go on to record');
    await page.getByRole('heading', { name: 'Before it is recorded' }).waitFor();
    await walk.looks('before a check that stopped is recorded');
    await walk.close();
    await walk.tap('Check');
    await page.getByRole('button', { name: /^Go on with the check begun/ }).waitFor();
    await walk.looks('half-done check');
    await walk.close();
    expect(walk.found()).toEqual([]);
  });

  it('a leg that does not bear: the stage may be met on the other, and the plan follows', async () => {
    const { page } = walk;
    await bedside('2A');
    await check(/^Full under 4 minutes/);
    for (let stage = 1; stage <= 3; stage += 1) {
      await page.getByText(`Stage ${stage} of 6`).waitFor();
      await tapEach('.part', 'Met');
      await tapEach('.stage', 'No symptom');
      await tapEach('.stage', 'Free, on their own');
      await walk.tap('Stage met, go on');
    }
    const part = (name: RegExp, answer: string) =>
      walk.dialog().getByRole('group', { name }).getByRole('button', { name: answer, exact: true }).click();
    await page.getByText('Stage 4 of 6').waitFor();
    await part(/^Rises from sitting/, 'Met');
    await part(/^Leg bears weight.*right/i, 'Not met');
    await part(/^Leg bears weight.*left/i, 'Met');
    await walk.looks('one leg, not said yet');
    await walk.tap(/^Met on the left leg/);
    await tapEach('.stage', 'No symptom');
    await walk.tap('Secured: two people');
    await walk.looks('one leg');
    await walk.tap('Stage met, go on');
    await walk.tap('Stop before this');
    await page.getByText('met, secured, on the left leg').waitFor();
    await page.getByRole('heading', { name: 'The plan that would follow' }).waitFor();
    await walk.looks('before a check on one leg is recorded');
    await walk.close();
    expect(walk.found()).toEqual([]);
  });

  it('the walking measures of a stay, each with what it asks', async () => {
    const { page } = walk;
    await walk.go('stays/stay-1', 'How this stay went');
    await walk.iAm(/Theo Brandt/);
    await walk.tap('Turn walking measures on for this stay');
    await page.getByText('None recorded yet.').waitFor();
    await walk.tap('Add a measure');
    await walk.dialog().waitFor();
    const kinds = walk.dialog().getByRole('group', { name: 'Which measure' }).getByRole('button');
    expect(await kinds.count()).toBe(5);
    for (const kind of await kinds.all()) {
      await kind.click();
      await walk.looks(`measure: ${await kind.innerText()}`);
    }
    await walk.tries('measures');
    await walk.close();
    await page.getByRole('button', { name: 'Add a measure' }).click();
    await walk.tap('Chair stands in 30 s');
    await walk.dialog().getByLabel('Stands').fill('9');
    await walk.tap('Without arms');
    await walk.looks('measure: before it is recorded');
    await walk.tap('Record the measure');
    await walk.closed();
    await page.getByText('Chair stands in 30 s: 9').first().waitFor();
    await walk.looks('measures of a stay');
    expect(walk.found()).toEqual([]);
  });

  it('the round: who goes, with whom, not now, instead, and the board is wrong', async () => {
    const { page } = walk;
    const card = page.locator('article.card');
    const chooses = async (name: string | RegExp, what: string) => {
      await walk.tap(name);
      await walk.looks(what);
      await walk.tap('Back');
    };
    await walk.go('round', 'Who next?');
    await walk.iAm(/Ada Lund/);
    await card.waitFor();
    await walk.unfold();
    await page.getByText('Weights of this ward').waitFor();
    await walk.looks('round');
    await chooses('Not now', 'not now');
    await chooses('THE BOARD IS WRONG', 'the board is wrong');
    await page
      .getByRole('button', { name: /^Show bed/ })
      .first()
      .click();
    await walk.tap('I go');
    await walk.looks('who was asked');
    await walk.tap('Noor Haddad');
    await page.getByRole('button', { name: 'A nurse asks' }).waitFor();
    await walk.looks('why this one');
    await walk.tap('Back');
    await walk.tap('Show bed 1B');
    await walk.tap('I go with…');
    await walk.looks('who goes with you');
    await walk.tap(/^\d\d:\d\d with Bea Holm$/);
    await walk.tap('Noor Haddad');
    await page.getByText('You are booked').waitFor();
    await walk.looks('booked');
    await chooses('Swap', 'swap');
    await chooses('Give back', 'give back');
    expect(walk.found()).toEqual([]);
  });

  it('nothing is written to the console', () => {
    expect(walk.faults).toEqual([]);
  });
});
