/**
 * Keeps one ward's board at the head of its log and at the present instant. One step at a time:
 * read on, evaluate, commit rows with checkpoint and patch, tell. What is in memory is derived:
 * after a failure inside the rules it is thrown away and read again.
 */
import type { WardId } from '@footboard/shared/kernel/ids';
import { MINUTE, SECOND } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Patch, Snapshot } from '@footboard/shared/wire/messages';
import type { Log } from '../log/log.ts';
import type { Clock } from '../platform/clock.ts';
import { BoardFold } from './board-fold.ts';
import { imageOf } from './board-image.ts';
import { commitOf, patchOver, sameCheckpoint } from './commit.ts';
import { PatchHistory } from './patch-history.ts';
import { CheckpointMoved, FEED_KEPT, FEED_NAMED } from './store-port.ts';
import type { Commit, ProjectionStore, Standing, StayTotals } from './store-port.ts';
import { noTimes, readOn, replay } from './replay.ts';
import type { ReplayTimes } from './replay.ts';
import { nextState } from './runner-state.ts';
import type { RunnerSignal, RunnerState } from './runner-state.ts';
import type { Timers } from './timers.ts';
import { Waiters } from './waiters.ts';

export interface RunnerPorts {
  readonly log: Log;
  readonly store: ProjectionStore;
  readonly clock: Clock;
  readonly timers: Timers;
  tell(patch: Patch): void;
  /** A pass failed; the runner tries again by itself. */
  report(ward: WardId, error: unknown): void;
}

export interface RebuildOptions {
  /** `keep` carries the totals of people who have left over as they stand: quicker, when their rules are the same. */
  readonly totals?: 'build' | 'keep';
  /** Real milliseconds are added to it. */
  readonly times?: ReplayTimes;
}

const REARM_AT_LEAST = MINUTE;
const LONGEST_PAUSE = 8 * SECOND;
const PRUNE_EVERY = 200;
/** A view that claims to change at once must not keep the machine busy. */
const SHORTEST_WAIT = 20;

const nothing = () => {};

export class WardRunner {
  readonly #ports: RunnerPorts;
  #state: RunnerState = 'idle';
  #fold: BoardFold | null = null;
  #standing: Standing | null = null;
  #loaded = false;
  #unread = true;
  #head = 0;
  #evaluatedAt: EpochMs = 0;
  #trailingSince: EpochMs | null = null;
  #held = false;
  #wanted = false;
  #failures = 0;
  #queue: Promise<void> = Promise.resolve();
  #cancelAlarm: () => void = nothing;
  #cancelRetry: () => void = nothing;
  readonly #history = new PatchHistory();
  /** Worked out and not committed yet. */
  #totals: StayTotals[] = [];
  readonly #waiters: Waiters;

  constructor(
    readonly ward: WardId,
    ports: RunnerPorts,
  ) {
    this.#ports = ports;
    this.#waiters = new Waiters(ports.timers);
  }

  get state(): RunnerState {
    return this.#state;
  }
  get head(): number {
    return this.#head;
  }
  get projected(): number {
    return this.#standing?.checkpoint.position ?? 0;
  }
  get feed(): number {
    return this.#standing?.checkpoint.feed ?? 0;
  }
  get evaluatedAt(): EpochMs {
    return this.#evaluatedAt;
  }
  get trailingSince(): EpochMs | null {
    return this.#trailingSince;
  }

  start(): Promise<void> {
    this.#signal('start');
    return this.#wake();
  }

  /** Ends after the step in hand; nothing is written afterwards. */
  async stop(): Promise<void> {
    this.#signal('stop');
    this.#cancelAlarm();
    this.#cancelRetry();
    this.#waiters.giveUp();
    await this.#queue;
  }

  /** A bell: events may stand after the checkpoint. */
  bell(): void {
    this.#unread = true;
    this.#signal('log-grew');
    void this.#wake();
  }

  /** What a poll read. Also evaluates, so that the age of the evaluation is honest. */
  polled(head: number): void {
    this.#noteHead(head);
    if (head > this.projected) {
      this.#unread = true;
      this.#signal('log-grew');
    }
    void this.#wake();
  }

