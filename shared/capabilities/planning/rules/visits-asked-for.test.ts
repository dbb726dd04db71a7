/** Which visits the rest of the day asks for, and for whom none is planned. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { dayProblem } from '../problem.ts';
import type { PlanInput } from './plan-input.ts';
import { move } from './told-stay.testkit.ts';
import { at, built, inBed, type Told } from './build-problem.testkit.ts';

describe('what the rest of the day asks for', () => {
  it('PLANNED-1 each time up that the goal still asks for, with rest between, and nothing that is done', () => {
    const { problem } = built([
      inBed({ today: { goal: { activity: 'chair', timesUp: 3 }, timesUp: 1 } as never }),
    ]);
    expect(
      problem.visits.map(({ visit, kind, restAfter, people }) => [visit, kind, restAfter, people]),
    ).toEqual([
      ['s1-g2', 'goal', 4, 1],
      ['s1-g3', 'goal', 4, 1],
    ]);
    expect(problem.visits.map(({ after }) => after)).toEqual([[], ['s1-g2']]);
    expect(dayProblem.safeParse(problem).success).toBe(true);
  });
  it('a check that falls due, led by a nurse or therapist', () => {
    const { problem } = built([inBed({ due: { state: 'not-due', at: at(3), because: [] } })]);
    expect(problem.visits.find(({ kind }) => kind === 'check')).toMatchObject({
      visit: 's1-c',
      lead: ['nurse', 'charge-nurse', 'therapist'],
      windows: [{ from: 0, until: 16 }],
    });
  });
  it('PLANNED-2 no time up before the check where trust has run out', () => {
    const { problem } = built([
      inBed({
        due: { state: 'overdue', at: at(-1), because: [] },
        trust: { state: 're-check', openTriggers: [], conflicts: [], because: [] },
      }),
    ]);
    const goals = problem.visits.filter(({ kind }) => kind === 'goal');
    expect(goals.map(({ after }) => after)).toEqual([['s1-c'], ['s1-c', 's1-g1'], ['s1-c', 's1-g2']]);
  });
  it('two people where the plan says two, and for the first time up with somebody qualified', () => {
    const two = built([inBed({ plans: [move({ people: 'two' })] })]).problem.visits;
    expect(two.map(({ people }) => people)).toEqual([2, 2, 2]);
    const first = built([inBed({ firstTimeUpPending: true })]).problem.visits;
    expect(first.map(({ people, lead }) => [people, lead.includes('aide')])).toEqual([
      [2, false],
      [1, true],
      [1, true],
    ]);
  });
  it('nothing that fits, where a lift is needed and nobody answered which: it is not planned without one', () => {
    const lifted = { plans: [move({ aid: 'sling-lift', people: 'two' })] };
    expect(built([inBed(lifted)]).problem.visits[0]!.sets).toEqual([]);
    const plans = [move({ aid: 'walking-support' })];
    expect(built([inBed({ plans })]).problem.visits[0]!.sets).toBeNull();
  });

  it.each(['re-check', 'not-known'] as const)(
    'a look before getting up while trust is %s, whenever it is due; where no time is left for it, nobody is got up',
    (state) => {
      const trust = { state, openTriggers: [], conflicts: [], because: [] } as never;
      const { visits } = built([inBed({ trust })]).problem;
      const check = visits.find(({ kind }) => kind === 'check');
      const goals = visits.filter(({ kind }) => kind === 'goal');
      expect(goals.length).toBeGreaterThan(0);
      expect(goals.map(({ after }) => after)).toEqual(
        goals.map((_, i) => [check!.visit, ...(i > 0 ? [goals[i - 1]!.visit] : [])]),
      );
      const { planning } = DEFAULT_RULES;
      const long = { ...planning.checkMinutes, value: 24 * 60 };
      const rules = { ...DEFAULT_RULES, planning: { ...planning, checkMinutes: long } };
      expect(built([inBed({ trust })], { rules }).problem.visits).toEqual([]);
    },
  );

  it('the sets of equipment that the fit rules judged; none that fits is an empty list, not no need', () => {
    const plans = [move({ aid: 'sling-lift', people: 'two' })];
    const fit = (sets: { item: never; sling: never }[]) => [
      { task: 'bed-chair' as const, need: 'lift-and-sling', sets },
    ];
    const sets = (of: PlanInput['stays'][number]['fit']) =>
      built([inBed({ plans }, of)]).problem.visits[0]!.sets;
    expect(sets(fit([{ item: 'lift' as never, sling: 'sling' as never }]))).toEqual([['lift', 'sling']]);
    expect(sets(fit([]))).toEqual([]);
    expect(built([inBed()]).problem.visits[0]!.sets).toBeNull();
  });
  it('what stays in bed needs no lift, whatever the way to the chair', () => {
    const plans = [move({ aid: 'sling-lift', people: 'two' })];
    const today = { goal: { activity: 'back-raised', timesUp: 1 }, timesUp: 0, met: false } as never;
    const [visit] = built([inBed({ plans, today })]).problem.visits;
    expect(visit).toMatchObject({ people: 1, aid: 'none', sets: null });
  });
  it('a first check of whoever is expected, within the ward’s hours', () => {
    const expected = [
      { expected: 'e1', at: at(2), from: 'ward', bed: 'b1', usual: null, previous: null, bariatric: false },
    ];
    const { problem, about } = built([], { expected: expected as never });
    expect(problem.visits).toMatchObject([
      { visit: 'e1-a', kind: 'check', windows: [{ from: 8, until: 24 }] },
    ]);
    expect(about).toMatchObject([{ label: 'A1', expected: true }]);
  });
});

describe('whom no plan places', () => {
  it.each([
    ['comfort', { scope: { kind: 'comfort', fence: null, plan: null } }],
    ['clinicians-plan', { scope: { kind: 'clinicians-plan', fence: null, plan: null } }],
    ['three-or-more', { plans: [move({ people: 'three-or-more' })] }],
    ['no-move', { plans: [move({ hold: true })] }],
    ['talk-first', { signs: [{ kind: 'refusals', words: '', because: [] }] }],
    ['no-goal', { today: { goal: null, timesUp: 0, met: null } }],
    ['not-known', { version: 0 }],
  ] as const)('%s', (why, told) => {
    const { problem, notPlanned } = built([inBed(told as unknown as Told)]);
    expect(problem.visits).toEqual([]);
    expect(notPlanned).toEqual([{ stay: 's1', label: 'A1', why }]);
  });
});
