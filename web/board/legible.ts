/**
 * How large a wall must write to be read, and which grid of tiles can write that large. Pure.
 *
 * A capital seen under an angle a from a distance d is h = 2 d tan(a / 2) high (NUREG-0700 rev. 2,
 * 1.3.1-4, has the same as 6.283 d a / 21600). 16 minutes of arc are the least for reading, 20 are
 * preferred (NUREG-0700 rev. 2; the same in display standards). Text is sized for its farthest reader.
 */
import type { Panel } from '@footboard/shared/capabilities/wards/values';

export const LEAST_ARCMIN = 16;
export const PREFERRED_ARCMIN = 20;
/** Up to so many beds the far words have the preferred angle, up to the second the least. */
export const PREFERRED_BEDS = 24;
export const MOST_BEDS = 36;
/** What is read when coming closer. */
export const NEAR_METRES = 3;

/** Height of a capital as a share of the font size: Archivo's own metrics, measured in the browser test. */
export const CAP = 0.686;

export const capitalMm = (metres: number, arcmin: number): number =>
  2 * metres * 1_000 * Math.tan(((arcmin / 60) * Math.PI) / 180 / 2);

/** Width of a panel of 16 to 9 by its diagonal. */
export const panelWidthMm = (inches: number): number => (inches * 25.4 * 16) / Math.hypot(16, 9);

/** The larger side decides: a browser that is not 16 to 9 does not fill its panel. */
export const pixelsPerMm = (inches: number, width: number, height: number): number =>
  Math.max(width, (height * 16) / 9) / panelWidthMm(inches);

export const farArcmin = (beds: number): number => (beds <= PREFERRED_BEDS ? PREFERRED_ARCMIN : LEAST_ARCMIN);

/** Lengths of a tile in pixels. `far` and `near` are heights of capitals. */
export interface TilePlan {
  readonly far: number;
  readonly near: number;
  /** Whether there is room for the plan's whole words below. */
  readonly lines: number;
  /** How much further apart rows stand than they must: 1 where the tile is full. */
  readonly leading: number;
  readonly width: number;
  readonly height: number;
  /** How wide a bed's label may be. */
  readonly label: number;
  /** Whole words go on in a next line instead of becoming smaller: the tile is as high as it needs. */
  readonly wraps: boolean;
}
export interface WallPlan extends TilePlan {
  readonly columns: number;
  readonly rows: number;
  readonly head: number;
  readonly foot: number;
  /** Angle that the far words are promised. */
  readonly arcmin: number;
  /** Share of the promised size that is reached; 1 or more keeps the promise. */
  readonly scale: number;
}

/** Shares of `far` and `near` that the parts of a tile take: the one place where its shape is settled. */
export const LABEL_WIDE = 2.4;
export const PEOPLE_WIDE = 1.7;
const AID_WIDE = 4.7;
const LINE_WIDE = 13.7;
const STACK_WIDE = 7.2;
export const GAP = 0.16;
/** Left and right of a tile, and above and below. */
export const EDGE = 0.18;
export const PAD = 0.08;
export const NEAR_LINE = 1.28;
export const FAR_LINE = 1.25;
const HEAD_LINE = 1.36;
/** From this share of the promised size on, a wall gives size for room between its rows. */
const AMPLE = 1.5;
/** Beyond this, rows would no longer read as one bed's. */
const MOST_LEADING = 1.3;
/** Whole words that a tile has room for before its rows stand further apart. */
const LINES_FIRST = 2;
export const firstRow = (far: number, near: number): number => Math.max(FAR_LINE * far, 2 * NEAR_LINE * near);

export const BETWEEN = 2;
const AROUND = 2;
const MOST_SCALE = 2.4;
const FOOT = 0.0185;

const leastWidth = (far: number, near: number): number =>
  Math.max(
    (LABEL_WIDE + 1 + 2 * GAP) * far + STACK_WIDE * near,
    (PEOPLE_WIDE + AID_WIDE + 1 + 2 * GAP) * far,
    LINE_WIDE * near,
  ) +
  2 * EDGE * near +
  2;
const rowsHigh = (far: number, near: number, lines: number): number =>
  firstRow(far, near) + FAR_LINE * far + (2 + lines) * NEAR_LINE * near;
const leastHeight = (far: number, near: number, lines: number): number =>
  rowsHigh(far, near, lines) + 2 * PAD * near + 2;

interface Room {
  readonly beds: number;
  readonly width: number;
  readonly height: number;
  readonly far: number;
  readonly near: number;
}

