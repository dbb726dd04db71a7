/** Two people who take the same visit at the same moment, over the real log. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { beginStay, openWard, StillClock, WARD, type Ward } from './http-kit.ts';

const clock = new StillClock(Date.parse('2026-11-25T10:00:00Z'));
let ward: Ward;
beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('add-staff-member', { staff: 'bea', name: 'Bea Holm', role: 'aide' });
  await ward.enter('begin-stay', beginStay('stay-1'), 'noor');
});
afterAll(() => ward?.footboard.close());

describe('the same visit taken by two at once', () => {
  it('is one of theirs; the other is told who has it and until when', async () => {
    const take = (who: string) => ward.send('take-visit', { stay: 'stay-1', visit: `by-${who}` }, who);
    const sent = await Promise.all(['ada', 'bea', 'noor'].map(take));
    expect(sent.map(({ status }) => status).toSorted()).toEqual([200, 422, 422]);
    const refused = sent.filter(({ status }) => status === 422);
    expect(refused.map(({ body }) => body['type'])).toEqual([
      '/problems/visit-taken',
      '/problems/visit-taken',
    ]);
    expect(String(refused[0]!.body['detail'])).toMatch(/has it until 25 Nov 10:30$/);
    const board = await ward.get(`/api/wards/${WARD}/board`);
    const [bed] = (board.body['board'] as { beds: { stay: { visit: { by: string } } }[] }).beds;
    expect(sent[['ada', 'bea', 'noor'].indexOf(bed!.stay.visit.by)]!.status).toBe(200);
  });

  it('and the round says who is not listed and why', async () => {
    const { status, body } = await ward.get(`/api/wards/${WARD}/round`);
    expect(status).toBe(200);
    expect(body).toMatchObject({ entries: [], notListed: [{ kind: 'nurse-first', label: '1A' }] });
  });
});
