import { defineWords } from '../i18n/words.ts';

/** Apart from the paper page's own words: this link is on other screens. */
export const sayPaper = defineWords('paper-link', {
  en: { link: 'Paper' },
  de: { link: 'Papier' },
});
