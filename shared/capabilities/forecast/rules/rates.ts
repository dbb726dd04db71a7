/**
 * How often people ask, from what the ward recorded: Gamma and Poisson. The prior is flat over the
 * waking day and counts as so many days of one stay; each recorded day counts as one more. A rate is
 * drawn anew for every block of runs, so that what is not known yet widens the interval.
 */
import { gamma, type Random } from '../../../kernel/random.ts';
import { SLOT_MINUTES, type Rates } from './scenario.ts';

/** What was seen of one type of stay, by slot of the ward day. */
export interface Seen {
  /** Requests begun in each slot, over all days. */
  readonly counts: readonly number[];
  /** Days of stays that were looked at, in each slot: a day with nothing recorded is a gap and does not count. */
  readonly days: readonly number[];
}
export interface Prior {
  /** Requests of one person in each slot. */
  readonly perSlot: readonly number[];
  /** It counts as so many days of one stay. */
  readonly days: number;
}
/** Gamma by slot: mean `shape / days` requests of one person in a slot. */
export interface Posterior {
  readonly shape: readonly number[];
  readonly days: readonly number[];
}

/** A slot borrows from its neighbours: people do not ask by the quarter hour. Weights sum to one. */
const NEIGHBOURS: readonly (readonly [by: number, weight: number])[] = [
  [-1, 0.25],
  [0, 0.5],
  [1, 0.25],
];
const smooth = (values: readonly number[]): number[] =>
  values.map((_, i) =>
    NEIGHBOURS.reduce((sum, [by, weight]) => sum + weight * (values[i + by] ?? values[i]!), 0),
  );

export function posteriorOf({ perSlot, days }: Prior, seen: Seen | null): Posterior {
  const counts = seen && smooth(seen.counts);
  const looked = seen && smooth(seen.days);
  return {
    shape: perSlot.map((mean, i) => mean * days + (counts?.[i] ?? 0)),
    days: perSlot.map((_, i) => days + (looked?.[i] ?? 0)),
  };
}

/** Per minute, as the best single guess. */
export const meanRates = (posteriors: readonly Posterior[]): Rates =>
  posteriors.map(({ shape, days }) => shape.map((a, i) => a / days[i]! / SLOT_MINUTES));

/** Per minute, drawn from what the record leaves open. */
export const drawRates = (posteriors: readonly Posterior[], random: Random): Rates =>
  posteriors.map(({ shape, days }) =>
    shape.map((a, i) => (a === 0 ? 0 : gamma(random, a) / days[i]! / SLOT_MINUTES)),
  );

/**
 * How much days differ beyond chance: the shape of a Gamma of mean 1 that all rates of a day are
 * multiplied by (by moments: variance of the counts above their mean). Infinity: not more than chance,
 * or too few days to tell.
 *
 * @param counts requests of each recorded day
 * @param expected what the rates say for it
 */
export function daySpread(counts: readonly number[], expected: readonly number[]): number {
  if (counts.length < 7) return Infinity;
  let over = 0;
  let square = 0;
  counts.forEach((count, i) => {
    over += (count - expected[i]!) ** 2 - expected[i]!;
    square += expected[i]! ** 2;
  });
  return over <= 0 ? Infinity : square / over;
}
