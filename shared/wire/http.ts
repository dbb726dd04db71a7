/** Shapes of the HTTP API beside the commands' own: answers, queries, problem details. */
import { z } from 'zod';
import { author, role, source, standing } from '../kernel/author.ts';
import { bedId, commandId, eventId, opaqueId, staffId, stayId, wardId } from '../kernel/ids.ts';
import { isoInstant, precision } from '../kernel/times.ts';
import { because } from '../capabilities/board/because.ts';
import { bedView, boardView } from '../capabilities/board/view.ts';
import { actionKind, arrivalFrom, changeKind } from '../capabilities/dayplan/values.ts';
import { usualWay } from '../capabilities/stays/values.ts';

/** 200 for accepted and for a stored repeat: the same outcome for the same command. */
export const commandAccepted = z.strictObject({
  commandId,
  outcome: z.literal('accepted'),
  /** Position of the last event in the ward's log; 0 when nothing needed to be appended. */
  position: z.number().int(),
  events: z.array(
    z.strictObject({
      ward: wardId,
      stream: z.string(),
      version: z.number().int(),
      id: eventId,
      type: z.string(),
    }),
  ),
  /** True when the board had folded the events before this answer left ("recorded, still updating" otherwise). */
  shown: z.boolean(),
  repeated: z.boolean(),
  /** Set when the time was not taken as entered: an outbox entry from a device whose clock ran ahead. */
  timeTaken: z.strictObject({ asEntered: isoInstant, taken: isoInstant, precision }).optional(),
});
export type CommandAccepted = z.infer<typeof commandAccepted>;

/** RFC 9457 problem details. `errors` name each field and what to do. */
export const problem = z.strictObject({
  type: z.string(),
  title: z.string(),
  status: z.number().int(),
  detail: z.string(),
  remedy: z.string(),
  errors: z
    .array(z.strictObject({ pointer: z.string(), detail: z.string(), remedy: z.string().optional() }))
    .optional(),
  commandId: commandId.optional(),
  repeated: z.boolean().optional(),
});
export type Problem = z.infer<typeof problem>;

export const wardSummary = z.strictObject({
  ward: wardId,
  name: z.string(),
  zone: z.string(),
  beds: z.number().int(),
});
export const wardList = z.strictObject({
  wards: z.array(wardSummary),
  demo: z.boolean(),
  trialStorage: z.boolean(),
  /** Sign-in is off: anyone may say who they are. */
  open: z.boolean(),
});
export type WardList = z.infer<typeof wardList>;

export const staffList = z.strictObject({
  staff: z.array(z.strictObject({ staff: staffId, name: z.string(), role, active: z.boolean(), standing })),
});
export type StaffList = z.infer<typeof staffList>;

/** Whose signature it is and when it was given; both null until then. */
const signature = { by: author.extend({ name: z.string() }).nullable(), at: z.number().nullable() };

/** One line of a stay's timeline, in plain words; corrections are linked both ways. */
export const timelineEntry = z.strictObject({
  event: eventId,
  type: z.string(),
  occurred: z.number(),
  precision: z.enum(['exact', 'about']),
  recorded: z.number(),
  /** Recorded more than 60 min after it occurred (common practice, no source). */
  late: z.boolean(),
  author: author.extend({ name: z.string() }),
  source,
  words: z.string(),
  /** retracted / corrected / amended / added-to by these events. */
  changedBy: z.array(
    z.strictObject({ verb: z.enum(['addendum', 'amendment', 'correction', 'retraction']), event: eventId }),
  ),
  /** For the four verbs and the two signatures: the entry they speak of. */
  target: eventId.nullable(),
  /** False for a retracted entry: it stays readable and no longer counts. */
  counts: z.boolean(),
  /**
   * Set where the author's name was only claimed when it was recorded. Unconfirmed it can only raise
   * help; `by` and `at` say who stood by it since. Else null.
   */
  confirmation: z.strictObject({ state: z.enum(['unconfirmed', 'confirmed']), ...signature }).nullable(),
  /** Set where the author is agency staff or a student; it counts from the start. Else null. */
  cosign: z
    .strictObject({
      kind: z.enum(['agency', 'student']),
      state: z.enum(['waiting', 'signed']),
      ...signature,
    })
    .nullable(),
  /** The entry's own payload, free text by reference: what a correction starts from. */
  data: z.json().optional(),
});
export type TimelineEntry = z.infer<typeof timelineEntry>;

