/** Lending a piece to another ward and giving it back: one entry, recorded on both wards (decision 14). */
import * as commands from '@footboard/shared/capabilities/aids/commands';
import * as events from '@footboard/shared/capabilities/aids/events';
import { foldItem, itemAt, NOTHING_SEEN } from '@footboard/shared/capabilities/aids/rules/item-state';
import type { ItemState } from '@footboard/shared/capabilities/aids/rules/item-state';
import { asLent } from '@footboard/shared/capabilities/aids/rules/listed';
import type { ItemId } from '@footboard/shared/capabilities/aids/values';
import type { WardState } from '@footboard/shared/capabilities/wards/context';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { WardId } from '@footboard/shared/kernel/ids';
import { toEpoch, toIso } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext, ReadSoFar, StreamNeed } from '../../commanding/decider.ts';
import { sayAt } from '../stays/standing.ts';
import { itemStream, itemUnknown, lentNow, wardStream, wasAdded } from './item-refusals.ts';

const bothStreams = (ward: WardId, item: ItemId): readonly StreamNeed[] => [
  { ward, stream: streamKey('ward', ward) },
  { ward, stream: itemStream(item) },
];

/** The other ward of a loan, by what this ward's own stream says. */
export const otherOf = (read: Pick<ReadSoFar, 'ward'>, ward: WardId, item: ItemId): WardId | null => {
  const { state } = read.ward(ward);
  return state?.lent.get(item)?.ward ?? state?.borrowed.get(item)?.ward ?? null;
};
/** Reads the streams of the other ward of a loan as well. */
export const withOther = (
  { item }: { item: ItemId },
  ward: WardId,
  read: ReadSoFar,
): readonly StreamNeed[] => {
  const other = otherOf(read, ward, item);
  return other ? bothStreams(other, item) : [];
};

/** What is known of it goes along, with its own times. */
const known = ({ clean, battery, outOfService }: ItemState) => ({
  clean: clean && { is: clean.is, at: toIso(clean.at) },
  battery: battery && { band: battery.band, at: toIso(battery.at) },
  outOfService: outOfService && { defect: outOfService.defect, at: toIso(outOfService.at) },
});
const stateOf = (context: DecideContext, item: ItemId, ward?: WardId): ItemState =>
  context.slice(itemStream(item), ward).events.reduce(foldItem, NOTHING_SEEN);

/** Nobody's piece leaves a ward while somebody has it or it is kept for them; null when neither. */
function heldBy(state: ItemState, ward: WardState, context: DecideContext, remedy: string) {
  const { inUse } = itemAt(state, context.now, rulesOf(ward).aids, () => undefined);
  if (inUse) {
    return refuse(
      'item-in-use',
      `somebody took it ${sayAt(context, inUse.at)}`,
      'If it is standing there, say first that it is back.',
      '/item',
    );
  }
  return state.keptFor === null
    ? null
    : refuse('kept-for-one', 'this sling is kept for one person', remedy, '/item');
}

