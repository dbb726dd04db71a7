/** Lending to another ward and giving back: what is recorded on which of the two. */
import { describe, expect, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/aids/commands';
import * as events from '@footboard/shared/capabilities/aids/events';
import { role } from '@footboard/shared/kernel/author';
import type { Role } from '@footboard/shared/kernel/author';
import { toIso } from '@footboard/shared/kernel/times';
import { AIDE, LARCH, ROWAN, STAFF, given, hours, worldWith } from '../given.testkit.ts';
import { COPY, enter, lentWorld, lift, listed, on, said, stateOn } from './lending.testkit.ts';

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
