import { defineWords } from '../i18n/words.ts';

export const say = defineWords('day-page', {
  en: {
    title: 'The day by the hour, {ward}',
    of: 'the day by the hour',
    'as-of': '{day}, as of {time}',
    earlier: 'The day before',
    later: 'The day after',
    today: 'Today',
    huddle: 'Huddle',
    old: 'The board is old, and so may this be.',
  },
  de: {
    title: 'Der Tag nach Stunden, {ward}',
    of: 'Der Tag nach Stunden',
    'as-of': '{day}, Stand {time}',
    earlier: 'Der Tag davor',
    later: 'Der Tag danach',
    today: 'Heute',
    huddle: 'Kurzbesprechung',
    old: 'Die Tafel ist alt, dies womöglich auch.',
  },
});
