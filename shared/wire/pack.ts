import type { BedView } from '../capabilities/board/view.ts';

/**
 * A bed's row as it travels. Most of a row is reasons, and most reasons are given for many tasks:
 * each goes once, in `reasons`, and every `because` lists places in it. About half the bytes, which
 * counts when one entry goes to two hundred screens.
 */
export interface PackedBed {
  readonly reasons: readonly unknown[];
  readonly row: unknown;
}

const packed = new WeakMap<BedView, PackedBed>();

/** Rows are replaced, never changed, so a row is packed once for all screens. */
export function packBed(bed: BedView): PackedBed {
  const known = packed.get(bed);
  if (known) return known;
  const reasons: unknown[] = [];
  const places = new Map<string, number>();
  const placeOf = (reason: unknown): number => {
    const text = JSON.stringify(reason);
    const place = places.get(text) ?? reasons.push(reason) - 1;
    places.set(text, place);
    return place;
  };
  const row = mapBecause(bed, (because) => because.map(placeOf));
  const fresh = { reasons, row };
  packed.set(bed, fresh);
  return fresh;
}

/** The row again; whatever is not a packed row is handed on as it is, for the schema to refuse. */
export function unpackBed(message: unknown): unknown {
  if (typeof message !== 'object' || message === null || !('reasons' in message) || !('row' in message)) {
    return message;
  }
  const { reasons, row } = message;
  if (!Array.isArray(reasons)) return message;
  return mapBecause(row, (because) =>
    because.map((place) => (typeof place === 'number' ? (reasons as unknown[])[place] : place)),
  );
}

function mapBecause(value: unknown, change: (because: readonly unknown[]) => unknown): unknown {
  if (Array.isArray(value)) return value.map((one) => mapBecause(one, change));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).map(([key, part]) => [
      key,
      key === 'because' && Array.isArray(part) ? change(part) : mapBecause(part, change),
    ]),
  );
}

/** A message with its rows packed, for the socket. */
export const packRows = <M extends { readonly beds: readonly BedView[] }>(message: M) => ({
  ...message,
  beds: message.beds.map(packBed),
});
