import type { AddressInfo } from 'node:net';
import express from 'express';
import { describe, expect, it } from 'vitest';
import { cookiesFor } from './cookies.ts';

/** The Set-Cookie lines of one answer that sets a session for an hour and a sign-on cookie, and clears a device. */
async function linesOf(secure: boolean): Promise<string[]> {
  const cookies = cookiesFor(secure);
  const app = express();
  app.get('/', (_request, response) => {
    cookies.set(response, 'session', 'token', 3_600);
    cookies.set(response, 'signOn', 'kept', null);
    cookies.clear(response, 'device');
    response.end();
  });
  const server = app.listen(0, '127.0.0.1');
  await new Promise((resolve) => server.once('listening', resolve));
  const { port } = server.address() as AddressInfo;
  const answer = await fetch(`http://127.0.0.1:${port}/`);
  server.close();
  return answer.headers.getSetCookie();
}

/** RFC 6265bis, 4.1.3.2: a `__Host-` cookie is Secure, has the path "/" and no domain. */
describe('cookies', () => {
  it('given HTTPS, they are Secure and bound to this host by their name', async () => {
    const lines = await linesOf(true);
    expect(lines).toHaveLength(3);
    for (const line of lines) {
      expect(line).toMatch(/^__Host-footboard-/);
      expect(line).toMatch(/; Secure/);
      expect(line).toMatch(/; Path=\/(;|$)/);
      expect(line).not.toMatch(/domain=/i);
    }
  });

  it('are read by no script; only the one that single sign-on needs comes along from another site', async () => {
    const lines = [...(await linesOf(true)), ...(await linesOf(false))];
    expect(lines.every((line) => line.includes('HttpOnly'))).toBe(true);
    const lax = lines.filter((line) => !line.includes('SameSite=Strict'));
    expect(lax.map((line) => line.split('=')[0])).toEqual(['__Host-footboard-sign-on', 'footboard-sign-on']);
    expect(lax.every((line) => line.includes('SameSite=Lax'))).toBe(true);
  });

  it('given plain HTTP, the names have no prefix that a browser would refuse', async () => {
    expect((await linesOf(false)).filter((line) => /__Host-|Secure/.test(line))).toEqual([]);
  });

  it('are read whole by their own name alone', () => {
    const { read } = cookiesFor(true);
    const cookie = 'footboard-session=no; x__Host-footboard-session=no; __Host-footboard-session=a=b';
    expect(read({ cookie }, 'session')).toBe('a=b');
    expect(read({ cookie: 'footboard-session=no' }, 'session')).toBeNull();
    expect(read({}, 'session')).toBeNull();
  });
});
