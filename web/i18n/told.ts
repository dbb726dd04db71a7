/**
 * Sentences that the server or the shared rules wrote, in the language of the screen. They come in
 * English; the phrase book puts them into another language by their form. One that it does not know
 * stays as it is: a reason in English is better than none, and it is marked as English for readers.
 */
import { shallowRef } from 'vue';
import type { Language } from '@footboard/shared/capabilities/wards/values';
import { speaks } from './language.ts';
import type { PhraseBook } from '@footboard/shared/i18n/phrase-book';

/** Fetched once a language other than English is spoken: an English wall never loads it. */
const book = shallowRef<PhraseBook | null>(null);
let fetching: Promise<void> | null = null;

/** Resolves when the book of the language is there; at once for English. A failed fetch is tried again at the next sentence. */
export function phrasesReady(language: Language = speaks.value): Promise<void> {
  if (language === 'en' || book.value) return Promise.resolve();
  fetching ??= import('@footboard/shared/i18n/phrases/german').then(
    ({ germanBook }) => {
      book.value = germanBook();
    },
    () => {
      fetching = null;
    },
  );
  return fetching;
}

/** The sentence in the language of the screen, or null where it stays English. */
function known(sentence: string): string | null {
  if (speaks.value === 'en') return sentence;
  if (!book.value) {
    void phrasesReady();
    return null;
  }
  return book.value.say(sentence);
}

export const told = (sentence: string): string => known(sentence) ?? sentence;

/** The `lang` of an element that shows `told(sentence)`: "en" where the sentence stayed English, else nothing. */
export const toldLang = (sentence: string): 'en' | undefined =>
  speaks.value !== 'en' && known(sentence) === null ? 'en' : undefined;
