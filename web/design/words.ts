import { defineWords } from '../i18n/words.ts';

export const say = defineWords('design', {
  en: {
    close: 'Close',
  },
  de: {
    close: 'Schließen',
  },
});
