/** What a few checks come to, and single findings within them. */
import type { Fact } from '../../corrections/facts.ts';
import type { Finding, Side } from '../values.ts';
import { allMet, tierInput } from './assessment.testkit.ts';
import { judgeTier } from './tier.ts';

export const judge = (...facts: Fact[]) => judgeTier(tierInput(facts));
export const word = (...facts: Fact[]) => judge(...facts).view.word;
export const says = (...facts: Fact[]) => judge(...facts).view.because.map((b) => `${b.rule}: ${b.words}`);
export const swapped = (stage: string, ...changes: Finding[]): Finding[] =>
  allMet(stage).map((f) => changes.find((c) => c.part === f.part && c.side === f.side) ?? f);
export const of = (part: string, result: Finding['result'], side?: Side): Finding => ({
  part,
  result,
  ...(side ? { side } : {}),
  ...(result === 'not-tested' ? { reason: 'refused' as const } : {}),
  ...(result === 'not-applicable' ? { reason: 'limb-absent' as const } : {}),
});
