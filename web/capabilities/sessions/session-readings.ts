/**
 * Readings of a session, and what the ward's stop limits say of them. A reading stands before the
 * session or within it: the pressure before is only what a fall is measured from.
 */
import type { Reading } from '@footboard/shared/capabilities/assessments/values';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import {
  judgeStop,
  type OxygenTarget,
  type StopEvent,
  type StopRules,
  type StopVerdict,
} from '@footboard/shared/capabilities/sessions/rules/stop-limits';
import { MINUTE, SECOND, toEpoch, toIso, type EpochMs } from '@footboard/shared/kernel/times';
import {
  anySlotFault,
  LYING,
  readingsOf,
  SEATED,
  SIGNS,
  type ReadingSlots,
  type SlotKind,
} from '../assessments/reading-slots.ts';

/** As much of a session's sheet as the stop limits look at. */
interface Sheet {
  readonly minutesAgo: number;
  readonly slots: ReadingSlots;
  readonly events: readonly StopEvent[];
  readonly effort: number | null;
  readonly painAfter: number | null;
}

const sign = (id: string): SlotKind => SIGNS.find((kind) => kind.id === id)!;
const pressure = (id: string, says: string, posture: string): SlotKind => ({
  ...SEATED,
  id,
  says,
  fixed: { kind: 'pressure', posture },
});
const BEFORE: readonly SlotKind[] = [
  { ...LYING, id: 'before-lying', says: 'Pressure before, lying' },
  pressure('before-seated', 'Pressure before, seated', 'seated'),
];
const DURING: readonly SlotKind[] = [
  sign('heart-rate'),
  sign('oxygen'),
  sign('breathing'),
  pressure('during-standing', 'Pressure standing', 'standing'),
  pressure('during-seated', 'Pressure seated, during or after', 'seated'),
];
export const SESSION_KINDS: readonly SlotKind[] = [...DURING, ...BEFORE];

/** Shortly before the session began, where a reading is said to be from before it. */
const BEFOREHAND = SECOND;

/** When the session on the sheet began, by the server's clock, in whole milliseconds. */
export const startOf = (draft: Pick<Sheet, 'minutesAgo'>, now: EpochMs): EpochMs =>
  Math.round(now) - draft.minutesAgo * MINUTE;

/** The complete and plausible readings of a session that began at `startedAt`. */
export function sessionReadings(slots: ReadingSlots, startedAt: EpochMs): readonly Reading[] {
  const before = readingsOf(slots, BEFORE).map((r) => ({
    ...r,
    at: toIso(Math.min(toEpoch(r.at), startedAt - BEFOREHAND)),
  }));
  // Typed after the fact as often as not: a reading within a session is as old as the session.
  const during = readingsOf(slots, DURING).map((r) => ({ ...r, at: toIso(startedAt) }));
  return [...before, ...during];
}

export const sessionFault = (slots: ReadingSlots): boolean => anySlotFault(slots, SESSION_KINDS);

export const oxygenTargetOf = (view: StayView | null): OxygenTarget => {
  const order = view?.orders.map((one) => one.order).find((one) => one.about === 'oxygen-target');
  return order ? { low: order.low, high: order.high } : null;
};

/** What the ward's stop limits say of the session as it stands on the sheet. */
export function stopVerdict(
  draft: Sheet,
  now: EpochMs,
  oxygenTarget: OxygenTarget,
  rules: StopRules,
): StopVerdict {
  const startedAt = startOf(draft, now);
  const all = sessionReadings(draft.slots, startedAt);
  return judgeStop({
    readings: all.filter((r) => toEpoch(r.at) >= startedAt),
    before: all.filter((r) => toEpoch(r.at) < startedAt),
    events: draft.events,
    effort: draft.effort ?? undefined,
    pain: draft.painAfter ?? undefined,
    oxygenTarget,
    rules,
  });
}
