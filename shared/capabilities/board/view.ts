/**
 * What a board shows, as the projection computes it and the wire carries it: one row per bed. A row
 * is a pure function of the facts up to a position and of an instant; it holds instants, never ages
 * (a screen counts ages from the server's clock), and never free text, names or body weight.
 */
import { z } from 'zod';
import { bedId, eventId, opaqueId, staffId, stayId, textRef } from '../../kernel/ids.ts';
import { role } from '../../kernel/author.ts';
import { side, walkingSupport } from '../assessments/values.ts';
import { aidClass, people, task } from '../handling/values.ts';
import { holdReason, holdScope, order, triggerKind } from '../orders/values.ts';
import { activity, goal, NOT_DONE_REASONS, session, sessionEventKind } from '../sessions/values.ts';
import { attachmentKind, fence, usualWay } from '../stays/values.ts';
import { language, panel, units } from '../wards/values.ts';

const epoch = z.number().int();

/** Why a thing is shown: the rule that produced it, the facts it stands on, and plain words. */
export const because = z.strictObject({
  rule: z.string(),
  facts: z.array(eventId),
  words: z.string(),
});
export type Because = z.infer<typeof because>;

/** How to do one task: people and aid first, then what to mind. */
export const taskPlan = z.strictObject({
  task,
  /** HOLD: do not do this task; ask. People and aid then say what applies if it cannot wait. */
  hold: z.boolean(),
  people,
  aid: aidClass,
  /** A second equipment word where the source names one, in plain words ("slide sheet"). */
  with: z.array(z.string()),
  /** Move towards this side, the stronger one. */
  towards: side.nullable(),
  cautions: z.array(z.string()),
  because: z.array(because),
});
export type TaskPlan = z.infer<typeof taskPlan>;

export const tierView = z.strictObject({
  /** The word of the protocol's tier, "Not known", or null where no tier applies (clinician's or comfort plan). */
  word: z.string().nullable(),
  /** Where the notch stands on the bar, 0 to 1; null when not known. A picture, not a score. */
  notch: z.number().min(0).max(1).nullable(),
  protocol: z.strictObject({ id: z.string(), version: z.number() }).nullable(),
  oneLeg: side.nullable(),
  secured: z.boolean(),
  /** When the stage that decides the tier was recorded as done, and by whom. */
  at: epoch.nullable(),
  by: z.strictObject({ staff: staffId, role }).nullable(),
  because: z.array(because),
});
export type TierView = z.infer<typeof tierView>;

export const trustView = z.strictObject({
  state: z.enum(['current', 're-check', 'not-known']),
  openTriggers: z.array(z.strictObject({ event: eventId, kind: triggerKind, at: epoch, words: z.string() })),
  /** Two facts that disagree: the safer stands, both are shown. */
  conflicts: z.array(
    z.strictObject({ question: z.string(), safer: eventId, other: eventId, words: z.string() }),
  ),
  because: z.array(because),
});
export type TrustView = z.infer<typeof trustView>;

export const holdView = z.strictObject({
  hold: opaqueId,
  scope: holdScope,
  reason: holdReason,
  owner: staffId,
  placedAt: epoch,
  reviewAt: epoch,
  /** True once the review time has passed. It frees nobody. */
  reviewDue: z.boolean(),
  event: eventId,
  note: textRef.nullable(),
});
export type HoldView = z.infer<typeof holdView>;

export const dueView = z.strictObject({
  state: z.enum(['not-due', 'due', 'overdue', 'at-next-move', 'none']),
  /** When the next check is due; null for at-next-move and none. */
  at: epoch.nullable(),
  because: z.array(because),
});
export type DueView = z.infer<typeof dueView>;

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

export const attachmentView = z.strictObject({
  attachment: opaqueId,
  kind: attachmentKind,
  disconnects: z.enum(['nobody', 'nurse', 'anyone-trained']),
  tetherMetres: z.number().nullable(),
  needsOwnPerson: z.boolean(),
});

/** May we start: the answer that the latest readings and what is in force give for the next session. */
export const startView = z.strictObject({
  word: z.enum(['not-now', 'ask-first', 'may-start']),
  reasons: z.array(
    z.strictObject({
      word: z.enum(['not-now', 'ask-first']),
      words: z.string(),
      limit: z.number().nullable(),
      source: z.string(),
      /** When the reading was taken; null for what is not a reading. */
      takenAt: epoch.nullable(),
      facts: z.array(eventId),
    }),
  ),
  /** Signs with no reading that is recent enough: asked for, never taken as normal. */
  notTaken: z.array(z.string()),
});
export type StartView = z.infer<typeof startView>;

/** Where the next staged check begins, and in which depth. */
export const nextCheckView = z.strictObject({
  depth: z.enum(['full-with-pressure', 'full', 'confirm']),
  /** Id of the stage to begin at. */
  from: z.string(),
  because: z.array(because),
});
export type NextCheckView = z.infer<typeof nextCheckView>;

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

