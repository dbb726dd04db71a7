/** What this process has of a ward's board: the last that was committed, for its screens as a snapshot or as linked patches. */
import type { WardId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Patch, Snapshot } from '@footboard/shared/wire/messages';
import type { BoardImage } from './board-image.ts';
import { patchOver, sameCheckpoint } from './commit.ts';
import { LogHead } from './log-head.ts';
import { PatchHistory } from './patch-history.ts';
import type { RunnerPorts } from './runner-ports.ts';
import { CheckpointMoved, FEED_KEPT, FEED_NAMED } from './store-port.ts';
import type { Commit, Standing } from './store-port.ts';
import { Waiters } from './waiters.ts';

const PRUNE_EVERY = 200;

export class BoardHere {
  readonly #ports: RunnerPorts;
  readonly #head = new LogHead();
  readonly #history = new PatchHistory();
  readonly #waiters: Waiters;
  #standing: Standing | null = null;
  #evaluatedAt: EpochMs = 0;

  constructor(
    readonly ward: WardId,
    ports: RunnerPorts,
  ) {
    this.#ports = ports;
    this.#waiters = new Waiters(ports.timers);
  }

  get standing(): Standing | null {
    return this.#standing;
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
  waitNoMore(): void {
    this.#waiters.giveUp();
  }

  noteHead(head: number): void {
    this.#head.note(head, this.projected, () => this.#ports.clock.now());
  }

  /** As it was stored before this process began. */
  found(standing: Standing | null): void {
    this.#standing = standing;
  }

  /** Nothing differs at this instant: only how old the evaluation is. */
  sameAt(t: EpochMs, checkpoint: Standing['checkpoint'], image: BoardImage): void {
    this.#standing = { checkpoint, image };
    this.#evaluatedAt = t;
  }

  stand(commit: Commit): void {
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
  async adopt(): Promise<void> {
    const stored = await this.#ports.store.standing(this.ward);
    const before = this.#standing;
    if (sameCheckpoint(stored, before)) throw new CheckpointMoved(this.ward);
    this.#standing = stored;
    if (!stored?.image || !before || stored.checkpoint.feed <= before.checkpoint.feed) {
      this.#moved(null);
      return;
    }
    this.#evaluatedAt = stored.checkpoint.evaluatedAt;
    this.#moved(patchOver(this.ward, before, stored.checkpoint, stored.image));
  }

  #moved(patch: Patch | null): void {
    this.noteHead(this.projected);
    if (patch) {
      this.#history.add(patch);
      this.#ports.tell(patch);
    }
    this.#waiters.reached(this.projected);
  }
}
