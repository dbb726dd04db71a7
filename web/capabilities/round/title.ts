import { defineWords } from '../../i18n/words.ts';

/** Apart from the other words of the round: the wall, too, has a link to it. */
export const roundTitle = defineWords('round-title', {
  en: { title: 'Who next?' },
  de: { title: 'Wer ist dran?' },
});
