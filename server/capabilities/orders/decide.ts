/** Triggers, prescribers' orders and holds. Anyone may stop; only a qualified person lets go on. */
import type { HoldView } from '@footboard/shared/capabilities/board/moving-view';
import * as commands from '@footboard/shared/capabilities/orders/commands';
import * as events from '@footboard/shared/capabilities/orders/events';
import { holdsInForce } from '@footboard/shared/capabilities/orders/rules/holds';
import type { Order } from '@footboard/shared/capabilities/orders/values';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import { isQualified } from '@footboard/shared/kernel/author';
import type { Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent } from '@footboard/shared/kernel/event-type';
import type { StayRecord } from '@footboard/shared/capabilities/corrections/facts';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import { HOUR, toEpoch, toIso } from '@footboard/shared/kernel/times';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { isRefusal, readsStay, sayAt, stayAt, stayStream } from '../stays/standing.ts';

const recordTrigger = decider({
  command: commands.recordTrigger,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    return accept(
      newEvent(events.triggerRecorded, stayStream(data.stay), {
        kind: data.kind,
        ...(data.note === undefined ? {} : { note: context.keep(`stay/${data.stay}`, data.note) }),
      }),
    );
  },
});

/** What an order may not say against itself. `at` is the JSON pointer of the order. */
export function contradicts(order: Order, at: string): Refusal | null {
  if (order.about === 'oxygen-target' && order.low > order.high) {
    return refuse(
      'range-reversed',
      `the saturation target runs from ${order.low} % to ${order.high} %`,
      'Put the lower figure first.',
      `${at}/low`,
    );
  }
  if (order.about === 'weight-bearing' && order.limit !== undefined && order.bears !== 'limited') {
    return refuse(
      'limit-contradicts',
      `the limb bears "${order.bears}" and has a limit`,
      'Say "limited" with the limit, or leave the limit out; read the order again if unsure.',
      `${at}/limit`,
    );
  }
  return null;
}

const changeOrder = decider({
  command: commands.changeOrder,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    return (
      contradicts(data.order, '/order') ??
      accept(
        newEvent(events.orderChanged, stayStream(data.stay), {
          order: data.order,
          ...(data.orderedBy === undefined
            ? {}
            : { orderedBy: context.keep(`stay/${data.stay}`, data.orderedBy) }),
        }),
      )
    );
  },
});

/** A review time lies after the moment it is set for; a late entry's may have passed by now and is then due at once. */
const reviewInPast = (context: DecideContext, reviewAt: number): Refusal | null =>
  reviewAt > context.occurred
    ? null
    : refuse(
        'review-in-past',
        `review ${sayAt(context, reviewAt)} is not after ${sayAt(context, context.occurred)}`,
        'Give a later time for the review.',
        '/reviewAt',
      );

const placeHold = decider({
  command: commands.placeHold,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const ward = context.ward!;
    if (standing.record.events.some((e) => e.type === 'hold-placed' && holdId(e.payload) === data.hold)) {
      return refuse(
        'hold-known',
        'this stay already has a hold with that id',
        'Give a new hold a new id, or renew the one that stands.',
        '/hold',
      );
    }
    if (data.owner !== undefined && !ward.staff.get(data.owner)?.active) {
      return refuse(
        'staff-unknown',
        'the owner is not on the staff list, or no longer active',
        'Choose an owner from the staff list, or leave it out to own the hold yourself.',
        '/owner',
      );
    }
    const { aideHoldReviewHours, holdReviewHours } = rulesOf(ward).validity;
    const asked = data.reviewAt === undefined ? null : toEpoch(data.reviewAt);
    const inPast = asked === null ? null : reviewInPast(context, asked);
    if (inPast) return inPast;
    // Asking for a later review is no reason to lose a stop: an unqualified author's is brought forward.
    const reviewAt = isQualified(context.author)
      ? (asked ?? context.occurred + holdReviewHours.value * HOUR)
      : Math.min(asked ?? Infinity, context.occurred + aideHoldReviewHours.value * HOUR);
    return accept(
      newEvent(events.holdPlaced, stayStream(data.stay), {
        hold: data.hold,
        scope: data.scope,
        reason: data.reason,
        owner: data.owner ?? context.author.staff,
        reviewAt: toIso(reviewAt),
        ...(data.note === undefined ? {} : { note: context.keep(`stay/${data.stay}`, data.note) }),
      }),
    );
  },
});

const holdId = (payload: unknown): string => (payload as { hold: string }).hold;

/** The hold as it stands now, all entries considered; it must have been placed by the time of the review. */
function standingHold(context: DecideContext, record: StayRecord, hold: string): HoldView | Refusal {
  const { facts } = effectiveFacts(record);
  const placed = facts.find((f) => f.type === 'hold-placed' && holdId(f.data) === hold);
  if (!placed) {
    return refuse(
      'hold-unknown',
      'this stay has no such hold, or it was withdrawn',
      'Open the person again and choose one of the holds shown.',
      '/hold',
    );
  }
  const inForce = holdsInForce(facts, context.now, rulesOf(context.ward!), () => {}).find(
    (h) => h.hold === hold,
  );
  if (!inForce) {
    return refuse(
      'hold-already-ended',
      'the hold has been ended',
      'Nothing to do. Place a new hold if it is needed again.',
      '/hold',
    );
  }
  if (context.occurred < inForce.placedAt) {
    return refuse(
      'hold-not-yet-placed',
      `the hold was placed ${sayAt(context, inForce.placedAt)}, after ${sayAt(context, context.occurred)}`,
      'Check the time of the review.',
      '/hold',
    );
  }
  return inForce;
}

const renewHold = decider({
  command: commands.renewHold,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const hold = standingHold(context, standing.record, data.hold);
    if (isRefusal(hold)) return hold;
    return (
      reviewInPast(context, toEpoch(data.reviewAt)) ??
      accept(
        newEvent(events.holdRenewed, stayStream(data.stay), { hold: data.hold, reviewAt: data.reviewAt }),
      )
    );
  },
});

const endHold = decider({
  command: commands.endHold,
  reads: readsStay,
  decide: (data, context) => {
    const standing = stayAt(context, data.stay);
    if (isRefusal(standing)) return standing;
    const hold = standingHold(context, standing.record, data.hold);
    if (isRefusal(hold)) return hold;
    const renewed = effectiveFacts(standing.record).facts.findLast(
      (f) => f.type === 'hold-renewed' && holdId(f.data) === data.hold,
    );
    if (renewed && renewed.occurred >= context.occurred) {
      return refuse(
        'hold-renewed-since',
        `someone kept the hold ${sayAt(context, renewed.occurred)}, at or after this end`,
        'Review it again: end it as of now if it is no longer needed.',
        '/hold',
      );
    }
    return accept(
      newEvent(events.holdEnded, stayStream(data.stay), { hold: data.hold, placedBy: hold.event }),
    );
  },
});

export const deciders = underPolicy([recordTrigger, changeOrder, placeHold, renewHold, endHold]);
