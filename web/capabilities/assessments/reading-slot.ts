/** One reading while it is typed: what is asked for it, what was typed, and when it was taken. */
import type { EpochMs } from '@footboard/shared/kernel/times';

export interface SlotField {
  readonly key: string;
  readonly says: string;
  readonly unit: string;
  readonly whole: boolean;
  /** May stay empty in a slot that is otherwise filled. */
  readonly optional?: boolean;
}
export interface SlotKind {
  readonly id: string;
  readonly says: string;
  readonly fixed: Readonly<Record<string, unknown>>;
  readonly fields: readonly SlotField[];
}
export interface SlotValue {
  readonly values: Readonly<Record<string, number>>;
  /** When it was taken: when its first figure was typed, unless it was said to be taken before that. */
  readonly at: EpochMs;
  /** How many minutes ago it was said to be taken; absent when nothing was said. */
  readonly minutesAgo?: number;
  /** When it was typed, where `at` is another time. */
  readonly typed?: EpochMs;
}
export type ReadingSlots = Readonly<Record<string, SlotValue>>;
