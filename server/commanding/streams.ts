/**
 * Step 3 of the recipe: the streams a decision reads, in one round trip a ward. Events never change,
 * so what was read once is kept and only newer events are fetched; the log is asked every time, so
 * a decision never rests on a kept copy alone.
 */
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { LoggedEvent, StreamKey } from '@footboard/shared/kernel/event-type';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { wardCalendar } from '@footboard/shared/capabilities/wards/rules/calendar';
import { foldWard } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { Log, StreamSlice } from '../log/log.ts';
import type { StreamNeed } from './decider.ts';

type Key = `${WardId} ${StreamKey}`;
const keyOf = (ward: WardId, stream: StreamKey): Key => `${ward} ${stream}`;

interface KeptWard {
  readonly version: number;
  readonly state: WardState | null;
  readonly calendar: WardCalendar | null;
}

/** What was read for one decision. A stream that was not asked for is a mistake of the decider. */
export interface StreamsRead {
  slice(ward: WardId, stream: StreamKey): StreamSlice;
  ward(id: WardId): KeptWard;
  has(ward: WardId, stream: StreamKey): boolean;
  /** Every stream of this ward that was read, with the version it was read at. */
  versions(ward: WardId): readonly { readonly stream: StreamKey; readonly version: number }[];
}

export const STREAMS = Symbol('Streams');

export class Streams {
  readonly #kept = new Map<Key, StreamSlice>();
  readonly #wards = new Map<WardId, KeptWard>();

  constructor(
    private readonly log: Log,
    private readonly keepAtMost = 500,
  ) {}

  async read(needs: readonly StreamNeed[]): Promise<StreamsRead> {
    const byWard = new Map<WardId, Set<StreamKey>>();
    for (const { ward, stream } of needs) {
      const streams = byWard.get(ward) ?? new Set();
      byWard.set(ward, streams.add(stream));
    }
    const slices = new Map<Key, StreamSlice>();
    await Promise.all(
      [...byWard].map(async ([ward, streams]) => {
        for (const slice of await this.#readWard(ward, [...streams])) {
          slices.set(keyOf(ward, slice.stream), slice);
        }
      }),
    );
    const wards = new Map<WardId, KeptWard>();
    for (const ward of byWard.keys()) {
      const slice = slices.get(keyOf(ward, streamKey('ward', ward)));
      if (slice) wards.set(ward, this.#fold(ward, slice));
    }
    const nothing: KeptWard = { version: 0, state: null, calendar: null };
    return {
      slice(ward, stream) {
        const slice = slices.get(keyOf(ward, stream));
        if (!slice) throw new Error(`stream ${stream} was not among those the decision reads`);
        return slice;
      },
      ward: (id) => wards.get(id) ?? nothing,
      has: (ward, stream) => slices.has(keyOf(ward, stream)),
      versions: (ward) =>
        [...(byWard.get(ward) ?? [])].map((stream) => ({
          stream,
          version: slices.get(keyOf(ward, stream))!.version,
        })),
    };
  }

  /** The ward as it stands in the log now. */
  async ward(id: WardId): Promise<KeptWard> {
    const read = await this.read([{ ward: id, stream: streamKey('ward', id) }]);
    return read.ward(id);
  }

  async #readWard(ward: WardId, streams: readonly StreamKey[]): Promise<StreamSlice[]> {
    const kept = new Map<StreamKey, StreamSlice>();
    for (const stream of streams) {
      const slice = this.#kept.get(keyOf(ward, stream));
      if (slice) kept.set(stream, slice);
    }
    const after = new Map([...kept].map(([stream, slice]) => [stream, slice.version]));
    const read = await this.log.readStreams(ward, streams, after);
    return streams.map((stream) => {
      const slice = joined(stream, kept.get(stream), read.get(stream)?.events ?? []);
      if (slice.version > 0) this.#keep(keyOf(ward, stream), slice);
      return slice;
    });
  }

  #keep(key: Key, slice: StreamSlice): void {
    this.#kept.delete(key);
    this.#kept.set(key, slice);
    if (this.#kept.size > this.keepAtMost) this.#kept.delete(this.#kept.keys().next().value!);
  }

  #fold(ward: WardId, slice: StreamSlice): KeptWard {
    const kept = this.#wards.get(ward);
    if (kept && kept.version === slice.version) return kept;
    const newer = kept && kept.version < slice.version ? slice.events.slice(kept.version) : slice.events;
    const from = newer === slice.events ? null : kept!.state;
    const state = foldWard(ward, newer, from);
    const folded = { version: slice.version, state, calendar: state && wardCalendar(state) };
    if (slice.version > 0) this.#wards.set(ward, folded);
    return folded;
  }
}

/** What was kept, with the events that came after it. Versions in a stream run from 1 without a gap. */
function joined(stream: StreamKey, kept: StreamSlice | undefined, read: readonly LoggedEvent[]): StreamSlice {
  const version = kept?.version ?? 0;
  const newer = read.filter((event) => event.version > version);
  if (kept && newer.length === 0) return kept;
  const events = kept ? [...kept.events, ...newer] : newer;
  return { stream, version: events.at(-1)?.version ?? 0, events };
}
