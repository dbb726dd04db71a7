/** When a reading was taken, where that is not when it was typed, and what such a time may not be. */
import { MINUTE, type EpochMs } from '@footboard/shared/kernel/times';
import type { ReadingSlots, SlotKind, SlotValue } from './reading-slot.ts';

/** Offered by one tap. A reading's time may lie 5 min from its minute standing, so steps of 5 reach it. */
export const AGO_MINUTES = [2, 5, 10, 15] as const;

/**
 * The slot taken so many minutes before `now`; null is back to when it was typed. Of a time still to
 * come nothing is kept but that it was said: the slot is then at fault until that is put right.
 */
export function takenAgo(
  slots: ReadingSlots,
  kind: SlotKind,
  minutes: number | null,
  now: EpochMs,
): ReadingSlots {
  const before = slots[kind.id];
  if (!before) return slots;
  const { values } = before;
  const typed = before.typed ?? before.at;
  const slot: SlotValue =
    minutes === null
      ? { values, at: typed }
      : { values, typed, minutesAgo: minutes, at: minutes < 0 ? typed : now - minutes * MINUTE };
  return { ...slots, [kind.id]: slot };
}

/** The order in which the check takes its pressures; null for what is no pressure. */
function placeOf(kind: SlotKind): number | null {
  const posture = kind.fixed['posture'];
  if (posture === 'standing') return kind.id.startsWith('again') ? 3 : 2;
  return posture === 'seated' ? 1 : posture === 'lying' ? 0 : null;
}

/**
 * Why the time said of a slot cannot be, and what to do; null when nothing stands against it. Two that
 * stand as typed are left to the rules, which name what is missing: figures are often typed out of order.
 */
export function timeFault(kind: SlotKind, slots: ReadingSlots, kinds: readonly SlotKind[]): string | null {
  const slot = slots[kind.id];
  if (!slot) return null;
  if ((slot.minutesAgo ?? 0) < 0) return 'That is still to come. Type how many minutes ago it was taken.';
  const place = placeOf(kind);
  if (place === null) return null;
  for (const other of kinds) {
    const there = slots[other.id];
    const otherPlace = placeOf(other);
    if (!there || otherPlace === null || otherPlace === place) continue;
    if (slot.minutesAgo === undefined && there.minutesAgo === undefined) continue;
    if (otherPlace < place && slot.at < there.at) {
      return `Timed before “${other.says}”. Say fewer minutes here, or more at that one.`;
    }
    if (otherPlace > place && slot.at > there.at) {
      return `Timed after “${other.says}”. Say more minutes here, or fewer at that one.`;
    }
  }
  return null;
}
