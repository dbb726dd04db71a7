import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { aidUsePage, coordinatorPage } from '@footboard/shared/wire/coordinator';
import { aLift, aSling, openEquipmentWard, seenReady } from './equipment-kit.ts';
import { StillClock, WARD, aSession, asProblem, beginStay } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

const at = (time: string, day = 25) => Date.parse(`2026-11-${day}T${time}:00Z`);
const clock = new StillClock(at('08:00'));
let ward: Ward;

const page = async () => coordinatorPage.parse((await ward.get(`/api/wards/${WARD}/coordinator`)).body);
const people = async () =>
  (await page()).stays.map(({ stay, matter, since }) => [stay, matter, new Date(since).toISOString()]);

beforeAll(async () => {
  ward = await openEquipmentWard(clock);
  // Arrived and not checked yet: the plan asks for two people and a sling lift if it cannot wait.
  await ward.enter('begin-stay', beginStay('stay-1'));
  await ward.enter('begin-stay', { ...beginStay('stay-2', '1B'), weight: { kg: 80, how: 'measured' } });
});
afterAll(() => ward.footboard.close());

describe('the coordinator’s list', () => {
  it('COORD-1 of a ward without a list of equipment, asks about weights alone', async () => {
    expect(await page()).toMatchObject({ listed: 0, items: [] });
    expect(await people()).toEqual([['stay-1', 'no-weight', '2026-11-25T08:00:00.000Z']]);
  });

  it('COORD-1 given a lift and no sling, lists whom no sling fits since the list was begun', async () => {
    clock.at = at('09:00');
    await ward.enter(
      'add-item',
      { item: 'lift-1', is: aLift({ safeLoadKg: 130, inspectionDue: '2027-06-01' }) },
      'hana',
    );
    clock.at = at('10:00');
    expect(await people()).toEqual([
      ['stay-1', 'no-weight', '2026-11-25T08:00:00.000Z'],
      ['stay-2', 'no-sling', '2026-11-25T09:00:00.000Z'],
    ]);
    await ward.enter('add-item', { item: 'sling-1', is: aSling({ inspectionDue: '2026-11-24' }) }, 'hana');
    expect((await people()).map(([stay]) => stay)).toEqual(['stay-1']);
  });

  it('COORD-1 a weight read by an aide waits for a nurse; a nurse’s heavier one is over the limit of the lift', async () => {
    clock.at = at('11:00');
    await ward.enter('record-weight', { stay: 'stay-1', weight: { kg: 150, how: 'measured' } }, 'ada');
    expect((await page()).stays).toMatchObject([{ matter: 'no-weight', closes: 'nurse-records-weight' }]);
    clock.at = at('12:00');
    await ward.enter('record-weight', { stay: 'stay-1', weight: { kg: 150, how: 'measured' } }, 'noor');
    const { stays } = await page();
    expect(stays.map(({ stay, matter }) => [stay, matter])).toEqual([
      ['stay-1', 'over-limit'],
      ['stay-1', 'no-sling'],
    ]);
    expect(stays[0]).toMatchObject({
      bed: '1A',
      since: at('12:00'),
      closes: 'bring-one-that-bears',
      over: [{ label: 'Lift 1', bearsKg: 130, overKg: 20 }],
    });
    expect(stays[1]!.failed).toEqual([
      {
        item: 'sling-1',
        label: 'Sling 1',
        against: ['made for 50 kg to 100 kg, the person counts as 150 kg'],
      },
    ]);
  });

  it('COORD-2 lists what is overdue since the day after, what nobody has spoken of, and what broke', async () => {
    const lines = async (item: string) =>
      (await page()).items
        .filter((line) => line.item === item)
        .map(({ matter, since }) => [matter, new Date(since).toISOString()]);
    // The ward day of 25 November begins at 07:00 in Lisbon; the sling was listed at 10:00.
    expect(await lines('sling-1')).toEqual([['examination-overdue', '2026-11-25T10:00:00.000Z']]);
    expect(await lines('lift-1')).toEqual([['state-unknown', '2026-11-25T09:00:00.000Z']]);
    await seenReady(ward, 'lift-1');
    expect(await lines('lift-1')).toEqual([]);
    // A battery counts for twelve hours.
    clock.at = at('06:00', 26);
    expect(await lines('lift-1')).toEqual([['state-unknown', '2026-11-26T00:00:00.000Z']]);
    await ward.enter('take-out-of-service', { item: 'lift-1', defect: 'brake-or-wheel' }, 'ada');
    clock.at = at('07:00', 26);
    expect(await lines('lift-1')).toEqual([['out-of-service', '2026-11-26T06:00:00.000Z']]);
    await ward.enter('return-to-service', { item: 'lift-1' }, 'hana');
    expect((await lines('lift-1')).map(([matter]) => matter)).not.toContain('out-of-service');
  });

  it('names no ward that is not there', async () => {
    expect(asProblem(await ward.get('/api/wards/nowhere/coordinator')).status).toBe(404);
  });
});

describe('COORD-3 planned equipment that was not used', () => {
  const use = async () => aidUsePage.parse((await ward.get(`/api/wards/${WARD}/aid-use`)).body);
  const session = (h: string, more: object) =>
    ward.enter(
      'record-session',
      aSession('stay-2', new Date(at(h, 26)).toISOString(), {
        activities: ['chair'],
        metres: undefined,
        ...more,
      }),
      'ada',
    );

  it('is counted by equipment and reason, what was not said apart, and nothing is said of who', async () => {
    expect(await use()).toMatchObject({ sessions: 0, told: 0, counts: [], list: [] });
    clock.at = at('09:00', 26);
    await session('09:00', { aidNotUsed: { planned: 'sling-lift', because: 'not-to-hand' } });
    // As sessions were recorded before there was the question: only what was used.
    await session('09:00', { help: { people: 2, aid: 'belt' } });
    await session('09:00', { help: { people: 2, aid: 'sling-lift' } });
    await session('09:00', {});
    const found = await use();
    expect(found).toMatchObject({ sessions: 4, told: 3 });
    expect(found.counts).toEqual([
      { planned: 'sling-lift', because: null, count: 1 },
      { planned: 'sling-lift', because: 'not-to-hand', count: 1 },
    ]);
    expect(found.list.map(({ bed, used, because }) => [bed, used, because]).toSorted()).toEqual([
      ['1B', null, 'not-to-hand'],
      ['1B', 'belt', null],
    ]);
    // As a word of its own: an id may well hold these three letters.
    expect(JSON.stringify(found)).not.toMatch(/\bada\b/);
  });

  it('of more than four weeks ago counts no more', async () => {
    clock.at = Date.parse('2026-12-25T12:00:00Z');
    expect((await use()).counts).toEqual([]);
  });
});
