/** The accepted day plan in numbers, and whom it expects. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { boardView } from '../view.ts';
import { emptyBoard, foldBoard, viewBoard } from './board.ts';
import { begun, check, hours, setUpWard, WARD, WardLog } from './history.testkit.ts';
import { accepted, dayAt, given, LIFT, plannedAt, visit, type Entered } from './day-plan.testkit.ts';

describe('the day plan in numbers', () => {
  it('counts what is ahead, taken, passed and without a place', () => {
    const unplaced = [{ visit: 'stay-1-g4', stay: 'stay-1', kind: 'goal', why: 'people-with-others' }];
    const state = given(accepted(1, [visit('g1', 1.5), visit('g2', 3), visit('g3', 5)], { unplaced }), {
      type: 'visit-taken',
      at: 2.2,
      payload: { visit: 'v1', by: 'staff-aide', from: toIso(hours(2.9)), until: toIso(hours(3.4)) },
    });
    expect(plannedAt(state, 2.5).map(([id]) => id)).toEqual(['stay-1-g3']);
    expect(dayAt(state, 2.5)).toEqual({
      at: hours(1),
      by: 'staff-charge-nurse',
      ahead: 2,
      held: 0,
      passed: 1,
      unplaced: 1,
    });
    expect(boardView.safeParse(viewBoard(state, hours(2.5)).board).error).toBeUndefined();
  });
  describe('PLANNED-10 of somebody who is expected', () => {
    const arrival = visit('a', 3, { visit: 'exp-1-a', stay: 'exp-1', kind: 'check' });
    const closed = (at: number, stay?: string): Entered => ({
      on: 'ward',
      type: 'expected-arrival-closed',
      at,
      payload: { expected: 'exp-1', outcome: stay ? 'arrived' : 'not-coming', ...(stay ? { stay } : {}) },
    });
    it('says nothing of places where nothing was said, and has the visit until its time is over', () => {
      const state = given(accepted(1, [arrival]));
      expect(dayAt(state, 2)).toMatchObject({
        ahead: 1,
        unplaced: null,
        arrivals: [
          { visit: 'exp-1-a', expected: 'exp-1', from: hours(3), until: hours(3.5), crew: ['staff-aide'] },
        ],
      });
      expect(dayAt(state, 3.4)).toMatchObject({ ahead: 1 });
      expect(viewBoard(state, hours(3.4)).nextChange).toBeLessThanOrEqual(hours(3.5));
      expect(dayAt(state, 3.5)).toMatchObject({ ahead: 0, passed: 0 });
      expect('arrivals' in dayAt(state, 3.5)!).toBe(false);
      expect(boardView.safeParse(viewBoard(state, hours(2)).board).error).toBeUndefined();
    });
    it('goes on with the stay that began, in the row of the bed', () => {
      const state = given(accepted(1, [arrival]), closed(1.5, 'stay-1'));
      expect(plannedAt(state, 2)).toEqual([['exp-1-a', null]]);
      expect(dayAt(state, 2)).toMatchObject({ ahead: 1 });
      expect('arrivals' in dayAt(state, 2)!).toBe(false);
      const done = given(accepted(1, [arrival]), closed(1.5, 'stay-1'), check('walk', 1.8));
      expect(dayAt(done, 2)).toMatchObject({ ahead: 0, passed: 0 });
    });
    it('is held once its equipment breaks after they arrived, on the board that shows it already', () => {
      const log = new WardLog();
      setUpWard(log);
      for (const one of [LIFT, accepted(1, [{ ...arrival, items: ['i1'] }]), closed(1.5, 'stay-1')]) {
        log.add(`ward/${WARD}`, {
          type: one.type,
          payload: one.payload,
          at: one.at ?? 0,
          role: 'charge-nurse',
        });
      }
      log.add('stay/stay-1', begun());
      log.add('bed/bed-1', { type: 'bed-taken', payload: { bed: 'bed-1', stay: 'stay-1' } });
      const state = emptyBoard(WARD);
      foldBoard(state, log.events);
      expect(plannedAt(state, 2)).toEqual([['exp-1-a', null]]);
      const payload = { item: 'i1', defect: 'other' };
      foldBoard(state, [log.add('item/i1', { type: 'item-out-of-service', at: 1.8, payload })]);
      expect(plannedAt(state, 2)).toEqual([['exp-1-a', expect.stringContaining('Lift 1 is out of service')]]);
    });
    it('is not there any more once they do not come, nor for a plan of which they are no part', () => {
      const state = given(accepted(1, [arrival]), closed(1.5));
      expect(dayAt(state, 2)).toMatchObject({ ahead: 0 });
      expect(plannedAt(state, 2)).toEqual([]);
      // Closed before it was accepted: whatever was planned afterwards counts.
      expect(dayAt(given(closed(0.8), accepted(1, [arrival])), 2)).toMatchObject({ ahead: 1 });
    });
  });
  it('a ward that never accepted one has the board it had', () => {
    expect('dayPlan' in viewBoard(given(), hours(2)).board).toBe(false);
  });
});
