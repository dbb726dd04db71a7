/**
 * What a browser is told, and what it is not let do. Headers after the OWASP secure headers list and
 * ASVS 5.0 chapter V3 (from memory); Origin and Sec-Fetch-Site after the Fetch standard and Fetch Metadata.
 */
import { randomUUID } from 'node:crypto';
import { request } from 'node:http';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { readConfig } from '@footboard/server/platform/config';
import { PER_MINUTE } from '@footboard/server/http/limits';
import { startFootboard } from '@footboard/server/start';
import type { Footboard } from '@footboard/server/start';
import { asProblem } from './http-kit.ts';

const CSP = [
  "default-src 'none'",
  "script-src 'self' 'wasm-unsafe-eval'",
  "style-src 'self'",
  "img-src 'self' data:",
  "font-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "object-src 'none'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types vue footboard-worker',
].join(';');

const open = (env: Record<string, string>, limits?: 'off') =>
  startFootboard({
    config: readConfig({ PORT: '0', DATA_DIR: 'memory://', FOOTBOARD_LOG: 'silent', ...env }),
    access: 'open',
    quiet: true,
    ...(limits ? { limits } : {}),
  });

interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly type: string;
  readonly body: Record<string, unknown>;
}
/** Beneath fetch, which would not let a test say which host it asked for. */
const ask = (
  { url }: Footboard,
  path: string,
  { method = 'GET', headers = {}, body = '' }: { method?: string; headers?: object; body?: string } = {},
): Promise<Answer> =>
  new Promise((resolve, reject) => {
    const length = body === '' ? {} : { 'content-length': Buffer.byteLength(body) };
    const sent = request(`${url}${path}`, { method, headers: { ...length, ...headers } }, (answer) => {
      let text = '';
      answer.setEncoding('utf8');
      answer.on('data', (part: string) => (text += part));
      answer.on('end', () => {
        const type = answer.headers['content-type'] ?? '';
        const read = type.includes('json') ? (JSON.parse(text) as Record<string, unknown>) : { text };
        resolve({ status: answer.statusCode!, headers: answer.headers, type, body: read });
      });
    });
    sent.once('error', reject);
    sent.end(body);
  });

let plain: Footboard;
let proxied: Footboard;
beforeAll(async () => {
  plain = await open({});
  proxied = await open({ BEHIND_TLS_PROXY: '1' });
});
afterAll(async () => {
  await plain.close();
  await proxied.close();
});

const KINDS = [
  ['the page', '/', 200],
  ['an asset', '/mark.svg', 200],
  ['the API', '/api/wards', 200],
  ['health', '/health/live', 200],
  ['a problem', '/api/wards/nowhere/board', 404],
  ['an address that is nothing', '/nothing.js', 404],
  ['single sign-on that is not set up', '/api/sign-on/begin', 404],
] as const;

describe('headers', () => {
  it.each(KINDS)(
    'WEB-1 given %s, then it comes with every header that keeps a browser safe',
    async (_what, path, status) => {
      const answer = await ask(plain, path);
      expect(answer.status).toBe(status);
      expect(answer.headers).toMatchObject({
        'content-security-policy': CSP,
        'permissions-policy': expect.stringMatching(/^camera=\(self\), .*microphone=\(\)/),
        'x-content-type-options': 'nosniff',
        'x-frame-options': 'DENY',
        'referrer-policy': 'no-referrer',
        'cross-origin-resource-policy': 'same-origin',
      });
      for (const header of [
        'x-powered-by',
        'server',
        'strict-transport-security',
        'access-control-allow-origin',
      ]) {
        expect(Object.keys(answer.headers)).not.toContain(header);
      }
      expect(answer.headers['cache-control']).toMatch(
        path.startsWith('/api') || path.startsWith('/health') || path === '/' ? /^no-store$/ : /./,
      );
    },
  );

  it('given a redirect, then it carries them too', async () => {
    const answer = await ask(plain, '/api/sign-on/begin', { headers: { accept: 'text/html' } });
    expect(answer.status).toBe(302);
    expect(answer.headers).toMatchObject({
      location: '/sign-in?problem=no-such-page',
      'content-security-policy': CSP,
      'cache-control': 'no-store',
      'referrer-policy': 'no-referrer',
    });
  });

  it('given TLS at a proxy in front, then browsers are told to come by HTTPS only', async () => {
    expect((await ask(proxied, '/')).headers).toMatchObject({
      'strict-transport-security': 'max-age=31536000',
      'cross-origin-opener-policy': 'same-origin',
      'origin-agent-cluster': '?1',
    });
  });
});

