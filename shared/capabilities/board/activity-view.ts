/** How much a person is up, as a board shows it: today against the goal, what went before, who goes next. */
import { z } from 'zod';
import { eventId, opaqueId, staffId } from '../../kernel/ids.ts';
import { aidClass } from '../handling/values.ts';
import { activity, goal, NOT_DONE_REASONS, session, sessionEventKind } from '../sessions/values.ts';
import { because } from './because.ts';

const epoch = z.number().int();

/** Today's activity against the goal. `recorded: false` is a gap ("not recorded"), never a zero. */
export const todayView = z.strictObject({
  wardDayFrom: epoch,
  goal: goal.nullable(),
  /** True when the goal is the rules' proposal and nobody has set one. */
  goalProposed: z.boolean(),
  recorded: z.boolean(),
  timesUp: z.number().int(),
  minutesOutOfBed: z.number().int().nullable(),
  metres: z.number().nullable(),
  /** Times something was offered and not done, by group of reason. */
  notDone: z.record(z.string(), z.number().int()),
  met: z.boolean().nullable(),
  /** How often somebody said today that the board is wrong about this person. */
  boardWrong: z.number().int(),
  because: z.array(because),
});
export type TodayView = z.infer<typeof todayView>;

/** A step up or back of the goal, for a qualified person to accept. Never in force by itself. */
export const proposalView = z.strictObject({
  step: z.enum(['up', 'back']),
  goal,
  /** The sessions that carry it. */
  sessions: z.array(eventId),
  because: z.array(because),
});
export type ProposalView = z.infer<typeof proposalView>;

/** Waking time since last up: now, or pausedAt while it is night, less since, less sleptMs. */
export const debtView = z.strictObject({
  since: epoch,
  sleptMs: z.number().int(),
  pausedAt: epoch.nullable(),
  /** True from the ward's limit on. */
  owed: z.boolean(),
  /** What would clear it, in words. */
  clears: z.string(),
  because: z.array(because),
});
export type DebtView = z.infer<typeof debtView>;

/** A line on the board about where the stay is going; never an alarm. */
export const signView = z.strictObject({
  kind: z.enum(['stages-lost', 'refusals', 'below-baseline', 'ready']),
  words: z.string(),
  because: z.array(because),
});
export type SignView = z.infer<typeof signView>;

export const measuresView = z.strictObject({
  /** The entry that turned them on. */
  event: eventId,
  /** The last of each kind, newest first. */
  last: z.array(
    z.strictObject({
      event: eventId,
      at: epoch,
      words: z.string(),
      /** How it reads against the published table, or "no norm" with the reason. */
      says: z.string(),
      source: z.string(),
      warnings: z.array(z.string()),
    }),
  ),
});
export type MeasuresView = z.infer<typeof measuresView>;

/** A visit that somebody has taken: who goes, with whom, from when, and until when it is theirs. */
export const visitView = z.strictObject({
  visit: opaqueId,
  by: staffId,
  second: staffId.nullable(),
  from: epoch,
  /** Past it nobody has it any more. */
  until: epoch,
  event: eventId,
});
export type VisitView = z.infer<typeof visitView>;

/**
 * A visit of the accepted day plan that is still ahead. A plan decides nothing: what stands against the
 * visit by now stands in `stopped`, and then it is shown as held, never as to be done.
 */
export const plannedView = z.strictObject({
  visit: opaqueId,
  /** As the planning room's `visitKind`. */
  kind: z.enum(['goal', 'check', 'care']),
  from: epoch,
  until: epoch,
  /** One or two; empty on walls. */
  crew: z.array(staffId),
  /** Labels of the equipment that goes along. */
  with: z.array(z.string()),
  stopped: because.nullable(),
});
export type PlannedView = z.infer<typeof plannedView>;

const momentOf = z.strictObject({ at: epoch, event: eventId }).nullable();

/** What whoever goes next asks of the sessions so far. */
export const latelyView = z.strictObject({
  last: z
    .strictObject({
      event: eventId,
      from: epoch,
      /** When it ended; its start where that was not written down. */
      to: epoch,
      outcome: session.shape.outcome,
      notDone: z.enum(Object.keys(NOT_DONE_REASONS) as (keyof typeof NOT_DONE_REASONS)[]).nullable(),
      occasion: session.shape.occasion,
      activities: z.array(activity),
      metres: z.number().nullable(),
      minutesOutOfBed: z.number().nullable(),
      people: z.number().int().nullable(),
      aid: aidClass.nullable(),
      events: z.array(sessionEventKind),
    })
    .nullable(),
  /** The last time the person said no. */
  saidNo: momentOf,
  /** The last time with a meal. */
  meal: momentOf,
  /** The ward day before; null where the person was not here for all of it. `recorded: false` is a gap. */
  yesterday: z.strictObject({ recorded: z.boolean(), timesUp: z.number().int() }).nullable(),
});
export type LatelyView = z.infer<typeof latelyView>;
