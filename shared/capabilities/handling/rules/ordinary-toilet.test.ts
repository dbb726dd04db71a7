/**
 * What an ordinary toilet carries: about 350 lb (158.8 kg), VA bariatric tables, rev. 2007, read as restated in a
 * caregiver article (references: bariatric tables, row "toilet").
 */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { planStay } from './plan.ts';
import { planInput, walker, weight } from './plan.testkit.ts';

const words = (kg: number) => `An ordinary toilet carries about ${kg} kg: use a commode rated for the weight`;
const cautions = (over: object, task = 'toilet') => {
  const { day, night } = planStay(planInput(walker, over));
  return [day, night].map((plans) => plans.find((p) => p.task === task)!.cautions);
};

describe('PLAN-1 the toilet of somebody heavy', () => {
  it('given 158 kg, then nothing is said; given more, then a rated commode is asked for by day and by night', () => {
    for (const each of cautions(weight(158))) expect(each).not.toContain(words(158));
    for (const each of cautions(weight(159))) expect(each).toContain(words(158));
    for (const each of cautions(weight(170))) expect(each).toContain(words(158));
  });
  it('given the weight is not known, then it is asked for, too', () => {
    for (const each of cautions({ weight: null })) expect(each).toContain(words(158));
  });
  it('given a transfer that is not to the toilet, then nothing is said', () => {
    for (const each of cautions(weight(170), 'bed-chair')) expect(each).not.toContain(words(158));
  });
  it("given a ward's own limit, then it counts", () => {
    const rules = structuredClone(DEFAULT_RULES);
    rules.handling.ordinaryToiletUpToKg.value = 120;
    for (const each of cautions({ rules, ...weight(121) })) expect(each).toContain(words(120));
    for (const each of cautions({ rules, ...weight(120) })) expect(each).not.toContain(words(120));
  });
  it('the limit is 350 lb, rounded down to whole kilograms', () => {
    expect(DEFAULT_RULES.handling.ordinaryToiletUpToKg.value).toBe(Math.floor(350 * 0.45359237));
  });
});
