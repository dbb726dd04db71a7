/** A lift of Larch that Rowan next door may borrow, and what each of the two wards has of it. */
import { expect } from 'vitest';
import * as commands from '@footboard/shared/capabilities/aids/commands';
import * as events from '@footboard/shared/capabilities/aids/events';
import { foldItem, NOTHING_SEEN } from '@footboard/shared/capabilities/aids/rules/item-state';
import { itemDescription } from '@footboard/shared/capabilities/aids/values';
import type { ItemId } from '@footboard/shared/capabilities/aids/values';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { EventType, PayloadOf } from '@footboard/shared/kernel/event-type';
import type { WardId } from '@footboard/shared/kernel/ids';
import { AIDE, LARCH, NURSE, ROWAN, STAFF, T0, hours, worldWith } from '../given.testkit.ts';
import type { Step } from '../world.testkit.ts';

type Steps = readonly (Step | readonly Step[])[];
export const COORDINATOR = STAFF['handling-coordinator'];
export const lift = 'lift-1' as ItemId;
export const LIFT = itemDescription.parse({
  label: 'Lift 1',
  kind: 'floor-lift',
  model: 'A',
  powered: true,
  safeLoadKg: 200,
  home: 'Store',
});
export const COPY = { ...LIFT, label: 'Lift 1 (Larch)', home: 'Larch' };

export const listed = (is = LIFT, ward: WardId = LARCH) => [
  {
    ...newEvent(events.itemAdded, streamKey('ward', ward), { item: lift, is }),
    ward,
    by: COORDINATOR,
    occurred: T0,
  },
];
export const said = <T extends EventType>(
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
export function lentWorld(...before: Steps) {
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
export const on = (world: World, ward: WardId) => world.ward(ward).state!;
export const stateOn = (world: World, ward: WardId) =>
  world.events(ward, streamKey('item', lift)).reduce(foldItem, NOTHING_SEEN);
export const enter = (
  world: World,
  command: Parameters<World['enter']>[0],
  data: object,
  { ward = LARCH, by = COORDINATOR, h = 3 }: { ward?: WardId; by?: typeof NURSE; h?: number } = {},
) => world.enter(command, { item: lift, ...data }, { ward, by, occurred: hours(h) });
