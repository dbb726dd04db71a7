/**
 * Keeps one ward's board at the head of its log and at the present instant. One step at a time:
 * read on, evaluate, commit rows with checkpoint and patch, tell. What is in memory is derived:
 * after a failure inside the rules it is thrown away and read again.
 */
import type { WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Patch, Snapshot } from '@footboard/shared/wire/messages';
import { BoardFold } from './board-fold.ts';
import { imageOf } from './board-image.ts';
import { commitOf, patchOver, sameCheckpoint } from './commit.ts';
import { PatchHistory } from './patch-history.ts';
import { CheckpointMoved, FEED_KEPT, FEED_NAMED } from './store-port.ts';
import type { Commit, Standing, StayTotals } from './store-port.ts';
import { buildBeside } from './build-beside.ts';
import { LogHead } from './log-head.ts';
import { OneAtATime } from './one-at-a-time.ts';
import { readOn } from './replay.ts';
import { RunnerAlarms } from './runner-alarms.ts';
import type { RebuildOptions, RunnerPorts } from './runner-ports.ts';
import { nextState } from './runner-state.ts';
import type { RunnerSignal, RunnerState } from './runner-state.ts';
import { Waiters } from './waiters.ts';

const PRUNE_EVERY = 200;

export class WardRunner {
  readonly #ports: RunnerPorts;
  #state: RunnerState = 'idle';
  #fold: BoardFold | null = null;
  #standing: Standing | null = null;
  #loaded = false;
  #unread = true;
  #evaluatedAt: EpochMs = 0;
  #held = false;
  #wanted = false;
  readonly #queue = new OneAtATime();
  readonly #head = new LogHead();
  readonly #alarms: RunnerAlarms;
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
    this.#alarms = new RunnerAlarms(ports);
  }

  get state(): RunnerState {
    return this.#state;
  }
  get head(): number {
    return this.#head.position;
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
    return this.#head.trailingSince;
  }

  start(): Promise<void> {
    this.#signal('start');
    return this.#wake();
  }

  /** Ends after the step in hand; nothing is written afterwards. */
  async stop(): Promise<void> {
    this.#signal('stop');
    this.#alarms.off();
    this.#waiters.giveUp();
    await this.#queue.settled;
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
  async rebuild(options: RebuildOptions = {}): Promise<number> {
    const { fold, revision } = await buildBeside(this.#ports, this.ward, this.#standing, options);
    return this.#queue.run(() => this.#flipTo(fold, revision, options.totals === 'keep'));
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

  /** Asks for a pass. Any number of wakes while one is waiting to run make one pass. */
  #wake(): Promise<void> {
    if (this.#wanted || this.#state === 'idle' || this.#state === 'paused-on-failure')
      return this.#queue.settled;
    this.#wanted = true;
    return this.#queue.run(async () => {
      this.#wanted = false;
      if (this.#held || this.#state === 'idle' || this.#state === 'paused-on-failure') return;
      try {
        await this.#pass();
        this.#alarms.succeeded();
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
    this.#head.note(head, this.projected, () => this.#ports.clock.now());
  }

  #arm(nextChange: EpochMs | null): void {
    if (this.#state === 'idle') this.#alarms.disarm();
    else this.#alarms.arm(nextChange, () => void this.#wake());
  }

  #pause(error: unknown): void {
    this.#signal('failed');
    this.#ports.report(this.ward, error);
    this.#alarms.again(() => {
      this.#signal('retry');
      void this.#wake();
    });
  }
}
