/** Naming a person for many beds at once, before it is sent. Pure. */
import type { BedView } from '@footboard/shared/capabilities/board/view';

export interface Pair {
  readonly nurse: string | null;
  readonly aide: string | null;
}
/** Beds that will be named anew, with both names as they will stand. */
export type Draft = ReadonlyMap<string, Pair>;

export const pairOf = (bed: Pick<BedView, 'carers'>): Pair => ({
  nurse: bed.carers?.nurse ?? null,
  aide: bed.carers?.aide ?? null,
});

/** One tap on a bed: it gets the person; tapped again, it is as it was. `person` null takes the name back. */
export function tapped(draft: Draft, bed: BedView, as: keyof Pair, person: string | null): Draft {
  const next = new Map(draft);
  const now = pairOf(bed);
  const before = draft.get(bed.bed) ?? now;
  const again = before[as] === person && draft.has(bed.bed);
  const pair = { ...before, [as]: again ? now[as] : person };
  if (pair.nurse === now.nurse && pair.aide === now.aide) next.delete(bed.bed);
  else next.set(bed.bed, pair);
  return next;
}

/** What is sent; a bed that was closed meanwhile is left out. */
export const namedBeds = (draft: Draft, beds: readonly BedView[]) =>
  beds.flatMap(({ bed }) => {
    const pair = draft.get(bed);
    return pair ? [{ bed, ...pair }] : [];
  });
