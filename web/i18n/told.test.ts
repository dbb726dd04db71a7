import { afterEach, describe, expect, it } from 'vitest';
import { mount } from '@vue/test-utils';
import ToldText from './ToldText.vue';
import { chooseLanguage, keepLanguage } from './language.ts';
import { phrasesReady, told, toldLang } from './told.ts';

keepLanguage();
afterEach(() => chooseLanguage(null));

describe('a sentence of a rule', () => {
  it('stays as it is in English, and is not marked', () => {
    expect(told('Hold ended')).toBe('Hold ended');
    expect(toldLang('Hold ended')).toBeUndefined();
  });

  it('is put into German once the book is there; until then it stays English and says so', async () => {
    chooseLanguage('de');
    const line = mount(ToldText, { props: { says: 'Hold ended' } });
    expect(line.html()).toBe('<span lang="en">Hold ended</span>');
    await phrasesReady();
    await line.vm.$nextTick();
    expect(line.html()).toBe('<span>Stopp aufgehoben</span>');
  });

  it.each([
    ['examination was due 24 Oct 2026', 'Prüfung war fällig 24. Okt. 2026'],
    ['Lift 1 was due for its examination 3 Mar 2027', 'die Prüfung von Lift 1 war fällig 3. März 2027'],
    ['Taken 24 Oct 18:00', 'Genommen 24. Okt. 18:00'],
  ])('with a date in it writes that in German too: %s', async (english, german) => {
    chooseLanguage('de');
    await phrasesReady();
    expect(told(english)).toBe(german);
  });

  it('that the book does not know is read aloud as English', async () => {
    chooseLanguage('de');
    await phrasesReady();
    expect(told('Zebra crossing ahead')).toBe('Zebra crossing ahead');
    expect(toldLang('Zebra crossing ahead')).toBe('en');
  });
});
