/** Every sheet of the pages for a desk: axe finds nothing by day and by night, whatever is tapped open. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { WARD } from '../journeys/http-kit.ts';
import { Walk } from './sheet-walk.ts';

let walk: Walk;
beforeAll(async () => {
  walk = await Walk.begin({ width: 1280, height: 800 }, false);
});
afterAll(() => walk?.end());

describe('SCREEN-28 the sheets of a desk', () => {
  it('huddle: what, who, by when, and closed', async () => {
    await walk.go('huddle', 'Agreed, and leaving soon');
    await walk.iAm(/Ines Amaral/);
    await walk.tap('Agree an action for the ward');
    await walk.looks('what');
    await walk
      .dialog()
      .getByRole('button', { name: /Bring or mend equipment$/ })
      .click();
    await walk.looks('who');
    await walk
      .dialog()
      .getByRole('button', { name: /Noor Haddad/ })
      .click();
    await walk.page.getByRole('heading', { name: 'By when' }).waitFor();
    await walk.tries('by when');
    await walk.closed();
    await walk.page
      .getByRole('button', { name: /^Close: Bring or mend/ })
      .first()
      .click();
    await walk.looks('close an action');
    await walk.close();
    expect(walk.found()).toEqual([]);
  });

  it('charge nurse: an expected arrival, and who is on', async () => {
    await walk.go('charge', 'Who looks after whom');
    await walk.tap('Enter an expected arrival');
    await walk.tries('expected arrival');
    await walk.close();
    await walk.tap('Name who is on');
    await walk.tries('who is on');
    await walk.close();
    expect(walk.found()).toEqual([]);
  });

  it('equipment: a piece, its states, its form and the table', async () => {
    const { page } = walk;
    await walk.go('equipment', 'Lift 1');
    await walk.iAm(/Hana Weiss/);
    for (const [piece, taps] of [
      ['Lift 1', ['Taken', 'Broken or not safe']],
      ['Sling 1', ['Keep for one person']],
    ] as const) {
      await page.getByRole('button', { name: new RegExp(piece) }).click();
      await walk.looks(piece);
      for (const one of taps) {
        await walk.dialog().getByRole('button', { name: one, exact: true }).click();
        await walk.looks(`${piece}, ${one}`);
      }
      await walk.close();
    }
    await page.getByRole('button', { name: /Lift 1/ }).click();
    await walk.tap('Take it off the list');
    await walk.looks('off the list');
    await walk.close();
    await walk.tap('Add a piece');
    await walk.tries('a new piece');
    await walk.tap('Save');
    await page.getByText('give it a name').first().waitFor();
    await walk.looks('a new piece with faults');
    await walk.close();
    await walk.tap('Fill the list from a table');
    await walk.looks('table');
    await walk.close();
    await page.getByRole('button', { name: /Lift 1/ }).click();
    await walk.tap('Broken or not safe');
    await walk.tap('brake or wheel');
    await page.getByText('out of service (brake or wheel)').waitFor();
    await walk.looks('a piece out of service');
    expect(walk.found()).toEqual([]);
  });

  it('settings: a bed, a closed bed, and the documents unfolded', async () => {
    await walk.go('settings', 'Staff list');
    await walk.iAm(/Ines Amaral/);
    await walk.tap('Add a bed');
    await walk.looks('a bed');
    await walk.close();
    await walk.tap('Close bed 2C');
    await walk.looks('close a bed');
    await walk.close();
    await walk.unfold();
    await walk.looks('settings unfolded');
    expect(walk.found()).toEqual([]);
  });

  it('day plan: a proposal, and one visit of it changed', async () => {
    await walk.go('day-plan', 'Nothing is planned yet');
    await walk.tap('Make a plan');
    await walk.page.getByRole('button', { name: 'Accept this plan' }).waitFor({ timeout: 60_000 });
    await walk.looks('day plan');
    await walk.page
      .getByRole('button', { name: /^Change: / })
      .first()
      .click();
    await walk.looks('a visit');
    await walk.close();
    expect(walk.found()).toEqual([]);
  });

  it('paper: what is keyed in from a sheet', async () => {
    const sheet = await fetch(`${walk.ward.footboard.url}/api/wards/${WARD}/paper/sheet`);
    const serial = /filename="(.+)\.pdf"/.exec(sheet.headers.get('content-disposition') ?? '')![1]!;
    await walk.go(`paper/${serial}`, 'Which bed?');
    await walk.looks('which bed');
    await walk.go(`paper/${serial}/bed-1A`, 'Time on the paper');
    await walk.page.getByLabel('Time on the paper').fill('10:50');
    await walk.looks('paper entry');
    for (const what of ['Session', 'Something happened', 'Hold']) {
      await walk.tap(what);
      await walk.tries(`from paper, ${what}`);
      await walk.close();
    }
    expect(walk.found()).toEqual([]);
  });

  it('the record of a stay: added to, clarified, corrected, withdrawn', async () => {
    const { page } = walk;
    await walk.go('stays/stay-1', 'How this stay went');
    for (const [entry, verbs] of [
      [/^Change: Session/, ['Correct it', 'Withdraw it', 'Add to it', 'Clarify its wording']],
      [/^Change: (Staged check|Check)/, ['Correct it']],
      [/^Change: .*[Ww]eight/, ['Correct it']],
    ] as const) {
      for (const verb of verbs) {
        await page.getByRole('button', { name: entry }).first().click();
        await page.getByRole('menu').waitFor();
        await walk.looks('the four verbs');
        await page.getByRole('menuitem', { name: verb }).click();
        await walk.dialog().waitFor();
        await walk.tries(`${verb}: ${entry.source}`);
        await walk.close();
      }
    }
    expect(walk.found()).toEqual([]);
  });

  it('nothing is written to the console', () => {
    expect(walk.faults).toEqual([]);
  });
});
