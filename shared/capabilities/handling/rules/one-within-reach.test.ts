/** Whoever may not wait or follow has one person within reach at the edge of the bed, too: design, common practice. */
import { describe, expect, it } from 'vitest';
import { dayPlan, help, nightPlan, planInput, uncooperative, walker } from './plan.testkit.ts';

describe('given a person who comes to the edge of the bed alone', () => {
  it.each(['waits', 'follows'] as const)(
    'when not known to be one who %s, then one is within reach',
    (which) => {
      const input = planInput(uncooperative(which));
      expect(help(input, 'edge-of-bed')).toEqual(['go', 'one', 'none']);
      expect(nightPlan(input, 'edge-of-bed').people).toBe('one');
      const why = dayPlan(input, 'edge-of-bed').because.find((b) => b.rule === 'ours/does-not-wait');
      expect(why?.facts).toHaveLength(1);
    },
  );
  it('when the person waits and follows, then somebody stands by', () => {
    expect(help(planInput(walker), 'edge-of-bed')).toEqual(['go', 'stand-by', 'none']);
  });
});

describe('given a person who turns in bed and moves up in a chair alone', () => {
  it.each(['in-bed', 'in-chair'] as const)('when not known to wait, then one is within reach, %s', (task) => {
    const input = planInput(uncooperative('waits'));
    expect([dayPlan(input, task).people, nightPlan(input, task).people]).toEqual(['one', 'one']);
    expect(dayPlan(planInput(walker), task).people).toBe('stand-by');
  });
});
