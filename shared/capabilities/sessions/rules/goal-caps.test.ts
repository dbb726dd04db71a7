/** What caps a goal: design, goals row (never an activity that is stopped); ours, practice. */
import { describe, expect, it } from 'vitest';
import { goalToday, type GoalInput } from './goals.ts';
import { input } from './goals.testkit.ts';

describe('what caps a goal, one by one', () => {
  it.each([
    ['bed', 'back-raised'],
    ['edge-of-bed', 'edge-sit'],
    ['chair', 'chair'],
    ['stand', 'chair'],
    ['walk', 'walk'],
    ['no-limit', 'walk'],
  ] as const)('an order for activity up to %s leaves: %s', (most, activity) => {
    const activityOrder = { value: most, fact: 'o' as never, at: 0 };
    const now = goalToday(input({ activityOrder }));
    expect(now.goal?.activity).toBe(activity);
    expect(now.because.find((b) => b.rule === 'goal/order')?.words).toBe(
      activity === 'walk' ? undefined : `Order: activity up to ${most.replaceAll('-', ' ')}`,
    );
  });
  it.each([
    ['walk', 'chair'],
    ['stand', 'walk'],
    ['bed-chair', 'walk'],
    ['edge-of-bed', 'walk'],
  ] as const)('a plan that holds the task %s leaves: %s', (task, activity) => {
    const because = [{ rule: 'x', facts: ['f' as never], words: 'x' }];
    const plan = [
      { task, hold: true, because },
      { task: 'lateral', hold: true, because: [] },
    ] as unknown as GoalInput['plan'];
    const now = goalToday(input({ plan }));
    expect(now.goal?.activity).toBe(activity);
    const told = {
      rule: 'goal/task-held',
      facts: ['f'],
      words: `The plan holds: ${task.replaceAll('-', ' ')}`,
    };
    expect(now.because.filter((b) => b.rule === 'goal/task-held')).toEqual(activity === 'walk' ? [] : [told]);
  });
});
