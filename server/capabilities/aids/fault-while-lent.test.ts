/** A fault, or a corrected description, of a piece that is lent: it stands on both wards. */
import { describe, expect, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/aids/commands';
import { role } from '@footboard/shared/kernel/author';
import type { WardId } from '@footboard/shared/kernel/ids';
import { AIDE, LARCH, NURSE, ROWAN, STAFF, hours } from '../given.testkit.ts';
import { COPY, enter, lentWorld, lift, LIFT, on, stateOn } from './lending.testkit.ts';

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
