import type { z } from 'zod';
import { Answered, problem } from '../commanding/problems.ts';
import { fieldErrors, inOneLine, unwritable } from '../commanding/validate.ts';
import { notJson } from './problem-filter.ts';

/**
 * A request's body against its schema of shared/wire.
 *
 * @throws Answered with `not-json` when there is no body, with `invalid-request` when it does not
 *   fit: one error a field, as JSON pointers (RFC 6901). What was sent is never said back.
 */
export function checked<Schema extends z.ZodType>(schema: Schema, body: unknown): z.output<Schema> {
  if (body === undefined) throw new Answered(notJson());
  const parsed = schema.safeParse(body);
  const errors = parsed.success ? unwritable(parsed.data) : fieldErrors(parsed.error.issues, body);
  if (parsed.success && errors.length === 0) return parsed.data;
  throw new Answered(
    problem('invalid-request', inOneLine(errors), 'Put right the fields named in "errors" and send again.', {
      errors,
    }),
  );
}
