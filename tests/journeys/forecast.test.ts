import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { boardPage } from '@footboard/shared/wire/http';
import { forecastPage } from '@footboard/shared/wire/forecast';
import { aLift, aSling, openEquipmentWard, seenReady } from './equipment-kit.ts';
import { StillClock, WARD, beginStay } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

const at = (time: string) => Date.parse(`2026-11-25T${time}:00Z`);
const clock = new StillClock(at('06:50'));
let ward: Ward;

const path = `/api/wards/${WARD}/forecast`;
const forecast = async () => {
  const { status, body } = await ward.get(path);
  if (status !== 200) throw new Error(JSON.stringify(body));
  return forecastPage.parse(body);
};
const time = (instant: number) => new Date(instant).toISOString().slice(11, 16);

const BEDS = [
  '1A',
  '1B',
  '2A',
  ...Array.from({ length: 27 }, (_, i) => `${3 + Math.floor(i / 9)}${'CDEFGHIJK'[i % 9]}`),
];
const LIFTED = BEDS.slice(0, 12);

beforeAll(async () => {
  ward = await openEquipmentWard(clock);
  for (const label of BEDS.slice(3))
    await ward.enter('add-bed', { bed: `bed-${label}`, label, bay: `Bay ${label[0]}` });
});
afterAll(() => ward.footboard.close());

describe('who needs a lift today', () => {
  it('says so where nobody is on the ward, and knows of no list of lifts', async () => {
    expect(await forecast()).toMatchObject({
      groups: [],
      clashes: [],
      waits: [],
      helps: [],
      asked: 0,
      people: 'usual',
    });
  });

  it('forecasts hands alone while the ward keeps no list of lifts: nobody waits for what nobody listed', async () => {
    await ward.enter('begin-stay', { ...beginStay('stay-1A'), weight: { kg: 80, how: 'measured' } });
    const page = await forecast();
    expect(page.groups.map(({ group }) => group)).toEqual(['hands']);
  });

  it('FORECAST-1 A10: 30 beds, 12 to be lifted, one lift: before 07:30 the clash at 08:00 is told, and who waits', async () => {
    for (const label of BEDS.slice(1)) {
      const stay = `stay-${label}`;
      await ward.enter('begin-stay', { ...beginStay(stay, label), weight: { kg: 80, how: 'measured' } });
      // Not checked yet: two people and a sling lift if it cannot wait. The others were seen walking.
      if (!LIFTED.includes(label))
        await ward.enter('record-seen-walking', { stay, walkingSupport: 'none' }, 'noor');
    }
    await ward.enter('add-item', { item: 'lift-1', is: aLift() }, 'hana');
    await ward.enter('add-item', { item: 'sling-1', is: aSling({ attachment: 'loops' }) }, 'hana');
    await seenReady(ward, 'lift-1');
    await seenReady(ward, 'sling-1', false);
    clock.at = at('07:20');
    const { board } = boardPage.parse((await ward.get(`/api/wards/${WARD}/board`)).body);
    expect(board.beds).toHaveLength(30);
    const lifted = board.beds.filter(({ stay }) =>
      stay?.plan?.day.some(({ task, aid }) => task === 'bed-chair' && aid === 'sling-lift'),
    );
    expect(lifted.map(({ label }) => label)).toEqual(LIFTED);

    const page = await forecast();
    expect(time(page.from)).toBe('07:15');
    const clash = page.clashes.find(
      ({ group, from, to }) => group === 'lift' && from <= at('08:00') && at('08:00') < to,
    );
    expect(clash).toBeDefined();
    expect(clash!.chance).toBeGreaterThan(0.5);
    expect(clash!.low).toBeLessThanOrEqual(clash!.chance);
    // The list says who waits, about when: people with a lift plan and nobody else.
    expect(page.waits.length).toBeGreaterThanOrEqual(6);
    expect(page.waits.filter(({ label }) => !LIFTED.includes(label))).toEqual([]);
    expect(page.waits[0]!.chance).toBeGreaterThanOrEqual(page.waits.at(-1)!.chance);
    // More than there is, where it is told.
    const slot = page.groups
      .find(({ group }) => group === 'lift')!
      .slots.find(({ from }) => from === at('07:45'))!;
    expect(slot).toMatchObject({ sure: 1, most: 1 });
    expect(slot.wanted).toBeGreaterThan(slot.sure);
  });

  it('FORECAST-2 tries out what would help on the same days, and says how much is known', async () => {
    const page = await forecast();
    expect(page.helps.map(({ kind }) => kind)).toContain('borrow');
    for (const { before, after } of page.helps) expect(after).toBeLessThan(before);
    expect(page.record).toMatchObject({ days: 0, moves: 0, uses: 0 });
    expect(page.runs).toBe(2_000);
    expect(page.people).toBe('usual');
  });

  it('answers others meanwhile, writes nothing, and answers the same when asked again', async () => {
    clock.at = at('07:40');
    const before = boardPage.parse((await ward.get(`/api/wards/${WARD}/board`)).body).p;
    const order: string[] = [];
    const [first, second] = await Promise.all([
      forecast().then((page) => (order.push('forecast'), page)),
      forecast(),
      ward.get('/health/live').then(() => order.push('health')),
    ]);
    expect(order[0]).toBe('health');
    expect(second).toEqual(first);
    expect(await forecast()).toEqual(first);
    expect(first.position).toBe(before);
    expect(boardPage.parse((await ward.get(`/api/wards/${WARD}/board`)).body).p).toBe(before);
  });

  it('counts a lift that broke as gone', async () => {
    await ward.enter('take-out-of-service', { item: 'lift-1', defect: 'brake-or-wheel' }, 'ada');
    const page = await forecast();
    expect(page.groups.map(({ group }) => group)).toEqual(['hands']);
    expect(page.leftOut.filter(({ why }) => why === 'nothing-fits').map(({ label }) => label)).toEqual(
      LIFTED,
    );
  });

  it('learns from what was recorded: days, moves and times of use', async () => {
    await ward.enter('return-to-service', { item: 'lift-1' }, 'hana');
    for (let day = 1; day <= 3; day++) {
      const startedAt = `2026-11-${25 + day}T09:00:00Z`;
      clock.at = Date.parse(startedAt) + 3_600_000;
      const session = {
        outcome: 'done',
        occasion: 'toilet',
        activities: ['lifted-to-chair'],
        startedAt,
        events: [],
      };
      await ward.enter('record-session', { stay: 'stay-1A', session }, 'noor');
    }
    clock.at = Date.parse('2026-11-29T07:20:00Z');
    await ward.enter('see-item', { item: 'lift-1', place: 'Store' }, 'ada');
    expect((await forecast()).record).toMatchObject({ days: 3, moves: 3, fewDays: 7 });
  });
});
