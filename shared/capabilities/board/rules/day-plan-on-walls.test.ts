/** What a wall shows of the accepted day plan. */
import { describe, expect, it } from 'vitest';
import { viewBoard } from './board.ts';
import { rowFor, rowsFor } from './for-wall.ts';
import { hold, hours } from './history.testkit.ts';
import { accepted, given, visit } from './day-plan.testkit.ts';

describe('WALL-2 the plan on walls', () => {
  const state = given(accepted(1, [visit('g1', 3), visit('g2', 5)]), hold(1.5, 'out-of-bed', 20));
  const { board } = viewBoard(state, hours(2));
  it('within the ward the next visit has its time and that it is held, and nothing else', () => {
    expect(rowFor(board.beds[0]!, 'bed-only').stay!.planned).toEqual([
      {
        visit: 'not-shown',
        kind: 'care',
        from: hours(3),
        until: hours(3.5),
        crew: [],
        with: [],
        stopped: { rule: '', facts: [], words: '' },
      },
    ]);
  });
  it('where visitors pass there is none', () => {
    expect(rowFor(board.beds[0]!, 'visitors').stay!.planned).toBeUndefined();
  });
  it('who accepted it is on no wall, neither whole nor in a change', () => {
    expect(rowsFor(board, 'bed-only').dayPlan).toBeNull();
    const { beds, ...facts } = board;
    const patch = rowsFor({ ward: 'w', beds, board: facts }, 'visitors');
    expect(patch.board!.dayPlan).toBeNull();
    expect(rowsFor(board, 'whole').dayPlan).toMatchObject({ by: 'staff-charge-nurse' });
  });
});
