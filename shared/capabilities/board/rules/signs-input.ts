/** What the signs of decline and of readiness are judged from. */
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { Protocol, ProtocolLookup } from '../../assessments/rules/protocol.ts';
import type { TierJudgement } from '../../assessments/rules/tier.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { PlanInput } from '../../handling/rules/types.ts';
import type { Triggers } from '../../orders/rules/triggers.ts';
import type { SessionFact } from '../../sessions/rules/activity.ts';
import type { Standing } from '../../stays/rules/standing.ts';
import type { WardCalendar } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { HoldView, TrustView } from '../moving-view.ts';

export interface SignsInput {
  /** Effective facts up to `t`, in order. */
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly calendar: WardCalendar;
  readonly rules: RulesDocument;
  readonly protocol: Protocol;
  readonly protocols: ProtocolLookup;
  readonly tier: TierJudgement;
  /** The tier's word after each assessment. */
  readonly tierWords: () => ReadonlyMap<EventId, string>;
  /** As `sessionsOf` gives them: begun by `t`. */
  readonly sessions: readonly SessionFact[];
  readonly standing: Standing;
  readonly holds: readonly HoldView[];
  readonly triggers: Triggers;
  readonly trust: Pick<TrustView, 'state'>;
  readonly activityOrder: PlanInput['orders']['activity'];
  readonly note: (at: EpochMs) => void;
}
