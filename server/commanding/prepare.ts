/** Step 6 of the recipe, first half: from a decision to what the log appends. */
import { createHash } from 'node:crypto';
import canonicalize from 'canonicalize';
import type { CommandEnvelope, Refusal } from '@footboard/shared/kernel/command-type';
import type { NewEvent } from '@footboard/shared/kernel/event-type';
import type { EventId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import { toEpoch } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Voice } from '../capabilities/people/author-policy.ts';
import type { RefusalCode } from '@footboard/shared/capabilities/refusals';
import { eventTypeNamed } from '@footboard/shared/capabilities/registry';
import type { Problem } from '@footboard/shared/wire/http';
import type { AppendRequest, CommandOutcome, EventToAppend } from '../log/log.ts';
import { freshId } from '../platform/ids.ts';
import { refused } from './answers.ts';
import type { StoredResult } from './answers.ts';
import { timeTaken } from './occurred.ts';
import type { Occurred } from './occurred.ts';
import type { StreamsRead } from './streams.ts';

/**
 * SHA-256, hex, of the canonical (RFC 8785) validated body with the command's name and ward. Left out
 * is `fromOutbox`: a live entry whose answer was lost is sent again from the device's outbox, and
 * that is the same entry.
 */
export function bodyHash(ward: WardId, name: string, envelope: CommandEnvelope, data: unknown): string {
  const { fromOutbox: _way, ...said } = envelope;
  return createHash('sha256')
    .update(canonicalize({ ward, name, envelope: said, data })!, 'utf8')
    .digest('hex');
}

/** A valid command and who claims to say it. */
export interface Said {
  readonly ward: WardId;
  readonly name: string;
  readonly envelope: CommandEnvelope;
  readonly hash: string;
  readonly staff: StaffId;
  readonly deviceClock?: EpochMs;
}

/** The same, its author settled by the policy, with what the server adds to where it came from. */
export type Authored = Said & Voice;

/**
 * Numbers the decided events within their streams and checks each payload against its own schema.
 *
 * @throws Error when a decision made an event that its schema refuses, or wrote to a stream it did
 *   not read: a mistake in this program, so nothing is appended.
 */
export function eventsToAppend(
  said: Authored,
  occurred: Occurred,
  decided: readonly NewEvent[],
  read: StreamsRead,
): readonly EventToAppend[] {
  const { envelope, author } = said;
  const versions = new Map<string, number>();
  return decided.map((event) => {
    const ward = event.ward ?? said.ward;
    const key = `${ward} ${event.stream}`;
    const version = (versions.get(key) ?? read.slice(ward, event.stream).version) + 1;
    versions.set(key, version);
    const type = eventTypeNamed(event.type);
    const payload = type.schema.safeParse(event.payload);
    if (!payload.success) {
      const where = payload.error.issues.map((i) => `${i.path.join('/')} (${i.code})`).join(', ');
      throw new Error(`${said.name} decided a ${event.type} that its schema refuses at ${where}`);
    }
    return {
      ward,
      stream: event.stream,
      version,
      id: freshId() as EventId,
      type: type.name,
      schemaVersion: type.version,
      payload: payload.data,
      occurred: event.occurred ?? occurred.at,
      precision: occurred.precision,
      entered: toEpoch(envelope.entered.at),
      enteredOffsetMinutes: envelope.entered.offsetMinutes,
      author,
      source: { ...envelope.source, ...said.adds },
    };
  });
}

export const acceptedOutcome = (
  said: Authored,
  occurred: Occurred,
  events: readonly EventToAppend[],
): CommandOutcome => ({
  ...key(said),
  outcome: 'accepted',
  result: {
    events: events.map(({ ward, stream, version, id, type }) => ({ ward, stream, version, id, type })),
    ...timeTaken(occurred),
  } satisfies StoredResult,
});

/**
 * A rule's refusal is stored and answers every repeat. A role that may not do this at all is not:
 * it says nothing about the facts, and the same entry by another person must be free to go.
 */
export function refusedOutcome(said: Authored, refusal: Refusal): AppendRequest | { problem: Problem } {
  if (refusal.refused === ROLE_REFUSED) {
    const { problem } = refused(said.envelope.commandId, refusal, false);
    return { problem: { ...problem, status: 403 } };
  }
  return {
    command: { ...key(said), outcome: 'refused', result: refusal satisfies StoredResult },
    events: [],
  };
}
const ROLE_REFUSED = 'not-your-role' satisfies RefusalCode;

const key = ({ ward, name, envelope, hash, author }: Authored) => ({
  commandId: envelope.commandId,
  ward,
  name,
  bodyHash: hash,
  author,
});
