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
