/**
 * Invented wards whose truth is known, made of what the forecast does not assume: everybody asks at a
 * rate of their own, calls come in bursts, uses of a lift last lognormally, lifts break. Written
 * without the simulator, so that an error of it cannot hide in both.
 */
import { exponential, normal, randomOf, type Random } from '../../../kernel/random.ts';
import type { Seen } from './rates.ts';
import { SLOT_MINUTES } from './scenario.ts';

export const DAY = 24 * 60;
export const DAY_SLOTS = DAY / SLOT_MINUTES;
/** Minutes after the ward day begins (07:00): breakfast, lunch, supper. */
export const MEALS = [60, 300, 630] as const;
/** The night begins here. */
export const NIGHT = 14 * 60;

export interface Truth {
  readonly seed: number;
  readonly people: number;
  readonly lifts: number;
  /** Mean of all people's care requests a day. */
  readonly careADay: number;
  readonly mealChance: number;
  /** Bursts a day: several people within minutes. */
  readonly bursts: number;
  /** Mean minutes of a use, and the spread of its logarithm. */
  readonly useMinutes: number;
  readonly useSigma: number;
  /** That a lift breaks on a day, for some hours. */
  readonly breaks: number;
  /** Share of days of stays with nothing recorded. */
  readonly unrecorded: number;
}

export const someWard = (seed: number): Truth => {
  const random = randomOf(seed, 77);
  const between = (a: number, b: number) => a + (b - a) * random.next();
  const people = Math.round(between(6, 16));
  return {
    seed,
    people,
    // One for 6 to 11 people: about what guides to long-term care are quoted with, and short of it.
    lifts: Math.max(1, Math.round(people / between(6, 11))),
    careADay: between(3, 6),
    mealChance: between(0.3, 0.8),
    bursts: between(0.5, 2),
    useMinutes: between(8, 12),
    useSigma: between(0.4, 0.7),
    breaks: between(0, 0.06),
    unrecorded: between(0, 0.3),
  };
};

interface Ask {
  readonly at: number;
  readonly person: number;
  readonly meal: 'up' | 'back' | null;
}
export interface Outcome {
  readonly slot: number;
  readonly late: boolean;
}
export interface TrueDay {
  readonly asks: readonly Ask[];
  readonly outcomes: readonly Outcome[];
}

/** Peaks on waking, after meals and at bedtime (users' research: time and demand); by minute of the ward day. */
const PEAKS: readonly (readonly [at: number, width: number, weight: number])[] = [
  [25, 30, 5],
  [130, 40, 3],
  [365, 45, 3],
  [700, 40, 2.5],
  [815, 35, 4.5],
];
const shapeAt = (minute: number): number =>
  (minute < NIGHT ? 1 : 0.25) +
  PEAKS.reduce((sum, [at, width, weight]) => sum + weight * Math.exp(-(((minute - at) / width) ** 2)), 0);
const SHAPE_TOTAL = Array.from({ length: DAY }, (_, m) => shapeAt(m)).reduce((a, b) => a + b, 0);

export function trueDay(truth: Truth, day: number): TrueDay {
  const { seed, people } = truth;
  const random = randomOf(seed, 101, day);
  const asks: Ask[] = [];
  for (let person = 0; person < people; person++) {
    const own = Math.exp(0.4 * normal(randomOf(seed, 55, person)) - 0.08);
    const most = (6.5 / SHAPE_TOTAL) * truth.careADay * own;
    for (let at = exponential(random) / most; at < DAY; at += exponential(random) / most)
      if (random.next() < shapeAt(at) / 6.5) asks.push({ at, person, meal: null });
    for (const meal of MEALS) {
      if (random.next() >= truth.mealChance) continue;
      const up = meal - 15 + 10 * normal(random);
      asks.push({ at: up, person, meal: 'up' }, { at: up + 75 + 15 * normal(random), person, meal: 'back' });
    }
  }
  for (
    let at = (exponential(random) * DAY) / truth.bursts;
    at < DAY;
    at += (exponential(random) * DAY) / truth.bursts
  )
    for (let n = 2 + Math.floor(3 * random.next()); n > 0; n--)
      asks.push({ at: at + 8 * random.next(), person: Math.floor(random.next() * people), meal: null });
  const sorted = asks.filter(({ at }) => at >= 0 && at < DAY).toSorted((a, b) => a.at - b.at);
  return { asks: sorted, outcomes: serve(truth, sorted, random) };
}

/** First come, first served, by hand: each request takes the lift that is free first. */
function serve(truth: Truth, asks: readonly Ask[], random: Random): Outcome[] {
  const sigma = truth.useSigma;
  const free = Array.from({ length: truth.lifts }, () => 0);
  const broken = free.map(() => {
    const from = random.next() < truth.breaks ? DAY * random.next() : Infinity;
    return { from, to: from + 240 };
  });
  const busy = new Map<number, number>();
  const outcomes: Outcome[] = [];
  for (const { at, person, meal } of asks) {
    const open = busy.get(person) ?? 0;
    if (meal === null && at < open) continue;
    const asked = Math.max(at, open);
    const use = truth.useMinutes * Math.exp(sigma * normal(random) - (sigma * sigma) / 2);
    const starts = free.map((f, i) => {
      const start = Math.max(f, asked);
      return start >= broken[i]!.from && start < broken[i]!.to ? broken[i]!.to : start;
    });
    const lift = starts.indexOf(Math.min(...starts));
    free[lift] = starts[lift]! + use;
    busy.set(person, starts[lift]! + use / 2);
    outcomes.push({
      slot: Math.min(DAY_SLOTS - 1, Math.floor(asked / SLOT_MINUTES)),
      late: starts[lift]! - asked > 10,
    });
  }
  return outcomes;
}

/** What the ward would have recorded of these days. */
export function recordOf(truth: Truth, days: readonly TrueDay[]) {
  const counts = Array.from({ length: DAY_SLOTS }, () => 0);
  let stayDays = 0;
  let meals = 0;
  const byDay: { moves: number; stays: number }[] = [];
  days.forEach(({ asks }, d) => {
    const random = randomOf(truth.seed, 303, d);
    const known = Array.from({ length: truth.people }, () => random.next() >= truth.unrecorded);
    const kept = asks.filter(({ person }) => known[person]);
    const care = kept.filter(({ meal }) => meal === null);
    for (const { at } of care) counts[Math.floor(at / SLOT_MINUTES)]!++;
    meals += kept.filter(({ meal }) => meal === 'up').length;
    const stays = known.filter(Boolean).length;
    stayDays += stays;
    byDay.push({ moves: care.length, stays });
  });
  const seen: Seen = { counts, days: counts.map(() => stayDays) };
  return { seen, byDay, mealChance: (meals + 1) / (stayDays * MEALS.length + 2) };
}
