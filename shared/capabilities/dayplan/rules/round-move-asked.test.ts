/** The move that a line of the round asks for, and who could do it. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { hold } from '../../board/rules/history.testkit.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import { goalSet, NOON, roundFor } from './round-asked.testkit.ts';
import { moveOf } from './round.ts';
import { MORNING, rowOf, staff } from './round.testkit.ts';

describe('the move that the goal of the day asks for', () => {
  it.each([
    ['walk', 'walk'],
    ['stairs', 'walk'],
    ['march', 'stand'],
    ['stand', 'stand'],
    ['chair', 'bed-chair'],
    ['toilet', 'bed-chair'],
    ['edge-sit', 'edge-of-bed'],
  ])('given %s for somebody who may walk, then %s and no more', (activity, task) => {
    expect(roundFor([rowOf(NOON, goalSet(activity))]).entries[0]!.move.task).toBe(task);
  });

  it('given a walk while walking is on hold, then the most that is left', () => {
    const held = rowOf(NOON, hold(MORNING + 1, 'walking', MORNING + 9));
    const asked: StayView = { ...held, today: rowOf(NOON, goalSet('walk')).today };
    expect(asked.today.goal!.activity).toBe('walk');
    expect(moveOf(asked).task).toBe('stand');
  });

  it('given no goal for today, then the chair', () => {
    const row = rowOf(NOON);
    expect(moveOf({ ...row, today: { ...row.today, goal: null } }).task).toBe('bed-chair');
  });
});

describe('who could do it', () => {
  const asksFor = (people: TaskPlan['people']): StayView => {
    const row = rowOf(NOON);
    return { ...row, plan: { ...row.plan!, day: row.plan!.day.map((p) => ({ ...p, people })) } };
  };
  const who = (people: TaskPlan['people'], ...names: readonly string[]) =>
    roundFor([asksFor(people)], { on: new Set(names.map(staff)) }).entries[0]!.who;

  it('given two are asked for and two are named, then just two people', () => {
    expect(who('two', 'ana', 'ben')).toBe('Two people');
    expect(who('two', 'ana')).toBe('Two people; only 1 named for this shift');
  });

  it('given three are asked for, then two who are named are too few', () => {
    expect(who('three-or-more', 'ana', 'ben')).toBe('Three people or more; only 2 named for this shift');
    expect(who('three-or-more', 'ana', 'ben', 'cas')).toBe('Three people or more');
  });
});
