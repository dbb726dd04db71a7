/** Beds of a ward and their occupancy, as decisions ask about them. */
import type { Bed } from '@footboard/shared/capabilities/wards/context';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { BedId, WardId } from '@footboard/shared/kernel/ids';
import { refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';

export function knownBed(ward: WardState, bed: BedId, field: string): Bed | Refusal {
  return (
    ward.beds.find((b) => b.bed === bed) ??
    refuse(
      'bed-unknown',
      `${ward.name} has no bed with the id ${bed}`,
      'Choose a bed from the board; add it on the set-up page if it is new.',
      field,
    )
  );
}

export const bedLabel = (ward: WardState, bed: BedId): string =>
  ward.beds.find((b) => b.bed === bed)?.label ?? bed;

/**
 * Whether a person can be put into this bed at the occurred time: it stands on the ward's list, nobody
 * is in it, and it had been freed by then.
 * @param say words for an instant, in details
 */
export function freeBed(
  context: DecideContext,
  ward: WardState,
  bed: BedId,
  field: string,
  say: (at: number) => string,
): Refusal | null {
  const known = knownBed(ward, bed, field);
  if ('refused' in known) return known;
  if (context.occupant(bed, ward.ward) !== null) {
    return refuse(
      'bed-occupied',
      `someone is in bed ${known.label}`,
      'Choose an empty bed, swap the two people, or end the stay of whoever left.',
      field,
    );
  }
  const last = context.slice(streamKey('bed', bed), ward.ward).events.at(-1);
  if (last?.type === 'bed-withdrawn') {
    return refuse(
      'bed-unknown',
      `bed ${known.label} was taken off the list of ${ward.name} a moment ago`,
      'Choose another bed.',
      field,
    );
  }
  if (last?.type === 'bed-freed' && context.occurred < last.occurred) {
    return refuse(
      'bed-taken-then',
      `bed ${known.label} was freed ${say(last.occurred)}; at ${say(context.occurred)} someone else was in it`,
      'Check the time, or choose the bed the person was really in.',
      field,
    );
  }
  return null;
}

export const guardOf = (ward: WardId, bed: BedId) => ({ ward, stream: streamKey('bed', bed) });
