/** What is refused of a piece that is not on the ward now. */
import { itemAdded } from '@footboard/shared/capabilities/aids/events';
import type { ItemId } from '@footboard/shared/capabilities/aids/values';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { WardId } from '@footboard/shared/kernel/ids';
import { refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { sayAt } from '../stays/standing.ts';

export const itemStream = (item: ItemId) => streamKey('item', item);
export const wardStream = (ward: WardId) => streamKey('ward', ward);

/** Whether the ward has, or once had, a piece of its own with that id. */
export const wasAdded = (context: DecideContext, ward: WardId, item: ItemId): boolean =>
  context
    .slice(wardStream(ward), ward)
    .events.some(
      ({ type, payload }) => type === itemAdded.name && (payload as { item: ItemId }).item === item,
    );

export const itemUnknown = (context: DecideContext): Refusal =>
  refuse(
    'item-unknown',
    `${context.ward!.name} has no such piece of equipment`,
    'Choose one from the equipment page; the handling coordinator adds new ones.',
    '/item',
  );

/** Of a piece that is lent nothing is said here: whoever has it says it. */
export function lentNow(context: DecideContext, item: ItemId): Refusal | null {
  const lent = context.ward!.lent.get(item);
  return lent
    ? refuse(
        'item-lent',
        `${lent.is.label} is lent to ${lent.name} since ${sayAt(context, lent.at)}`,
        'Say it on that ward. If it is here again, say first that it is back.',
        '/item',
      )
    : null;
}

/** Of a piece that is borrowed: its own ward describes it. */
export function borrowedNow(context: DecideContext, item: ItemId): Refusal | null {
  const { items, borrowed } = context.ward!;
  const loan = borrowed.get(item);
  return loan
    ? refuse(
        'item-borrowed',
        `${items.get(item)!.label} belongs to ${loan.name}: its own ward describes it`,
        'Ask its ward to change it there; the change comes here by itself.',
        '/item',
      )
    : null;
}
