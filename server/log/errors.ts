import { AnswerLost, DatabaseUnreachable } from '../platform/database-errors.ts';
import { LogUnavailable, OutcomeUnknown } from './log.ts';

/** An entry names a text of someone whose key was destroyed: nothing was written. */
export class SubjectErased extends Error {
  constructor(subjects: readonly string[]) {
    super(`nothing more can be kept for ${subjects.join(', ')}: the personal data was erased`);
    this.name = 'SubjectErased';
  }
}

/** A read has no outcome to be unsure of: either way the log cannot be reached now. */
export const asReadError = (error: unknown): unknown =>
  error instanceof DatabaseUnreachable || error instanceof AnswerLost ? new LogUnavailable(error) : error;

/** Before sending nothing was written; after sending nobody knows until the command id is asked for. */
export const asAppendError = (error: unknown): unknown =>
  error instanceof DatabaseUnreachable
    ? new LogUnavailable(error)
    : error instanceof AnswerLost
      ? new OutcomeUnknown(error)
      : error;
