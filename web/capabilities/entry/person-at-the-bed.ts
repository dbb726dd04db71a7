/** A bedside entry is for the stay it was begun for. Beds change hands; an entry never follows the bed. */
import type { BedView } from '@footboard/shared/capabilities/board/view';

export type PersonAtTheBed =
  | { readonly same: true }
  /** `nowIn` is the label of the bed the entry's person is in now; null when they have left the board. */
  | { readonly same: false; readonly nowIn: string | null; readonly bedEmpty: boolean };

export function personAtTheBed(entryStay: string, bed: string, beds: readonly BedView[]): PersonAtTheBed {
  const here = beds.find((b) => b.bed === bed);
  if (here?.stay?.stay === entryStay) return { same: true };
  const elsewhere = beds.find((b) => b.stay?.stay === entryStay);
  return { same: false, nowIn: elsewhere?.label ?? null, bedEmpty: !here?.stay };
}
