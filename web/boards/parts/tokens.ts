/** The design tokens as tokens.css has them: read from it, so that this page cannot tell another story. */
import css from '../../design/tokens.css?raw';

export type Theme = 'day' | 'night';
export interface Token {
  readonly name: string;
  readonly value: string;
}

const SELECTOR: Readonly<Record<Theme, string>> = { day: ':root', night: ":root[data-theme='night']" };

function block(selector: string): Token[] {
  const body = css.slice(css.indexOf(`${selector} {`)).split('}')[0] ?? '';
  return [...body.replaceAll(/\/\*[\s\S]*?\*\//g, '').matchAll(/(--[\w-]+):\s*([^;]+);/g)].map(
    ([, name, value]) => ({ name: name!, value: value!.trim() }),
  );
}

/** The night's own values before the day's, which stand where it has none. */
export function tokensOf(theme: Theme): Token[] {
  const all = new Map(block(SELECTOR.day).map((one) => [one.name, one]));
  if (theme === 'night') for (const one of block(SELECTOR.night)) all.set(one.name, one);
  return [...all.values()];
}
export const isInk = ({ value }: Token): boolean => value.startsWith('#');
export const isSize = ({ name }: Token): boolean => name.startsWith('--size-');
export const isSpace = ({ name }: Token): boolean => /^--(gap|corner|touch)/.test(name);
