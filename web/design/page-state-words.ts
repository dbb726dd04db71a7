import { defineWords } from '../i18n/words.ts';

export const say = defineWords('page-state', {
  en: {
    asking: 'Asking for {of}.',
    slow: 'It takes longer than usual. Wait, or ask again.',
    again: 'Ask again',
    wards: 'Choose a ward',
  },
  de: {
    asking: '{of}: wird abgefragt.',
    slow: 'Es dauert länger als sonst. Warten oder noch einmal fragen.',
    again: 'Noch einmal fragen',
    wards: 'Station wählen',
  },
});
