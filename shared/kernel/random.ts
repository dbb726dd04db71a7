/**
 * Random numbers that come out the same for the same seed, on every machine: a small counter-free
 * generator (sfc32, 128 bits of state, public domain) started by a mixing step (splitmix32). For
 * simulation only, never for secrets.
 */
export interface Random {
  /** Uniform in [0, 1). */
  next(): number;
}

/** A stream of its own for each set of keys: what happens in one does not shift the numbers of another. */
export function randomOf(...keys: readonly number[]): Random {
  let h = 0x9e3779b9;
  const mix = (value: number): number => {
    h = (h + 0x9e3779b9 + value) | 0;
    let z = h ^ (h >>> 16);
    z = Math.imul(z, 0x21f0aaad);
    z ^= z >>> 15;
    z = Math.imul(z, 0x735a2d97);
    h = z ^ (z >>> 15);
    return h;
  };
  for (const key of keys) mix(key | 0);
  let a = mix(1);
  let b = mix(2);
  let c = mix(3);
  let d = 1;
  const next = (): number => {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (c << 21) | (c >>> 11);
    c = (c + t) | 0;
    return (t >>> 0) / 4_294_967_296;
  };
  for (let i = 0; i < 8; i++) next();
  return { next };
}

/** Exponential with mean 1. */
export const exponential = (random: Random): number => -Math.log(1 - random.next());

/** Normal with mean 0 and variance 1 (Box and Muller 1958). */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random.next())) * Math.cos(2 * Math.PI * random.next());

/** Gamma with this shape and mean `shape` (Marsaglia and Tsang 2000, from memory). */
export function gamma(random: Random, shape: number): number {
  if (shape < 1) return gamma(random, shape + 1) * (1 - random.next()) ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const x = normal(random);
    const v = (1 + c * x) ** 3;
    if (v <= 0) continue;
    const u = 1 - random.next();
    if (Math.log(u) < 0.5 * x * x + d - d * v + d * Math.log(v)) return d * v;
  }
}

/** Mean 1, the sum of `stages` exponentials: 1 is exponential, more is less spread. */
export function holdOf(random: Random, stages: number): number {
  let product = 1;
  for (let i = 0; i < stages; i++) product *= 1 - random.next();
  return -Math.log(product) / stages;
}
