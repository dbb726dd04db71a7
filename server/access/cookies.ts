/** The cookies of access: HttpOnly, SameSite=Strict, for the whole site; `__Host-` and Secure over HTTPS. */
import type { CookieOptions, Response } from 'express';

const NAMES = {
  session: 'footboard-session',
  device: 'footboard-device',
  signing: 'footboard-signing',
  signOn: 'footboard-sign-on',
} as const;
export type CookieName = keyof typeof NAMES;

export interface Cookies {
  /** Of an HTTP request or a socket's handshake. */
  read(headers: { readonly cookie?: string | undefined }, name: CookieName): string | null;
  set(response: Response, name: CookieName, value: string, seconds: number | null): void;
  clear(response: Response, name: CookieName): void;
}
export const COOKIES = Symbol('Cookies');

/** @param secure the browser reaches this server over HTTPS, here or at a proxy. */
export function cookiesFor(secure: boolean): Cookies {
  const full = (name: CookieName) => (secure ? `__Host-${NAMES[name]}` : NAMES[name]);
  const options = (name: CookieName): CookieOptions => ({
    httpOnly: true,
    secure,
    path: '/',
    // Coming back from the sign-on provider is a navigation from another site: Strict would hide it.
    sameSite: name === 'signOn' ? 'lax' : 'strict',
  });
  return {
    read: ({ cookie = '' }, name) => {
      const wanted = `${full(name)}=`;
      const found = cookie
        .split(';')
        .map((part) => part.trim())
        .find((part) => part.startsWith(wanted));
      return found ? found.slice(wanted.length) : null;
    },
    set: (response, name, value, seconds) => {
      response.cookie(full(name), value, {
        ...options(name),
        encode: String,
        ...(seconds === null ? {} : { maxAge: seconds * 1000 }),
      });
    },
    clear: (response, name) => {
      response.clearCookie(full(name), options(name));
    },
  };
}
