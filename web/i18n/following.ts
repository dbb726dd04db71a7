/**
 * A table of words that follows the language of the screen: each value is asked for anew whenever it
 * is read, so that a constant that many screens import need not become a function.
 *
 * @param word puts a key into the words of now
 */
export function following<const Key extends string>(
  keys: readonly Key[],
  word: (key: Key) => string,
): Readonly<Record<Key, string>> {
  const table = {} as Record<Key, string>;
  for (const key of keys) {
    Object.defineProperty(table, key, { enumerable: true, get: () => word(key) });
  }
  return table;
}
