import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardPage, huddlePage } from '@footboard/shared/wire/http';
import { StillClock, WARD, beginStay, openWard } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

const at = (day: number, time: string) => Date.parse(`2026-11-${day}T${time}:00Z`);
const clock = new StillClock(at(25, '08:00'));
let ward: Ward;
beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('begin-stay', beginStay('rosa'));
  await ward.enter('begin-stay', { ...beginStay('otto', '1B'), identity: { name: 'Otto Reis' } });
});
afterAll(() => ward.footboard.close());

const huddle = async () => huddlePage.parse((await ward.get(`/api/wards/${WARD}/huddle`)).body);
const kinds = async () => (await huddle()).changes.map((one) => `${one.label} ${one.kind}`);

describe('from one huddle to the next', () => {
  it('who is named for a bed has it in hand until the shift is over', async () => {
    await ward.enter('name-carers', { beds: [{ bed: 'bed-1A', nurse: 'noor', aide: 'ada' }] });
    const { board } = boardPage.parse((await ward.get(`/api/wards/${WARD}/board`)).body);
    expect(board.peopleOn).toBe(2);
    expect(board.beds[0]!.carers).toEqual({ nurse: 'noor', aide: 'ada' });
    clock.at = at(25, '08:30');
    await ward.enter('hold-huddle', {});
    expect((await huddle()).since).toEqual({ at: at(25, '08:30'), held: true, by: 'ines' });
    expect(await kinds()).toEqual([]);
  });

  it('HUDDLE-2 what happened since comes first, and what was taken back does not', async () => {
    clock.at = at(25, '09:00');
    await ward.enter('record-trigger', { stay: 'rosa', kind: 'fall' }, 'ada');
    const faint = await ward.enter('record-trigger', { stay: 'otto', kind: 'faint' }, 'ada');
    expect(await kinds()).toEqual(expect.arrayContaining(['1A happened', '1B happened']));
    await ward.enter(
      'make-retraction',
      { stay: 'otto', target: faint.events[0]!.id, reason: 'never-happened' },
      'ines',
    );
    const after = await kinds();
    expect(after[0]).toBe('1A happened');
    expect(after).not.toContain('1B happened');
    const [first] = (await huddle()).changes;
    expect(first).toMatchObject({ words: expect.stringMatching(/^Fall, 25 Nov 09:00/), owner: 'noor' });
  });

  it('HUDDLE-1 an action comes back the next day with its owner and its note, until it is closed', async () => {
    const by = new Date(at(25, '12:00')).toISOString();
    const action = { action: 'a1', kind: 'ask-the-prescriber', owner: 'noor', by, stay: 'rosa' };
    await ward.enter('agree-action', { ...action, note: 'about the left hip' });
    expect((await huddle()).actions).toMatchObject([{ action: 'a1', earlier: false, overdue: false }]);
    clock.at = at(26, '08:30');
    await ward.enter('hold-huddle', {});
    const { actions, changes } = await huddle();
    expect(actions).toMatchObject([
      {
        action: 'a1',
        earlier: true,
        overdue: true,
        owner: 'noor',
        bed: { label: '1A' },
        note: 'about the left hip',
      },
    ]);
    expect(changes).toEqual([]);
    await ward.enter('close-action', { action: 'a1', outcome: 'done' }, 'ada');
    expect((await huddle()).actions).toEqual([]);
  });

  it('whoever is expected from another ward brings their last plan as history, as of when they left', async () => {
    const bed = { bed: 'bed-B1', label: 'B1', bay: 'Bay B' };
    await ward.enter('set-up-ward', { name: 'Birch', zone: 'Europe/Lisbon', beds: [bed] }, null, {}, 'birch');
    await ward.enter(
      'add-staff-member',
      { staff: 'ines', name: 'Ines Amaral', role: 'charge-nurse' },
      null,
      {},
      'birch',
    );
    const stay = { ...beginStay('maren', 'B1'), identity: { name: 'Maren Holt' } };
    await ward.enter('begin-stay', stay, 'ines', {}, 'birch');
    await ward.enter('expect-arrival', {
      expected: 'x1',
      at: new Date(at(26, '11:00')).toISOString(),
      from: 'ward',
      previous: { ward: 'birch', stay: 'maren' },
    });
    clock.at = at(26, '09:00');
    await ward.enter('end-stay', { stay: 'maren', bed: 'bed-B1', to: 'other' }, 'ines', {}, 'birch');
    clock.at = at(26, '10:00');
    const [one] = (await huddle()).expected;
    expect(one!.previous).toMatchObject({ wardName: 'Birch', asOf: at(26, '09:00') });
    expect(one!.previous!.plan[0]).toBe('Not checked there; if it could not wait');
    expect(one!.previous!.plan[1]).toMatch(/^Bed to chair: /);
    await ward.enter('close-expected-arrival', { expected: 'x1', outcome: 'arrived' });
    expect((await huddle()).expected).toEqual([]);
  });
});
