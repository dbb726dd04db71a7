/** The mark on an estimated weight says the ward's own margin. */
import { expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { planInput, walker, weight } from './plan.testkit.ts';

const marked = (margin: number, how: 'measured' | 'estimated' = 'estimated') => {
  const rules = structuredClone(DEFAULT_RULES);
  rules.handling.estimatedWeightMargin.value = margin;
  const { weightKg, weightMarked } = planInput(walker, { rules, ...weight(100, how) }).capability;
  return [Math.round(weightKg!), weightMarked];
};

it.each([
  [0.2, 120, 'estimated, 20 % added'],
  [0.3, 130, 'estimated, 30 % added'],
  [0.07, 107, 'estimated, 7 % added'],
  [0.125, 113, 'estimated, 12.5 % added'],
  [0, 100, 'estimated, 0 % added'],
])('given a margin of %d, when the weight is estimated, then it is marked with it', (margin, kg, words) => {
  expect(marked(margin)).toEqual([kg, words]);
});
it('given a margin, when the weight was measured, then there is no such mark', () => {
  expect(marked(0.3, 'measured')).toEqual([100, 'measured']);
});
