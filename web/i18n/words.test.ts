import { afterEach, describe, expect, it } from 'vitest';
import { chooseLanguage, followWardLanguage, keepLanguage, speaks } from './language.ts';
import { defineWords, i18n } from './words.ts';

const say = defineWords('test-area', {
  en: { hello: 'Hello {who}', beds: '{n} bed | {n} beds' },
  de: { hello: 'Hallo {who}', beds: '{n} Bett | {n} Betten' },
});
keepLanguage();
afterEach(() => chooseLanguage(null));

describe('words of the screens', () => {
  it('follow the ward, and before it what this device chose', async () => {
    expect(say('hello', { who: 'Ana' })).toBe('Hello Ana');
    followWardLanguage('de');
    await Promise.resolve();
    expect(speaks.value).toBe('de');
    expect(say('hello', { who: 'Ana' })).toBe('Hallo Ana');
    chooseLanguage('en');
    await Promise.resolve();
    expect(say('hello', { who: 'Ana' })).toBe('Hello Ana');
    expect(document.documentElement.lang).toBe('en');
    followWardLanguage('en');
  });

  it('choose one or many by a count', () => {
    i18n.global.locale.value = 'de';
    expect([1, 3].map((n) => say('beds', { n }, n))).toEqual(['1 Bett', '3 Betten']);
    i18n.global.locale.value = 'en';
    expect([1, 3].map((n) => say('beds', { n }, n))).toEqual(['1 bed', '3 beds']);
  });
});
