import { describe, expect, it } from 'vitest';
import { candidatesOf } from './arrivals.ts';
import { runDay, type Request } from './day-run.ts';
import {
  engsetLost,
  erlangB,
  erlangC,
  erlangWaitsOver,
  finiteSource,
  finiteSourceWaitsOver,
} from './queueing.testkit.ts';
import { randomOf } from '../../../kernel/random.ts';
import type { Need, Scenario, SimItem } from './scenario.ts';

const lift = (item: string, more: Partial<SimItem> = {}): SimItem => ({
  item,
  group: 'lift',
  sure: 1,
  freeFrom: 0,
  from: 0,
  to: Infinity,
  minutes: 10,
  handMinutes: 10,
  ...more,
});
const SLOTS = 96;
const need = (items: number): Need => ({
  group: 'lift',
  items: Array.from({ length: items }, (_, i) => i),
  hands: 1,
  minutes: 10,
});
const scenario = (beds: number, lifts: number, more: Partial<Scenario> = {}): Scenario => ({
  slots: SLOTS,
  items: Array.from({ length: lifts }, (_, i) => lift(`lift-${i}`)),
  sources: Array.from({ length: beds }, (_, i) => ({
    bed: `${i}`,
    type: 0,
    scale: 1,
    care: { day: need(lifts), night: need(lifts) },
    from: 0,
    to: Infinity,
    due: [],
  })),
  hands: Array.from({ length: SLOTS }, () => Infinity),
  on: Array.from({ length: SLOTS }, () => Infinity),
  night: Array.from({ length: SLOTS }, () => false),
  lateAfter: 10,
  holdStages: 1,
  ...more,
});
const flat = (perMinute: number) => [Array.from({ length: SLOTS }, () => perMinute)];

/** Share of requests for which `is` holds once the day has warmed up, and its standard error over days. */
function share(of: Scenario, rate: number, days: number, is: (request: Request) => boolean) {
  const shares: [yes: number, all: number][] = [];
  for (let day = 0; day < days; day++) {
    const requests = runDay(of, candidatesOf(of, flat(rate), 4711, day), 4711, day).filter(
      ({ asked }) => asked > 240,
    );
    shares.push([requests.filter(is).length, requests.length]);
  }
  const all = shares.reduce((sum, [, n]) => sum + n, 0);
  const mean = shares.reduce((sum, [yes]) => sum + yes, 0) / all;
  const each = shares.map(([yes, n]) => yes - mean * n);
  const variance = each.reduce((sum, e) => sum + e * e, 0);
  return { mean, error: Math.sqrt(variance) / all };
}
/** Four standard errors: wrong by chance once in about 16,000 tries; the seed is fixed all the same. */
const expectWithin = ({ mean, error }: { mean: number; error: number }, exact: number): void => {
  expect(error).toBeLessThan(0.02);
  expect(Math.abs(mean - exact)).toBeLessThan(4 * error);
};

describe('formulas the simulator is held against', () => {
  it('gives what is published for a shared queue without end', () => {
    // M/M/3 with two erlangs: one in nine idle, four in nine wait (by hand: 8/6 * 3 / (1+2+2+4) = 4/9).
    expect(erlangC(3, 2)).toBeCloseTo(4 / 9, 12);
    // The worked example of 100 calls of 180 s in half an hour with 14 agents that guides to the formula
    // print: 17.4 % wait, 88.8 % are answered within 20 s (both from memory).
    expect(erlangC(14, 10)).toBeCloseTo(0.174, 3);
    expect(1 - erlangWaitsOver(14, 10, 180, 20)).toBeCloseTo(0.888, 3);
  });

  it('gives one server the closed form', () => {
    expect(erlangC(1, 0.6)).toBeCloseTo(0.6, 12);
    expect(erlangB(1, 0.6)).toBeCloseTo(0.6 / 1.6, 12);
  });

  it('takes the finite source to the endless one as it grows, and to the lost calls of Engset', () => {
    expect(finiteSourceWaitsOver(4000, 3, 2 / 4000, 10, 0)).toBeCloseTo(4 / 9, 2);
    expect(engsetLost(4000, 3, 2 / 4000)).toBeCloseTo(erlangB(3, 2), 2);
    // Anderson, Sweeney et al., An Introduction to Management Science, queues with a finite calling
    // population: six machines, one repair crew, a breakdown in 20 h, 2 h a repair. Set-up as printed;
    // P0 = 0.4845 and Lq = 0.3297 from memory.
    const six = finiteSource(6, 1, 2 / 20);
    expect(six[0]).toBeCloseTo(0.4845, 4);
    expect(six.reduce((sum, p, n) => sum + p * Math.max(0, n - 1), 0)).toBeCloseTo(0.3297, 4);
    // Two sources, one server, by hand: states weigh 1, 2r, 2r^2.
    const [none, one, both] = finiteSource(2, 1, 0.5);
    expect([none, one, both].map((p) => p! * 2.5)).toEqual([
      expect.closeTo(1),
      expect.closeTo(1),
      expect.closeTo(0.5),
    ]);
  });
});

