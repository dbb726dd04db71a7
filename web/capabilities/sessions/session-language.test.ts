/** The language changes while the sheet of a session is open. */
import { afterEach, describe, expect, it } from 'vitest';
import { nextTick } from 'vue';
import { chooseLanguage, keepLanguage } from '../../i18n/language.ts';
import { given } from './session-form.testkit.ts';

describe('the language of an open form', () => {
  keepLanguage();
  afterEach(() => chooseLanguage(null));

  it('follows the screen in its choices too, and keeps what was chosen', async () => {
    const form = given();
    await form.tap('Stand');
    chooseLanguage('de');
    await nextTick();
    const said = form.wrapper.findAll('button').map((button) => button.text().replace('✓', '').trim());
    expect(said).toEqual(expect.arrayContaining(['Stehen', 'Gehen', 'Beim Toilettengang', 'Gemacht']));
    expect(said.filter((one) => /^(Stand|Walk|Done|With toilet)/.test(one))).toEqual([]);
    await form.tap('Gemacht');
    expect(form.sent[0]!.body.data).toMatchObject({ session: { activities: ['stand'] } });
  });
});
