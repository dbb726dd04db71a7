/** How good chances were, once it is known what happened. */
export interface Told {
  readonly chance: number;
  readonly happened: boolean;
}
/** Brier 1950: mean square of chance less outcome; 0 is best. */
export const brier = (told: readonly Told[]): number =>
  told.reduce((sum, { chance, happened }) => sum + (chance - Number(happened)) ** 2, 0) / told.length;
/** 1 is perfect, 0 no better than the reference, below 0 worse. */
export const skill = (told: readonly Told[], reference: readonly Told[]): number =>
  1 - brier(told) / brier(reference);

export interface Bin {
  readonly from: number;
  readonly to: number;
  readonly n: number;
  readonly told: number;
  readonly happened: number;
}
/** Ten bins of equal width: what was told on the mean, and how often it happened. */
export function reliability(told: readonly Told[], bins = 10): Bin[] {
  return Array.from({ length: bins }, (_, b) => {
    const here = told.filter(({ chance }) => Math.min(bins - 1, Math.floor(chance * bins)) === b);
    const mean = (of: (t: Told) => number) => here.reduce((sum, t) => sum + of(t), 0) / here.length;
    return {
      from: b / bins,
      to: (b + 1) / bins,
      n: here.length,
      told: here.length === 0 ? 0 : mean(({ chance }) => chance),
      happened: here.length === 0 ? 0 : mean(({ happened }) => Number(happened)),
    };
  });
}
/** Expected calibration error: the distance in each bin, weighted by how many fell into it. */
export const calibrationError = (told: readonly Told[]): number =>
  reliability(told).reduce((sum, bin) => sum + (bin.n / told.length) * Math.abs(bin.told - bin.happened), 0);
