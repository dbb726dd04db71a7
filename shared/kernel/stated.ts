import type { EventId } from './ids.ts';
import type { EpochMs } from './times.ts';

/** A value together with the fact it stands on. */
export interface Stated<T> {
  readonly value: T;
  readonly fact: EventId;
  readonly at: EpochMs;
}
