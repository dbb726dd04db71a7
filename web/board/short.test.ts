import { afterEach, describe, expect, it } from 'vitest';
import { aidClass } from '@footboard/shared/capabilities/handling/values';
import { i18n } from '../i18n/words.ts';
import { planFor } from './rows.testkit.ts';
import { SHORT_AIDS, sayAid, shortAid } from './short.ts';

afterEach(() => (i18n.global.locale.value = 'en'));

describe('short words of the wall', () => {
  it.each(['en', 'de'] as const)(
    'WALL-4 has at most eight letters for every kind of equipment in %s',
    (language) => {
      i18n.global.locale.value = language;
      const words = SHORT_AIDS.map((key) => sayAid(key));
      expect(words.filter((word) => word.length > 8)).toEqual([]);
      expect(new Set(words).size).toBe(words.length);
    },
  );
  it('has a word for every class of equipment', () => {
    for (const aid of aidClass.options) expect(sayAid(shortAid(planFor('walk', { aid }), null))).not.toBe('');
  });
  it('never says "no aid" of a plan that names something it has no word for', () => {
    expect(sayAid(shortAid(planFor('lateral', { aid: 'none', with: ['do not lift'] }), null))).toBe(
      'see plan',
    );
    expect(sayAid(shortAid(planFor('in-bed', { aid: 'none', with: ['slide sheet'] }), null))).toBe('slide');
  });
  it('names the support that the person walks with', () => {
    expect(shortAid(planFor('walk'), 'wheeled-frame')).toBe('wheeled-frame');
    expect(shortAid(planFor('walk'), null)).toBe('walking-support');
  });
});
