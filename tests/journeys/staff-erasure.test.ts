/** The name of somebody who has left goes; what they entered stays, under their id. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessLog } from '@footboard/shared/wire/access';
import { staffList, stayPage } from '@footboard/shared/wire/http';
import { openAccessWorld, passwordOf } from './access-kit.ts';
import type { AccessWorld, Client } from './access-kit.ts';
import { WARD, asProblem, beginStay } from './http-kit.ts';

let world: AccessWorld;
let rafa: Client;
let ines: Client;
const at = (path: string) => `/api/wards/${WARD}/${path}`;
const because = { words: 'Left in spring, asked in writing' };

beforeAll(async () => {
  world = await openAccessWorld();
  rafa = await world.as('rafa');
  ines = await world.as('ines');
  const noor = await world.as('noor');
  await noor.enter('begin-stay', beginStay('stay-1'));
  await noor.enter('record-trigger', { stay: 'stay-1', kind: 'faint' });
}, 120_000);
afterAll(() => world?.close());

describe('PRIVACY-7 a staff member’s name', () => {
  it('given they still work on a ward, when it would be erased, then first they are no longer active', async () => {
    const refused = asProblem(await rafa.post(at('staff/noor/erase'), because));
    expect([refused.status, refused.type]).toEqual([409, '/problems/conflict']);
    expect(refused.detail).toContain('Alder');
    expect((await ines.post(at('staff/noor/erase'), because)).status).toBe(403);
    expect((await rafa.post(at('staff/nobody/erase'), because)).status).toBe(404);
  });

  it('given they have left, when it is erased, then name and account are gone, their entries stand and the log verifies', async () => {
    await ines.enter('change-staff-member', { staff: 'noor', active: false });
    expect((await rafa.post(at('staff/noor/erase'), because)).status).toBe(204);

    const { staff } = staffList.parse((await ines.get(at('staff'))).body);
    expect(staff.find((one) => one.staff === 'noor')).toMatchObject({
      name: '(text removed)',
      active: false,
    });
    expect((await world.browser().signIn('noor', passwordOf('noor'))).status).toBe(401);
    const page = stayPage.parse((await ines.get(at('stays/stay-1'))).body);
    const fainted = page.timeline.find(({ type }) => type === 'trigger-recorded');
    expect(fainted?.author).toEqual({ staff: 'noor', role: 'nurse', name: '(text removed)' });
    expect((await rafa.get(`/api/verify/${WARD}`)).body['faults']).toEqual([]);

    const log = accessLog.parse((await rafa.get(at('access-log'))).body);
    expect(log.lines.find(({ what }) => what === 'erase-staff')).toMatchObject({
      name: 'Rafa Otero',
      words: `noor: ${because.words}`,
    });
    expect(JSON.stringify([staff, page, log])).not.toContain('Haddad');
  });

  it('given the name was erased, when a name is given to the same id again, then it is refused', async () => {
    const sent = await ines.send('change-staff-member', { staff: 'noor', name: 'Noor Haddad' });
    expect([sent.status, sent.body['type']]).toEqual([409, '/problems/text-erased']);
  });
});
