/** Signs of decline and of readiness over the stay: a line on the board with its facts, never an alarm. */
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { Protocol } from '../../assessments/rules/protocol.ts';
import type { TierJudgement } from '../../assessments/rules/tier.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { SessionFact } from '../../sessions/rules/activity.ts';
import type { Standing } from '../../stays/rules/standing.ts';
import type { WardCalendar } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { SignView } from '../view.ts';

export interface SignsInput {
  /** Effective facts up to `t`, in order. */
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly calendar: WardCalendar;
  readonly rules: RulesDocument;
  readonly protocol: Protocol;
  readonly tier: TierJudgement;
  /** The tier's word after each assessment. */
  readonly tierWords: () => ReadonlyMap<EventId, string>;
  readonly sessions: readonly SessionFact[];
  readonly standing: Standing;
  readonly note: (at: EpochMs) => void;
}

export function signsOf(_input: SignsInput): SignView[] {
  return [];
}
