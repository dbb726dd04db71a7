/** Where people are: arrival, move, swap, transfer, leaving. One person in a bed, judged by its guard. */
import * as commands from '@footboard/shared/capabilities/stays/commands';
import { expectedArrivalClosed } from '@footboard/shared/capabilities/dayplan/events';
import { foldHuddle } from '@footboard/shared/capabilities/dayplan/rules/huddle-state';
import { triggerRecorded } from '@footboard/shared/capabilities/orders/events';
import { stayBegun, stayEnded, stayMoved } from '@footboard/shared/capabilities/stays/events';
import { usualWayRecorded, weightRecorded } from '@footboard/shared/capabilities/stays/events';
import { bedFreed, bedTaken } from '@footboard/shared/capabilities/wards/events';
import { isQualified } from '@footboard/shared/kernel/author';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { BedId, StayId, WardId } from '@footboard/shared/kernel/ids';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { bedLabel, freeBed, guardOf, knownBed } from '../wards/beds.ts';
import { isRefusal, sayAt, stayAt, stayStream } from './standing.ts';
import type { Standing } from './standing.ts';

const bedStream = (bed: BedId) => streamKey('bed', bed);
const wardStream = (ward: WardId) => streamKey('ward', ward);

/** The stay is running and the person is where the entry says, and was placed there by then. */
function placedIn(
  context: DecideContext,
  stay: StayId,
  bed: BedId,
  fields: { stay: string; bed: string },
): Standing | Refusal {
  const ward = context.ward!;
  const known = knownBed(ward, bed, fields.bed);
  if (isRefusal(known)) return known;
  const standing = stayAt(context, stay, fields.stay);
  if (isRefusal(standing)) return standing;
  if (standing.ended !== null) {
    return refuse(
      'stay-ended',
      `the stay ended ${sayAt(context, standing.ended)}`,
      'A person who has left is not moved. If they are back, begin a new stay.',
      fields.stay,
    );
  }
  if (standing.bed !== bed || context.occupant(bed) !== stay) {
    return refuse(
      'not-in-that-bed',
      `the person is in bed ${bedLabel(ward, standing.bed)}, not in bed ${known.label}`,
      'Look at the board again: the person was moved. Nothing was changed.',
      fields.bed,
    );
  }
  if (context.occurred < standing.placedAt) {
    return refuse(
      'placement-out-of-order',
      `the person came into bed ${known.label} ${sayAt(context, standing.placedAt)}, after ${sayAt(context, context.occurred)}`,
      'Check the time: enter moves in the order in which they happened.',
      fields.stay,
    );
  }
  return standing;
}

const stayKnown = (stay: StayId, field: string): Refusal =>
  refuse('stay-known', `there is already a stay with the id ${stay}`, 'Give the new stay a new id.', field);

const begin = decider({
  command: commands.beginStay,
  reads: (data, ward) => [{ ward, stream: stayStream(data.stay) }, guardOf(ward, data.bed)],
  decide: (data, context) => {
    const stream = stayStream(data.stay);
    if (context.slice(stream).version > 0) return stayKnown(data.stay, '/stay');
    const notFree = freeBed(context, context.ward!, data.bed, '/bed', (at) => sayAt(context, at));
    if (notFree) return notFree;
    if (data.weight?.how === 'estimated' && !isQualified(context.author)) {
      return estimateNeedsQualified('/weight/how');
    }
    const { expected, expectedIds } = foldHuddle(context.slice(wardStream(context.wardId)).events);
    if (data.expected !== undefined && !expectedIds.has(data.expected)) {
      return refuse(
        'expected-unknown',
        'nobody was ever expected here under that id',
        'Choose one of those who are expected, or record the arrival without.',
        '/expected',
      );
    }
    const awaited = data.expected === undefined ? undefined : expected.get(data.expected);
    const identity = data.identity && context.keep(`stay/${data.stay}`, JSON.stringify(data.identity));
    return accept(
      newEvent(stayBegun, stream, {
        stay: data.stay,
        person: data.person,
        bed: data.bed,
        from: data.from,
        ...(identity ? { identity } : {}),
        ...(awaited?.previous ? { previous: awaited.previous } : {}),
      }),
      ...(data.from === 'theatre'
        ? [newEvent(triggerRecorded, stream, { kind: 'return-from-surgery' })]
        : []),
      ...(data.from === 'intensive-care'
        ? [newEvent(triggerRecorded, stream, { kind: 'step-down-from-intensive-care' })]
        : []),
      ...(data.usual ? [newEvent(usualWayRecorded, stream, { usual: data.usual })] : []),
      ...(data.weight ? [newEvent(weightRecorded, stream, { weight: data.weight })] : []),
      newEvent(bedTaken, bedStream(data.bed), { bed: data.bed, stay: data.stay }),
      ...(awaited
        ? [
            newEvent(expectedArrivalClosed, wardStream(context.wardId), {
              expected: awaited.expected,
              outcome: 'arrived',
              stay: data.stay,
            }),
          ]
        : []),
    );
  },
});

export const estimateNeedsQualified = (field: string): Refusal =>
  refuse(
    'estimate-needs-qualified',
    'an estimated weight chooses the lift, so a nurse or therapist estimates it',
    'Weigh the person, or ask a nurse for the estimate.',
    field,
  );

