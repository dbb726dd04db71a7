/** Which of those who are expected may be the person who arrives in a bed now. Pure; nobody is chosen by it. */
import type { HuddlePage } from '@footboard/shared/wire/http';
import { HOUR, type EpochMs } from '@footboard/shared/kernel/times';

export type Expected = HuddlePage['expected'][number];

/** Ours, no source: half a day early or late it is still likely the same person. */
export const WITHIN_MS = 12 * HOUR;

/** Those expected for this bed first, then those without a bed; within each the nearest time first. */
export const fitting = (expected: readonly Expected[], bed: string, now: EpochMs): readonly Expected[] =>
  expected
    .filter((one) => (one.bed === null || one.bed === bed) && Math.abs(one.at - now) <= WITHIN_MS)
    .toSorted(
      (a, b) =>
        Number(a.bed === null) - Number(b.bed === null) || Math.abs(a.at - now) - Math.abs(b.at - now),
    );
