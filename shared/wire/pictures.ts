/** What the pictures are drawn from: a stay's course, and one ward day by the hour. */
import { z } from 'zod';
import { eventId, stayId, wardId } from '../kernel/ids.ts';
import { holdReason, holdScope, recordedTriggerKind } from '../capabilities/orders/values.ts';
import { activity } from '../capabilities/sessions/values.ts';

const epoch = z.number();
const count = z.number().int();
const facts = z.array(eventId);

export const stayCourse = z.strictObject({
  ward: wardId,
  stay: stayId,
  position: count,
  /** Arrival. */
  from: epoch,
  /** Leaving, or now. */
  to: epoch,
  /** False where the stay changed too often to be drawn to its end. */
  whole: z.boolean(),
  ended: z.boolean(),
  /** Words of the tier, lowest first, and where each stands between 0 and 1. A picture, not a score. */
  tiers: z.array(z.strictObject({ word: z.string(), notch: z.number() })),
  /** What the board showed, without a hole. `notch` null: not known, or no tier applies. */
  standing: z.array(
    z.strictObject({
      from: epoch,
      to: epoch,
      tier: z.string().nullable(),
      notch: z.number().nullable(),
      trust: z.enum(['current', 're-check', 'not-known']),
      away: z.boolean(),
      /** What the board gave as its reasons when the span began. */
      facts,
    }),
  ),
  /** `to` null: it still stands. */
  holds: z.array(
    z.strictObject({
      hold: z.string(),
      scope: holdScope,
      reason: holdReason,
      from: epoch,
      to: epoch.nullable(),
      /** The entry that placed it, or gave it its scope. */
      facts,
    }),
  ),
  sessions: z.array(
    z.strictObject({
      event: eventId,
      at: epoch,
      outcome: z.enum(['done', 'part', 'stopped', 'not-done']),
      activity: activity.nullable(),
      /** Group of reason of one that was not done. */
      group: z.string().nullable(),
    }),
  ),
  triggers: z.array(z.strictObject({ event: eventId, at: epoch, kind: recordedTriggerKind })),
  /** Ward days. `recorded: false` is a gap, never a zero. */
  days: z.array(
    z.strictObject({
      from: epoch,
      to: epoch,
      recorded: z.boolean(),
      /**
       * The goal as it stood at the end of the day, or now. `met` null: not recorded, so that it cannot be
       * said; never the same as not met. Null: no goal applied.
       */
      goal: z.strictObject({ met: z.boolean().nullable(), proposed: z.boolean() }).nullable(),
      /** The goal's reasons and the sessions of the day. */
      facts,
    }),
  ),
});
export type StayCourse = z.infer<typeof stayCourse>;

/** One hour of a ward day. */
export const wardHour = z.strictObject({
  from: epoch,
  to: epoch,
  /** True once it has begun; the counts of an hour to come say nothing. */
  begun: z.boolean(),
  done: count,
  part: count,
  stopped: count,
  /** By group of reason. */
  notDone: z.record(z.string(), count),
  /**
   * People on the ward at its end (or now) of whom nothing has been recorded since the ward day
   * began: a gap, never a zero. Null for an hour to come.
   */
  nothingYet: count.nullable(),
});
export const wardHours = z.strictObject({
  ward: wardId,
  /** Date on the ward's clock on which the ward day began. */
  day: z.string(),
  from: epoch,
  to: epoch,
  at: epoch,
  /** Stays that were on the ward on that day. */
  stays: count,
  hours: z.array(wardHour),
});
export type WardHours = z.infer<typeof wardHours>;
