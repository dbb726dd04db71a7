/** A visit of the accepted day plan on the row of its person, until it is over or done. */
import { describe, expect, it } from 'vitest';
import { bedView } from '../view.ts';
import { viewBoard } from './board.ts';
import { check, hours, notDone, session, type Told } from './history.testkit.ts';
import { accepted, dayAt, given, LIFT, plannedAt, stayAt, visit } from './day-plan.testkit.ts';

describe('PLANNED-6 a visit of the accepted plan on the row of its person', () => {
  it('stands with its time, people and equipment, the earliest first, until its time is over', () => {
    const state = given(
      { on: 'ward', ...LIFT },
      accepted(1, [visit('g2', 4), visit('g1', 2, { crew: ['staff-aide', 'staff-nurse'], items: ['i1'] })]),
    );
    expect(stayAt(state, 1.5).planned).toMatchObject([
      {
        visit: 'stay-1-g1',
        kind: 'goal',
        from: hours(2),
        until: hours(2.5),
        crew: ['staff-aide', 'staff-nurse'],
        with: ['Lift 1'],
        stopped: null,
      },
      { visit: 'stay-1-g2', from: hours(4) },
    ]);
    expect(plannedAt(state, 2.4)).toHaveLength(2);
    expect(plannedAt(state, 2.5)).toEqual([['stay-1-g2', null]]);
    expect(bedView.safeParse(viewBoard(state, hours(2)).board.beds[0]).error).toBeUndefined();
  });
  it('changes by time alone only at an instant that the board names', () => {
    const state = given(accepted(1, [visit('g1', 2)]));
    const { board, nextChange } = viewBoard(state, hours(2));
    expect(board.beds[0]!.stay!.planned).toHaveLength(1);
    expect(nextChange).toBeLessThanOrEqual(hours(2.5));
  });
  it('is not there before it was accepted, nor on the next ward day', () => {
    const state = given(accepted(1, [visit('g1', 12)]));
    expect(plannedAt(state, 1)).toHaveLength(1);
    expect(plannedAt(state, 0.9)).toEqual([]);
    // 07:00 on the morning after the clocks went back.
    expect(plannedAt(state, 14.01)).toEqual([]);
    expect(dayAt(state, 14.01)).toBeNull();
  });
  it('another plan of the day replaces it; one of a day gone by does not', () => {
    const first = accepted(1, [visit('g1', 2)]);
    expect(plannedAt(given(first, accepted(1.2, [visit('g1', 3)])), 2.8)).toEqual([['stay-1-g1', null]]);
    expect(plannedAt(given(first, accepted(1.2, [], { day: '2026-10-23' })), 1.5)).toHaveLength(1);
  });
  it.each<[string, Told, number]>([
    ['today counts as many times up', session(1.5), 1],
    ['somebody was there for it and it was not done', notDone(2, 'said-no'), 1],
  ])('is gone once %s', (_why, told, left) => {
    const goal: Told = { type: 'goal-set', payload: { goal: { activity: 'walk', timesUp: 9 } }, at: 0.6 };
    const state = given(goal, accepted(1, [visit('g1', 2), visit('g2', 5)]), told);
    expect(plannedAt(state, 2.2)).toHaveLength(left);
    expect(dayAt(state, 3)).toMatchObject({ passed: 0, ahead: 1 });
  });
  it('a check is gone once one was recorded since; one from before leaves it', () => {
    const planned = accepted(1, [visit('c', 2)]);
    expect(plannedAt(given(planned), 1.5)).toEqual([['stay-1-c', null]]);
    expect(plannedAt(given(planned, check('walk', 1.4)), 1.5)).toEqual([]);
  });
});