const lend = decider({
  command: commands.lendItem,
  reads: ({ item, to }, ward) => [{ ward, stream: itemStream(item) }, ...bothStreams(to, item)],
  decide: ({ item, to, until }, context) => {
    const ward = context.ward!;
    const lent = lentNow(context, item);
    if (lent) return lent;
    const is = ward.items.get(item);
    if (!is) return itemUnknown(context);
    const borrowed = ward.borrowed.get(item);
    if (borrowed) {
      return refuse(
        'item-borrowed',
        `${is.label} belongs to ${borrowed.name}: only its own ward lends it`,
        'Give it back first, and ask its ward to lend it on.',
        '/item',
      );
    }
    if (to === context.wardId) {
      return refuse(
        'item-there-already',
        `${is.label} is on this ward`,
        'Choose the ward that it goes to.',
        '/to',
      );
    }
    const other = context.otherWard(to);
    if (!other) {
      return refuse(
        'other-ward-unknown',
        `this board has no ward with the id ${to}`,
        'Choose a ward of this board. For any other, say where it is, or take it off the list.',
        '/to',
      );
    }
    if (is.kind === 'ceiling-lift') {
      return refuse(
        'item-fixed',
        `${is.label} hangs on a track of this ward`,
        'Lend a lift on wheels, or move the person to a bed under the track.',
        '/item',
      );
    }
    if (wasAdded(context, to, item)) {
      return refuse(
        'item-known',
        `the id ${item} is or was another piece of equipment on ${other.name}`,
        'Take it off the list here and add it again: it then has a new id.',
        '/item',
      );
    }
    const state = stateOf(context, item);
    if (state.outOfService) {
      return refuse(
        'item-out-of-service',
        `out of service since ${sayAt(context, state.outOfService.at)}`,
        'Lend another one. Only the handling coordinator returns it to service.',
        '/item',
      );
    }
    const held = heldBy(
      state,
      ward,
      context,
      'Lend another sling, or ask a nurse to free it and have it washed.',
    );
    if (held) return held;
    if (until !== undefined && toEpoch(until) <= context.occurred) {
      return refuse(
        'loan-until-past',
        `${sayAt(context, toEpoch(until))} is not after ${sayAt(context, context.occurred)}`,
        'Give the time by which it is to be back, or none.',
        '/until',
      );
    }
    const by = until === undefined ? {} : { until };
    const there = { ward: to };
    return accept(
      newEvent(events.itemLent, wardStream(context.wardId), { item, to, name: other.name, ...by }),
      newEvent(events.itemSent, itemStream(item), { item, to, name: other.name }),
      newEvent(
        events.itemBorrowed,
        wardStream(to),
        { item, from: context.wardId, name: ward.name, is: asLent(is, ward.name), ...by },
        there,
      ),
      newEvent(
        events.itemReceived,
        itemStream(item),
        { item, from: context.wardId, name: ward.name, ...known(state) },
        there,
      ),
    );
  },
});

const giveBack = decider({
  command: commands.giveBackItem,
  reads: ({ item }, ward) => [{ ward, stream: itemStream(item) }],
  further: [withOther],
  decide: ({ item }, context) => {
    const ward = context.ward!;
    const atHome = ward.lent.get(item);
    const loan = atHome ?? ward.borrowed.get(item);
    if (!loan) {
      const label = ward.items.get(item)?.label;
      return label === undefined
        ? itemUnknown(context)
        : refuse(
            'item-not-lent',
            `${label} belongs to this ward and is on it`,
            'Nothing to enter. Look at the equipment page again.',
            '/item',
          );
    }
    const [borrower, owner] = atHome ? [loan.ward, context.wardId] : [context.wardId, loan.ward];
    const state = stateOf(context, item, borrower);
    // Whoever has it before them on its own ward knows better than what was last said on the other.
    const held = atHome
      ? null
      : heldBy(state, ward, context, 'Ask a nurse to free it and have it washed, then give it back.');
    if (held) return held;
    const nameOf = (id: WardId) => (id === context.wardId ? ward : context.otherWard(id))?.name ?? id;
    const on = (id: WardId) => (id === context.wardId ? {} : { ward: id });
    return accept(
      newEvent(events.itemLoanEnded, wardStream(borrower), { item }, on(borrower)),
      newEvent(events.itemSent, itemStream(item), { item, to: owner, name: nameOf(owner) }, on(borrower)),
      newEvent(events.itemLoanEnded, wardStream(owner), { item }, on(owner)),
      newEvent(
        events.itemReceived,
        itemStream(item),
        { item, from: borrower, name: nameOf(borrower), ...known(state) },
        on(owner),
      ),
    );
  },
});

/**
 * The wards that hear of a fault: where it is told, whose the piece is, and where it is now. Also of one
 * that was given back: who found it there may come to write only afterwards.
 */
export function wardsToTell(read: Pick<ReadSoFar, 'ward'>, ward: WardId, item: ItemId): readonly WardId[] {
  const other = otherOf(read, ward, item);
  const owner = read.ward(ward).state?.givenBack.get(item);
  const holder = owner && read.ward(owner).state?.lent.get(item)?.ward;
  return [...new Set([ward, other, owner, holder].filter((one) => one !== null && one !== undefined))];
}
export const toTell = [
  ({ item }: { item: ItemId }, ward: WardId, read: ReadSoFar): readonly StreamNeed[] =>
    wardsToTell(read, ward, item)
      .slice(1)
      .flatMap((one) => bothStreams(one, item)),
] as const;

export const lendingDeciders = [lend, giveBack];