function inColumns(room: Room, columns: number, lines: number): number {
  const { beds, width, height, far, near } = room;
  const rows = Math.ceil(beds / columns);
  const wide = (width - 2 * AROUND - (columns - 1) * BETWEEN) / columns / leastWidth(far, near);
  const fixed = FOOT * height + 2 * AROUND + (rows - 1) * BETWEEN;
  const tall = (height - fixed) / (HEAD_LINE * far + rows * leastHeight(far, near, lines));
  return Math.min(wide, tall, MOST_SCALE);
}

/** The most columns can give, and with how many; fewer columns where they give the same. */
function best(room: Room, lines: number): { columns: number; scale: number } {
  let found = { columns: 1, scale: 0 };
  for (let columns = 1; columns <= Math.max(1, room.beds); columns++) {
    const scale = inColumns(room, columns, lines);
    if (scale > found.scale + 1e-6) found = { columns, scale };
  }
  return found;
}

/** What a label may take beside the words of trust: as much as is wanted, never less than its least, never from those. */
function labelWide(width: number, far: number, near: number, wanted: number): number {
  const beside = width - 2 * EDGE * near - 2 - (1 + 2 * GAP) * far - STACK_WIDE * near;
  return Math.max(LABEL_WIDE * far, Math.min(wanted * far, beside));
}

/**
 * The grid that writes largest; once the promise is kept, with lines for the plan's whole words before more size.
 * @param label how wide the widest label of a bed is, in heights of a far capital
 */
export function planWall(
  beds: number,
  width: number,
  height: number,
  panel: Panel,
  label = LABEL_WIDE,
): WallPlan {
  const arcmin = farArcmin(beds);
  const perMm = pixelsPerMm(panel.inches, width, height);
  const far = capitalMm(panel.metres, arcmin) * perMm;
  const near = capitalMm(NEAR_METRES, LEAST_ARCMIN) * perMm;
  const room = { beds, width, height, far, near };
  const kept = [2, 1].map((lines) => best(room, lines)).find(({ scale }) => scale >= 1);
  const { columns, scale: largest } = kept ?? best(room, 0);
  const rows = Math.max(1, Math.ceil(beds / columns));
  const foot = FOOT * height;
  const head = HEAD_LINE * far * largest;
  const tile = {
    width: (width - 2 * AROUND - (columns - 1) * BETWEEN) / columns,
    height: (height - foot - head - 2 * AROUND - (rows - 1) * BETWEEN) / rows,
  };
  const wanted = Math.min(Math.max(largest / AMPLE, 1), MOST_LEADING);
  const { leading } = sized(tile, far * largest, near * largest);
  const scale = largest * Math.min(leading / wanted, 1);
  return {
    columns,
    rows,
    head,
    foot,
    arcmin,
    scale,
    ...tile,
    ...sized(tile, far * scale, near * scale),
    label: labelWide(tile.width, far * scale, near * scale, label),
    wraps: false,
  };
}

/** How many lines for whole words a tile of that size has left, and how far apart its rows may then stand. */
function sized({ height }: { height: number }, far: number, near: number) {
  const rows = height - leastHeight(far, near, 0) + rowsHigh(far, near, 0);
  const leading = Math.min(Math.max(rows / rowsHigh(far, near, LINES_FIRST), 1), MOST_LEADING);
  const left = rows / leading - rowsHigh(far, near, 0);
  return { far, near, leading, lines: Math.max(0, Math.floor(left / (NEAR_LINE * near) + 0.01)) };
}

/** Held in a hand, not hung on a wall: as many columns as fit, nothing promised, the page scrolls. */
export function planHand(beds: number, width: number, label = LABEL_WIDE): WallPlan {
  const columns = 2;
  const wide = (width - 2 * AROUND - (columns - 1) * BETWEEN) / columns;
  const scale = Math.min(1.6, wide / leastWidth(22, 11.5));
  const [far, near, lines] = [22 * scale, 11.5 * scale, 4];
  return {
    columns,
    rows: Math.max(1, Math.ceil(beds / columns)),
    head: 0,
    foot: 0,
    arcmin: LEAST_ARCMIN,
    scale,
    far,
    near,
    lines,
    leading: 1,
    width: wide,
    height: leastHeight(far, near, 2),
    label: labelWide(wide, far, near, label),
    wraps: true,
  };
}

export const keepsPromise = ({ scale }: Pick<WallPlan, 'scale'>): boolean => scale >= 0.995;

/** What would fit where the promise is not kept: from how far this panel is read, and which panel would do. */
export const wouldFit = ({ scale }: Pick<WallPlan, 'scale'>, panel: Panel) => ({
  metres: Math.floor(panel.metres * scale * 10) / 10,
  inches: Math.ceil(panel.inches / scale),
});
