/**
 * Words as large as a line allows. Widths are rough shares of the font size for a bold sans-serif,
 * taken on the generous side, so that a word never runs out of its tile whatever font the screen has.
 */
const NARROW = /[ijltfrI.,:;'|()\s-]/;
const WIDE = /[mwMWCDGHNOQU%+&]/;

/** Width of a text in em. */
export const widthInEm = (text: string): number =>
  [...text].reduce((sum, sign) => sum + (NARROW.test(sign) ? 0.36 : WIDE.test(sign) ? 0.84 : 0.6), 0);

/** The size, in the unit of `lineWidth`, at which the text fits on a line, at most `most`. */
export const fitSize = (text: string, lineWidth: number, most: number): number =>
  Math.min(most, lineWidth / Math.max(1, widthInEm(text)));

/** How many columns make cells nearest to the shape of a tile (4 to 3), so that every bed is on the screen at once. */
export function columnsFor(count: number, width: number, height: number): number {
  let best = 1;
  let bestScale = 0;
  for (let columns = 1; columns <= Math.max(1, count); columns++) {
    const rows = Math.ceil(count / columns);
    const scale = Math.min(width / columns / 4, height / rows / 3);
    if (scale > bestScale) {
      best = columns;
      bestScale = scale;
    }
  }
  return best;
}
