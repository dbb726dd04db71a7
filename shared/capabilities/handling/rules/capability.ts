import type { TierInput, TierJudgement } from '../../assessments/rules/tier.ts';
import type { Capability, PlanInput } from './types.ts';

export interface CapabilityInput extends TierInput {
  readonly tier: TierJudgement;
  readonly orders: PlanInput['orders'];
  readonly weight: PlanInput['weight'];
}

export function capabilityOf(input: CapabilityInput): Capability {
  return {
    weightBearing: { 'left-leg': 'none', 'right-leg': 'none' },
    bears: 'none',
    followsInstructions: 'not known',
    waitsForHelp: 'not known',
    armStrength: 'not known',
    grip: 'not known',
    sittingBalance: false,
    assists: 'not',
    strongerSide: null,
    weightKg: null,
    weightMarked: 'unknown',
    cleared: input.tier.cleared,
    clearedFree: input.tier.clearedFree,
    because: [],
  };
}
