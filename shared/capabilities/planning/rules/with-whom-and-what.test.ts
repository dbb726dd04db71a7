/** With whom, with what and from when on a day is planned. */
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../kernel/times.ts';
import type { StayView } from '../../board/view.ts';
import { checkPlan } from './check-plan.ts';
import { greedyProposal } from './propose.ts';
import { at, built, inBed, T } from './build-problem.testkit.ts';

describe('with whom and what', () => {
  it('people as named, without breaks and what they have taken; bays of those they look after', () => {
    const visit = { visit: 'v', by: 'ben', second: null, from: T, until: at(0.5), event: 'e' };
    const { staff } = built([inBed({ visit: visit as never })]).problem;
    expect(staff).toEqual([
      {
        staff: 'ana',
        role: 'nurse',
        on: [{ from: 0, until: 24 }],
        breaks: [{ from: 8, until: 10 }],
        taken: [],
        bays: ['Bay A'],
      },
      {
        staff: 'ben',
        role: 'aide',
        on: [{ from: 0, until: 48 }],
        breaks: [],
        taken: [{ from: 0, until: 2 }],
        bays: [],
      },
    ]);
  });
  it.each([
    ['usable', [{ from: 0, until: 48 }]],
    ['in-use', [{ from: 2, until: 48 }]],
    ['unknown', []],
    ['not-usable', []],
  ] as const)('equipment that is %s', (usable, free) => {
    const { items } = built([], { items: [{ item: 'lift' as never, usable }] }).problem;
    expect(items[0]!.free).toEqual(free);
  });
  it('the accepted plan is the plan before, as far as it is still asked for and ahead', () => {
    const one = (visit: string, h: number) => ({
      visit,
      stay: 's1',
      kind: 'goal',
      start: at(h),
      minutes: 15,
      crew: ['ben'],
      items: [],
    });
    const accepted = { placements: [one('s1-g1', -1), one('s1-g2', 3), one('s9-g1', 4)] };
    expect(built([inBed()], { accepted: accepted as never }).problem.previous).toEqual([
      { visit: 's1-g2', start: 12, crew: ['ben'], items: [], pinned: false },
    ]);
  });
  it('PLANNED-4 what is made of it keeps every rule', () => {
    const due = { state: 'due', at: at(1), because: [] } as StayView['due'];
    const { problem } = built([inBed({ due })]);
    const { placed } = greedyProposal(problem, null);
    expect(placed).toHaveLength(4);
    expect(checkPlan(problem, placed)).toEqual([]);
  });
});

it('a quarter hour that has begun is over: the grid begins with the next', () => {
  expect(built([], { t: T + MINUTE }).problem.grid).toEqual({ start: T + 15 * MINUTE, slots: 47 });
});
