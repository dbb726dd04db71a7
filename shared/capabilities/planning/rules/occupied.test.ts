/** A plan put together and taken apart again: what it says it is worth, and where it says there is room. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { checkPlan } from './check-plan.ts';
import { feasibleVisits } from './feasible.ts';
import { greedyPlan } from './greedy.ts';
import { groundOf } from './ground.ts';
import { Occupied } from './occupied.ts';
import { at, kept, piece, problem, visit, who } from './planning.testkit.ts';
import { anyProblem } from './random-problem.testkit.ts';
import { worthOf } from './worth.ts';

describe('a plan put together visit by visit', { timeout: patience }, () => {
  it('is worth at every step what the plan as a whole is worth', () => {
    fc.assert(
      fc.property(anyProblem, fc.infiniteStream(fc.nat()), (day, draws) => {
        const feasible = feasibleVisits(day);
        const state = new Occupied(groundOf(day, feasible));
        for (const one of greedyPlan(day, feasible)) state.put(one);
        for (let step = 0; step < 12; step++) {
          const one = feasible[draws.next().value! % feasible.length]!;
          const room = state.take(one.visit.visit) ?? state.best(one);
          // Of what was taken out every second one comes back.
          if (room && !state.has(one.visit.visit) && draws.next().value! % 2 === 0) state.putAt(room);
          expect(state.value).toBeCloseTo(worthOf(day, state.plan).value, 6);
        }
      }),
      runs(120, 'cases'),
    );
  });

  it('has the same room after a visit was taken out and put back', () => {
    fc.assert(
      fc.property(anyProblem, (day) => {
        const feasible = feasibleVisits(day);
        const state = new Occupied(groundOf(day, feasible));
        for (const one of greedyPlan(day, feasible)) state.put(one);
        const rooms = () => feasible.map((one) => state.best(one));
        const [plan, before] = [state.plan, rooms()];
        for (const { visit: id } of plan) {
          const room = state.take(id);
          expect(state.has(id)).toBe(false);
          expect(state.take(id)).toBeNull();
          state.putAt(room!);
        }
        expect(state.plan).toEqual(plan);
        expect(rooms()).toEqual(before);
      }),
      runs(60, 'cases'),
    );
  });

  it('frees the person, the piece and the time of a visit that is taken out', () => {
    const lifted = { sets: [['lift']], length: 2, people: 2 as const };
    const day = problem({
      visits: [
        visit('a', { ...lifted, windows: [{ from: 0, until: 2 }] }),
        visit('b', { ...lifted, windows: [{ from: 1, until: 4 }] }),
      ],
      items: [piece('lift', { cleaning: 0 })],
    });
    const [a, b] = feasibleVisits(day);
    const state = new Occupied(groundOf(day, [a!, b!]));
    state.put(at('a', 0, ['ana', 'ben'], ['lift']));
    expect(state.best(b!)?.placement.start).toBe(2);
    state.take('a');
    expect(state.best(b!)?.placement).toEqual(at('b', 1, ['ana', 'ben'], ['lift']));
  });
});

describe('where one more visit goes', () => {
  it('takes the earlier of two starts that are worth the same, also where the later one has its own bay', () => {
    const day = problem({
      visits: [visit('a', { bay: 'B', debt: 1, weight: 10 })],
      staff: [
        who('ana', { bays: ['A'], on: [{ from: 0, until: 1 }] }),
        who('ben', { bays: ['B'], on: [{ from: 2, until: 4 }] }),
      ],
      weights: { version: 1, otherBay: 2, seenLast: 0, spread: 0, fairness: 0, moved: 0, otherCrew: 0 },
    });
    const [one] = feasibleVisits(day);
    expect(new Occupied(groundOf(day, [one!])).best(one!)).toMatchObject({
      placement: { start: 0, crew: ['ana'] },
      worth: 8,
    });
  });

  it('tells the sixty of a large staff apart', () => {
    const staff = Array.from({ length: 60 }, (_, i) => `s${String(i).padStart(2, '0')}`);
    const day = problem({
      visits: [visit('a', { people: 2 }), ...staff.map((name) => visit(`of-${name}`))],
      staff: staff.map((name) => who(name)),
    });
    const feasible = feasibleVisits(day);
    const state = new Occupied(groundOf(day, feasible));
    // All but two are somewhere else, whichever two they are.
    for (const [x, y] of [
      [0, 59],
      [31, 32],
      [33, 1],
    ] as const) {
      const rest = staff.filter((_, i) => i !== x && i !== y);
      for (const name of rest) state.put(at(`of-${name}`, 0, [name]));
      expect(state.best(feasible[0]!, {}, true)?.placement.crew.toSorted()).toEqual(
        [staff[x]!, staff[y]!].toSorted(),
      );
      expect(checkPlan(day, state.plan)).toEqual([]);
      for (const name of rest) state.take(`of-${name}`);
    }
  });

  it('keeps whoever went before, where going elsewhere costs more', () => {
    const day = problem({
      visits: [visit('a', { debt: 1 })],
      weights: { version: 1, otherBay: 0, seenLast: 0, spread: 0, fairness: 0, moved: 4, otherCrew: 1 },
      previous: [kept(at('a', 3, ['ben']))],
    });
    const [one] = feasibleVisits(day);
    const room = new Occupied(groundOf(day, [one!])).best(one!);
    expect(room).toMatchObject({ placement: at('a', 3, ['ben']), worth: 10 - 3 + 4 });
  });
});
