/** A lift and its sling lent to another ward and given back: both wards' counts, fit, day plan and forecast. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { coordinatorPage } from '@footboard/shared/wire/coordinator';
import { forecastPage } from '@footboard/shared/wire/forecast';
import { boardPage } from '@footboard/shared/wire/http';
import { fitPage, itemsPage } from '@footboard/shared/wire/items';
import { dayPlanPage } from '@footboard/shared/wire/planning';
import { StillClock, WARD, asProblem, beginStay, openWard } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

const at = (time: string) => Date.parse(`2026-11-25T${time}:00Z`);
const clock = new StillClock(at('08:00'));
const BIRCH = 'birch';
let ward: Ward;

const LIFT = {
  label: 'Lift 1',
  kind: 'floor-lift',
  model: 'A',
  powered: true,
  safeLoadKg: 200,
  attachment: 'loops',
  inspectionDue: '2027-01-01',
  home: 'Store',
};
const SLING = {
  label: 'Sling 1',
  kind: 'sling',
  model: 'B',
  style: 'whole-body',
  safeLoadKg: 200,
  fitsFromKg: 50,
  fitsToKg: 100,
  worksWithModels: ['A'],
  inspectionDue: '2027-01-01',
  home: 'Hook 3',
};
const WARDS = [WARD, BIRCH] as const;
const inWard = (of: string, name: string, data: object, by: string | null) =>
  ward.enter(name, data, by, {}, of);
const read = async (of: string, page: string) => (await ward.get(`/api/wards/${of}/${page}`)).body;
const lifts = async (of: string) => boardPage.parse(await read(of, 'board')).board.lifts;
const items = async (of: string) => itemsPage.parse(await read(of, 'items'));
/** Lift and sling that suit the person in bed 1A, by name, usable now or not. */
async function sets(of: string): Promise<readonly string[]> {
  const { stays } = fitPage.parse(await read(of, 'fit'));
  const labels = new Map((await items(of)).items.map(({ item, is }) => [item, is.label]));
  return (stays[0]?.tasks.find(({ task }) => task === 'bed-chair')?.sets ?? []).map(
    ({ item, sling, usableNow }) => `${labels.get(item)} + ${sling && labels.get(sling)}: ${usableNow}`,
  );
}
const supply = async (of: string) =>
  Math.max(
    0,
    ...(
      forecastPage.parse(await read(of, 'forecast')).groups.find(({ group }) => group === 'lift')?.slots ?? []
    ).map(({ most }) => most),
  );
const planned = async (of: string) =>
  dayPlanPage.parse(await read(of, 'day-plan')).items.map(({ label }) => label);

beforeAll(async () => {
  ward = await openWard(clock);
  await inWard(
    BIRCH,
    'set-up-ward',
    { name: 'Birch', zone: 'Europe/Lisbon', beds: [{ bed: 'b1', label: '1A', bay: 'Bay 1' }] },
    null,
  );
  await inWard(BIRCH, 'add-staff-member', { staff: 'ole', name: 'Ole Brandt', role: 'charge-nurse' }, null);
  await inWard(BIRCH, 'add-staff-member', { staff: 'mia', name: 'Mia Sand', role: 'aide' }, 'ole');
  await ward.enter('add-staff-member', { staff: 'hana', name: 'Hana Weiss', role: 'handling-coordinator' });
  // Arrived and not checked yet: the plan asks for two people and a sling lift if it cannot wait.
  const weight = { kg: 80, how: 'measured' };
  await ward.enter('begin-stay', { ...beginStay('stay-1'), weight });
  await inWard(BIRCH, 'begin-stay', { ...beginStay('stay-2'), bed: 'b1', weight }, 'ole');
  await ward.enter('add-item', { item: 'lift-1', is: LIFT }, 'hana');
  await ward.enter('add-item', { item: 'sling-1', is: SLING }, 'hana');
  for (const item of ['lift-1', 'sling-1']) {
    await ward.enter('see-item', { item, place: 'Store' }, 'ada');
    await ward.enter('record-cleaning', { item, clean: true }, 'ada');
  }
  await ward.enter('read-battery', { item: 'lift-1', band: 'full' }, 'ada');
});
afterAll(() => ward.footboard.close());

