/**
 * What a huddle compares with, read from the log: the board as it was known at the last huddle, and
 * what happened since that may be answered by now. Both change only with the next huddle or the next
 * entry, so the board is kept: it is asked for again on every change of the ward.
 */
import type { BoardView } from '@footboard/shared/capabilities/board/view';
import { effectiveFacts } from '@footboard/shared/capabilities/corrections/rules/effective';
import type { Happened } from '@footboard/shared/capabilities/dayplan/rules/changes';
import { foldHuddle } from '@footboard/shared/capabilities/dayplan/rules/huddle-state';
import type { ExpectedArrival, HuddleState } from '@footboard/shared/capabilities/dayplan/rules/huddle-state';
import { sinceWhen } from '@footboard/shared/capabilities/dayplan/rules/review';
import { planInWords } from '@footboard/shared/capabilities/dayplan/rules/plan-words';
import { TRIGGER_WORDS } from '@footboard/shared/capabilities/orders/rules/triggers';
import type { TriggerKind } from '@footboard/shared/capabilities/orders/values';
import { evaluateStay } from '@footboard/shared/capabilities/board/rules/evaluate-stay';
import { stayOf, streamKey } from '@footboard/shared/kernel/event-type';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { HuddlePage } from '@footboard/shared/wire/http';
import type { Streams } from '../../commanding/streams.ts';
import type { Log } from '../../log/log.ts';
import type { BoardsAsOf } from '../board/queries.ts';
import { standingOf } from '../stays/standing.ts';

/** What is spoken of at a huddle also when it has been answered since (users' research: post-op, fallen). */
const SPOKEN_OF: ReadonlySet<TriggerKind> = new Set([
  'fall',
  'faint',
  'seizure',
  'return-from-surgery',
  'step-down-from-intensive-care',
]);
const PAGE = 1_000;
const KEPT = 20;

export class Reviews {
  readonly #boards = new Map<string, Promise<BoardView>>();
  readonly #positions = new Map<string, Promise<number>>();

  constructor(private readonly ports: { boards: BoardsAsOf; log: Log; streams: Streams }) {}

  /** What the ward's own stream says of its huddles now. */
  async state(ward: WardId): Promise<HuddleState> {
    const stream = streamKey('ward', ward);
    const read = await this.ports.streams.read([{ ward, stream }]);
    return foldHuddle(read.slice(ward, stream).events);
  }

  /** @returns the board of then and the position of the log that was known */
  async before(
    ward: WardId,
    state: HuddleState,
    t: EpochMs,
  ): Promise<{ board: BoardView; position: number }> {
    const since = sinceWhen(state, t);
    const position =
      since.position ??
      (await kept(this.#positions, `${ward} ${since.at}`, () => this.#knownAt(ward, since.at)));
    const board = await kept(this.#boards, `${ward} ${position} ${since.at}`, () =>
      this.ports.boards.boardAsOf(ward, position, since.at),
    );
    return { board, position };
  }

  /** Falls and the like recorded after `position`, as they count now: corrected and taken back ones as such. */
  async happened(ward: WardId, position: number): Promise<readonly Happened[]> {
    const { log } = this.ports;
    const stays = new Set<string>();
    for (let after = position; ;) {
      const page = await log.readPage(ward, after, PAGE);
      for (const event of page) {
        const stay = stayOf(event.stream);
        if (stay && (event.type === 'trigger-recorded' || event.type === 'correction-made')) stays.add(stay);
      }
      if (page.length < PAGE) break;
      after = page.at(-1)!.position;
    }
    if (stays.size === 0) return [];
    const streams = await log.readStreams(
      ward,
      [...stays].map((stay) => streamKey('stay', stay)),
    );
    return [...streams.values()].flatMap(({ stream, version, events }) => {
      const stay = stayOf(stream)!;
      return effectiveFacts({ stay, version, events })
        .facts.filter((fact) => fact.type === 'trigger-recorded' && fact.position > position)
        .flatMap((fact) => {
          const { kind } = fact.data as { kind: TriggerKind };
          return SPOKEN_OF.has(kind)
            ? [{ stay, event: fact.id, at: fact.occurred, words: TRIGGER_WORDS[kind] }]
            : [];
        });
    });
  }

  /** Each expected arrival, with the last plan of the stay it comes from: history, not confirmed here. */
  async expected(state: HuddleState, t: EpochMs): Promise<HuddlePage['expected']> {
    const all = [...state.expected.values()].toSorted((a, b) => a.at - b.at);
    return Promise.all(
      all.map(async ({ previous, ...one }) => ({
        ...one,
        previous: previous && (await this.#history(previous, t)),
      })),
    );
  }

  async #history(
    { ward, stay }: NonNullable<ExpectedArrival['previous']>,
    t: EpochMs,
  ): Promise<HuddlePage['expected'][number]['previous']> {
    const stream = streamKey('stay', stay);
    const read = await this.ports.streams.read([
      { ward, stream: streamKey('ward', ward) },
      { ward, stream },
    ]);
    const { state, calendar } = read.ward(ward);
    const { version, events } = read.slice(ward, stream);
    const record = { stay, version, events };
    // A stay that is over is seen as at its end: what would have run out since is no news.
    const ended = standingOf(record)?.ended ?? null;
    const asOf = ended === null ? t : Math.min(ended, t);
    const view = state && calendar && version > 0 ? evaluateStay(record, state, calendar, asOf).view : null;
    return {
      ward,
      stay,
      wardName: state?.name ?? ward,
      plan: view ? planInWords(view) : [],
      asOf,
    };
  }

  /** The last position recorded by an instant: recorded times never fall along the log. */
  async #knownAt(ward: WardId, at: EpochMs): Promise<number> {
    let low = 0;
    let high = await this.ports.log.head(ward);
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      const [event] = await this.ports.log.readPage(ward, middle - 1, 1);
      if (event && event.recorded <= at) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}
export const REVIEWS = Symbol('Reviews');

/** Made once a key; a failed making is not kept. */
function kept<T>(all: Map<string, Promise<T>>, key: string, make: () => Promise<T>): Promise<T> {
  let one = all.get(key);
  if (!one) {
    one = make();
    one.catch(() => all.delete(key));
    all.set(key, one);
    if (all.size > KEPT) all.delete(all.keys().next().value!);
  }
  return one;
}
