/** How a person may be moved, as a board shows it: cleared up to where, how far to believe it, what stops, with how many and what. */
import { z } from 'zod';
import { role } from '../../kernel/author.ts';
import { eventId, opaqueId, staffId, textRef } from '../../kernel/ids.ts';
import { side } from '../assessments/values.ts';
import { aidClass, people, task } from '../handling/values.ts';
import { holdReason, holdScope, triggerKind } from '../orders/values.ts';
import { attachmentKind } from '../stays/values.ts';
import { because } from './because.ts';

const epoch = z.number().int();

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