export const stayView = z.strictObject({
  stay: stayId,
  /** Version of the stay's stream that this view has folded; "what I saw" for a command. */
  version: z.number().int(),
  began: epoch,
  /** Off the ward: since when, why, due back. */
  away: z.strictObject({ since: epoch, reason: z.string(), dueBack: epoch.nullable() }).nullable(),
  scope: z.strictObject({
    kind: z.enum(['staged', 'clinicians-plan', 'comfort']),
    fence: fence.nullable(),
    plan: textRef.nullable(),
  }),
  tier: tierView,
  trust: trustView,
  holds: z.array(holdView),
  orders: z.array(z.strictObject({ event: eventId, order, at: epoch })),
  /** One plan a task, in the order of the task list; null under the clinician's or comfort plan. */
  plan: z.strictObject({ day: z.array(taskPlan), night: z.array(taskPlan) }).nullable(),
  /** Shown before the plan when the tier is not known: CHECK BEFORE MOVING. */
  checkBeforeMoving: z.boolean(),
  onOwn: z.strictObject({ where: z.array(z.string()), when: z.array(z.string()), event: eventId }).nullable(),
  walkingSupport: walkingSupport.nullable(),
  cautions: z.array(z.strictObject({ words: z.string(), because: z.array(because) })),
  due: dueView,
  lastUp: z.strictObject({ at: epoch, event: eventId, activity: z.string() }).nullable(),
  /** The last thing that went wrong in a session, for the next one. */
  lastEvent: z.strictObject({ kind: sessionEventKind, at: epoch }).nullable(),
  today: todayView,
  usualWay: usualWay.nullable(),
  attachments: z.array(attachmentView),
  firstTimeUpPending: z.boolean(),
  /** Null under the clinician's or comfort plan. */
  mayStart: startView.nullable(),
  nextCheck: nextCheckView.nullable(),
  earlyWarning: z
    .strictObject({ score: z.number(), anyThree: z.boolean(), at: epoch, event: eventId })
    .nullable(),
  proposal: proposalView.nullable(),
  debt: debtView.nullable(),
  signs: z.array(signView),
  /** Null while walking measures are off for this stay. */
  measures: measuresView.nullable(),
  /** In the chair since, as the last session left it, and back in bed by; null when in bed or not recorded. */
  chair: z.strictObject({ since: epoch, backBy: epoch.nullable(), event: eventId }).nullable(),
  /** When the toilet was reached on this ward day, oldest first. */
  toilet: z.array(epoch),
  /** Infection steps apply in the room. */
  isolation: z.boolean(),
  leaving: z.strictObject({ at: epoch, event: eventId }).nullable(),
  /** Text by reference: only the page of a stay and the bedside read it. */
  therapistLine: z.strictObject({ line: textRef, by: staffId, at: epoch, event: eventId }).nullable(),
  visit: visitView.nullable(),
  /** Of the accepted plan of this ward day, the earliest first; left out where there is none. On walls the next alone. */
  planned: z.array(plannedView).optional(),
  /** Null on walls. */
  lately: latelyView.nullable(),
  /** What walls may say of this stay: as much as the ward's walls say of everybody, or nothing. */
  wall: z.enum(['as-ward', 'nothing']),
  /**
   * How much this row tells: all of it, what a wall may say within the ward (`bed-only`) or where
   * visitors pass, or only that the answer is at the bedside. What is left out is empty here, which
   * says nothing about the person. Made by rules/for-wall.ts; the projection knows only `whole`.
   */
  shown: z.enum(['whole', 'bed-only', 'visitors', 'ask-at-the-bedside']),
});
export type StayView = z.infer<typeof stayView>;

export const bedView = z.strictObject({
  bed: bedId,
  label: z.string(),
  bay: z.string(),
  ceilingTrack: z.boolean(),
  state: z.enum(['empty', 'occupied', 'away']),
  /** Who looks after whoever is in this bed in this shift; null when nobody is named. */
  carers: z.strictObject({ nurse: staffId.nullable(), aide: staffId.nullable() }).nullable(),
  stay: stayView.nullable(),
});
export type BedView = z.infer<typeof bedView>;

export const boardView = z.strictObject({
  ward: z.string(),
  name: z.string(),
  zone: z.string(),
  wardDayFrom: z.string(),
  nightFrom: z.string(),
  nightTo: z.string(),
  /** True between nightFrom and nightTo on the ward's clock: the night plan applies. */
  night: z.boolean(),
  panel,
  units,
  language,
  /** How many people are named for beds in this shift; null when nobody is. */
  peopleOn: z.number().int().nullable(),
  /** Lifts that can be used now, of those the ward has; null when the ward keeps no list of lifts. */
  lifts: z
    .strictObject({
      usable: z.number().int(),
      /** Somebody has it. */
      inUse: z.number().int(),
      /** Nobody has said lately how it is: not counted as usable. */
      unknown: z.number().int(),
      all: z.number().int(),
    })
    .nullable(),
  /**
   * The accepted plan of this ward day in numbers; null or left out where there is none, and on walls.
   * `unplaced` is null where it was not said.
   */
  dayPlan: z
    .strictObject({
      at: epoch,
      by: staffId,
      /** Still ahead, with those that somebody has taken, and of these held by now. */
      ahead: z.number().int(),
      held: z.number().int(),
      /** Their time is over and nothing was recorded. */
      passed: z.number().int(),
      unplaced: z.number().int().nullable(),
    })
    .nullable()
    .optional(),
  beds: z.array(bedView),
});
export type BoardView = z.infer<typeof boardView>;
