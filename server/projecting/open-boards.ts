/** All wards' boards: one runner a ward, one poll for all, and the heartbeat's facts. */
import type { BoardView } from '@footboard/shared/capabilities/board/view';
import type { WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import type { WardId } from '@footboard/shared/kernel/ids';
import { SECOND } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Patch } from '@footboard/shared/wire/messages';
import type { Log } from '../log/log.ts';
import type { Clock } from '../platform/clock.ts';
import type { Database } from '../platform/database.ts';
import { BoardFold } from './board-fold.ts';
import type { Boards } from './board.ts';
import { openProjectionStore } from './projection-store.ts';
import { boardAsOf } from './replay.ts';
import type { RunnerState } from './runner-state.ts';
import { systemTimers } from './timers.ts';
import type { Timers } from './timers.ts';
import { WardRunner } from './ward-runner.ts';
import type { RebuildOptions } from './runner-ports.ts';

export interface OpenBoards {
  readonly log: Log;
  readonly database: Pick<Database, 'kysely' | 'query'>;
  readonly clock: Clock;
  readonly timers?: Timers;
  readonly demo?: boolean;
  /** Told of each failed pass or poll; nothing by default. Carries no personal data. */
  readonly report?: (place: string, error: unknown) => void;
}

export interface WardThen {
  readonly ward: WardState | null;
  readonly calendar: WardCalendar | null;
  board(t: EpochMs): BoardView;
}

export interface RunningBoards extends Boards {
  /** Resolves when every ward there is now has caught up. Bells are heard before history is read. */
  start(): Promise<void>;
  stop(): Promise<void>;
  stateOf(ward: WardId): RunnerState | null;
  /** The board as known at position `p`, seen at `t`; read from the log alone. */
  boardAsOf(ward: WardId, p: number, t: EpochMs): Promise<BoardView>;
  /** The ward as known at position `p`: its settings, and its board at any instant; read from the log alone. */
  wardThen(ward: WardId, p: number): Promise<WardThen>;
  /**
   * Builds the ward's board again from its first event, beside the one in use, then serves it.
   * @returns the revision now in use.
   */
  rebuild(ward: WardId, options?: RebuildOptions): Promise<number>;
  /** For tests: what a stuck projector looks like. */
  pauseProjector(ward: WardId): void;
  resumeProjector(ward: WardId): void;
}

const POLL_EVERY = SECOND;
const nothing = () => {};

export function openBoards(options: OpenBoards): RunningBoards {
  const { log, clock, timers = systemTimers, demo = false, report = nothing } = options;
  const store = openProjectionStore(options.database);
  const runners = new Map<WardId, WardRunner>();
  const listeners = new Set<(patch: Patch) => void>();
  let readAt: EpochMs = 0;
  let running = false;
  let stopBells: () => void = nothing;
  let cancelPoll: () => void = nothing;

  const tell = (patch: Patch) => {
    for (const listener of listeners) {
      try {
        listener(patch);
      } catch (error) {
        report(`screens of ward ${patch.ward}`, error);
      }
    }
  };

  function runnerOf(ward: WardId): WardRunner {
    const known = runners.get(ward);
    if (known) return known;
    const runner = new WardRunner(ward, {
      log,
      store,
      clock,
      timers,
      tell,
      report: (of, error) => report(`board of ward ${of}`, error),
    });
    runners.set(ward, runner);
    return runner;
  }

  /** Starts a ward that appears later with its first event. */
  function bell(ward: WardId): void {
    if (!running) return;
    const known = runners.get(ward);
    if (known) known.bell();
    else void runnerOf(ward).start();
  }

  /**
   * One cheap read for all wards. `readAt` moves only when the database really answered; a poll
   * that hangs is not followed by another, so the age shows.
   */
  async function poll(): Promise<void> {
    try {
      const heads = await log.heads();
      readAt = clock.now();
      for (const [ward, head] of heads) {
        const known = runners.get(ward);
        if (!known && head > 0) void runnerOf(ward).start();
        known?.polled(head);
      }
    } catch (error) {
      report('reading the heads of the logs', error);
    }
    if (running) cancelPoll = timers.after(POLL_EVERY, () => void poll());
  }

  return {
    async start() {
      running = true;
      stopBells = log.onGrowth(bell);
      const heads = await log.heads();
      readAt = clock.now();
      const wards = [...heads].filter(([, head]) => head > 0).map(([ward]) => ward);
      await Promise.all(wards.map((ward) => runnerOf(ward).start()));
      await poll();
    },
    async stop() {
      running = false;
      stopBells();
      cancelPoll();
      await Promise.all([...runners.values()].map((runner) => runner.stop()));
      runners.clear();
    },
    stateOf: (ward) => runners.get(ward)?.state ?? null,

    wards: () => [...runners.values()].filter((runner) => runner.snapshot()).map((runner) => runner.ward),
    snapshot: (ward) => runners.get(ward)?.snapshot() ?? null,
    patchesSince: async (ward, feed) => (await runners.get(ward)?.patchesSince(feed)) ?? null,
    carriedBy: (ward, positions) => store.carriedBy(ward, positions),
    heartbeat(ward) {
      const runner = runners.get(ward);
      if (!runner) return null;
      return {
        ward,
        clock: clock.now(),
        rate: clock.rate,
        head: runner.head,
        projected: runner.projected,
        feed: runner.feed,
        readAt,
        evaluatedAt: runner.evaluatedAt,
        trailingSince: runner.trailingSince,
        demo,
      };
    },
    onPatch(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    waitFor(ward, position, withinMs) {
      bell(ward);
      return runners.get(ward)?.waitFor(position, withinMs) ?? Promise.resolve(false);
    },

    boardAsOf: (ward, p, t) => boardAsOf(log, ward, p, t),
    async wardThen(ward, p) {
      const fold = await BoardFold.restore(ward, log, p);
      const { wardState, calendar } = fold.settings;
      return { ward: wardState, calendar, board: (t) => fold.boardAt(t) };
    },
    async rebuild(ward, how) {
      const runner = runners.get(ward);
      if (!runner) throw new Error(`ward ${ward} has no board to rebuild`);
      return runner.rebuild(how);
    },
    pauseProjector: (ward) => runners.get(ward)?.hold(true),
    resumeProjector: (ward) => runners.get(ward)?.hold(false),
  };
}
