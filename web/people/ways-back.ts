/** Where to go after signing in: only paths of this site, as they stand in its own addresses. */
export function ownPath(asked: unknown): string {
  if (typeof asked !== 'string' || !asked.startsWith('/')) return '/';
  // "//other.example" and "/\other.example" are addresses of other sites (WHATWG URL).
  if (/^\/[/\\]/.test(asked) || asked.includes('\\')) return '/';
  const url = new URL(asked, window.location.origin);
  if (url.origin !== window.location.origin) return '/';
  const path = `${url.pathname}${url.search}${url.hash}`;
  return /^\/(sign-in|join|pair|api)(\/|$|\?|#)/.test(path) ? '/' : path;
}

/** Where a paired screen belongs. */
export const homeOfDevice = ({ kind, ward }: { kind: 'wall' | 'shared'; ward: string }): string =>
  `/wards/${ward}/${kind === 'wall' ? 'wall' : 'bedside'}`;