describe('a request that changes something', () => {
  const command = (headers: object, to: Footboard = plain, body = JSON.stringify({})) =>
    ask(to, '/api/wards/alder/commands/set-up-ward', {
      method: 'POST',
      body,
      headers: { 'content-type': 'application/json', ...headers },
    });
  const host = () => new URL(plain.url).host;

  it.each([
    ['another site', { origin: 'https://elsewhere.example' }],
    ['another site, by Fetch Metadata', { 'sec-fetch-site': 'cross-site' }],
    ['nowhere', { origin: 'null' }],
    ['no browser, with a session cookie of a browser', { cookie: 'footboard-session=x' }],
    [
      'another site that claims a proxy was asked for it',
      { origin: 'https://elsewhere.example', 'x-forwarded-host': 'elsewhere.example' },
    ],
  ])('WEB-2 given one that comes from %s, then it is refused before it is read', async (_where, headers) => {
    const answer = await command(headers, plain, 'no JSON at all');
    expect(asProblem(answer)).toMatchObject({ status: 403, type: '/problems/foreign-page' });
  });

  it('given one of a page of this server, or of a program, then it is read', async () => {
    for (const headers of [{ origin: `http://${host()}` }, { 'sec-fetch-site': 'same-origin' }, {}]) {
      expect((await command(headers)).status).toBe(422);
    }
  });

  it('given a proxy in front, then the host that it was asked for counts', async () => {
    const asked = { origin: 'https://board.ward.example', 'x-forwarded-host': 'board.ward.example' };
    expect((await command(asked, proxied)).status).toBe(422);
  });

  it.each(['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', undefined])(
    'given a body of type %s, which a form could send, then it is refused',
    async (type) => {
      const answer = await command({ 'content-type': type ?? [] });
      expect(asProblem(answer)).toMatchObject({ status: 415, type: '/problems/not-json' });
    },
  );

  it('given another way to write the path, then it is refused all the same', async () => {
    for (const path of ['/API/wards/alder/commands/set-up-ward', '/api//wards/alder/commands/set-up-ward']) {
      const answer = await ask(plain, path, {
        method: 'POST',
        body: '{}',
        headers: { 'content-type': 'application/json', origin: 'https://elsewhere.example' },
      });
      expect([path, answer.status]).toEqual([path, 403]);
    }
  });
});

describe('limits', () => {
  let busy: Footboard | undefined;
  afterEach(async () => {
    await busy?.close();
    busy = undefined;
  });

  it('WEB-3 given more than a minute allows, then 429 says when to come back, and health still answers', async () => {
    busy = await open({});
    const send = () =>
      ask(busy!, '/api/wards/alder/commands/set-up-ward', {
        method: 'POST',
        body: JSON.stringify({ commandId: randomUUID() }),
        headers: { 'content-type': 'application/json' },
      });
    const seen = new Set<number>();
    // One address may stand for several screens: five times what one of them may.
    for (let i = 0; i < PER_MINUTE.changes * 5; i++) seen.add((await send()).status);
    expect([...seen]).toEqual([422]);
    const refused = await send();
    expect(asProblem(refused)).toMatchObject({ status: 429, type: '/problems/too-many-requests' });
    expect(Number(refused.headers['retry-after'])).toBeGreaterThanOrEqual(1);
    expect((await ask(busy, '/health/ready')).status).toBe(200);
    expect((await ask(busy, '/api/wards')).status).toBe(200);
  });
});
