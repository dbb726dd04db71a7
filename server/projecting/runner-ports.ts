/** What a ward's runner is given, and how it is asked to build its board again. */
import type { WardId } from '@footboard/shared/kernel/ids';
import type { Patch } from '@footboard/shared/wire/messages';
import type { Log } from '../log/log.ts';
import type { Clock } from '../platform/clock.ts';
import type { ReplayTimes } from './replay.ts';
import type { ProjectionStore } from './store-port.ts';
import type { Timers } from './timers.ts';

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
