/** A seeded source of chance (mulberry32), so that the same seed plays the same week. */
export interface Chance {
  /** At least 0, below 1. */
  next(): number;
  /** True with this probability. */
  is(probability: number): boolean;
  /** A whole number from low to high, both possible. */
  between(low: number, high: number): number;
  pick<T>(from: readonly T[]): T;
}

export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let x = state;
    x = Math.imul(x ^ (x >>> 15), x | 1);
    x ^= x + Math.imul(x ^ (x >>> 7), x | 61);
    return ((x ^ (x >>> 14)) >>> 0) / 4_294_967_296;
  };
  return {
    next,
    is: (probability) => next() < probability,
    between: (low, high) => low + Math.floor(next() * (high - low + 1)),
    pick: (from) => from[Math.floor(next() * from.length)]!,
  };
}
