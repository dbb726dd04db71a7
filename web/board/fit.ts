/**
 * Words at the height they must have, made narrower by the font's width axis where their place is
 * short, and smaller only when they are as narrow as they go. Widths are measured in the screen's own
 * font; where nothing can measure, they are rough shares of the font size, on the generous side.
 */
import { fontEdition } from './font.ts';
import { CAP } from './legible.ts';
import { remembered } from './remembered.ts';

const NARROW = /[ijltfrI.,:;'|()\s-]/;
const WIDE = /[mwMWCDGHNOQU%+&]/;
/** The two ends that are measured; between them widths go in a straight line. CSS `extra-condensed` is 62.5 %. */
const LEAST = 62.5;
const MOST = 100;
/** Left free, for what a measurement and a drawing round differently. */
export const SPARE = 0.99;

/** More than stand on a wall of 36 beds at once, at both ends. */
const KEPT_WORDS = 1_200;

const FAMILY = () => getComputedStyle(document.documentElement).fontFamily || 'sans-serif';
let measured = remembered<number>(KEPT_WORDS);
let edition = -1;
let brush: OffscreenCanvasRenderingContext2D | null | undefined;

function brushOf(weight: number, narrow: boolean): OffscreenCanvasRenderingContext2D | null {
  brush ??= typeof OffscreenCanvas === 'undefined' ? null : new OffscreenCanvas(1, 1).getContext('2d');
  if (brush) {
    brush.font = `${weight} 100px ${FAMILY()}`;
    brush.fontStretch = narrow ? 'extra-condensed' : 'normal';
  }
  return brush;
}

const guessed = (text: string, narrow: boolean): number =>
  [...text].reduce((sum, sign) => sum + (NARROW.test(sign) ? 0.36 : WIDE.test(sign) ? 0.84 : 0.6), 0) *
  (narrow ? 0.68 : 1);

/** Width of a text in em, in a CSS font weight, at its full width or as narrow as it goes. */
export function widthInEm(text: string, weight: number, narrow = false): number {
  if (edition !== fontEdition.value) measured = remembered(KEPT_WORDS);
  edition = fontEdition.value;
  return measured(`${weight} ${narrow ? 'narrow' : 'full'} ${text}`, () => {
    const pen = brushOf(weight, narrow);
    return pen ? pen.measureText(text).width / 100 : guessed(text, narrow);
  });
}

export interface Fitted {
  /** Font size in pixels. */
  readonly size: number;
  /** CSS font-stretch in percent. */
  readonly stretch: number;
}

/**
 * @param place width that the words may take, in pixels
 * @param capital height that their capitals should have, in pixels
 */
export function fitWords(text: string, place: number, capital: number, weight = 600): Fitted {
  const size = capital / CAP;
  const room = (place * SPARE) / size;
  const full = widthInEm(text, weight);
  if (full <= room) return { size, stretch: MOST };
  const least = widthInEm(text, weight, true);
  if (least >= room) return { size: (size * room) / least, stretch: LEAST };
  return { size, stretch: LEAST + ((MOST - LEAST) * (room - least)) / (full - least) };
}
