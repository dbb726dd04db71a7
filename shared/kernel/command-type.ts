import { z } from 'zod';
import { commandId } from './ids.ts';
import { claimedSource } from './author.ts';
import { entered, occurredInput } from './times.ts';

/**
 * What every command carries around its own data. `expect` is `latest` (re-decided on a conflict,
 * at most three times) or the version of the main stream the person was looking at (a conflict goes
 * back to the person).
 */
export const commandEnvelope = z.strictObject({
  commandId,
  occurred: occurredInput,
  entered,
  source: claimedSource,
  expect: z.union([z.literal('latest'), z.strictObject({ version: z.number().int().min(0) })]),
  /** True for an entry that waited in a device's outbox. */
  fromOutbox: z.boolean().default(false),
});
export type CommandEnvelope = z.infer<typeof commandEnvelope>;

export interface CommandType<Name extends string = string, Schema extends z.ZodType = z.ZodType> {
  readonly name: Name;
  readonly data: Schema;
  /** One plain sentence for the API document. */
  readonly says: string;
}
export type DataOf<T> = T extends CommandType<string, infer S> ? z.infer<S> : never;

export const commandType = <const Name extends string, Schema extends z.ZodType>(
  name: Name,
  says: string,
  data: Schema,
): CommandType<Name, Schema> => ({ name, data, says });

/** Free text in a command. It is moved out of the event before anything is stored. */
export const freeText = z.string().trim().min(1).max(2_000);

/**
 * A rule's "no", as a value: a stable code, what is wrong, what to do about it, and the field of the
 * command it concerns (JSON pointer within `data`), so that a screen can point at it.
 */
export interface Refusal {
  readonly refused: string;
  readonly detail: string;
  readonly remedy: string;
  readonly field?: string;
}
