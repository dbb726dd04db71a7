/**
 * How large capitals must be on a ward's panel: 20 minutes of arc with up to 24 beds and 16 with up to
 * 36, h = 2 d tan(angle / 2). Sources: issue of the four screens; NUREG-0700 rev. 2 (16 at the least,
 * 20 to 22 preferred), as in references.md, section on text.
 */
import type { Panel } from '@footboard/shared/capabilities/wards/values';

const MM_PER_INCH = 25.4;
export const capitalMm = (metres: number, arcminutes: number): number =>
  2 * metres * 1000 * Math.tan((arcminutes / 60 / 180) * (Math.PI / 2));
/** Height of a panel of 16 to 9 by its diagonal. */
export const panelHeightMm = (inches: number): number => (inches * MM_PER_INCH * 9) / Math.hypot(16, 9);

export interface Capitals {
  readonly mm24: string;
  readonly mm36: string;
  readonly px24: number;
  readonly px24at4k: number;
  readonly px36: number;
  readonly px36at4k: number;
}
/** Rounded up in pixels: a capital that is a fraction too small is too small. */
export function capitalsOn({ inches, metres }: Panel): Capitals {
  const pixels = (mm: number, lines: number) => Math.ceil((mm * lines) / panelHeightMm(inches));
  const [far, near] = [capitalMm(metres, 20), capitalMm(metres, 16)];
  return {
    mm24: far.toFixed(1),
    mm36: near.toFixed(1),
    px24: pixels(far, 1080),
    px24at4k: pixels(far, 2160),
    px36: pixels(near, 1080),
    px36at4k: pixels(near, 2160),
  };
}
