/**
 * What stops standing stops the way to a chair over the feet as well, as a hold on standing does:
 * design, never less help by accident. Common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { triggerKind } from '../../orders/values.ts';
import { dayPlan, help, planInput, trigger, trust, walker } from './plan.testkit.ts';
import { TRIGGER_HELP } from './trigger-help.ts';

const after = (kind: (typeof triggerKind.options)[number]) =>
  planInput(walker, { trust: trust('re-check', trigger(kind)) });

describe('given a person who walks and a nerve block that is on', () => {
  it.each(['bed-chair', 'toilet'] as const)(
    'when %s is planned, then the person is lifted by two and the one more that the block asks for',
    (task) => {
      expect(help(after('block-on'), task)).toEqual(['go', 'three-or-more', 'sling-lift']);
      expect(dayPlan(after('block-on'), task).because).toContainEqual({
        rule: 'trigger/block-on',
        facts: ['t-block-on'],
        words: 'Nerve block on: only lifted, not over the feet',
      });
    },
  );
  it('when it is off again, then one more person is all it asks for', () => {
    expect(help(after('block-off'), 'bed-chair')).toEqual(['go', 'one', 'none']);
  });
});

describe('given any trigger that stops standing', () => {
  it.each(triggerKind.options.filter((kind) => TRIGGER_HELP[kind].holds.includes('stand')))(
    '%s, when a chair or the toilet is planned, then it is a lift or a HOLD',
    (kind) => {
      for (const task of ['bed-chair', 'toilet'] as const) {
        const plan = dayPlan(after(kind), task);
        expect(plan.hold || plan.aid === 'sling-lift').toBe(true);
      }
    },
  );
});
