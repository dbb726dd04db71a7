/**
 * A ward's facts folded up to a position, and its view at an instant. Holds no clock and writes
 * nothing: a live runner, a rebuild and a look into the past all fold through this one class.
 */
import {
  addRecord,
  emptyBoard,
  foldBoard,
  viewBoard,
} from '@footboard/shared/capabilities/board/rules/board';
import type { BoardState } from '@footboard/shared/capabilities/board/rules/board';
import type { BoardView } from '@footboard/shared/capabilities/board/view';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { LoggedEvent } from '@footboard/shared/kernel/event-type';
import type { StayId, WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Log } from '../log/log.ts';

export class BoardFold {
  readonly #log: Pick<Log, 'readStreams'>;
  readonly #state: BoardState;
  #position = 0;
  #touched = new Set<StayId>();
  #whole = true;

  constructor(
    readonly ward: WardId,
    log: Pick<Log, 'readStreams'>,
  ) {
    this.#log = log;
    this.#state = emptyBoard(ward);
  }

  /** Position of the last event folded. */
  get position(): number {
    return this.#position;
  }

  /** False after a failure inside the rules: half a page may be folded, begin again with a fresh fold. */
  get whole(): boolean {
    return this.#whole;
  }

  /** False until the ward has been set up: it has no board before that. */
  get hasWard(): boolean {
    return this.#state.wardState !== null;
  }

  /** Stays with new facts since the last view. */
  get touched(): ReadonlySet<StayId> {
    return this.#touched;
  }

  /** Folds the next page; its events follow `position` without a hole. */
  async take(events: readonly LoggedEvent[]): Promise<void> {
    const last = events.at(-1);
    if (!last) return;
    if (events[0]!.position !== this.#position + 1) {
      throw new Error(
        `ward ${this.ward}: event ${events[0]!.position} does not follow ${this.#position}: a hole in the log`,
      );
    }
    this.#whole = false;
    const { touched, missing } = foldBoard(this.#state, events);
    if (missing.size > 0) await this.#addMissing(missing, last.position);
    for (const stay of touched) this.#touched.add(stay);
    this.#position = last.position;
    this.#whole = true;
  }

  /** A stay in a bed whose earlier events were not folded here: its whole stream, up to this position. */
  async #addMissing(missing: ReadonlySet<StayId>, upTo: number): Promise<void> {
    const streams = await this.#log.readStreams(
      this.ward,
      [...missing].map((stay) => streamKey('stay', stay)),
    );
    for (const stay of missing) {
      const events =
        streams.get(streamKey('stay', stay))?.events.filter((event) => event.position <= upTo) ?? [];
      addRecord(this.#state, { stay, version: events.at(-1)?.version ?? 0, events });
    }
  }

  /** The board at an instant; rows of stays without new facts are the same objects as before while they hold. */
  view(t: EpochMs): { readonly board: BoardView; readonly nextChange: EpochMs | null } {
    this.#whole = false;
    const seen = viewBoard(this.#state, t, this.#touched);
    this.#touched = new Set();
    this.#whole = true;
    return seen;
  }
}
