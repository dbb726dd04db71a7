/** Problems of any shape, small: up to five visits, two people, eight slots, so that all can be tried. */
import * as fc from 'fast-check';
import type { DayProblem, NeededVisit } from '../problem.ts';
import { at, kept, piece, problem, SLOTS, slots, stop, visit, who } from './planning.testkit.ts';

const interval = fc
  .tuple(fc.integer({ min: 0, max: SLOTS - 2 }), fc.integer({ min: 2, max: SLOTS }))
  .map(([from, long]) => slots(from, Math.min(SLOTS, from + long)));
const gap = fc.integer({ min: 0, max: SLOTS - 1 }).map((from) => slots(from, from + 1));
const stays = ['one', 'two', 'three'] as const;

const anyVisit = (i: number): fc.Arbitrary<NeededVisit> =>
  fc
    .record({
      stay: fc.constantFrom(...stays),
      bay: fc.constantFrom('A', 'B'),
      isolation: fc.boolean(),
      people: fc.constantFrom<1 | 2>(1, 1, 2),
      lead: fc.constantFrom<NeededVisit['lead']>(['aide', 'nurse'], ['nurse']),
      crew: fc.constantFrom<NeededVisit['crew']>(['aide', 'nurse'], ['aide', 'nurse'], ['nurse']),
      length: fc.integer({ min: 1, max: 3 }),
      windows: fc.array(interval, { minLength: 1, maxLength: 2 }),
      restBefore: fc.integer({ min: 0, max: 2 }),
      restAfter: fc.integer({ min: 0, max: 2 }),
      follows: fc.boolean(),
      sets: fc.constantFrom<string[][] | null>(null, null, [['lift']], [['lift', 'sling'], ['rise']], []),
      weight: fc.integer({ min: 1, max: 20 }),
      debt: fc.constantFrom(0, 0.5, 1),
      around: fc.option(fc.integer({ min: 0, max: SLOTS - 1 })),
      seenLast: fc.boolean(),
    })
    .map(({ follows, ...is }) =>
      visit(`v${i}`, { ...is, after: follows && i > 0 ? [`v${i - 1}` as never] : [] }),
    );

/** `after` only within a stay: of the others it is dropped. */
const withinStays = (visits: readonly NeededVisit[]): NeededVisit[] =>
  visits.map((one) => ({
    ...one,
    after: one.after.filter((id) => visits.some((v) => v.visit === id && v.stay === one.stay)),
  }));

const anybody = (name: string, role: 'aide' | 'nurse') =>
  fc
    .record({
      on: fc.array(interval, { minLength: 1, maxLength: 2 }),
      breaks: fc.array(gap, { maxLength: 1 }),
      taken: fc.array(gap, { maxLength: 1 }),
      bays: fc.constantFrom<string[]>([], ['A'], ['B']),
    })
    .map((is) => who(name, { role, ...is }));
const item = (name: string) =>
  fc
    .record({
      free: fc.array(interval, { minLength: 1, maxLength: 2 }),
      cleaning: fc.integer({ min: 0, max: 1 }),
      cleaningAfterIsolation: fc.integer({ min: 0, max: 3 }),
    })
    .map((is) => piece(name, is));
const cost = fc.constantFrom(0, 0.5, 2);

export const anyProblem: fc.Arbitrary<DayProblem> = fc
  .record({
    visits: fc
      .integer({ min: 1, max: 5 })
      .chain((n) => fc.tuple(...Array.from({ length: n }, (_, i) => anyVisit(i))))
      .map(withinStays),
    staff: fc.tuple(anybody('ana', 'aide'), anybody('ben', 'nurse')),
    items: fc.tuple(item('lift'), item('sling'), item('rise')),
    blocked: fc.array(
      fc
        .tuple(fc.constantFrom(...stays), gap, fc.constantFrom('meal', 'hold', 'off-ward'), fc.boolean())
        .map(([stay, { from, until }, why, one]) =>
          stop(stay, from, until, why as 'meal', one ? ['v0', 'v2'] : null),
        ),
      { maxLength: 3 },
    ),
    weights: fc.record({
      version: fc.constant(1),
      otherBay: cost,
      seenLast: fc.constantFrom(0, 0.1),
      spread: fc.constantFrom(0, 0.3),
      fairness: cost,
      moved: cost,
      otherCrew: cost,
    }),
    previous: fc
      .array(fc.tuple(fc.integer({ min: 0, max: SLOTS - 1 }), fc.constantFrom('ana', 'ben'), fc.boolean()), {
        maxLength: 2,
      })
      .map((all) => all.map(([start, crew, pinned], i) => kept(at(`v${i}`, start, [crew]), pinned))),
  })
  .map(({ visits, staff, ...is }) =>
    problem({
      ...is,
      visits,
      staff,
      previous: is.previous.filter((p) => visits.some((v) => v.visit === p.visit)),
    }),
  );
