/**
 * What is told of some two hundred ways to be helped is what was read and found right before: people,
 * aid, side, cautions, and each reason with its rule, facts and words. `FOOTBOARD_TOLD=write` writes the
 * file again; what changed in it is to be read line by line by whoever changes a rule.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { toldFindings } from './told-findings.testkit.ts';
import { toldPairs } from './told-pairs.testkit.ts';
import { toldPlans } from './told-plans.testkit.ts';

/** What was read and found right, or is written to be read now. */
function keptAs(name: string, told: string): string {
  const kept = new URL(name, import.meta.url);
  if (process.env.FOOTBOARD_TOLD === 'write') writeFileSync(kept, told);
  return readFileSync(kept, 'utf8');
}

it('PLAN-6 the plans of invented people, and what each single fact changes in them, are told as they were read', () => {
  const told = toldPlans();
  expect(told).toBe(keptAs('./told-plans.txt', told));
});
it('PLAN-6 what was found in other ways is told as it was read', () => {
  const told = toldFindings();
  expect(told).toBe(keptAs('./told-findings.txt', told));
});
it('PLAN-6 what two facts change together is told as it was read', () => {
  const told = toldPairs();
  expect(told).toBe(keptAs('./told-pairs.txt', told));
});
