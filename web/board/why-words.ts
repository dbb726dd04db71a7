import { defineWords } from '../i18n/words.ts';

export const say = defineWords('why', {
  en: {
    why: 'why',
    'why-of': 'Why: {of}',
    rule: 'rule',
    'no-entry': ', no entry behind it',
    from: ', from',
    entry: 'entry',
    entries: '{n} entry | {n} entries',
    nothing: 'Nothing is recorded behind this.',
  },
  de: {
    why: 'warum',
    'why-of': 'Warum: {of}',
    rule: 'Regel',
    'no-entry': ', kein Eintrag dahinter',
    from: ', aus',
    entry: 'Eintrag',
    entries: '{n} Eintrag | {n} Einträge',
    nothing: 'Dahinter ist nichts erfasst.',
  },
});
