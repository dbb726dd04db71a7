/** Equipment: what the ward's list says of it, and what somebody saw or did with it. */
import * as commands from '@footboard/shared/capabilities/aids/commands';
import * as events from '@footboard/shared/capabilities/aids/events';
import { foldItem, itemAt, NOTHING_SEEN } from '@footboard/shared/capabilities/aids/rules/item-state';
import type { ItemState } from '@footboard/shared/capabilities/aids/rules/item-state';
import { asLent } from '@footboard/shared/capabilities/aids/rules/listed';
import type { ItemDescription, ItemId } from '@footboard/shared/capabilities/aids/values';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { StayId, WardId } from '@footboard/shared/kernel/ids';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext, StreamNeed } from '../../commanding/decider.ts';
import { borrowedNow, itemStream, itemUnknown, lentNow, wardStream, wasAdded } from './item-refusals.ts';
import { lendingDeciders, toTell, wardsToTell, withOther } from './lending.ts';
import { underPolicy } from '../people/policy.ts';
import { factsBy, isRefusal, sayAt, stayAt, stayStream } from '../stays/standing.ts';

const readsWard = (_data: unknown, ward: WardId): readonly StreamNeed[] => [
  { ward, stream: streamKey('ward', ward) },
];
const readsItem = (data: { item: ItemId }, ward: WardId): readonly StreamNeed[] => [
  { ward, stream: itemStream(data.item) },
];
const withStay = (data: { item: ItemId }, stay: StayId | null | undefined, ward: WardId) => [
  ...readsItem(data, ward),
  ...(stay ? [{ ward, stream: stayStream(stay) }] : []),
];

const same = (a: string, b: string) => a.toLocaleLowerCase('en') === b.toLocaleLowerCase('en');

/** Of what is on the ward and of what it has lent: the name is written on the piece. */
const namesOf = ({ items, lent }: WardState): readonly (readonly [ItemId, string])[] => [
  ...[...items].map(([item, { label }]) => [item, label] as const),
  ...[...lent].map(([item, { is }]) => [item, is.label] as const),
];
const labelUsed = (context: DecideContext, item: ItemId, is: ItemDescription): Refusal | null =>
  namesOf(context.ward!).some(([id, label]) => id !== item && same(label, is.label))
    ? refuse(
        'item-label-used',
        `there is already equipment called ${is.label}`,
        'Give each piece its own name, as it is written on it.',
        '/is/label',
      )
    : null;

/** What is known of the item, or the refusal that it is not on the ward. */
function known(context: DecideContext, item: ItemId): { is: ItemDescription; state: ItemState } | Refusal {
  const is = context.ward!.items.get(item);
  if (!is) return lentNow(context, item) ?? itemUnknown(context);
  return { is, state: context.slice(itemStream(item)).events.reduce(foldItem, NOTHING_SEEN) };
}

const addItem = decider({
  command: commands.addItem,
  reads: readsWard,
  decide: (data, context) => {
    const { borrowed, givenBack } = context.ward!;
    const ofAnother = borrowed.has(data.item) || givenBack.has(data.item);
    if (ofAnother || wasAdded(context, context.wardId, data.item)) {
      return refuse(
        'item-known',
        `the id ${data.item} is or was a piece of equipment of this ward`,
        'Give a new piece a new id: history stays with the old one.',
        '/item',
      );
    }
    return (
      labelUsed(context, data.item, data.is) ??
      accept(newEvent(events.itemAdded, wardStream(context.wardId), data))
    );
  },
});

const changeItem = decider({
  command: commands.changeItem,
  reads: readsWard,
  further: [withOther],
  decide: (data, context) => {
    const { items, lent, name } = context.ward!;
    const borrowed = borrowedNow(context, data.item);
    if (borrowed) return borrowed;
    const loan = lent.get(data.item);
    if (!loan && !items.has(data.item)) return itemUnknown(context);
    return (
      labelUsed(context, data.item, data.is) ??
      accept(
        newEvent(events.itemChanged, wardStream(context.wardId), data),
        // Whoever has it lifts by what is true of it now, not by what was when it was lent.
        ...(loan
          ? [
              newEvent(
                events.itemChanged,
                wardStream(loan.ward),
                { item: data.item, is: asLent(data.is, name) },
                { ward: loan.ward },
              ),
            ]
          : []),
      )
    );
  },
});

const withdrawItem = decider({
  command: commands.withdrawItem,
  reads: readsWard,
  decide: (data, context) => {
    const elsewhere = borrowedNow(context, data.item) ?? lentNow(context, data.item);
    if (elsewhere) return elsewhere;
    return context.ward!.items.has(data.item)
      ? accept(newEvent(events.itemWithdrawn, wardStream(context.wardId), data))
      : itemUnknown(context);
  },
});

