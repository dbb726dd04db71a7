import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chooseLanguage, keepLanguage } from './language.ts';
import { phrasesReady, told, toldLang } from './told.ts';

keepLanguage();
beforeAll(async () => {
  chooseLanguage('de');
  await phrasesReady();
});
afterAll(() => chooseLanguage(null));

describe('what a huddle is told, in German', () => {
  it.each([
    'More help: bed to chair now 2 people, sling lift (was 1 person, belt); also toilet, edge of bed, stand',
    'More help: bed to chair now HOLD (was 3 people or more, no aid)',
    'Less help: toilet at night now stand by, walking support (was 1 person, walking support)',
    'Other help: walk now on own, no aid (was HOLD)',
    'Arrived 24 Oct 20:30: checked here',
    'Left the ward',
    'Moved from A2',
    'Check again: Fall, 24 Oct 21:00',
    'Not known any more: Not checked on this ward',
    'Hold placed on out of bed (waiting for review), review 25 Oct 05:00',
    'Hold ended on all including turning (after fall)',
    'Order: weight bearing left leg none',
    'Order: hip precautions on',
    'Walk now cleared, was Edge',
    'Edge now, was Walk',
    'Checked: Stand',
    'Comfort plan now',
    'Leaves 26 Oct 16:00: nothing recorded today; below the usual way',
    'Leaves 25 Oct 13:00: 1 of 3 today',
    'Fall, 24 Oct 20:12',
    'Not checked there; if it could not wait',
    'Bed to chair: HOLD; 2 people, sling lift',
    'Toilet: stand by, no aid',
  ])('%s', (sentence) => {
    expect(toldLang(sentence)).toBeUndefined();
    expect(told(sentence)).not.toBe(sentence);
  });
});
