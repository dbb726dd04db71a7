import { describe, expect, it } from 'vitest';
import type { TaskPlan } from '../../board/moving-view.ts';
import { liftedMoves, movesForTwo, needsTwoOrLift } from './needs.ts';

const plan = (over: Partial<TaskPlan>): TaskPlan => ({
  task: 'bed-chair',
  hold: false,
  people: 'one',
  aid: 'none',
  with: [],
  towards: null,
  cautions: [],
  because: [],
  ...over,
});

describe('who needs hands or a lift today', () => {
  it.each<[Partial<TaskPlan>, boolean]>([
    [{}, false],
    [{ people: 'two' }, true],
    [{ people: 'three-or-more', task: 'toilet' }, true],
    [{ aid: 'bariatric-lift' }, true],
    [{ aid: 'standing-aid' }, false],
    // A lift is not how one walks or stands: those are left to a therapist's session.
    [{ task: 'walk', aid: 'sling-lift', people: 'two' }, false],
    [{ task: 'stand', aid: 'sling-lift', people: 'two' }, false],
    [{ task: 'from-floor', aid: 'sling-lift', people: 'two' }, false],
    // What is on hold does not happen.
    [{ hold: true, people: 'two' }, false],
  ])('%o: %s', (over, needed) => {
    expect(needsTwoOrLift([plan(over)])).toBe(needed);
    expect(liftedMoves([plan(over)]).length + movesForTwo([plan(over)]).length > 0).toBe(needed);
  });
});
