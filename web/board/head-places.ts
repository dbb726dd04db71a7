/**
 * Shares the head of the wall out among its words: all at the height of a tile's farthest words, as
 * wide as they like where there is room, all narrower alike where there is not. Pure but for the
 * measuring of widths.
 */
import { widthInEm } from './fit.ts';
import { CAP } from './legible.ts';

export interface HeadWords {
  readonly words: string;
  /** Height of the capitals, in pixels. */
  readonly capital: number;
  readonly weight: number;
}

/** Widths in pixels in the order given; together never more than `width`. */
export function headPlaces(all: readonly HeadWords[], width: number): readonly number[] {
  const ends = all.map(({ words, capital, weight }) => ({
    least: (widthInEm(words, weight, true) * capital) / CAP + 2,
    full: (widthInEm(words, weight) * capital) / CAP + 2,
  }));
  const least = ends.reduce((sum, one) => sum + one.least, 0);
  const full = ends.reduce((sum, one) => sum + one.full, 0);
  const share = full <= least ? 1 : Math.min(1, Math.max(0, (width - least) / (full - least)));
  const shrink = Math.min(1, width / least);
  return ends.map((one) => (one.least + (one.full - one.least) * share) * shrink);
}

export const leastWidth = (all: readonly HeadWords[]): number =>
  all.reduce((sum, one) => sum + (widthInEm(one.words, one.weight, true) * one.capital) / CAP + 2, 0);
