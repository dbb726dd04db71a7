/** What is tried in vain leaves a trace: ids, an address of the program and a code; never what was sent. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessLog, pairingBegun } from '@footboard/shared/wire/access';
import { openAccessWorld } from './access-kit.ts';
import type { AccessWorld, Client } from './access-kit.ts';
import { WARD } from './http-kit.ts';

let world: AccessWorld;
let phone: Client;
const lines: string[] = [];
const said = () => lines.join('');

beforeAll(async () => {
  world = await openAccessWorld({
    logTo: { write: (line: string) => void lines.push(line) },
    env: { FOOTBOARD_LOG: 'info' },
    quiet: false,
  });
  phone = world.browser();
  const { code, poll } = pairingBegun.parse((await phone.post('/api/pairings', { kind: 'shared' })).body);
  const ines = await world.as('ines');
  await ines.post(`/api/wards/${WARD}/devices`, { code, kind: 'shared', level: 'whole', place: 'phone 4' });
  await phone.post('/api/pairings/claim', { poll });
}, 120_000);
afterAll(() => world?.close());

describe('what is tried in vain', () => {
  it('given a role that may not, the server’s log says whose, what and why, and nothing that was sent', async () => {
    const aide = await world.as('ada');
    lines.length = 0;
    expect((await aide.get(`/api/wards/${WARD}/access-log`)).status).toBe(403);
    expect((await aide.send('end-hold', { stay: 's1', hold: 'h1' })).status).toBe(403);
    const refused = said()
      .split('\n')
      .filter((line) => line.includes('"refused"'))
      .map((line) => JSON.parse(line) as Record<string, unknown>);
    expect(refused).toMatchObject([
      { staff: 'ada', route: '/api/wards/:ward/access-log', code: 'not-allowed' },
      { staff: 'ada', route: '/api/wards/:ward/commands/:name', code: 'not-your-role' },
    ]);
  });

  it('given a wrong code on a shared phone, the access log says whose and where, and no code', async () => {
    lines.length = 0;
    expect((await phone.post('/api/signing', { staff: 'noor', code: '914705' })).status).toBe(403);
    expect((await phone.post('/api/signing', { badge: 'nobody-has-this', code: '914705' })).status).toBe(403);
    const log = accessLog.parse((await (await world.as('rafa')).get(`/api/wards/${WARD}/access-log`)).body);
    const tried = log.lines.filter((line) => line.what === 'code-refused');
    expect(tried.map(({ staff, name }) => [staff, name])).toEqual([
      [null, null],
      ['noor', 'Noor Haddad'],
    ]);
    expect(tried.every((line) => line.device !== null)).toBe(true);
    expect(`${said()}${JSON.stringify(log)}`).not.toMatch(/914705|nobody-has-this/);
  });
});
