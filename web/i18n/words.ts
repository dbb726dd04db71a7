/**
 * Words of the screens, in every language the program has. Each part of the screens defines its own
 * words beside itself with `defineWords`, all languages at once: a word that one language lacks does
 * not compile. Within a message `{name}` is filled in, `one | many` is chosen by a count; "@", "|" and
 * braces that are meant as such are written {'@'}.
 */
import { createI18n, type MessageContext } from 'vue-i18n';
import type { Language } from '@footboard/shared/capabilities/wards/values';

export const LANGUAGES: Readonly<Record<Language, string>> = { en: 'English', de: 'Deutsch' };

export const i18n = createI18n({
  legacy: false,
  locale: 'en' as Language,
  fallbackLocale: 'en' as Language,
  messages: { en: {}, de: {} } as Record<Language, Record<string, Record<string, Message>>>,
});

type Message = (context: MessageContext<string>) => string;
/** A hole by its name, or a sign that is meant as such. */
const HOLE = /\{(?:(\w+)|'([^']*)')\}/g;

/**
 * One message as the function that vue-i18n calls: its own compiler of messages would be a tenth of
 * what a wall has to load, for holes and counts alone.
 */
function messageOf(text: string): Message {
  const cases = text.split(' | ').map((one) => {
    const parts: (string | { readonly hole: string })[] = [];
    let from = 0;
    for (const found of one.matchAll(HOLE)) {
      parts.push(one.slice(from, found.index));
      parts.push(found[1] === undefined ? (found[2] ?? '') : { hole: found[1] });
      from = found.index + found[0].length;
    }
    return [...parts, one.slice(from)];
  });
  return (context) => {
    const said = cases.map((parts) =>
      parts
        .map((part) => (typeof part === 'string' ? part : String(context.named(part.hole) ?? '')))
        .join(''),
    );
    return said.length > 1 ? context.plural(said) : said[0]!;
  };
}
const messagesOf = (words: Readonly<Record<string, string>>): Record<string, Message> =>
  Object.fromEntries(Object.entries(words).map(([key, text]) => [key, messageOf(text)]));

type Values = Readonly<Record<string, string | number>>;
/** A word or sentence by its key: `say('up-since', { time })`; with a count: `say('beds', { n }, n)`. */
export type Say<Key extends string> = (key: Key, values?: Values, count?: number) => string;

/**
 * @param area unique name of the part of the screens ("wall", "huddle")
 * @returns the area's own `say`, which follows the language of the screen
 */
export function defineWords<const En extends Readonly<Record<string, string>>>(
  area: string,
  words: { readonly en: En; readonly de: { readonly [K in keyof En]: string } },
): Say<keyof En & string> {
  const { global } = i18n;
  global.mergeLocaleMessage('en', { [area]: messagesOf(words.en) });
  global.mergeLocaleMessage('de', { [area]: messagesOf(words.de) });
  const t = global.t as (key: string, values: Values, options?: { plural: number }) => string;
  return (key, values = {}, count) =>
    count === undefined ? t(`${area}.${key}`, values) : t(`${area}.${key}`, values, { plural: count });
}
