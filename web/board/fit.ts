/**
 * Words as large as a line allows. Widths are measured in the screen's own font; where nothing can
 * measure, they are rough shares of the font size, taken on the generous side.
 */
const NARROW = /[ijltfrI.,:;'|()\s-]/;
const WIDE = /[mwMWCDGHNOQU%+&]/;

const FAMILY = () => getComputedStyle(document.documentElement).fontFamily || 'sans-serif';
const measured = new Map<string, number>();
let brush: OffscreenCanvasRenderingContext2D | null | undefined;

function brushOf(weight: number): OffscreenCanvasRenderingContext2D | null {
  brush ??= typeof OffscreenCanvas === 'undefined' ? null : new OffscreenCanvas(1, 1).getContext('2d');
  if (brush) brush.font = `${weight} 100px ${FAMILY()}`;
  return brush;
}

/** Width of a text in em, in a CSS font weight (bold unless told). */
export function widthInEm(text: string, weight = 700): number {
  const key = `${weight} ${text}`;
  let width = measured.get(key);
  if (width === undefined) {
    const pen = brushOf(weight);
    width = pen
      ? pen.measureText(text).width / 100
      : [...text].reduce((sum, sign) => sum + (NARROW.test(sign) ? 0.36 : WIDE.test(sign) ? 0.84 : 0.6), 0);
    if (measured.size > 2_000) measured.clear();
    measured.set(key, width);
  }
  return width;
}

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
