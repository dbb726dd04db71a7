/** Joining two plans for one task: design, rule 1. */
import { describe, expect, it } from 'vitest';
import type { TaskPlan } from '../../board/view.ts';
import { asksMore, joinPlans } from './join-plans.ts';

const plan = (over: Partial<TaskPlan> = {}): TaskPlan => ({
  task: 'bed-chair',
  hold: false,
  people: 'one',
  aid: 'none',
  with: [],
  towards: 'left',
  cautions: [],
  because: [{ rule: 'r', facts: [], words: 'w' }],
  ...over,
});

describe('two plans for the same task', () => {
  it('join to the greatest of hold, people and aid, whichever comes first', () => {
    const few = plan({ people: 'two', aid: 'belt', cautions: ['a'], with: ['x'] });
    const many = plan({ hold: true, aid: 'sling-lift', cautions: ['a', 'b'], towards: null });
    for (const both of [joinPlans(few, many), joinPlans(many, few)]) {
      expect(both).toMatchObject({
        hold: true,
        people: 'two',
        aid: 'sling-lift',
        with: ['x'],
        towards: null,
      });
      expect(both.cautions.toSorted()).toEqual(['a', 'b']);
      expect(both.because).toHaveLength(1);
      expect(asksMore(few, both) || asksMore(many, both)).toBe(false);
    }
  });
  it('are a HOLD, ask, where their aids cannot be combined', () => {
    const both = joinPlans(plan({ aid: 'standing-aid' }), plan({ aid: 'seated-transfer-aid' }));
    expect(both.hold).toBe(true);
    expect(both.cautions.join()).toContain('cannot be combined');
  });
  it.each<[Partial<TaskPlan>, Partial<TaskPlan>, boolean]>([
    [{}, {}, false],
    [{ hold: true }, {}, true],
    [{ people: 'two' }, {}, true],
    [{ aid: 'belt' }, { aid: 'standing-aid' }, false],
    [{ aid: 'standing-aid' }, { aid: 'belt' }, true],
    [{ aid: 'standing-aid' }, { aid: 'seated-transfer-aid' }, true],
  ])('%o asks more than %o: %s', (a, b, more) => {
    expect(asksMore(plan(a), plan(b))).toBe(more);
  });
});
