/** Orders per limb over random histories: design, rules 1 and 2. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { allMet } from '../../assessments/rules/assessment.testkit.ts';
import { walkingSupport } from '../../assessments/values.ts';
import type { Precaution } from '../../orders/values.ts';
import { limb } from '../../orders/values.ts';
import { aidCovers, atLeast } from './help.ts';
import { planStay } from './plan.ts';
import type { Bears } from './plan.testkit.ts';
import { limbs, planInput, seenTo, stated, walker } from './plan.testkit.ts';

describe('an order that allows less', { timeout: patience }, () => {
  const BEARS = ['none', 'limited', 'unrestricted'] as const;
  const withoutArms = (result: 'not-met' | 'not-tested') =>
    seenTo('walk', {
      upright: {
        findings: allMet('upright')
          .filter((f) => f.part !== 'arm-pushes' || result === 'not-met')
          .map((f) => (f.part === 'arm-pushes' ? { ...f, result: 'not-met' as const } : f)),
      },
    });
  const someOrders = fc.dictionary(fc.constantFrom(...limb.options), fc.constantFrom(...BEARS));
  const people = fc.constantFrom(
    walker,
    seenTo('edge'),
    seenTo('stand'),
    seenTo('upright'),
    withoutArms('not-met'),
    withoutArms('not-tested'),
    seenTo('stand', { stand: { oneLeg: 'right' } }),
  );
  it('PLAN-3 on any limb never lowers any task, by day or by night', () => {
    fc.assert(
      fc.property(
        people,
        someOrders as fc.Arbitrary<Bears>,
        fc.constantFrom(...limb.options),
        fc.nat(1),
        fc.constantFrom(...walkingSupport.options),
        fc.subarray<Precaution>(['hip', 'spine', 'sternum']),
        (facts, orders, which, step, support, precautions) => {
          const was = BEARS.indexOf(orders[which] ?? 'unrestricted');
          const less = BEARS[Math.max(0, was - 1 - step)]!;
          const plan = (bears: Bears) =>
            planStay(
              planInput(facts, { orders: limbs(bears, precautions), walkingSupport: stated(support) }),
            );
          const [before, after] = [plan(orders), plan({ ...orders, [which]: less })];
          for (const when of ['day', 'night'] as const) {
            const lowered = before[when].filter((a, i) => {
              const b = after[when][i]!;
              const lesserAid = a.aid !== b.aid && aidCovers(a.task, b.aid, a.aid);
              return (a.hold && !b.hold) || !atLeast(b.people, a.people) || (lesserAid && !b.hold);
            });
            expect(lowered.map((p) => p.task)).toEqual([]);
          }
        },
      ),
      runs(150, 'cases'),
    );
  });
});
