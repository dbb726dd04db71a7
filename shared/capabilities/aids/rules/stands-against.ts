/** What stands against a piece of equipment that was planned with, whoever has it now. Pure. */
import type { StayId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { ItemDescription } from '../values.ts';
import { examinationDue, sayDate } from './examination.ts';
import type { ItemState } from './item-state.ts';

export interface StandsInput {
  /** Whom it is planned for. */
  readonly stay: StayId;
  readonly t: EpochMs;
  /** Date on the ward's clock, like 2026-10-25. */
  readonly today: string;
  readonly rules: RulesDocument['aids'];
  readonly say: (at: EpochMs) => string;
}

const plain = (code: string): string => code.replaceAll('-', ' ');

/**
 * The first of it in words, with since when; null: nothing. Only what somebody said, and what stands until
 * somebody says otherwise: what nobody has said lately, and whoever has it now, may be settled by the time
 * of the visit.
 */
export function standsAgainst(
  is: ItemDescription,
  state: ItemState,
  { stay, t, today, rules, say }: StandsInput,
  note: (at: EpochMs) => void,
): string | null {
  const since = (one: { readonly at: EpochMs } | null): string | null => {
    if (!one) return null;
    if (one.at <= t) return say(one.at);
    note(one.at);
    return null;
  };
  const { outOfService, keptFor } = state;
  const broken = since(outOfService);
  if (broken) return `${is.label} is out of service since ${broken} (${plain(outOfService!.defect)})`;
  const missing = since(state.missing);
  if (missing) return `${is.label} was looked for ${missing} and is not there`;
  const due = examinationDue(is, rules);
  if (due !== null && due < today) return `${is.label} was due for its examination ${sayDate(due)}`;
  const kept = keptFor !== null && keptFor !== stay ? since(state.bound) : null;
  if (kept) return `${is.label} is kept for another person since ${kept}`;
  const dirty = state.clean?.is === false ? since(state.clean) : null;
  if (dirty) return `${is.label} is dirty since ${dirty}`;
  const flat = is.powered && state.battery?.band === 'flat' ? since(state.battery) : null;
  return flat && `the battery of ${is.label} is flat since ${flat}`;
}