const move = decider({
  command: commands.moveStay,
  reads: (data, ward) => [
    { ward, stream: stayStream(data.stay) },
    guardOf(ward, data.from),
    guardOf(ward, data.to),
  ],
  decide: (data, context) => {
    const placed = placedIn(context, data.stay, data.from, { stay: '/stay', bed: '/from' });
    if (isRefusal(placed)) return placed;
    if (data.from === data.to) {
      return refuse(
        'same-bed',
        `the person is already in bed ${bedLabel(context.ward!, data.to)}`,
        'Choose another bed.',
        '/to',
      );
    }
    const notFree = freeBed(context, context.ward!, data.to, '/to', (at) => sayAt(context, at));
    if (notFree) return notFree;
    return accept(
      newEvent(stayMoved, stayStream(data.stay), { from: data.from, to: data.to }),
      newEvent(bedFreed, bedStream(data.from), { bed: data.from, stay: data.stay }),
      newEvent(bedTaken, bedStream(data.to), { bed: data.to, stay: data.stay }),
    );
  },
});

const swap = decider({
  command: commands.swapStays,
  reads: ({ first, second }, ward) => [
    { ward, stream: stayStream(first.stay) },
    { ward, stream: stayStream(second.stay) },
    guardOf(ward, first.bed),
    guardOf(ward, second.bed),
  ],
  decide: ({ first, second }, context) => {
    if (first.stay === second.stay || first.bed === second.bed) {
      return refuse(
        'same-stay',
        'a swap is between two people in two beds',
        'Choose the other person, or move this one to an empty bed.',
        '/second',
      );
    }
    for (const [one, at] of [
      [first, '/first'],
      [second, '/second'],
    ] as const) {
      const placed = placedIn(context, one.stay, one.bed, { stay: `${at}/stay`, bed: `${at}/bed` });
      if (isRefusal(placed)) return placed;
    }
    const moved = (one: typeof first, other: typeof second) =>
      newEvent(stayMoved, stayStream(one.stay), { from: one.bed, to: other.bed, swappedWith: other.stay });
    return accept(
      moved(first, second),
      moved(second, first),
      newEvent(bedFreed, bedStream(first.bed), { bed: first.bed, stay: first.stay }),
      newEvent(bedTaken, bedStream(first.bed), { bed: first.bed, stay: second.stay }),
      newEvent(bedFreed, bedStream(second.bed), { bed: second.bed, stay: second.stay }),
      newEvent(bedTaken, bedStream(second.bed), { bed: second.bed, stay: first.stay }),
    );
  },
});

const transfer = decider({
  command: commands.transferStay,
  reads: ({ stay, bed, to }, ward) => [
    { ward, stream: stayStream(stay) },
    guardOf(ward, bed),
    { ward: to.ward, stream: streamKey('ward', to.ward) },
    { ward: to.ward, stream: stayStream(to.stay) },
    guardOf(to.ward, to.bed),
  ],
  decide: ({ stay, bed, to }, context) => {
    const placed = placedIn(context, stay, bed, { stay: '/stay', bed: '/bed' });
    if (isRefusal(placed)) return placed;
    if (to.ward === context.wardId) {
      return refuse(
        'same-ward',
        'the person is already on that ward',
        'Move the person to another bed of this ward instead.',
        '/to/ward',
      );
    }
    const other = context.otherWard(to.ward);
    if (!other) {
      return refuse(
        'other-ward-unknown',
        `this board has no ward with the id ${to.ward}`,
        'Choose a ward of this board; for any other, end the stay.',
        '/to/ward',
      );
    }
    if (to.stay === stay || context.slice(stayStream(to.stay), to.ward).version > 0) {
      return stayKnown(to.stay, '/to/stay');
    }
    const notFree = freeBed(context, other, to.bed, '/to/bed', (at) => sayAt(context, at));
    if (notFree) return notFree;
    const { person } = placed;
    return accept(
      newEvent(stayEnded, stayStream(stay), { bed, to: 'ward', next: { ward: to.ward, stay: to.stay } }),
      newEvent(bedFreed, bedStream(bed), { bed, stay }),
      newEvent(
        stayBegun,
        stayStream(to.stay),
        { stay: to.stay, person, bed: to.bed, from: 'ward', previous: { ward: context.wardId, stay } },
        { ward: to.ward },
      ),
      newEvent(bedTaken, bedStream(to.bed), { bed: to.bed, stay: to.stay }, { ward: to.ward }),
    );
  },
});

const end = decider({
  command: commands.endStay,
  reads: (data, ward) => [{ ward, stream: stayStream(data.stay) }, guardOf(ward, data.bed)],
  decide: (data, context) => {
    const placed = placedIn(context, data.stay, data.bed, { stay: '/stay', bed: '/bed' });
    if (isRefusal(placed)) return placed;
    return accept(
      newEvent(stayEnded, stayStream(data.stay), { bed: data.bed, to: data.to }),
      newEvent(bedFreed, bedStream(data.bed), { bed: data.bed, stay: data.stay }),
    );
  },
});

export const placementDeciders = [begin, move, swap, transfer, end];
