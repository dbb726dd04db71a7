/**
 * May we start, for the next session: the latest readings, what is in force and what was last seen
 * against the ward's limits. Orders, local policy and the clinician at the bedside come first.
 */
import type { EpochMs } from '../../../kernel/times.ts';
import type { HoldView, StartView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Capability, PlanInput } from '../../handling/rules/types.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { ProtocolLookup } from './protocol.ts';
import type { TierJudgement } from './tier.ts';

export interface MayStartInput {
  /** Effective facts up to `t`, in order. */
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly rules: RulesDocument;
  readonly protocols: ProtocolLookup;
  readonly tier: TierJudgement;
  readonly capability: Capability;
  readonly holds: readonly HoldView[];
  readonly orders: PlanInput['orders'];
  readonly attachments: PlanInput['attachments'];
  /** Told each later instant at which the answer changes by time alone. */
  readonly note: (at: EpochMs) => void;
}

export function mayStartNow(_input: MayStartInput): StartView {
  return { word: 'ask-first', reasons: [], notTaken: [] };
}
