import { describe, expect, it } from 'vitest';
import type { DeviceId, WardId } from '@footboard/shared/kernel/ids';
import { NOBODY } from '../access/identity.ts';
import type { Identity } from '../access/identity.ts';
import { comesFrom, mayOpen } from './same-origin.ts';

type Headers = Record<string, string>;
const asks = (headers: Headers, behindTlsProxy = false) => comesFrom({ headers }, behindTlsProxy);
const opens = (headers: Headers, identity: Partial<Identity>) =>
  mayOpen({ headers, socket: {} }, false, { of: async () => ({ ...NOBODY, ...identity }) });

const WALL: Identity['device'] = {
  device: 'd1' as DeviceId,
  kind: 'wall',
  ward: 'alder' as WardId,
  level: 'bed-only',
};
const NOOR = {
  account: 'a1',
  staff: 'noor',
  wide: false,
  via: 'session',
  session: 's1',
  until: 1,
} as Identity['person'];

describe('where a socket comes from', () => {
  it('a page this server served, on any port it was reached by', () => {
    expect(asks({ host: 'ward.example:4000', origin: 'https://ward.example:4000' })).toBe('own-page');
  });
  it('a page that polls sends no origin and is vouched for by the browser', () => {
    expect(asks({ host: 'ward.example', 'sec-fetch-site': 'same-origin' })).toBe('own-page');
  });
  it('a page behind a proxy that says the asked-for host, only where there is one', () => {
    const headers = {
      host: '127.0.0.1:4000',
      'x-forwarded-host': 'ward.example',
      origin: 'https://ward.example',
    };
    expect(asks(headers, true)).toBe('own-page');
    expect(asks(headers, false)).toBe('foreign-page');
  });
  it('a program that is no browser', () => {
    expect(asks({ host: 'ward.example:4000' })).toBe('no-page');
  });
  it.each(['https://elsewhere.example', 'https://ward.example:5000', 'null', ''])(
    'not a page of %o',
    (origin) => {
      expect(asks({ host: 'ward.example:4000', origin })).toBe('foreign-page');
    },
  );
  it.each(['same-site', 'cross-site', 'none'])('not what the browser calls %s', (site) => {
    const headers = { host: 'ward.example', origin: 'https://ward.example', 'sec-fetch-site': site };
    expect(asks(headers)).toBe('foreign-page');
  });
});

describe('who may open a socket', () => {
  it('a page of this server, also before anybody has signed in', async () => {
    expect(await opens({ host: 'w.example', origin: 'https://w.example' }, {})).toBe(true);
  });
  it('a program only with a device key or a session', async () => {
    expect(await opens({ host: 'w.example' }, {})).toBe(false);
    expect(await opens({ host: 'w.example' }, { device: WALL })).toBe(true);
    expect(await opens({ host: 'w.example' }, { person: NOOR })).toBe(true);
  });
  it('any program where sign-in is off', async () => {
    expect(await opens({ host: 'w.example' }, { access: 'open' })).toBe(true);
  });
  it('never a foreign page, whatever cookies come along', async () => {
    const headers = { host: 'w.example', origin: 'https://elsewhere.example' };
    expect(await opens(headers, { person: NOOR, device: WALL })).toBe(false);
  });
});
