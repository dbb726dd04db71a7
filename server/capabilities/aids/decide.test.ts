import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/aids/commands';
import * as events from '@footboard/shared/capabilities/aids/events';
import { itemDescription } from '@footboard/shared/capabilities/aids/values';
import type { ItemId } from '@footboard/shared/capabilities/aids/values';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { EventType, PayloadOf } from '@footboard/shared/kernel/event-type';
import { role } from '@footboard/shared/kernel/author';
import { isolationSet } from '@footboard/shared/capabilities/stays/events';
import { AIDE, LARCH, STAFF, T0, arrived, fact, given, hours, stay } from '../given.testkit.ts';

const COORDINATOR = STAFF['handling-coordinator'];
const lift = 'lift-1' as ItemId;
const sling = 'sling-1' as ItemId;
const LIFT = itemDescription.parse({
  label: 'Lift 1',
  kind: 'floor-lift',
  model: 'A',
  powered: true,
  home: 'Store',
});
const SLING = itemDescription.parse({ label: 'Sling 1', kind: 'sling', model: 'B', home: 'Hook 3' });

const listed = (item: ItemId, is: typeof LIFT) => [
  { ...newEvent(events.itemAdded, streamKey('ward', LARCH), { item, is }), by: COORDINATOR, occurred: T0 },
];
const said = <T extends EventType>(type: T, of: ItemId, h: number, payload: PayloadOf<T>) => [
  { ...newEvent(type, streamKey('item', of), payload), by: AIDE, occurred: hours(h) },
];

describe('the list of equipment', () => {
  it('takes a new piece, and refuses a name or an id that is used', () => {
    given().when(commands.addItem, { item: lift, is: LIFT }, { by: COORDINATOR }).accepts();
    given(listed(lift, LIFT))
      .when(commands.addItem, { item: sling, is: { ...SLING, label: 'LIFT 1' } }, { by: COORDINATOR })
      .refuses('item-label-used', '/is/label');
    given(listed(lift, LIFT))
      .when(commands.addItem, { item: lift, is: LIFT }, { by: COORDINATOR })
      .refuses('item-known', '/item');
    given()
      .when(commands.changeItem, { item: lift, is: LIFT }, { by: COORDINATOR })
      .refuses('item-unknown', '/item');
  });
  it('is not for an aide to change', () => {
    given().when(commands.addItem, { item: lift, is: LIFT }, { by: AIDE }).refuses('not-your-role');
  });
});

describe('taking a lift', () => {
  it('is refused while somebody else has it, and free again once it is back', () => {
    const taken = said(events.itemTaken, lift, 1, { item: lift, isolation: false });
    given(listed(lift, LIFT), arrived('anna', 'b1'), taken)
      .when(commands.takeItem, { item: lift, usedBy: stay('anna') }, { by: AIDE })
      .refuses('item-in-use', '/item');
    given(listed(lift, LIFT), arrived('anna', 'b1'), taken, said(events.itemBack, lift, 2, { item: lift }))
      .when(commands.takeItem, { item: lift, usedBy: stay('anna') }, { by: AIDE })
      .accepts();
  });

  it('remembers that it went into a room with infection steps', () => {
    given(listed(lift, LIFT), arrived('anna', 'b1'), [
      fact(isolationSet, 'anna', { on: true }, { at: hours(1) }),
    ])
      .when(commands.takeItem, { item: lift, usedBy: stay('anna') }, { by: AIDE })
      .appends(['item-taken', 'item/lift-1', { item: lift, usedBy: 'anna', isolation: true }]);
  });

  it('is refused when it is out of service: anybody takes it out, only the coordinator returns it', () => {
    const out = said(events.itemOutOfService, lift, 1, { item: lift, defect: 'does-not-run' });
    for (const who of role.options) {
      given(listed(lift, LIFT))
        .when(commands.takeOutOfService, { item: lift, defect: 'does-not-run' }, { by: STAFF[who] })
        .accepts();
      const tried = given(listed(lift, LIFT), out).when(
        commands.returnToService,
        { item: lift },
        { by: STAFF[who] },
      );
      if (who === 'handling-coordinator') tried.accepts();
      else tried.refuses('not-your-role');
    }
    given(listed(lift, LIFT), out)
      .when(commands.takeItem, { item: lift }, { by: AIDE })
      .refuses('item-out-of-service', '/item');
    given(listed(lift, LIFT))
      .when(commands.returnToService, { item: lift }, { by: COORDINATOR })
      .refuses('item-not-out-of-service', '/item');
  });
});

describe('a sling kept for one person', () => {
  const anna = arrived('anna', 'b1');
  const ben = arrived('ben', 'b2');
  const kept = said(events.itemBound, sling, 1, { item: sling, keptFor: stay('anna') });
  it('is not taken, nor kept, for another', () => {
    given(listed(sling, SLING), anna, ben, kept)
      .when(commands.takeItem, { item: sling, usedBy: stay('ben') }, { by: AIDE })
      .refuses('kept-for-another', '/item');
    given(listed(sling, SLING), anna, ben, kept)
      .when(commands.bindItem, { item: sling, keptFor: stay('ben') }, { by: AIDE })
      .refuses('kept-for-another', '/item');
    given(listed(sling, SLING), anna, kept)
      .when(commands.takeItem, { item: sling, usedBy: stay('anna') }, { by: AIDE })
      .accepts();
  });
  it('is a sling', () => {
    given(listed(lift, LIFT), anna)
      .when(commands.bindItem, { item: lift, keptFor: stay('anna') }, { by: AIDE })
      .refuses('not-a-sling', '/item');
  });
  it('can be freed though it is corrected to be no sling', () => {
    const corrected = [
      {
        ...newEvent(events.itemChanged, streamKey('ward', LARCH), { item: sling, is: LIFT }),
        by: COORDINATOR,
        occurred: hours(3),
      },
    ];
    given(listed(sling, SLING), anna, kept, corrected)
      .when(commands.bindItem, { item: sling, keptFor: null }, { by: AIDE })
      .accepts();
  });
});
