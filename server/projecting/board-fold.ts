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
import { foldWard, rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { LoggedEvent, StreamKey } from '@footboard/shared/kernel/event-type';
import type { StayId, WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Log } from '../log/log.ts';
import { DayTotals } from './day-totals.ts';
import type { StayTotals } from './store-port.ts';

type Reads = Pick<Log, 'readStreams'>;

/** What a fold gives at an instant. */
export interface Seen {
  readonly board: BoardView;
  /** The next instant at which the board can change without an event. */
  readonly nextChange: EpochMs | null;
  /** Ward day totals that changed since the last view. */
  readonly totals: readonly StayTotals[];
}

export class BoardFold {
  readonly #log: Reads;
  readonly #state: BoardState;
  readonly #totals = new DayTotals();
  #position = 0;
  #touched = new Set<StayId>();
  #whole = true;

  constructor(
    readonly ward: WardId,
    log: Reads,
  ) {
    this.#log = log;
    this.#state = emptyBoard(ward);
  }

  /**
   * The same fold without reading the whole log: the ward's own stream, the guard streams of its
   * beds, the streams of its equipment, and the streams of the stays that hold a bed, each up to `position`.
   */
  static async restore(ward: WardId, log: Reads, position: number): Promise<BoardFold> {
    const fold = new BoardFold(ward, log);
    const upTo = (events: readonly LoggedEvent[]) => events.filter((event) => event.position <= position);
    const read = async (streams: readonly StreamKey[]) =>
      upTo([...(await log.readStreams(ward, streams)).values()].flatMap(({ events }) => events));

    const wardEvents = await read([streamKey('ward', ward)]);
    const now = foldWard(ward, wardEvents);
    const apart = [
      ...(now?.beds ?? []).map(({ bed }) => streamKey('bed', bed)),
      ...[...(now?.items.keys() ?? [])].map((item) => streamKey('item', item)),
    ];
    const guards = apart.length > 0 ? await read(apart) : [];
    const events = [...wardEvents, ...guards].toSorted((a, b) => a.position - b.position);
    const { missing } = foldBoard(fold.#state, events);
    await fold.#addMissing(missing, position);
    fold.#position = position;
    return fold;
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

  /** The ward's own settings and clock, as they are known here. */
  get settings(): Pick<BoardState, 'wardState' | 'calendar'> {
    const { wardState, calendar } = this.#state;
    return { wardState, calendar };
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
    this.#totals.take(events);
    const partial = this.#totals.partial();
    if (missing.size > 0 || partial.length > 0) {
      await this.#addMissing(new Set([...missing, ...partial]), last.position);
    }
    for (const stay of touched) {
      this.#touched.add(stay);
      if (!this.#state.records.has(stay)) this.#totals.leaves(stay);
    }
    this.#position = last.position;
    this.#whole = true;
  }

  /** Stays whose earlier events were not folded here: their whole streams, up to this position. */
  async #addMissing(missing: ReadonlySet<StayId>, position: number): Promise<void> {
    if (missing.size === 0) return;
    const streams = await this.#log.readStreams(
      this.ward,
      [...missing].map((stay) => streamKey('stay', stay)),
    );
    for (const stay of missing) {
      const read = streams.get(streamKey('stay', stay))?.events ?? [];
      const events = read.filter((event) => event.position <= position);
      addRecord(this.#state, { stay, version: events.at(-1)?.version ?? 0, events });
      this.#totals.put(stay, events);
    }
  }

  /** Totals of stays that have left since the last view; a long replay hands them on page by page. */
  totalsOfLeft(t: EpochMs): readonly StayTotals[] {
    const { calendar, wardState } = this.#state;
    return calendar && wardState ? this.#totals.drainLeft(calendar, rulesOf(wardState), t) : [];
  }

  /** Drops the stays that have left without working out their totals. */
  forgetLeft(): readonly StayTotals[] {
    this.#totals.forgetLeft();
    return [];
  }

  /** The board at an instant and nothing beside it: for a look into the past. */
  boardAt(t: EpochMs): BoardView {
    return viewBoard(this.#state, t, this.#touched).board;
  }

  /** The board at an instant; parts that did not change are the same objects as before while they hold. */
  view(t: EpochMs): Seen {
    this.#whole = false;
    const { board, nextChange } = viewBoard(this.#state, t, this.#touched);
    const { calendar, wardState } = this.#state;
    const totals = calendar && wardState ? this.#totals.drain(calendar, rulesOf(wardState), t) : [];
    this.#touched = new Set();
    this.#whole = true;
    return { board, nextChange, totals };
  }
}
