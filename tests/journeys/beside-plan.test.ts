/** Infection steps, an expected leaving and the line for the bedside, over real HTTP: who reads what. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardPage, stayPage } from '@footboard/shared/wire/http';
import { rowFor } from '@footboard/shared/capabilities/board/rules/for-wall';
import { asProblem, beginStay, openWard, StillClock, WARD, type Ward } from './http-kit.ts';

const LINE = 'Left foot first, then the frame';
const clock = new StillClock(Date.parse('2026-11-25T10:00:00Z'));
let ward: Ward;
beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('begin-stay', beginStay('rosa'));
});
afterAll(() => ward.footboard.close());

const board = async () => boardPage.parse((await ward.get(`/api/wards/${WARD}/board`)).body).board;
const rosa = async () => (await board()).beds.find((bed) => bed.stay?.stay === 'rosa')!;

describe('what stands beside the plan', () => {
  it('BESIDE-1 is on the board, and the words of the line only on the page of the stay', async () => {
    await ward.enter('set-isolation', { stay: 'rosa', on: true }, 'noor');
    await ward.enter('expect-leaving', { stay: 'rosa', at: '2026-11-27T10:00:00.000Z' });
    await ward.enter('set-therapist-line', { stay: 'rosa', line: LINE }, 'noor');
    const bed = await rosa();
    expect(bed.stay).toMatchObject({
      isolation: true,
      leaving: { at: Date.parse('2026-11-27T10:00:00Z') },
      therapistLine: { by: 'noor' },
    });
    expect(JSON.stringify(await board())).not.toContain(LINE);
    const page = stayPage.parse((await ward.get(`/api/wards/${WARD}/stays/rosa`)).body);
    expect(page.texts[bed.stay!.therapistLine!.line.ref]).toBe(LINE);
    expect(page.timeline.some(({ words }) => words.includes(LINE))).toBe(true);
  });

  it('BESIDE-1 a wall gets the infection steps, and neither the line nor the leaving', async () => {
    const bed = await rosa();
    expect(rowFor(bed, 'bed-only').stay).toMatchObject({
      isolation: true,
      leaving: null,
      therapistLine: null,
    });
    expect(rowFor(bed, 'visitors').stay).toMatchObject({
      isolation: false,
      leaving: null,
      therapistLine: null,
    });
  });

  it('is not for an aide to set; a time of leaving that has passed is refused with what to do', async () => {
    const refused = asProblem(await ward.send('set-isolation', { stay: 'rosa', on: false }, 'ada'));
    expect(refused.remedy).toContain('Ask a nurse');
    const past = asProblem(
      await ward.send('expect-leaving', { stay: 'rosa', at: '2026-11-25T09:00:00.000Z' }),
    );
    expect(past).toMatchObject({
      type: '/problems/leaving-in-past',
      remedy: expect.stringContaining('end the stay'),
    });
  });

  it('BESIDE-2 "the board is wrong" by an aide ends trust at once and is counted in the huddle', async () => {
    await ward.enter('record-trigger', { stay: 'rosa', kind: 'board-wrong' }, 'ada');
    const { stay } = await rosa();
    expect(stay!.trust.openTriggers.map(({ kind }) => kind)).toContain('board-wrong');
    const huddle = (await ward.get(`/api/wards/${WARD}/huddle`)).body as { totals: { boardWrong: number } };
    expect(huddle.totals.boardWrong).toBe(1);
    const totals = (await ward.get(`/api/wards/${WARD}/totals`)).body as { stays: { boardWrong: number }[] };
    expect(totals.stays.map(({ boardWrong }) => boardWrong)).toEqual([1]);
  });
});
