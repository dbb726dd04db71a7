/** Problem details (RFC 9457): every "no" of the server in one shape, with what to do about it. */
import type { CommandEnvelope, Refusal } from '@footboard/shared/kernel/command-type';
import type { CommandId } from '@footboard/shared/kernel/ids';
import type { Problem } from '@footboard/shared/wire/http';

export type FieldError = NonNullable<Problem['errors']>[number];

/** Problems that are not a room's rule: code, HTTP status, title. A room's refusals are in its refusals.ts. */
export const PROBLEMS = {
  'malformed-json': [400, 'The body is not JSON'],
  'malformed-address': [400, 'The address cannot be read'],
  'unreadable-request': [400, 'The request cannot be read'],
  'headers-too-large': [431, 'The address and the headers are too long'],
  'too-slow': [408, 'The request took too long'],
  'not-json': [415, 'The body is not marked as JSON'],
  'too-large': [413, 'The body is too large'],
  'invalid-command': [422, 'The command is not complete or not valid'],
  'invalid-query': [422, 'The address has a part that is not valid'],
  'time-in-future': [422, 'The time lies in the future'],
  'skipped-hour': [422, 'That time was skipped by the clock change'],
  'no-such-time': [422, 'There is no such day or time'],
  'repeated-hour': [422, 'That time came twice on the clock change'],
  'no-author': [401, 'Nobody is named as the author'],
  'unknown-author': [403, 'The author is not on the staff list of this ward'],
  'inactive-author': [403, 'The author is no longer active on this ward'],
  'sign-in-first': [401, 'Sign in first'],
  'not-allowed': [403, 'That is not yours to do'],
  'not-on-this-ward': [403, 'You are not on this ward'],
  'foreign-page': [403, 'The request does not come from a page of this server'],
  'wrong-sign-in': [401, 'Name and password do not belong together'],
  'wrong-password': [403, 'The password is not right'],
  'password-too-common': [422, 'That password is too well known'],
  'sign-in-name-taken': [409, 'That sign-in name is taken'],
  'invitation-over': [410, 'That link no longer works'],
  'badge-taken': [409, 'That badge belongs to somebody else'],
  'staff-has-account': [409, 'That person has an account already'],
  'no-such-account': [404, 'There is no such account'],
  'last-administrator': [409, 'Somebody must be able to keep the accounts'],
  'wrong-code': [403, 'The code is not right'],
  'code-locked': [423, 'Too many wrong codes'],
  'not-a-shared-device': [403, 'This device is not paired with a ward'],
  'no-such-pairing-code': [404, 'There is no such pairing code'],
  'no-such-device': [404, 'There is no such device'],
  'no-such-glass': [404, 'There is no such opening'],
  'own-glass': [403, 'Somebody else reviews that'],
  'sign-on-failed': [502, 'Single sign-on did not work'],
  'sign-on-away': [503, 'The single sign-on provider does not answer'],
  'sign-on-without-role': [403, 'Your groups give you no role here'],
  'invalid-request': [422, 'The request is not complete or not valid'],
  'too-many-requests': [429, 'Too many requests'],
  'stay-not-ended': [409, 'The stay has not ended'],
  conflict: [409, 'Something changed since you looked'],
  'command-id-reused': [422, 'The command id was used before for something else'],
  'no-such-page': [404, 'There is nothing at this address'],
  'no-such-ward': [404, 'There is no such ward'],
  'no-such-stay': [404, 'There is no such stay on this ward'],
  'no-such-command': [404, 'There is no such command'],
  'not-ready': [503, 'Not ready yet'],
  'database-away': [503, 'The database cannot be reached'],
  'outcome-unknown': [503, 'It is not known whether the entry was stored'],
  'text-erased': [409, 'The personal data of this person was erased'],
  broken: [500, 'The server made a mistake'],
} as const satisfies Record<string, readonly [status: number, title: string]>;
export type ProblemCode = keyof typeof PROBLEMS;

export function problem(
  code: ProblemCode,
  detail: string,
  remedy: string,
  more: { errors?: readonly FieldError[]; commandId?: CommandId } = {},
): Problem {
  const [status, title] = PROBLEMS[code];
  return {
    type: `/problems/${code}`,
    title,
    status,
    detail,
    remedy,
    ...(more.errors ? { errors: [...more.errors] } : {}),
    ...(more.commandId ? { commandId: more.commandId } : {}),
  };
}

/** A rule's "no": 422, its own code as the type, the field as a JSON pointer into the body. */
export function refusalProblem(
  refusal: Refusal,
  title: string,
  commandId: CommandId,
  repeated: boolean,
): Problem {
  const { refused, detail, remedy, field } = refusal;
  return {
    type: `/problems/${refused}`,
    title,
    status: 422,
    detail,
    remedy,
    ...(field === undefined ? {} : { errors: [{ pointer: `/data${field}`, detail, remedy }] }),
    commandId,
    repeated,
  };
}

/** Leaves the recipe early with an answer for the caller. Not a bug: it is never logged as one. */
export class Answered extends Error {
  /** @param retryAfter whole seconds until it is worth asking again (header Retry-After). */
  constructor(
    readonly answer: Problem,
    readonly retryAfter?: number,
  ) {
    super(answer.title);
    this.name = 'Answered';
  }
}

export const broken = (): Problem =>
  problem(
    'broken',
    'The entry could not be handled because of a mistake in this program. Nothing was stored.',
    'Keep the entry on paper and tell whoever runs Footboard; the server log has the particulars.',
  );

export const noSuchWard = (ward: string): Problem =>
  problem(
    'no-such-ward',
    `No ward has the id "${ward.slice(0, 64)}".`,
    'Choose one from /api/wards, or set the ward up first.',
  );

export const noSuchCommand = (name: string): Problem =>
  problem(
    'no-such-command',
    `No command is called "${name.slice(0, 64)}".`,
    'The commands are listed in /api/openapi.json.',
  );

/** `version` is how far the entries have gone; unknown when someone was faster by a moment. */
export function conflict({ expect, commandId }: CommandEnvelope, version?: number): Problem {
  const remedy = 'Look at what is new, then decide again and send it with the version you now see.';
  if (expect === 'latest') {
    return problem(
      'conflict',
      'Others were writing at the same moment, several times in a row. Nothing was stored.',
      'Send again with the same id.',
      { commandId },
    );
  }
  const detail =
    `This was decided looking at version ${expect.version}` +
    (version === undefined ? ', and another entry came first.' : `; it is now version ${version}.`);
  return problem('conflict', `${detail} Nothing was stored.`, remedy, {
    errors: [{ pointer: '/expect/version', detail, remedy }],
    commandId,
  });
}
