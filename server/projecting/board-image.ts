/**
 * The board as bytes: what is stored, and what differs between two of them. Pure. A row is written
 * once as JSON, and these bytes are what "the same board" is judged by.
 */
import type { BedView, BoardView } from '@footboard/shared/capabilities/board/view';
import type { BedId } from '@footboard/shared/kernel/ids';

export interface RowImage {
  /** Kept so that a row whose parts are the same objects as before is not written out again. */
  readonly view: BedView;
  readonly text: string;
}

export interface BoardImage {
  readonly view: BoardView;
  /** The ward's own facts, without beds. */
  readonly facts: string;
  readonly order: readonly BedId[];
  readonly rows: ReadonlyMap<BedId, RowImage>;
}

export type WardFacts = Omit<BoardView, 'beds'>;

export interface BoardChanges {
  readonly board?: WardFacts;
  readonly beds: BedView[];
  readonly order?: BedId[];
}

const factsOf = (board: BoardView): WardFacts => {
  const { beds: _beds, ...facts } = board;
  return facts;
};

const sameParts = (a: BedView, b: BedView): boolean =>
  (Object.keys(b) as (keyof BedView)[]).every((part) => a[part] === b[part]);

export function imageOf(board: BoardView, before?: BoardImage | null): BoardImage {
  const rows = new Map<BedId, RowImage>();
  for (const view of board.beds) {
    const known = before?.rows.get(view.bed);
    rows.set(view.bed, known && sameParts(known.view, view) ? known : { view, text: JSON.stringify(view) });
  }
  return {
    view: board,
    facts: JSON.stringify(factsOf(board)),
    order: board.beds.map((row) => row.bed),
    rows,
  };
}

/** The stored form back into an image; `rows` by bed. Null when a bed of the order has no row. */
export function imageFromStored(boardText: string, rows: ReadonlyMap<string, string>): BoardImage | null {
  const stored = JSON.parse(boardText) as { facts: WardFacts; order: BedId[] };
  const beds: BedView[] = [];
  for (const bed of stored.order) {
    const text = rows.get(bed);
    if (text === undefined) return null;
    beds.push(JSON.parse(text) as BedView);
  }
  return imageOf({ ...stored.facts, beds });
}
export const storedBoard = (image: BoardImage): string =>
  `{"facts":${image.facts},"order":${JSON.stringify(image.order)}}`;

const sameOrder = (a: readonly BedId[], b: readonly BedId[]) =>
  a.length === b.length && a.every((bed, at) => bed === b[at]);

/** What a screen that shows `from` needs to show `to`; null when not a byte differs. */
export function changesBetween(from: BoardImage | null, to: BoardImage): BoardChanges | null {
  if (from === to) return null;
  const beds: BedView[] = [];
  for (const [bed, row] of to.rows) if (from?.rows.get(bed)?.text !== row.text) beds.push(row.view);
  const facts = from?.facts !== to.facts;
  const order = !from || !sameOrder(from.order, to.order);
  if (beds.length === 0 && !facts && !order) return null;
  return {
    ...(facts ? { board: factsOf(to.view) } : {}),
    beds,
    ...(order ? { order: [...to.order] } : {}),
  };
}

export const bedsGone = (from: BoardImage | null, to: BoardImage): readonly BedId[] =>
  from ? from.order.filter((bed) => !to.rows.has(bed)) : [];
