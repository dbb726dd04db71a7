import { defineWords } from './words.ts';

export const say = defineWords('language-choice', {
  en: { language: 'Language', 'as-the-ward': 'As the ward (now {now})' },
  de: { language: 'Sprache', 'as-the-ward': 'Wie die Station (jetzt {now})' },
});
