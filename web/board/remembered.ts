/**
 * What is worked out once and asked for often, of things that are always new: a wall hangs for months,
 * and its times and ages never end. As many as are told are kept; the oldest go.
 */
export function remembered<V>(most: number): (key: string, make: () => V) => V {
  const kept = new Map<string, V>();
  return (key, make) => {
    const known = kept.get(key);
    if (known !== undefined) return known;
    const made = make();
    if (kept.size >= most) kept.delete(kept.keys().next().value!);
    kept.set(key, made);
    return made;
  };
}
