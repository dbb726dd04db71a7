/** What is not lent, to whom, and what is not said of a piece where it is not. */
import { describe, expect, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/aids/commands';
import * as events from '@footboard/shared/capabilities/aids/events';
import { itemDescription } from '@footboard/shared/capabilities/aids/values';
import { toIso } from '@footboard/shared/kernel/times';
import { LARCH, NURSE, ROWAN, arrived, given, hours, stay } from '../given.testkit.ts';
import { COORDINATOR, enter, lentWorld, lift, LIFT, listed, said } from './lending.testkit.ts';

const TRACK = { ...LIFT, kind: 'ceiling-lift' as const, covers: ['Bay 1'] };
const SLING = itemDescription.parse({ label: 'Sling 1', kind: 'sling', model: 'B', home: 'Hook 3' });

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
