/** What a stop limit says: a plain line to read before a session, and the reason to stop that comes of it. */
import type { EpochMs } from '../../../kernel/times.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';

export type StopRules = Pick<RulesDocument, 'stop' | 'rising'>;

export interface StopLine {
  readonly words: string;
  readonly limit: number | null;
  readonly source: string;
}
export interface StopReason extends StopLine {
  /** When the reading was taken; null for what is not a reading. */
  readonly takenAt: EpochMs | null;
}
