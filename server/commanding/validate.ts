/** Step 1 of the recipe: the body against its zod schema, each fault as a JSON pointer with its remedy. */
import { z } from 'zod';
import type { CommandEnvelope, CommandType } from '@footboard/shared/kernel/command-type';
import { commandBody } from '@footboard/shared/wire/routes';
import { Answered, problem } from './problems.ts';
import type { FieldError } from './problems.ts';

export interface ValidCommand {
  readonly envelope: CommandEnvelope;
  readonly data: unknown;
}

const bodies = new WeakMap<CommandType, z.ZodType>();

/** Schema of a command's whole body: the envelope with the command's own data in it. */
export function bodyOf(type: CommandType): z.ZodType<CommandEnvelope & { data: unknown }> {
  let body = bodies.get(type);
  if (!body) {
    body = commandBody(type);
    bodies.set(type, body);
  }
  return body as z.ZodType<CommandEnvelope & { data: unknown }>;
}

/** @throws Answered with `invalid-command`, one error a field */
export function validate(type: CommandType, body: unknown): ValidCommand {
  const parsed = parse(bodyOf(type), body);
  const errors = parsed.success ? unwritable(parsed.data) : fieldErrors(parsed.error.issues, body);
  if (!parsed.success || errors.length > 0) {
    throw new Answered(
      problem(
        'invalid-command',
        inOneLine(errors),
        'Put right the fields named in "errors" and send again.',
        { errors },
      ),
    );
  }
  const { data, ...envelope } = parsed.data;
  return { envelope, data };
}

function parse<T>(schema: z.ZodType<T>, body: unknown) {
  try {
    return schema.safeParse(body);
  } catch (error) {
    // A body nested thousands deep exhausts the stack of any recursive schema.
    if (!(error instanceof RangeError)) throw error;
    throw new Answered(
      problem('invalid-command', 'The body is nested too deeply.', 'Send the documented shape.', {
        errors: [{ pointer: '', detail: 'nested too deeply' }],
      }),
    );
  }
}

type Issue = z.core.$ZodIssue;

/** No more than these are named: an answer must not be many times as long as what was sent. */
const MOST_NAMED = 50;
const LONGEST_NAME = 100;

export const fieldErrors = (issues: readonly Issue[], body: unknown): FieldError[] =>
  issues
    .slice(0, MOST_NAMED)
    .flatMap((issue) => oneIssue(issue, body, []))
    .slice(0, MOST_NAMED);

/** NUL and half of a surrogate pair: JSON can carry them, but no UTF-8 text and no database (RFC 8785, 3.2.2.2). */
const NO_CHARACTER = /\0|\p{Surrogate}/u;

/** Texts and names of fields that cannot be written down as they are. */
export function unwritable(value: unknown, path: readonly PropertyKey[] = []): FieldError[] {
  if (typeof value === 'string') {
    return NO_CHARACTER.test(value)
      ? [
          {
            pointer: pointer(path),
            detail: 'this text holds something that is no character',
            remedy: 'write it again instead of copying it in',
          },
        ]
      : [];
  }
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value)
    .flatMap(([key, inner]) =>
      NO_CHARACTER.test(key) ? unwritable(key, path) : unwritable(inner, [...path, key]),
    )
    .slice(0, MOST_NAMED);
}

/** What is wrong, for the `detail` of a problem that names `errors`. */
export const inOneLine = (errors: readonly FieldError[]): string =>
  errors.length === 1
    ? `${errors[0]!.pointer || 'The body'}: ${errors[0]!.detail}`
    : `${errors.length < MOST_NAMED ? '' : 'At least '}${errors.length} fields need attention.`;

function oneIssue(issue: Issue, body: unknown, above: readonly PropertyKey[]): FieldError[] {
  const path = [...above, ...issue.path];
  const missing = valueAt(body, path) === undefined;
  if (issue.code === 'invalid_union' && issue.errors.length > 0 && !missing) {
    return closest(issue.errors).flatMap((inner) => oneIssue(inner, body, path));
  }
  const at = (remedy: string, detail = issue.message): FieldError => ({
    pointer: pointer(path),
    detail,
    remedy,
  });
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.slice(0, MOST_NAMED).map((key) =>
        key.length > LONGEST_NAME
          ? {
              pointer: pointer(path),
              detail: `there is a field with a name of ${key.length} characters, which is not known here`,
              remedy: 'leave it out',
            }
          : {
              pointer: pointer([...path, key]),
              detail: 'this field is not known here',
              remedy: 'leave it out, or check its spelling',
            },
      );
    case 'invalid_type':
      return [
        missing
          ? at(`send ${article(issue.expected)}`, 'this field is missing')
          : at(`send ${article(issue.expected)}`),
      ];
    case 'invalid_value':
      return [at(`send one of: ${issue.values.map(String).join(', ')}`)];
    case 'invalid_union':
      return [
        at(
          'send one of the documented forms',
          missing ? 'this field is missing' : 'this has none of the forms it may have',
        ),
      ];
    case 'too_small':
      return [at(`send ${issue.origin === 'number' ? 'at least' : 'a length of at least'} ${issue.minimum}`)];
    case 'too_big':
      return [at(`send ${issue.origin === 'number' ? 'at most' : 'a length of at most'} ${issue.maximum}`)];
    default:
      return [at('put it right as described')];
  }
}

/** Of a union's alternatives, the one the sender most likely meant: the fewest faults, the deepest first. */
function closest(alternatives: readonly (readonly Issue[])[]): readonly Issue[] {
  const misfit = (issues: readonly Issue[]) =>
    issues.filter((i) => i.path.length === 0 || i.code === 'unrecognized_keys').length * 100 + issues.length;
  return alternatives.toSorted((a, b) => misfit(a) - misfit(b))[0]!;
}

function valueAt(body: unknown, path: readonly PropertyKey[]): unknown {
  let value = body;
  for (const key of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<PropertyKey, unknown>)[key];
  }
  return value;
}

/** RFC 6901. */
export const pointer = (path: readonly PropertyKey[]): string =>
  path.map((part) => `/${String(part).replaceAll('~', '~0').replaceAll('/', '~1')}`).join('');

const article = (kind: string): string => (/^[aeiou]/.test(kind) ? `an ${kind}` : `a ${kind}`);
