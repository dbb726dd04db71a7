import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardPage } from '@footboard/shared/wire/http';
import { fitPage, itemsPage } from '@footboard/shared/wire/items';
import { aLift, aSling, openEquipmentWard, seenReady } from './equipment-kit.ts';
import { StillClock, WARD, asProblem, beginStay } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

const at = (time: string) => Date.parse(`2026-11-25T${time}:00Z`);
const clock = new StillClock(at('08:00'));
let ward: Ward;

const lifts = async () => boardPage.parse((await ward.get(`/api/wards/${WARD}/board`)).body).board.lifts;
const items = async () => itemsPage.parse((await ward.get(`/api/wards/${WARD}/items`)).body).items;
const fit = async () => fitPage.parse((await ward.get(`/api/wards/${WARD}/fit`)).body).stays;

beforeAll(async () => {
  ward = await openEquipmentWard(clock);
  // Arrived and not checked yet: the plan asks for two people and a sling lift if it cannot wait.
  await ward.enter('begin-stay', { ...beginStay('stay-1'), weight: { kg: 80, how: 'measured' } });
});
afterAll(() => ward.footboard.close());

describe('equipment of a ward', () => {
  it('is not counted before there is a list', async () => {
    expect(await lifts()).toBeNull();
    expect(await items()).toEqual([]);
  });

  it('counts at the top of the board what can be used now, and nothing that nobody has spoken of', async () => {
    await ward.enter('add-item', { item: 'lift-1', is: aLift() }, 'hana');
    await ward.enter('add-item', { item: 'sling-1', is: aSling() }, 'hana');
    expect(await lifts()).toEqual({ usable: 0, inUse: 0, unknown: 1, all: 1 });
    await seenReady(ward, 'lift-1');
    expect(await lifts()).toEqual({ usable: 1, inUse: 0, unknown: 0, all: 1 });
  });

  it('says which lift and sling fit the person in bed 1A, and what stands against the sling now', async () => {
    const [anna, ...nobody] = await fit();
    expect(nobody).toEqual([]);
    expect(anna).toMatchObject({ stay: 'stay-1', label: '1A', weight: 'measured' });
    const chair = anna!.tasks.find(({ task }) => task === 'bed-chair')!;
    expect(chair.sets).toEqual([{ item: 'lift-1', sling: 'sling-1', usableNow: false }]);
    expect(chair.judged.find(({ item }) => item === 'sling-1')!.against.join()).toContain('nobody has said');
  });

  it('prints labels as PDF, with a code that opens each piece', async () => {
    const answer = await fetch(`${ward.footboard.url}/api/wards/${WARD}/labels`);
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    expect(
      Buffer.from(await answer.arrayBuffer())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
  });

  it('is taken by one person at a time, and breaks for everybody', async () => {
    await ward.enter('take-item', { item: 'lift-1', usedBy: 'stay-1' }, 'ada');
    expect(await lifts()).toEqual({ usable: 0, inUse: 1, unknown: 0, all: 1 });
    const second = await ward.send('take-item', { item: 'lift-1' }, 'noor');
    expect(asProblem(second)).toMatchObject({ status: 422, remedy: expect.stringContaining('back') });
    await ward.enter('bring-item-back', { item: 'lift-1' }, 'ada');
    await ward.enter('take-out-of-service', { item: 'lift-1', defect: 'brake-or-wheel' }, 'ada');
    expect(await lifts()).toEqual({ usable: 0, inUse: 0, unknown: 0, all: 1 });
    expect((await ward.send('return-to-service', { item: 'lift-1' }, 'noor')).status).toBe(403);
    await ward.enter('return-to-service', { item: 'lift-1' }, 'hana');
    expect(await lifts()).toMatchObject({ usable: 1 });
  });

  it('gets old by itself: a battery that nobody has read since this morning makes the lift unknown', async () => {
    clock.at = at('21:00');
    // The next entry makes the board look at the clock; live, its scheduler does.
    await ward.enter('see-item', { item: 'lift-1', place: 'Store' }, 'ada');
    expect(await lifts()).toEqual({ usable: 0, inUse: 0, unknown: 1, all: 1 });
    const [lift] = await items();
    expect(lift).toMatchObject({ battery: null, usable: { word: 'unknown', against: ['battery not read'] } });
  });
});
