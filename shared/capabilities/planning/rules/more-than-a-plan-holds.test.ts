/** More visits than one plan may hold: what stands beside it. */
import { describe, expect, it } from 'vitest';
import { dayProblem } from '../problem.ts';
import { built, inBed, T } from './build-problem.testkit.ts';

describe('PLANNED-8 more than one plan may hold', () => {
  it('what weighs least stands beside the problem by name, nothing is lost', () => {
    const many = Array.from({ length: 130 }, (_, i) =>
      inBed({
        stay: `s${i}` as never,
        today: { goal: { activity: 'chair', timesUp: 2 }, timesUp: 0 } as never,
      }),
    );
    const { problem, beyond, about } = built(many);
    expect([problem.visits.length, beyond.length]).toEqual([240, 20]);
    // The second time up weighs less than the first: nobody goes without their first.
    expect(new Set(beyond.map(({ visit }) => visit.slice(-3)))).toEqual(new Set(['-g2']));
    const named = new Set(about.map(({ visit }) => visit));
    expect([...problem.visits, ...beyond].every(({ visit }) => named.has(visit))).toBe(true);
    expect(dayProblem.safeParse(problem).error).toBeUndefined();
  });
  it('what has to come first is not left behind by what follows it', () => {
    const many = Array.from({ length: 130 }, (_, i) =>
      inBed({
        stay: `s${i}` as never,
        trust: { state: 're-check', openTriggers: [], conflicts: [], because: [] },
        due: { state: 'overdue', at: T, because: [] },
      }),
    );
    const { problem, beyond } = built(many);
    expect(problem.visits.length + beyond.length).toBe(520);
    const kept = new Set(problem.visits.map(({ visit }) => visit));
    expect(problem.visits.flatMap(({ after }) => after).filter((id) => !kept.has(id))).toEqual([]);
  });
});