const takeItem = decider({
  command: commands.takeItem,
  reads: (data, ward) => withStay(data, data.usedBy, ward),
  decide: (data, context) => {
    const item = known(context, data.item);
    if ('refused' in item) return item;
    const { state } = item;
    if (state.outOfService) {
      return refuse(
        'item-out-of-service',
        `out of service since ${sayAt(context, state.outOfService.at)}`,
        'Take another one. Only the handling coordinator returns it to service.',
        '/item',
      );
    }
    const { inUse } = itemAt(state, context.now, rulesOf(context.ward!).aids, () => undefined);
    if (inUse && inUse.usedBy !== (data.usedBy ?? null)) {
      return refuse(
        'item-in-use',
        `somebody took it ${sayAt(context, inUse.at)}`,
        'If it is standing there, say first that it is back.',
        '/item',
      );
    }
    if (state.keptFor !== null && data.usedBy !== undefined && state.keptFor !== data.usedBy) {
      return refuse(
        'kept-for-another',
        'this sling is kept for another person',
        'Take another sling, or ask a nurse to free it and have it washed.',
        '/item',
      );
    }
    let isolation = false;
    if (data.usedBy !== undefined) {
      const standing = stayAt(context, data.usedBy, '/usedBy');
      if (isRefusal(standing)) return standing;
      const last = factsBy(standing.record, context.occurred).findLast((f) => f.type === 'isolation-set');
      isolation = (last?.data as { on: boolean } | undefined)?.on ?? false;
    }
    return accept(
      newEvent(events.itemTaken, itemStream(data.item), {
        item: data.item,
        isolation,
        ...(data.usedBy === undefined ? {} : { usedBy: data.usedBy }),
      }),
    );
  },
});

const bindItem = decider({
  command: commands.bindItem,
  reads: (data, ward) => withStay(data, data.keptFor, ward),
  decide: (data, context) => {
    const item = known(context, data.item);
    if ('refused' in item) return item;
    // What was a sling when it was kept, and is corrected since, can still be freed.
    if (item.is.kind !== 'sling' && data.keptFor !== null) {
      return refuse('not-a-sling', `${item.is.label} is not a sling`, 'Choose a sling.', '/item');
    }
    if (data.keptFor !== null) {
      const standing = stayAt(context, data.keptFor, '/keptFor');
      if (isRefusal(standing)) return standing;
      if (item.state.keptFor !== null && item.state.keptFor !== data.keptFor) {
        return refuse(
          'kept-for-another',
          'this sling is kept for another person',
          'Free it first, and have it washed.',
          '/item',
        );
      }
    }
    return accept(newEvent(events.itemBound, itemStream(data.item), data));
  },
});

const returnToService = decider({
  command: commands.returnToService,
  reads: readsItem,
  further: [withOther],
  decide: (data, context) => {
    const { items, lent, borrowed } = context.ward!;
    const is = items.get(data.item) ?? lent.get(data.item)?.is;
    if (!is) return itemUnknown(context);
    const state = context.slice(itemStream(data.item)).events.reduce(foldItem, NOTHING_SEEN);
    if (!state.outOfService) {
      return refuse(
        'item-not-out-of-service',
        `${is.label} is in service`,
        'Nothing to enter. Look at the equipment page again.',
        '/item',
      );
    }
    const other = (lent.get(data.item) ?? borrowed.get(data.item))?.ward;
    return accept(
      newEvent(events.itemInService, itemStream(data.item), data),
      ...(other ? [newEvent(events.itemInService, itemStream(data.item), data, { ward: other })] : []),
    );
  },
});

/** Anybody may, wherever the piece is: the ward it belongs to and the ward it is on both know at once. */
const takeOutOfService = decider({
  command: commands.takeOutOfService,
  reads: readsItem,
  further: [...toTell, ...toTell],
  decide: (data, context) => {
    const { items, lent, givenBack } = context.ward!;
    const { item } = data;
    if (!items.has(item) && !lent.has(item) && !givenBack.has(item)) return itemUnknown(context);
    const wards = wardsToTell(
      { ward: (id) => ({ state: id === context.wardId ? context.ward : context.otherWard(id) }) },
      context.wardId,
      item,
    );
    return accept(
      ...wards.map((ward) =>
        newEvent(events.itemOutOfService, itemStream(item), data, ward === context.wardId ? {} : { ward }),
      ),
    );
  },
});

/** What anybody may say of an item that the ward has, whatever was said before. */
const toldOf = <C extends Parameters<typeof decider>[0]['command']>(
  command: C,
  event: Parameters<typeof newEvent>[0],
) =>
  decider({
    command,
    reads: readsItem as never,
    decide: (data: { item: ItemId }, context: DecideContext) => {
      const item = known(context, data.item);
      if ('refused' in item) return item;
      return accept(newEvent(event, itemStream(data.item), data as never));
    },
  } as never);

export const deciders = underPolicy([
  addItem,
  changeItem,
  withdrawItem,
  takeItem,
  toldOf(commands.bringItemBack, events.itemBack),
  toldOf(commands.seeItem, events.itemSeen),
  toldOf(commands.missItem, events.itemNotThere),
  toldOf(commands.recordCleaning, events.itemCleaning),
  toldOf(commands.readBattery, events.batteryRead),
  takeOutOfService,
  returnToService,
  bindItem,
  ...lendingDeciders,
]);
