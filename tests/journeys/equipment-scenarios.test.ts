/** Acceptance scenarios of the users' job (7b) about equipment and falls, over real HTTP. A10 is in forecast.test.ts. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { coordinatorPage } from '@footboard/shared/wire/coordinator';
import { boardPage, stayPage } from '@footboard/shared/wire/http';
import { fitPage } from '@footboard/shared/wire/items';
import { StillClock, WARD, beginStay, openWard } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

const at = (time: string) => Date.parse(`2026-11-25T${time}:00Z`);
const clock = new StillClock(at('01:00'));
let ward: Ward;

beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('add-staff-member', { staff: 'hana', name: 'Hana Weiss', role: 'handling-coordinator' });
  await ward.enter('begin-stay', { ...beginStay('stay-1'), weight: { kg: 80, how: 'measured' } });
});
afterAll(() => ward.footboard.close());

describe('A6 a sling "L" of another maker beside a lift', () => {
  const LIFT = {
    label: 'Lift 1',
    kind: 'floor-lift',
    model: 'A 200',
    powered: true,
    safeLoadKg: 200,
    home: 'Store',
  };
  const large = (label: string, model: string, worksWithModels: string[]) => ({
    label,
    kind: 'sling',
    model,
    style: 'whole-body',
    safeLoadKg: 200,
    fitsFromKg: 60,
    fitsToKg: 120,
    worksWithModels,
    home: 'Hook 3',
  });
  const chair = async () => {
    const { stays } = fitPage.parse((await ward.get(`/api/wards/${WARD}/fit`)).body);
    return stays.find(({ stay }) => stay === 'stay-1')!.tasks.find(({ task }) => task === 'bed-chair')!;
  };
  const missing = async () =>
    coordinatorPage
      .parse((await ward.get(`/api/wards/${WARD}/coordinator`)).body)
      .stays.find(({ matter }) => matter === 'no-sling');

  it('given weight and load in range, is not suggested, and says why; the coordinator is told', async () => {
    await ward.enter('add-item', { item: 'lift-1', is: LIFT }, 'hana');
    await ward.enter('add-item', { item: 'other-l', is: large('Sling L', 'Z large', ['Z 180']) }, 'hana');
    const { sets, judged } = await chair();
    expect(sets).toEqual([]);
    expect(judged.find(({ item }) => item === 'other-l')).toMatchObject({
      suits: false,
      against: expect.arrayContaining(["not on the maker's list for Lift 1"]),
    });
    expect((await missing())?.failed).toEqual([
      { item: 'other-l', label: 'Sling L', against: ["not on the maker's list for Lift 1"] },
    ]);
  });

  it('when one that the maker lists is there, that one is suggested and the letter still says nothing', async () => {
    await ward.enter('add-item', { item: 'own-l', is: large('Sling L of A', 'A large', ['A 200']) }, 'hana');
    expect((await chair()).sets.map(({ item, sling }) => [item, sling])).toEqual([['lift-1', 'own-l']]);
    expect(await missing()).toBeUndefined();
  });
});

describe('A9 a fall at 03:12', () => {
  const row = async (when?: string) => {
    const asked = when ? `?at=2026-11-25T${when}:00Z` : '';
    const { board } = boardPage.parse((await ward.get(`/api/wards/${WARD}/board${asked}`)).body);
    const { stay } = board.beds.find(({ label }) => label === '1A')!;
    return { stay: stay!, chair: stay!.plan!.day.find(({ task }) => task === 'bed-chair')! };
  };

  it('stops the person being moved as before, at once; the replay tells what stood before it, and after', async () => {
    clock.at = at('02:00');
    await ward.enter('record-seen-walking', { stay: 'stay-1', walkingSupport: 'none' }, 'noor');
    clock.at = at('03:12');
    const { events } = await ward.enter('record-trigger', { stay: 'stay-1', kind: 'fall' }, 'ada');
    const after = await row();
    const fall = after.stay.trust.openTriggers.find(({ kind }) => kind === 'fall');
    expect(fall).toMatchObject({ event: events[0]!.id, at: at('03:12') });
    expect(after.stay.trust.state).not.toBe('current');
    const before = await row('03:11');
    expect(before.stay.trust.openTriggers.map(({ kind }) => kind)).not.toContain('fall');
    expect(before.chair.people).toBe('stand-by');
    expect(after.chair.hold).toBe(true);
    expect(['two', 'three-or-more']).toContain(after.chair.people);

    // Hours later, the same again: status, since when, and who said it.
    clock.at = at('09:00');
    const replayed = await row('03:12');
    expect(replayed.stay).toEqual(after.stay);
    const { timeline } = stayPage.parse((await ward.get(`/api/wards/${WARD}/stays/stay-1`)).body);
    expect(timeline.find(({ event }) => event === events[0]!.id)).toMatchObject({ author: { staff: 'ada' } });
  });
});