describe('a lift lent to another ward', () => {
  it('LEND-1 counts on one ward alone, before, while it is lent, and once it is back', async () => {
    const counts = async () => [await lifts(WARD), await lifts(BIRCH)];
    expect(await counts()).toEqual([{ usable: 1, inUse: 0, unknown: 0, all: 1 }, null]);
    expect(await sets(WARD)).toEqual(['Lift 1 + Sling 1: true']);
    expect(await sets(BIRCH)).toEqual([]);
    expect([await supply(WARD), await supply(BIRCH)]).toEqual([1, 0]);

    const until = new Date(at('12:00')).toISOString();
    await ward.enter('lend-item', { item: 'lift-1', to: BIRCH, until }, 'noor');
    await ward.enter('lend-item', { item: 'sling-1', to: BIRCH }, 'noor');
    // Nobody has said where on Birch they are: not counted as usable before somebody does.
    expect(await counts()).toEqual([null, { usable: 0, inUse: 0, unknown: 1, all: 1 }]);
    for (const item of ['lift-1', 'sling-1'])
      await inWard(BIRCH, 'see-item', { item, place: 'Bay 1' }, 'mia');
    // Clean and charged it was known to be, and that went along.
    expect(await counts()).toEqual([null, { usable: 1, inUse: 0, unknown: 0, all: 1 }]);
    expect(await sets(WARD)).toEqual([]);
    expect(await sets(BIRCH)).toEqual(['Lift 1 (Alder) + Sling 1 (Alder): true']);
    expect([await supply(WARD), await supply(BIRCH)]).toEqual([0, 1]);
    expect(await planned(WARD)).toEqual([]);
    expect(await planned(BIRCH)).toEqual(['Lift 1 (Alder)', 'Sling 1 (Alder)']);
  });

  it('says on each ward with whom it is, since when and until when', async () => {
    const [home, away] = [await items(WARD), await items(BIRCH)];
    expect(home.items).toEqual([]);
    expect(home.lent.map(({ is, loan }) => [is.label, loan.name, loan.at, loan.until])).toEqual([
      ['Lift 1', 'Birch', at('08:00'), at('12:00')],
      ['Sling 1', 'Birch', at('08:00'), null],
    ]);
    expect(away.items.map(({ borrowed }) => borrowed?.name)).toEqual(['Alder', 'Alder']);
  });

  it('LEND-2 is refused in words where it is not, and to nowhere', async () => {
    const again = asProblem(await ward.send('lend-item', { item: 'lift-1', to: BIRCH }, 'noor'));
    expect(again).toMatchObject({ status: 422, detail: 'Lift 1 is lent to Birch since 25 Nov 08:00' });
    const nowhere = await ward.send('lend-item', { item: 'lift-1', to: 'elm' }, 'ada');
    expect(nowhere.status).toBe(403);
    const on = await ward.send('lend-item', { item: 'lift-1', to: WARD }, 'ole', {}, BIRCH);
    expect(asProblem(on).detail).toBe('Lift 1 (Alder) belongs to Alder: only its own ward lends it');
  });

  it('LEND-3 broken there, its own ward knows at once, and it counts nowhere', async () => {
    clock.at = at('12:30');
    await inWard(BIRCH, 'take-out-of-service', { item: 'lift-1', defect: 'brake-or-wheel' }, 'mia');
    expect(await lifts(BIRCH)).toMatchObject({ usable: 0, all: 1 });
    expect((await items(WARD)).lent[0]!.outOfService).toMatchObject({ defect: 'brake-or-wheel' });
    // Past the time that was agreed: the coordinator of its own ward is to ask for it.
    const answer = await fetch(`${ward.footboard.url}/api/wards/${WARD}/coordinator`, {
      headers: { 'x-footboard-staff': 'hana' },
    });
    const { items: toSee } = coordinatorPage.parse(await answer.json());
    expect(toSee.map(({ matter, label, since }) => [matter, label, since])).toEqual([
      ['out-of-service', 'Lift 1', at('12:30')],
      ['not-given-back', 'Lift 1', at('12:00')],
    ]);
  });

  it('given back, it is home with its fault, and only the coordinator returns it', async () => {
    await inWard(BIRCH, 'give-back-item', { item: 'lift-1' }, 'mia');
    await ward.enter('give-back-item', { item: 'sling-1' }, 'ada');
    expect(await lifts(BIRCH)).toBeNull();
    expect(await lifts(WARD)).toEqual({ usable: 0, inUse: 0, unknown: 0, all: 1 });
    expect((await items(BIRCH)).items).toEqual([]);
    expect((await ward.send('return-to-service', { item: 'lift-1' }, 'noor')).status).toBe(403);
    await ward.enter('return-to-service', { item: 'lift-1' }, 'hana');
    await ward.enter('see-item', { item: 'lift-1', place: 'Store' }, 'ada');
    expect(await lifts(WARD)).toEqual({ usable: 1, inUse: 0, unknown: 0, all: 1 });
  });

  it('lent by two people at once, it is lent once', async () => {
    const send = () => ward.send('lend-item', { item: 'lift-1', to: BIRCH }, 'noor');
    const sent = await Promise.all([send(), send(), send()]);
    expect(sent.map(({ status }) => status).toSorted()).toEqual([200, 422, 422]);
    const all = await Promise.all(WARDS.map(async (of) => (await items(of)).items.length));
    expect(all[0]! + all[1]!).toBe(2);
  });
});
