import { describe, expect, it } from 'vitest';
import { fromHere } from './csrf.ts';

const host = 'board.ward.example';
const cookie = '__Host-footboard-session=abc';

describe('where a request that changes something comes from', () => {
  it.each([
    ['a page of this server', { host, origin: `https://${host}`, cookie }],
    ['a page of this server, by Fetch Metadata alone', { host, 'sec-fetch-site': 'same-origin', cookie }],
    [
      'a page of this server that hides its origin',
      { host, origin: 'null', 'sec-fetch-site': 'same-origin' },
    ],
    ['a program without cookies', { host }],
    ['a program with a cookie of something else', { host, cookie: 'language=en; my-footboard-x=1' }],
  ])('given %s, then it goes on', (_who, headers) => {
    expect(fromHere(headers, false)).toBe(true);
  });

  it.each([
    ['a foreign page', { host, origin: 'https://elsewhere.example', cookie }],
    ['a foreign page whose cookies the browser kept back', { host, origin: 'https://elsewhere.example' }],
    ['another port of the same name', { host, origin: `https://${host}:8443` }],
    ['a name that only begins like ours', { host, origin: `https://${host}.elsewhere.example` }],
    ['a page of a sister site', { host, 'sec-fetch-site': 'same-site', cookie }],
    [
      'a foreign page, whatever origin it claims',
      { host, origin: `https://${host}`, 'sec-fetch-site': 'cross-site' },
    ],
    ['a hidden origin', { host, origin: 'null' }],
    ['an origin that is no address', { host, origin: 'board', 'sec-fetch-site': 'same-origin' }],
    ['no browser that we know, with a session', { host, cookie }],
    ['no browser that we know, with a device over plain HTTP', { host, cookie: 'a=b; footboard-device=abc' }],
    [
      'a forwarded host that no proxy wrote',
      { host, origin: 'https://elsewhere.example', 'x-forwarded-host': 'elsewhere.example' },
    ],
  ])('given %s, then it is refused', (_who, headers) => {
    expect(fromHere(headers, false)).toBe(false);
  });

  it('given a proxy in front, then the host that the proxy was asked for counts', () => {
    const headers = { host: '10.0.0.5:4000', origin: `https://${host}`, 'x-forwarded-host': host };
    expect(fromHere(headers, true)).toBe(true);
    expect(fromHere(headers, false)).toBe(false);
  });
});