/** A stay page: who (for confirming the person), the bed's row, resolved texts, and the timeline. */
export const stayPage = z.strictObject({
  ward: wardId,
  stay: stayId,
  /** Position the page was folded to: the same as the board's. */
  position: z.number().int(),
  ended: z.number().nullable(),
  identity: z
    .strictObject({ name: z.string(), recordNumber: z.string().optional(), born: z.string().optional() })
    .nullable(),
  bed: bedView.nullable(),
  texts: z.record(opaqueId, z.string()),
  /** The key of its name and texts was destroyed: they read "(text removed)". */
  erased: z.boolean(),
  previous: z.strictObject({ ward: wardId, stay: stayId }).nullable(),
  next: z.strictObject({ ward: wardId, stay: stayId }).nullable(),
  timeline: z.array(timelineEntry),
});
export type StayPage = z.infer<typeof stayPage>;

/** Huddle: the ward in the order it is spoken through. */
export const huddleLine = z.strictObject({
  bed: z.string(),
  label: z.string(),
  /** Whom the line is about; null where the line is about the bed alone. */
  stay: stayId.nullable(),
  /** Who has it in hand: the nurse named for the bed, or the owner of a hold. */
  owner: staffId.nullable(),
  words: z.string(),
  because: z.array(because),
});
/** Agreed at a huddle and not closed. */
export const huddleAction = z.strictObject({
  action: opaqueId,
  kind: actionKind,
  owner: staffId,
  by: z.number(),
  agreedAt: z.number(),
  /** Agreed before the last huddle was held. */
  earlier: z.boolean(),
  overdue: z.boolean(),
  stay: stayId.nullable(),
  /** The bed the person is in now; null where it is about the ward, or the person has left. */
  bed: z.strictObject({ bed: z.string(), label: z.string() }).nullable(),
  note: z.string().nullable(),
});
/** Somebody who is expected. How they move is history, not confirmed here. */
export const expectedPage = z.strictObject({
  expected: opaqueId,
  at: z.number(),
  from: arrivalFrom,
  bed: bedId.nullable(),
  usual: usualWay.nullable(),
  bariatric: z.boolean(),
  previous: z
    .strictObject({
      ward: wardId,
      stay: stayId,
      wardName: z.string(),
      /** The last plan there, in words, and the instant it is as of; empty where none was known. */
      plan: z.array(z.string()),
      asOf: z.number(),
    })
    .nullable(),
});
export const huddlePage = z.strictObject({
  ward: wardId,
  position: z.number().int(),
  at: z.number(),
  /** Who needs a lift today; who is overdue; holds to review; not up for 24 h with no hold; two people or more; new since yesterday's huddle. */
  needLift: z.array(huddleLine),
  overdue: z.array(huddleLine),
  holds: z.array(huddleLine),
  notUp: z.array(huddleLine),
  twoPeople: z.array(huddleLine),
  arrived: z.array(huddleLine),
  /** The board that `changes` starts from: at the last huddle, or 24 h ago where none was held. */
  since: z.strictObject({ at: z.number(), held: z.boolean(), by: staffId.nullable() }),
  changes: z.array(huddleLine.extend({ kind: changeKind })),
  holdsToday: z.array(huddleLine),
  /** Who leaves within 48 h and is short of their goal; and how many leave who are not. */
  leavingShort: z.array(huddleLine),
  leavingOthers: z.number().int(),
  actions: z.array(huddleAction),
  expected: z.array(expectedPage),
  totals: z.strictObject({
    occupied: z.number().int(),
    away: z.number().int(),
    empty: z.number().int(),
    notKnown: z.number().int(),
    sessionsDone: z.number().int(),
    sessionsNotDone: z.number().int(),
    notRecorded: z.number().int(),
    goalsMet: z.number().int(),
    /** How often somebody said today that the board is wrong. */
    boardWrong: z.number().int(),
  }),
});
export type HuddlePage = z.infer<typeof huddlePage>;

export const boardPage = z.strictObject({
  ward: wardId,
  feed: z.number().int(),
  p: z.number().int(),
  t: z.number(),
  board: boardView,
});
export type BoardPage = z.infer<typeof boardPage>;
