/** What the outbox keeps of one entry, and what an answer makes of it. */
import type { Problem } from '@footboard/shared/wire/http';
import type { PreparedCommand, Sent } from '../commanding/send-command.ts';

/**
 * `waiting`: no answer yet; it goes out again by itself.
 * `needs-sign-in`: it goes out when the one who made it has signed in.
 * `refused`: set aside until a person closes it or sends it again.
 */
export type OutboxState = 'waiting' | 'needs-sign-in' | 'refused';

export interface OutboxEntry {
  /** The command as it is sent; its id never changes while it waits. */
  readonly command: PreparedCommand;
  /** The words a person knows it by; never a person's name. */
  readonly says: string;
  readonly state: OutboxState;
  /** This device's clock when it was made (epoch ms). */
  readonly made: number;
  /** Its place among the entries of this browser. */
  readonly turn: number;
  /** Not before this instant of the device's clock: until then whoever made it may still undo it. */
  readonly sendsAt?: number;
  readonly tries: number;
  /** What the last try came to. */
  readonly problem: Problem | null;
}

/** Entries of one lane go out in the order they were made: those of one stay, or of a ward's own matters. */
export function laneOf({ ward, body }: PreparedCommand): string {
  const stay = (body.data as { stay?: unknown } | null)?.stay;
  return `${ward} ${typeof stay === 'string' ? stay : ''}`;
}

/** What an entry is after a try; null when the server has taken it. */
export function after(entry: OutboxEntry, sent: Sent): OutboxEntry | null {
  if (sent.kind === 'accepted') return null;
  const state: OutboxState =
    sent.kind === 'not-sent' ? 'waiting' : sent.problem.status === 401 ? 'needs-sign-in' : 'refused';
  return { ...entry, state, tries: entry.tries + 1, problem: sent.problem };
}

/** As it goes out: what did not reach the server at once says that it comes from an outbox. */
export const toSend = ({ command, tries }: OutboxEntry): PreparedCommand =>
  tries === 0 ? command : { ...command, body: { ...command.body, fromOutbox: true } };
