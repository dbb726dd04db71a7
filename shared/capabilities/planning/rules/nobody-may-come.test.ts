/** When nobody may come to somebody: meals and rest, away from the ward, a hold. */
import { describe, expect, it } from 'vitest';
import type { StayView } from '../../board/view.ts';
import type { PlanInput } from './plan-input.ts';
import { greedyProposal } from './propose.ts';
import { at, built, inBed, T } from './build-problem.testkit.ts';

const blockedWhy = (stays: PlanInput['stays']) =>
  built(stays).problem.blocked.map(({ why, at: slots, visits }) => [
    why,
    slots.from,
    slots.until,
    visits?.length ?? null,
  ]);

describe('when nobody may come', () => {
  it('meals and the ward’s rest for times up, not for a check', () => {
    const due = { state: 'due', at: at(1), because: [] } as StayView['due'];
    // 12:00-12:45, 17:30-18:15 and 13:00-14:00 on the ward's clock; three times up.
    expect(blockedWhy([inBed({ due })])).toEqual([
      ['meal', 12, 15, 3],
      ['meal', 34, 37, 3],
      ['rest', 16, 20, 3],
    ]);
  });
  it('off the ward until due back, after leaving, and while somebody is there: for everything', () => {
    const away = { since: at(-1), reason: 'test', dueBack: at(1) };
    expect(blockedWhy([inBed({ away })])).toContainEqual(['off-ward', 0, 4, null]);
    expect(blockedWhy([inBed({ away: { ...away, dueBack: null } })])).toContainEqual([
      'off-ward',
      0,
      48,
      null,
    ]);
    expect(blockedWhy([inBed({ leaving: { at: at(5), event: 'e' as never } })])).toContainEqual([
      'off-ward',
      20,
      48,
      null,
    ]);
    const visit = { visit: 'v', by: 'ana', second: null, from: T, until: at(0.5), event: 'e' };
    expect(blockedWhy([inBed({ visit: visit as never })])).toContainEqual(['appointment', 0, 2, null]);
  });
  it('PLANNED-3 a hold keeps the person out of the plan to the end of it, also past its review', () => {
    const holds = [{ scope: 'out-of-bed', reviewAt: at(-1), reviewDue: true }] as never;
    const { problem } = built([inBed({ holds })]);
    expect(greedyProposal(problem, null).placed).toEqual([]);
    expect(blockedWhy([inBed({ holds })])).toContainEqual(['hold', 0, 48, 3]);
  });
});
