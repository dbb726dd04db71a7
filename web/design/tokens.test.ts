import { describe, expect, it } from 'vitest';
import css from './tokens.css?raw';

const block = (selector: string): Map<string, string> => {
  const body = css.slice(css.indexOf(`${selector} {`)).split('}')[0] ?? '';
  return new Map([...body.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map((m) => [m[1]!, m[2]!]));
};

/** Relative luminance and contrast ratio as defined by WCAG 2.2 (w3.org/TR/WCAG22, "relative luminance"). */
const luminance = (hex: string): number => {
  const [r, g, b] = [1, 3, 5].map((at) => {
    const c = parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.040_45 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string): number => {
  const [light, dark] = [luminance(a), luminance(b)].toSorted((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
};

const TEXT: readonly [ink: string, paper: string][] = [
  ['ink', 'paper'],
  ['ink', 'sheet'],
  ['ink', 'well'],
  ['ink', 'accent-wash'],
  ['ink-soft', 'paper'],
  ['ink-soft', 'sheet'],
  ['accent', 'paper'],
  ['accent', 'sheet'],
  ['accent', 'accent-wash'],
  ['on-accent', 'accent-fill'],
  ['old-ink', 'old-paper'],
  ['sheet', 'ink'],
];

describe.each([
  ['day', ':root'],
  ['night', ":root[data-theme='night']"],
])('%s', (_theme, selector) => {
  const tokens = new Map([...block(':root'), ...block(selector)]);

  // WCAG 2.2 success criterion 1.4.3: 4.5 to 1.
  it.each(TEXT)('SCREEN-11 %s on %s is at least 4.5 to 1', (ink, paper) => {
    expect(contrast(tokens.get(ink)!, tokens.get(paper)!)).toBeGreaterThanOrEqual(4.5);
  });

  // WCAG 2.2 success criterion 1.4.11: 3 to 1 for what marks a control.
  it.each(['line-strong', 'focus'])('%s on paper and sheet is at least 3 to 1', (mark) => {
    for (const paper of ['paper', 'sheet'])
      expect(contrast(tokens.get(mark)!, tokens.get(paper)!)).toBeGreaterThanOrEqual(3);
  });
});

describe('the contrast arithmetic', () => {
  // Black on white is 21 to 1 by definition; #767676 on white is 4.54, a value quoted in W3C's own notes (from memory).
  it('agrees with known pairs', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  });
});

/** Everything a wall writes is written in these; what is large may be lighter. */
const ON_WALL: readonly [ink: string, paper: string][] = [
  ['ink', 'paper'],
  ['ink', 'sheet'],
  ['ink-soft', 'paper'],
  ['accent', 'paper'],
  ['accent', 'sheet'],
  ['on-accent', 'accent-fill'],
  ['old-ink', 'old-paper'],
  ['sheet', 'ink'],
];

describe.each([
  ['day', ':root'],
  ['night', ":root[data-theme='night']"],
])('on the wall by %s', (_theme, selector) => {
  const tokens = new Map([...block(':root'), ...block(selector)]);
  const of = ([ink, paper]: readonly [string, string]) => contrast(tokens.get(ink)!, tokens.get(paper)!);

  // WCAG 2.2 success criterion 1.4.6: 7 to 1, and 4.5 to 1 for large text.
  it.each(ON_WALL)('SCREEN-11 %s on %s is at least 7 to 1', (...pair) => {
    expect(of(pair)).toBeGreaterThanOrEqual(7);
  });
  it('SCREEN-11 a plan older than its validity is lighter than the ink, and still at least 7 to 1', () => {
    // A wall's words, also those that are old and those of an empty bed: WCAG 2.2 SC 1.4.6.
    expect(of(['ink-faded', 'sheet'])).toBeGreaterThanOrEqual(7);
    expect(of(['ink-soft', 'paper'])).toBeGreaterThanOrEqual(7);
    expect(of(['ink-faded', 'sheet'])).toBeLessThan(of(['ink', 'sheet']));
  });

  /**
   * Deuteranopia, protanopia and tritanopia as linear maps of linear RGB (Machado, Oliveira and
   * Fernandes 2009, severity 1; from memory), and grey.
   */
  const SIMULATED: Readonly<Record<string, readonly (readonly number[])[]>> = {
    protanopia: [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]], // prettier-ignore
    deuteranopia: [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.01182, 0.04294, 0.968881]], // prettier-ignore
    tritanopia: [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.3039]], // prettier-ignore
    grey: [[0.2126, 0.7152, 0.0722], [0.2126, 0.7152, 0.0722], [0.2126, 0.7152, 0.0722]], // prettier-ignore
  };
  const seen = (hex: string, map: readonly (readonly number[])[]): string => {
    const linear = [1, 3, 5].map((at) => {
      const c = parseInt(hex.slice(at, at + 2), 16) / 255;
      return c <= 0.040_45 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    const channels = map.map((row) => {
      const c = Math.min(
        1,
        Math.max(
          0,
          row.reduce((sum, share, i) => sum + share * linear[i]!, 0),
        ),
      );
      const out = c <= 0.003_130_8 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055;
      return Math.round(out * 255).toString(16).padStart(2, '0'); // prettier-ignore
    });
    return `#${channels.join('')}`;
  };
  it.each(Object.keys(SIMULATED))('SCREEN-11 what needs somebody stays readable in %s', (kind) => {
    const map = SIMULATED[kind]!;
    for (const [ink, paper] of [
      ['accent', 'sheet'],
      ['accent', 'paper'],
      ['on-accent', 'accent-fill'],
      ['ink', 'sheet'],
    ] as const)
      // prettier-ignore
      expect(contrast(seen(tokens.get(ink)!, map), seen(tokens.get(paper)!, map))).toBeGreaterThanOrEqual(4.5);
  });
});
