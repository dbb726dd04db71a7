/** Everything a pure decision may know, gathered by the recipe. */
import type { LoggedEvent } from '@footboard/shared/kernel/event-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { Author, Role } from '@footboard/shared/kernel/author';
import { bedTaken } from '@footboard/shared/capabilities/wards/events';
import type { StayId, WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { TextToKeep } from '../log/log.ts';
import { freshId } from '../platform/ids.ts';
import type { DecideContext } from './decider.ts';
import type { Occurred } from './occurred.ts';
import type { StreamsRead } from './streams.ts';

export interface ContextParts {
  readonly wardId: WardId;
  readonly read: StreamsRead;
  readonly now: EpochMs;
  readonly occurred: Occurred;
  readonly fromOutbox: boolean;
  readonly author: Author;
  readonly entitled: Role;
}

/** A fresh context a decision: texts put aside by an earlier try of the same command are not kept. */
export function decideContext(parts: ContextParts): { context: DecideContext; texts: readonly TextToKeep[] } {
  const { wardId, read, occurred } = parts;
  const texts: TextToKeep[] = [];
  const { state, calendar } = read.ward(wardId);
  const context: DecideContext = {
    wardId,
    ward: state,
    calendar,
    slice: (stream, ward = wardId) => read.slice(ward, stream),
    stay(id) {
      const { version, events } = read.slice(wardId, streamKey('stay', id));
      return { stay: id, version, events };
    },
    occupant: (bed, ward = wardId) => occupantOf(read.slice(ward, streamKey('bed', bed)).events),
    otherWard: (id) => read.ward(id).state,
    now: parts.now,
    occurred: occurred.at,
    precision: occurred.precision,
    fromOutbox: parts.fromOutbox,
    author: parts.author,
    entitled: parts.entitled,
    newId: () => freshId(),
    keep(subject, text) {
      const ref = freshId();
      texts.push({ ref, subject, text });
      return { ref };
    },
  };
  return { context, texts };
}

/** The bed's guard stream ends in "taken" or "freed"; the last one tells. */
export function occupantOf(guard: readonly LoggedEvent[]): StayId | null {
  const last = guard.at(-1);
  return last?.type === bedTaken.name ? (last.payload as { stay: StayId }).stay : null;
}
