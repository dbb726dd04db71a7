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
import { BoardHere } from './board-here.ts';
import { commitOf } from './commit.ts';
import { CheckpointMoved } from './store-port.ts';
import type { StayTotals } from './store-port.ts';
import { buildBeside } from './build-beside.ts';
import { OneAtATime } from './one-at-a-time.ts';
import { readOn } from './replay.ts';
import { RunnerAlarms } from './runner-alarms.ts';
import type { RebuildOptions, RunnerPorts } from './runner-ports.ts';
import { nextState } from './runner-state.ts';
import type { RunnerSignal, RunnerState } from './runner-state.ts';

export class WardRunner {
  readonly #ports: RunnerPorts;
  #state: RunnerState = 'idle';
  #fold: BoardFold | null = null;
  #loaded = false;
  #unread = true;
  #held = false;
  #wanted = false;
  readonly #queue = new OneAtATime();
  readonly #here: BoardHere;
  readonly #alarms: RunnerAlarms;
  /** Worked out and not committed yet. */
  #totals: StayTotals[] = [];

  constructor(
    readonly ward: WardId,
    ports: RunnerPorts,
  ) {
    this.#ports = ports;
    this.#here = new BoardHere(ward, ports);
    this.#alarms = new RunnerAlarms(ports);
  }

  get state(): RunnerState {
    return this.#state;
  }
  get head(): number {
    return this.#here.head;
  }
  get projected(): number {
    return this.#here.projected;
  }
  get feed(): number {
    return this.#here.feed;
  }
  get evaluatedAt(): EpochMs {
    return this.#here.evaluatedAt;
  }
  get trailingSince(): EpochMs | null {
    return this.#here.trailingSince;
  }

  start(): Promise<void> {
    this.#signal('start');
    return this.#wake();
  }

  /** Ends after the step in hand; nothing is written afterwards. */
  async stop(): Promise<void> {
    this.#signal('stop');
    this.#alarms.off();
    this.#here.waitNoMore();
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
    this.#here.noteHead(head);
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
    return this.#here.snapshot();
  }
  patchesSince(feed: number): Promise<readonly Patch[] | null> {
    return this.#here.patchesSince(feed);
  }
  waitFor(position: number, withinMs: number): Promise<boolean> {
    return this.#here.waitFor(position, withinMs);
  }

  /**
   * Builds the board again from the first event, beside what is in use, then serves that. Ward day
   * totals are built again too, or those of people who have left are carried over as they stand.
   * @returns the revision now in use.
   */
  async rebuild(options: RebuildOptions = {}): Promise<number> {
    const { fold, revision } = await buildBeside(this.#ports, this.ward, this.#here.standing, options);
    return this.#queue.run(() => this.#flipTo(fold, revision, options.totals === 'keep'));
  }

  /** Between two steps of the runner: the last few events, then the new revision takes over. */
  async #flipTo(fold: BoardFold, revision: number, keepTotals: boolean): Promise<number> {
    const totals: StayTotals[] = [];
    for (;;) {
      await readOn(fold, this.#ports.log);
      const before = this.#here.standing;
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
      this.#here.stand(commit);
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
      this.#here.found(await this.#ports.store.standing(this.ward));
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
    this.#here.noteHead(this.#fold.position);
  }

  /** False when another runner moved the checkpoint first. */
  async #evaluate(): Promise<boolean> {
    const fold = this.#fold!;
    if (!fold.hasWard) return true;
    const t = this.#ports.clock.now();
    const seen = fold.view(t);
    this.#totals.push(...seen.totals);
    const before = this.#here.standing;
    const image = imageOf(seen.board, before?.image);
    const revision = before?.checkpoint.revision ?? 1;
    const commit = commitOf(this.ward, before, image, { revision, position: fold.position, t }, this.#totals);
    const moved = before?.checkpoint.position !== fold.position;
    if (before && !moved && !commit.patch && commit.totals.length === 0) {
      this.#here.sameAt(t, before.checkpoint, image);
    } else {
      try {
        await this.#ports.store.commit(commit);
      } catch (error) {
        if (error instanceof CheckpointMoved) return false;
        throw error;
      }
      this.#totals = [];
      this.#here.stand(commit);
    }
    this.#arm(seen.nextChange);
    return true;
  }

  /** Takes over what another runner committed, and what it read beyond. */
  async #adopt(): Promise<void> {
    this.#unread = true;
    await this.#here.adopt();
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
