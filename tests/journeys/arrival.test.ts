/** Somebody who was expected arrives: one command, over real HTTP. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardPage, huddlePage } from '@footboard/shared/wire/http';
import { asProblem, beginStay, openWard, StillClock, WARD, type Ward } from './http-kit.ts';

const clock = new StillClock(Date.parse('2026-11-25T10:00:00Z'));
const usual = { moves: 'frame', transfers: 'helped', stairs: 'no' } as const;
let ward: Ward;
beforeAll(async () => {
  ward = await openWard(clock);
  for (const expected of ['x1', 'x2']) {
    await ward.enter('expect-arrival', { expected, at: '2026-11-25T10:30:00Z', from: 'home', usual });
  }
}, 240_000);
afterAll(() => ward?.footboard.close());

const expected = async () =>
  huddlePage.parse((await ward.get(`/api/wards/${WARD}/huddle`)).body).expected.map((one) => one.expected);
const stays = async () =>
  boardPage
    .parse((await ward.get(`/api/wards/${WARD}/board`)).body)
    .board.beds.flatMap(({ stay }) => (stay ? [stay] : []));

describe('an expected arrival', () => {
  it('ARRIVAL-1 is closed by the command that begins the stay; the others stay expected', async () => {
    const taken = await ward.enter('begin-stay', { ...beginStay('rosa'), expected: 'x1', usual }, 'noor');
    expect(taken.events.map(({ type }) => type)).toEqual([
      'stay-begun',
      'usual-way-recorded',
      'bed-taken',
      'expected-arrival-closed',
    ]);
    expect(await expected()).toEqual(['x2']);
    // What was told of how they move is no plan: it is checked here.
    const [rosa] = await stays();
    expect(rosa).toMatchObject({ stay: 'rosa', usualWay: usual, checkBeforeMoving: true });
  });

  it('ARRIVAL-1 stays open when the bed is taken: nothing of a refused arrival is kept', async () => {
    const sent = await ward.send('begin-stay', { ...beginStay('ben'), expected: 'x2' }, 'noor');
    expect(asProblem(sent).type).toBe('/problems/bed-occupied');
    expect(await expected()).toEqual(['x2']);
    expect(await stays()).toHaveLength(1);
  });

  it('is not for an aide to receive, with or without one', async () => {
    const sent = await ward.send('begin-stay', { ...beginStay('ben', '1B'), expected: 'x2' }, 'ada');
    expect(asProblem(sent).remedy).toContain('Ask a nurse');
  });
});
