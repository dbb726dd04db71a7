/** Lending to another ward and giving back: what is recorded on which of the two, and what is refused. */
import { describe, expect, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/aids/commands';
import * as events from '@footboard/shared/capabilities/aids/events';
import { foldItem, NOTHING_SEEN } from '@footboard/shared/capabilities/aids/rules/item-state';
import { itemDescription } from '@footboard/shared/capabilities/aids/values';
import type { ItemId } from '@footboard/shared/capabilities/aids/values';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { EventType, PayloadOf } from '@footboard/shared/kernel/event-type';
import { role } from '@footboard/shared/kernel/author';
import type { Role } from '@footboard/shared/kernel/author';
import type { WardId } from '@footboard/shared/kernel/ids';
import { toIso } from '@footboard/shared/kernel/times';
import {
  AIDE,
  LARCH,
  NURSE,
  ROWAN,
  STAFF,
  T0,
  arrived,
  given,
  hours,
  stay,
  worldWith,
} from '../given.testkit.ts';
import type { Step } from '../world.testkit.ts';

type Steps = readonly (Step | readonly Step[])[];
const COORDINATOR = STAFF['handling-coordinator'];
const lift = 'lift-1' as ItemId;
const LIFT = itemDescription.parse({
  label: 'Lift 1',
  kind: 'floor-lift',
  model: 'A',
  powered: true,
  safeLoadKg: 200,
  home: 'Store',
});
const COPY = { ...LIFT, label: 'Lift 1 (Larch)', home: 'Larch' };
const TRACK = { ...LIFT, kind: 'ceiling-lift' as const, covers: ['Bay 1'] };
const SLING = itemDescription.parse({ label: 'Sling 1', kind: 'sling', model: 'B', home: 'Hook 3' });

const listed = (is = LIFT, ward: WardId = LARCH) => [
  {
    ...newEvent(events.itemAdded, streamKey('ward', ward), { item: lift, is }),
    ward,
    by: COORDINATOR,
    occurred: T0,
  },
];
const said = <T extends EventType>(
  type: T,
  h: number,
  payload: Omit<PayloadOf<T>, 'item'>,
  ward: WardId = LARCH,
) => [
  {
    ...newEvent(type, streamKey('item', lift), { item: lift, ...payload } as PayloadOf<T>),
    ward,
    by: AIDE,
    occurred: hours(h),
  },
];
/** Listed on Larch and lent to Rowan, two hours after T0. */
function lentWorld(...before: Steps) {
  const world = worldWith(listed(), ...before);
  const lent = world.enter(
    commands.lendItem,
    { item: lift, to: ROWAN },
    { ward: LARCH, by: NURSE, occurred: hours(2) },
  );
  expect(lent).toHaveProperty('accept');
  return world;
}
type World = ReturnType<typeof lentWorld>;
const on = (world: World, ward: WardId) => world.ward(ward).state!;
const stateOn = (world: World, ward: WardId) =>
  world.events(ward, streamKey('item', lift)).reduce(foldItem, NOTHING_SEEN);
const enter = (
  world: World,
  command: Parameters<World['enter']>[0],
  data: object,
  { ward = LARCH, by = COORDINATOR, h = 3 }: { ward?: WardId; by?: typeof NURSE; h?: number } = {},
) => world.enter(command, { item: lift, ...data }, { ward, by, occurred: hours(h) });

describe('LEND-1 lending a lift', () => {
  it('is one entry on both wards; what was known of it goes along with its own times', () => {
    const at = (h: number) => toIso(hours(h));
    given(
      listed(),
      said(events.itemCleaning, 1, { clean: true }),
      said(events.batteryRead, 1.5, { band: 'half' }),
      said(events.itemSeen, 1, { place: 'Store' }),
    )
      .when(commands.lendItem, { item: lift, to: ROWAN, until: at(9) }, { at: hours(2) })
      .appends(
        ['item-lent', `ward/${LARCH}`, { item: lift, to: ROWAN, name: 'Rowan', until: at(9) }],
        ['item-sent', 'item/lift-1', { item: lift, to: ROWAN, name: 'Rowan' }],
        [
          'item-borrowed',
          `ward/${ROWAN}`,
          { item: lift, from: LARCH, name: 'Larch', is: COPY, until: at(9) },
          ROWAN,
        ],
        [
          'item-received',
          'item/lift-1',
          {
            item: lift,
            from: LARCH,
            name: 'Larch',
            clean: { is: true, at: at(1) },
            battery: { band: 'half', at: at(1.5) },
            outOfService: null,
          },
          ROWAN,
        ],
      );
  });
  it('is on one list at a time', () => {
    const world = lentWorld();
    expect([on(world, LARCH).items.size, on(world, ROWAN).items.size]).toEqual([0, 1]);
    expect(enter(world, commands.giveBackItem, {}, { ward: ROWAN, by: AIDE })).toHaveProperty('accept');
    expect([on(world, LARCH).items.size, on(world, ROWAN).items.size]).toEqual([1, 0]);
    expect(enter(world, commands.lendItem, { to: ROWAN }, { h: 4 })).toHaveProperty('accept');
    expect([on(world, LARCH).items.size, on(world, ROWAN).items.size]).toEqual([0, 1]);
  });
  it('begins there with nobody having said where it is, whatever an earlier loan left behind', () => {
    const world = lentWorld();
    enter(world, commands.seeItem, { place: 'Bay 2' }, { ward: ROWAN, by: AIDE, h: 2.5 });
    enter(world, commands.giveBackItem, {}, { ward: ROWAN, by: AIDE });
    enter(world, commands.lendItem, { to: ROWAN }, { h: 4 });
    expect(stateOn(world, ROWAN)).toMatchObject({ place: null, inUse: null, missing: null });
  });
  it('is for whoever answers for the ward; giving back is for anybody at the bedside', () => {
    const may = (command: typeof commands.lendItem | typeof commands.giveBackItem, data: object) =>
      role.options.filter((who: Role) => {
        const world = command === commands.lendItem ? worldWith(listed()) : lentWorld();
        return 'accept' in enter(world, command, data, { by: STAFF[who] });
      });
    expect(may(commands.lendItem, { to: ROWAN }).toSorted()).toEqual([
      'charge-nurse',
      'handling-coordinator',
      'manager',
      'nurse',
    ]);
    expect(may(commands.giveBackItem, {}).toSorted()).toEqual([
      'aide',
      'charge-nurse',
      'handling-coordinator',
      'manager',
      'nurse',
      'therapist',
    ]);
  });
});

describe('LEND-2 lending is refused, in words', () => {
  const TO_ROWAN = [commands.lendItem, { item: lift, to: ROWAN }, { by: NURSE }] as const;
  it('of a piece that is in use, out of service, or kept for one person', () => {
    given(listed(), said(events.itemTaken, 2, { isolation: false }))
      .when(...TO_ROWAN)
      .refuses('item-in-use', '/item');
    given(listed(), said(events.itemOutOfService, 2, { defect: 'other' }))
      .when(...TO_ROWAN)
      .refuses('item-out-of-service', '/item');
    given(listed(SLING), arrived('anna', 'b1'), said(events.itemBound, 2, { keptFor: stay('anna') }))
      .when(...TO_ROWAN)
      .refuses('kept-for-one', '/item');
  });
  it('of a ceiling track, of what nobody lists, and of an id that the other ward has', () => {
    given(listed(TRACK))
      .when(...TO_ROWAN)
      .refuses('item-fixed', '/item');
    given()
      .when(...TO_ROWAN)
      .refuses('item-unknown', '/item');
    given(listed(), listed(LIFT, ROWAN))
      .when(...TO_ROWAN)
      .refuses('item-known', '/item');
  });
  it('to no ward, to this ward, and until a time that is past', () => {
    given(listed())
      .when(commands.lendItem, { item: lift, to: 'nowhere' }, { by: NURSE })
      .refuses('other-ward-unknown', '/to');
    given(listed())
      .when(commands.lendItem, { item: lift, to: LARCH }, { by: NURSE })
      .refuses('item-there-already', '/to');
    given(listed())
      .when(commands.lendItem, { item: lift, to: ROWAN, until: toIso(hours(2)) }, { by: NURSE })
      .refuses('loan-until-past', '/until');
  });
  it('of what is lent already, and of what is borrowed', () => {
    const world = lentWorld();
    expect(enter(world, commands.lendItem, { to: ROWAN })).toMatchObject({
      refused: 'item-lent',
      detail: expect.stringMatching(/^Lift 1 is lent to Rowan since/),
    });
    expect(enter(world, commands.lendItem, { to: LARCH }, { ward: ROWAN })).toMatchObject({
      refused: 'item-borrowed',
      detail: expect.stringMatching(/^Lift 1 \(Larch\) belongs to Larch/),
    });
  });
  it('and nothing is said of it where it is not', () => {
    const world = lentWorld();
    for (const [command, data] of [
      [commands.takeItem, {}],
      [commands.seeItem, { place: 'Store' }],
      [commands.readBattery, { band: 'full' }],
      [commands.withdrawItem, {}],
    ] as const) {
      expect(enter(world, command, data)).toMatchObject({ refused: 'item-lent' });
    }
    for (const [command, data] of [
      [commands.changeItem, { is: LIFT }],
      [commands.withdrawItem, {}],
    ] as const) {
      expect(enter(world, command, data, { ward: ROWAN })).toMatchObject({ refused: 'item-borrowed' });
    }
    expect(enter(world, commands.addItem, { is: SLING }, { ward: ROWAN })).toMatchObject({
      refused: 'item-known',
    });
    // The name is still written on the piece.
    expect(
      world.decide(
        commands.addItem,
        { item: 'lift-2', is: LIFT },
        { ward: LARCH, by: COORDINATOR, occurred: hours(3) },
      ),
    ).toMatchObject({ refused: 'item-label-used' });
  });
});

describe('LEND-3 a fault of a piece that is lent', () => {
  const broken = { defect: 'brake-or-wheel' };
  it.each<[string, WardId]>([
    ['found by anybody on the ward that has it', ROWAN],
    ['known to its own ward', LARCH],
  ])('%s stands on both at once', (_who, ward) => {
    for (const who of role.options) {
      const world = lentWorld();
      expect(enter(world, commands.takeOutOfService, broken, { ward, by: STAFF[who] })).toHaveProperty(
        'accept',
      );
      for (const one of [LARCH, ROWAN])
        expect(stateOn(world, one).outOfService?.defect).toBe('brake-or-wheel');
    }
  });
  it('goes home with it, and only a handling coordinator of either ward ends it, on both', () => {
    const world = lentWorld();
    enter(world, commands.takeOutOfService, broken, { ward: ROWAN, by: AIDE });
    expect(enter(world, commands.returnToService, {}, { by: NURSE })).toMatchObject({
      refused: 'not-your-role',
    });
    enter(world, commands.giveBackItem, {}, { ward: ROWAN, by: AIDE, h: 4 });
    expect(stateOn(world, LARCH).outOfService).toMatchObject({ at: hours(3) });
    expect(enter(world, commands.lendItem, { to: ROWAN }, { h: 5 })).toMatchObject({
      refused: 'item-out-of-service',
    });
    enter(world, commands.returnToService, {}, { h: 6 });
    expect(stateOn(world, LARCH).outOfService).toBeNull();

    for (const ward of [ROWAN, LARCH]) {
      const third = lentWorld();
      enter(third, commands.takeOutOfService, broken, { ward: ROWAN, by: AIDE });
      expect(enter(third, commands.returnToService, {}, { ward, h: 4 })).toHaveProperty('accept');
      for (const one of [LARCH, ROWAN]) expect(stateOn(third, one).outOfService).toBeNull();
    }
  });
  it('told on the borrowing ward only after it was given back, it reaches its owner', () => {
    const world = lentWorld();
    enter(world, commands.giveBackItem, {}, { ward: ROWAN, by: AIDE, h: 4 });
    expect(enter(world, commands.takeOutOfService, broken, { ward: ROWAN, by: AIDE, h: 3.5 })).toHaveProperty(
      'accept',
    );
    expect(stateOn(world, LARCH).outOfService?.defect).toBe('brake-or-wheel');
    // Of what was never there nothing is known.
    expect(
      world.decide(
        commands.takeOutOfService,
        { item: 'lift-9', defect: 'other' },
        { ward: ROWAN, by: AIDE, occurred: hours(3) },
      ),
    ).toMatchObject({ refused: 'item-unknown' });
  });
  it('and a description that its owner corrects changes what the borrower lifts by', () => {
    const world = lentWorld();
    expect(enter(world, commands.changeItem, { is: { ...LIFT, safeLoadKg: 160 } })).toHaveProperty('accept');
    expect(on(world, ROWAN).items.get(lift)).toEqual({ ...COPY, safeLoadKg: 160 });
    expect(on(world, LARCH).lent.get(lift)!.is.safeLoadKg).toBe(160);
  });
});

describe('giving back', () => {
  it('by the ward that has it is refused while somebody uses it', () => {
    const world = lentWorld();
    enter(world, commands.takeItem, {}, { ward: ROWAN, by: AIDE, h: 2.5 });
    expect(enter(world, commands.giveBackItem, {}, { ward: ROWAN, by: AIDE })).toMatchObject({
      refused: 'item-in-use',
    });
  });
  it('by its own ward, which has it standing there, ends what was said of it on the other', () => {
    const world = lentWorld();
    enter(world, commands.takeItem, {}, { ward: ROWAN, by: AIDE, h: 2.5 });
    expect(enter(world, commands.giveBackItem, {}, { by: AIDE })).toHaveProperty('accept');
    expect([on(world, LARCH).items.size, on(world, ROWAN).items.size]).toEqual([1, 0]);
    expect(stateOn(world, LARCH)).toMatchObject({ inUse: null, place: null });
  });
  it('of what is not lent, or not known, is refused', () => {
    given(listed()).when(commands.giveBackItem, { item: lift }, { by: AIDE }).refuses('item-not-lent');
    given().when(commands.giveBackItem, { item: lift }, { by: AIDE }).refuses('item-unknown');
  });
});
