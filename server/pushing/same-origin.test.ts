import { describe, expect, it } from 'vitest';
import { fromOwnPage } from './same-origin.ts';

const asks = (headers: Record<string, string>) => fromOwnPage({ headers });

describe('who may open a socket', () => {
  it('a page this server served, on any port it was reached by', () => {
    expect(asks({ host: 'ward.example:4000', origin: 'https://ward.example:4000' })).toBe(true);
  });
  it('a page behind a proxy that says the asked-for host', () => {
    expect(
      asks({ host: '127.0.0.1:4000', 'x-forwarded-host': 'ward.example', origin: 'https://ward.example' }),
    ).toBe(true);
  });
  it('a program that is no browser', () => {
    expect(asks({ host: 'ward.example:4000' })).toBe(true);
  });
  it.each(['https://elsewhere.example', 'https://ward.example:5000', 'null', ''])(
    'not a page of %o',
    (origin) => {
      expect(asks({ host: 'ward.example:4000', origin })).toBe(false);
    },
  );
});
