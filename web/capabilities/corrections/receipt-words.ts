/** Which screens have painted a correction or retraction, in words. */
import type { ReceiptsPage } from '@footboard/shared/wire/access';
import { defineWords } from '../../i18n/words.ts';

export const say = defineWords('receipts', {
  en: {
    seen: 'Seen by {seen} of {all} screens',
    waiting: 'Seen by {seen} of {all} screens; not yet: {places}',
    title: 'Corrections of the last day that a screen has not shown yet',
    line: 'Correction or retraction of {time}',
    open: 'Open the entry',
    'initials-warning':
      'Initials can tell a passer-by who lies here. Hang such a screen where only staff pass, and ask people who would rather not.',
  },
  de: {
    seen: 'Auf {seen} von {all} Bildschirmen zu sehen',
    waiting: 'Auf {seen} von {all} Bildschirmen zu sehen; noch nicht: {places}',
    title: 'Korrekturen des letzten Tages, die ein Bildschirm noch nicht gezeigt hat',
    line: 'Korrektur oder Rücknahme von {time}',
    open: 'Eintrag öffnen',
    'initials-warning':
      'Initialen können Vorbeigehenden verraten, wer hier liegt. Nur dort aufhängen, wo allein Personal vorbeikommt, und fragen, wer es nicht möchte.',
  },
});

/** "Seen by 3 of 4 screens; not yet: corridor wall", or nothing where no screen had to draw anything. */
export function seenWords(page: ReceiptsPage, event: string): { words: string; waiting: boolean } | null {
  const change = page.changes.find((one) => one.event === event);
  if (!change || change.feed === null || page.screens.length === 0) return null;
  const waiting = page.screens.filter(({ device }) => change.waiting.includes(device));
  const [all, seen] = [page.screens.length, page.screens.length - waiting.length];
  if (waiting.length === 0) return { words: say('seen', { seen, all }), waiting: false };
  const places = waiting.map(({ place }) => place).join(', ');
  return { words: say('waiting', { seen, all, places }), waiting: true };
}