  /** Stops projecting while bells, polls and beats go on: what a stuck projector looks like from outside. */
  hold(held: boolean): void {
    this.#held = held;
    if (!held) void this.#wake();
  }

  snapshot(): Snapshot | null {
    const standing = this.#standing;
    if (!standing?.image || this.#evaluatedAt === 0) return null;
    return {
      ward: this.ward,
      feed: standing.checkpoint.feed,
      p: standing.checkpoint.position,
      t: this.#evaluatedAt,
      board: standing.image.view,
    };
  }

  patchesSince(feed: number): Promise<readonly Patch[] | null> {
    return this.#history.since(feed, this.feed, (after) => this.#ports.store.feedAfter(this.ward, after));
  }

  waitFor(position: number, withinMs: number): Promise<boolean> {
    return this.projected >= position ? Promise.resolve(true) : this.#waiters.wait(position, withinMs);
  }

  /**
   * Builds the board again from the first event, beside what is in use, then serves that. Ward day
   * totals are built again too, or those of people who have left are carried over as they stand.
   * @returns the revision now in use.
   */
  async rebuild({ totals = 'build', times = noTimes() }: RebuildOptions = {}): Promise<number> {
    const { log, store, clock } = this.#ports;
    const before = this.#standing;
    if (!before) throw new Error(`ward ${this.ward} has no board yet to build beside`);
    const revision = before.checkpoint.revision + 1;
    await store.clearRevision(this.ward, revision);
    const write = (rows: readonly StayTotals[]) => store.putTotals(this.ward, revision, rows);
    const fold = await replay(log, this.ward, {
      times,
      totals: totals === 'build' ? { t: clock.now(), write } : undefined,
    });
    return this.#alone(() => this.#flipTo(fold, revision, totals === 'keep'));
  }

  /** Between two steps of the runner: the last few events, then the new revision takes over. */
  async #flipTo(fold: BoardFold, revision: number, keepTotals: boolean): Promise<number> {
    const totals: StayTotals[] = [];
    for (;;) {
      await readOn(fold, this.#ports.log);
      const before = this.#standing;
      if (before?.checkpoint.revision !== revision - 1) {
        throw new Error(`ward ${this.ward}: another rebuild was first; its board is in use`);
      }
      const t = this.#ports.clock.now();
      const seen = fold.view(t);
      totals.push(...seen.totals);
      const image = imageOf(seen.board, before.image);
      const commit = commitOf(this.ward, before, image, { revision, position: fold.position, t }, totals);
      try {
        await this.#ports.store.flip({ ...commit, before, keepTotals });
      } catch (error) {
        if (!(error instanceof CheckpointMoved)) throw error;
        await this.#adopt();
        continue;
      }
      this.#fold = fold;
      this.#totals = [];
      this.#stand(commit);
      this.#arm(seen.nextChange);
      return revision;
    }
  }

  #signal(signal: RunnerSignal): void {
    this.#state = nextState(this.#state, signal);
  }

