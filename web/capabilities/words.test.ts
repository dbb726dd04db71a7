import { afterEach, describe, expect, it } from 'vitest';
import {
  recordedTriggerKind,
  holdScope,
  limb,
  precaution,
} from '@footboard/shared/capabilities/orders/values';
import { activity, NOT_DONE_REASONS, sessionEventKind } from '@footboard/shared/capabilities/sessions/values';
import { attachmentKind, fence } from '@footboard/shared/capabilities/stays/values';
import { role } from '@footboard/shared/kernel/author';
import { chooseLanguage } from '../i18n/language.ts';
import { CODE_WORDS } from './code-words.ts';
import { inside, say, sayInside } from './words.ts';

afterEach(() => chooseLanguage(null));

describe('the words for a code', () => {
  it('follow the language of the screen, at the start of a line and within a sentence', () => {
    expect([say('board-wrong'), sayInside('board-wrong')]).toEqual([
      'The board is wrong',
      'the board is wrong',
    ]);
    chooseLanguage('de');
    expect([say('board-wrong'), sayInside('board-wrong')]).toEqual([
      'Die Tafel stimmt nicht',
      'die Tafel stimmt nicht',
    ]);
    expect(inside('Sturz')).toBe('Sturz');
  });
  it('are the code without its hyphens where there are none', () => {
    expect([say('never-heard-of'), sayInside('never-heard-of')]).toEqual([
      'Never heard of',
      'never heard of',
    ]);
    expect(say('constructor')).toBe('Constructor');
  });
  it('are there, in both languages, for everything that a form of a stay, an order or a session offers', () => {
    const offered = [
      recordedTriggerKind,
      holdScope,
      limb,
      precaution,
      activity,
      sessionEventKind,
      attachmentKind,
      fence,
      role,
    ].flatMap((values) => [...values.options] as string[]);
    const reasons = Object.entries(NOT_DONE_REASONS).flatMap(([group, examples]) => [group, ...examples]);
    expect([...offered, ...reasons].filter((code) => !Object.hasOwn(CODE_WORDS, code))).toEqual([]);
  });
});
