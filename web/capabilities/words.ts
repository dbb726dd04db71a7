/**
 * Plain words for the codes of events and commands, in the language of the screen. A code that has none
 * is shown with its hyphens taken out, so that a new one is readable before anybody has worded it.
 */
import { speaks } from '../i18n/language.ts';
import { CODE_WORDS } from './code-words.ts';

const WORDS: Readonly<Record<string, readonly [en: string, de: string]>> = CODE_WORDS;
const german = (): boolean => speaks.value === 'de';
const worded = (code: string): string | undefined =>
  Object.hasOwn(WORDS, code) ? WORDS[code]![german() ? 1 : 0] : undefined;

export const plain = (code: string): string => code.replaceAll('-', ' ');
/** The words for a code, as they stand at the start of a line. */
export const say = (code: string): string => {
  const words = worded(code);
  return words === undefined || german() ? sentence(words ?? plain(code)) : words;
};
/** The words for a code inside a sentence. */
export const sayInside = (code: string): string => inside(worded(code) ?? plain(code));
/** Words as the beginning of a line. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** The same inside a sentence. German nouns keep their capital, and its other words are small already. */
export const inside = (text: string): string =>
  german() ? text : text.charAt(0).toLowerCase() + text.slice(1);