describe('the simulator in the case of a formula', () => {
  it('agrees with Erlang C where sources are so many that they never run short', () => {
    const of = scenario(400, 3);
    const rate = 2 / 10 / 400;
    expectWithin(
      share(of, rate, 150, ({ wait }) => wait > 1e-9),
      erlangC(3, 2),
    );
    expectWithin(
      share(of, rate, 150, ({ wait }) => wait > 10),
      erlangWaitsOver(3, 2, 10, 10),
    );
  });

  it.each([
    [6, 1, 1 / 60],
    [12, 2, 1 / 70],
    [12, 1, 1 / 120],
    [4, 3, 1 / 20],
  ])(
    'agrees with the finite source: %i beds, %i lifts, one request in so many minutes',
    (beds, lifts, rate) => {
      const of = scenario(beds, lifts);
      const exact = (t: number) => finiteSourceWaitsOver(beds, lifts, rate * 10, 10, t);
      expectWithin(
        share(of, rate, 400, ({ wait }) => wait > 1e-9),
        exact(0),
      );
      expectWithin(
        share(of, rate, 400, ({ wait }) => wait > 10),
        exact(10),
      );
    },
  );

  it('keeps to one open request a bed and to what there is, whatever is drawn', () => {
    const of = scenario(9, 2, {
      hands: Array.from({ length: SLOTS }, () => 3),
      on: Array.from({ length: SLOTS }, () => 3),
    });
    let checked = 0;
    const wrong: unknown[] = [];
    for (let day = 0; day < 20; day++) {
      const done = runDay(of, candidatesOf(of, flat(1 / 25), 9, day), 9, day).map((r) => ({
        ...r,
        from: r.asked + r.wait,
        to: r.asked + r.wait + r.candidate.hold * 10,
      }));
      for (const r of done) {
        const beside = done.filter((o) => o.from <= r.from && r.from < o.to);
        const alike = beside.filter((o) => o.item === r.item || o.source === r.source);
        if (beside.length > 2 || alike.length !== 1) wrong.push(beside);
        checked++;
      }
    }
    expect(wrong).toEqual([]);
    expect(checked).toBeGreaterThan(500);
  });

  it('lets whoever came first begin first where they need the same', () => {
    const of = scenario(9, 1);
    for (let day = 0; day < 20; day++) {
      const done = runDay(of, candidatesOf(of, flat(1 / 60), 3, day), 3, day);
      expect(done.map(({ asked }) => asked)).toEqual(
        done.map(({ asked }) => asked).toSorted((a, b) => a - b),
      );
    }
  });
});

describe('random numbers of the simulator', () => {
  it('are the same for the same keys, others for others, and even over [0, 1)', () => {
    const draw = (...keys: number[]) => {
      const random = randomOf(...keys);
      return Array.from({ length: 5 }, () => random.next());
    };
    expect(draw(1, 2, 3)).toEqual(draw(1, 2, 3));
    expect(draw(1, 2, 3)).not.toEqual(draw(1, 2, 4));
    expect(draw(1, 2, 3)).not.toEqual(draw(2, 1, 3));
    const bins = Array.from({ length: 20 }, () => 0);
    // One number from each of many streams, as the simulator takes them.
    for (let i = 0; i < 100_000; i++) bins[Math.floor(randomOf(5, i, 7).next() * 20)]!++;
    const chi = bins.reduce((sum, n) => sum + (n - 5_000) ** 2 / 5_000, 0);
    // 43.8: the 99.9th percentile of chi-squared with 19 degrees of freedom (any table).
    expect(chi).toBeLessThan(43.8);
  });
});
