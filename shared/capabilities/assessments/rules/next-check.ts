/** Where the next staged check begins, and in which depth. */
import type { EpochMs } from '../../../kernel/times.ts';
import type { NextCheckView, TrustView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { PlanInput } from '../../handling/rules/types.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Protocol } from './protocol.ts';
import type { TierJudgement } from './tier.ts';

export interface NextCheckInput {
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly rules: RulesDocument;
  /** The protocol in force on the ward: the newest published one, or the default. */
  readonly protocol: Protocol;
  readonly tier: TierJudgement;
  readonly trust: TrustView;
  readonly firstTimeUpPending: PlanInput['firstTimeUpPending'];
  readonly note: (at: EpochMs) => void;
}

export function nextCheckOf(_input: NextCheckInput): NextCheckView | null {
  return null;
}