  #alone<T>(work: () => Promise<T>): Promise<T> {
    const done = this.#queue.then(work);
    this.#queue = done.then(
      () => {},
      () => {},
    );
    return done;
  }

  /** Asks for a pass. Any number of wakes while one is waiting to run make one pass. */
  #wake(): Promise<void> {
    if (this.#wanted || this.#state === 'idle' || this.#state === 'paused-on-failure') return this.#queue;
    this.#wanted = true;
    return this.#alone(async () => {
      this.#wanted = false;
      if (this.#held || this.#state === 'idle' || this.#state === 'paused-on-failure') return;
      try {
        await this.#pass();
        this.#failures = 0;
      } catch (error) {
        this.#pause(error);
      }
    });
  }

  async #pass(): Promise<void> {
    this.#signal('read-on');
    if (!this.#loaded) {
      this.#standing = await this.#ports.store.standing(this.ward);
      this.#loaded = true;
    }
    for (;;) {
      await this.#readOn();
      if (await this.#evaluate()) break;
      // Another runner was first. Its checkpoint may be ahead: adopt what stands, then read on.
      await this.#adopt();
    }
    this.#signal('caught-up');
  }

  async #readOn(): Promise<void> {
    if (!this.#fold?.whole) {
      const { log } = this.#ports;
      this.#fold = await BoardFold.restore(this.ward, log, await log.head(this.ward));
      this.#unread = true;
    }
    if (!this.#unread) return;
    this.#unread = false;
    try {
      await readOn(this.#fold, this.#ports.log);
    } catch (error) {
      this.#unread = true;
      throw error;
    }
    this.#noteHead(this.#fold.position);
  }

  /** False when another runner moved the checkpoint first. */
  async #evaluate(): Promise<boolean> {
    const fold = this.#fold!;
    if (!fold.hasWard) return true;
    const t = this.#ports.clock.now();
    const seen = fold.view(t);
    this.#totals.push(...seen.totals);
    const before = this.#standing;
    const image = imageOf(seen.board, before?.image);
    const revision = before?.checkpoint.revision ?? 1;
    const commit = commitOf(this.ward, before, image, { revision, position: fold.position, t }, this.#totals);
    const moved = before?.checkpoint.position !== fold.position;
    if (before && !moved && !commit.patch && commit.totals.length === 0) {
      this.#standing = { checkpoint: before.checkpoint, image };
      this.#evaluatedAt = t;
    } else {
      try {
        await this.#ports.store.commit(commit);
      } catch (error) {
        if (error instanceof CheckpointMoved) return false;
        throw error;
      }
      this.#totals = [];
      this.#stand(commit);
    }
    this.#arm(seen.nextChange);
    return true;
  }

  #stand(commit: Commit): void {
    this.#standing = commit.after;
    this.#evaluatedAt = commit.after.checkpoint.evaluatedAt;
    this.#moved(commit.patch);
    const { feed, evaluatedAt } = commit.after.checkpoint;
    if (commit.patch && feed % PRUNE_EVERY === 0) {
      void this.#ports.store
        .pruneFeed(this.ward, evaluatedAt - FEED_KEPT, evaluatedAt - FEED_NAMED)
        .catch((error: unknown) => this.#ports.report(this.ward, error));
    }
  }

  /**
   * Takes over what another runner committed; screens here get it as one linked patch.
   * @throws CheckpointMoved when nothing moved after all: then trying again would never end.
   */
  async #adopt(): Promise<void> {
    const stored = await this.#ports.store.standing(this.ward);
    const before = this.#standing;
    if (sameCheckpoint(stored, before)) throw new CheckpointMoved(this.ward);
    this.#standing = stored;
    this.#unread = true;
    if (!stored?.image || !before || stored.checkpoint.feed <= before.checkpoint.feed) {
      this.#moved(null);
      return;
    }
    this.#evaluatedAt = stored.checkpoint.evaluatedAt;
    this.#moved(patchOver(this.ward, before, stored.checkpoint, stored.image));
  }

  #moved(patch: Patch | null): void {
    this.#noteHead(this.projected);
    if (patch) {
      this.#history.add(patch);
      this.#ports.tell(patch);
    }
    this.#waiters.reached(this.projected);
  }

  #noteHead(head: number): void {
    this.#head = Math.max(this.#head, head);
    if (this.#head <= this.projected) this.#trailingSince = null;
    else this.#trailingSince ??= this.#ports.clock.now();
  }

  /** The one scheduler of the ward: the next instant its view can change, at the clock's own rate. */
  #arm(nextChange: EpochMs | null): void {
    this.#cancelAlarm();
    if (this.#state === 'idle') return;
    const { clock, timers } = this.#ports;
    const wait = nextChange === null ? REARM_AT_LEAST : Math.ceil((nextChange - clock.now()) / clock.rate);
    this.#cancelAlarm = timers.after(
      Math.min(Math.max(wait, SHORTEST_WAIT), REARM_AT_LEAST),
      () => void this.#wake(),
    );
  }

  #pause(error: unknown): void {
    this.#signal('failed');
    this.#ports.report(this.ward, error);
    const pause = Math.min(SECOND * 2 ** this.#failures, LONGEST_PAUSE);
    this.#failures++;
    this.#cancelRetry();
    this.#cancelRetry = this.#ports.timers.after(pause, () => {
      this.#signal('retry');
      void this.#wake();
    });
  }
}
