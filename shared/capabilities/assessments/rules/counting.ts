/**
 * Which of the things taken counts for the next session. The last by a qualified author does; of two
 * of one instant the stricter; from someone who may not free only what is as strict or stricter and newer
 * than that. Source: design, rule 2.
 */
import { isQualified } from '../../../kernel/author.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { StartView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';

export interface Taken {
  readonly at: EpochMs;
  readonly fact: Fact;
}

/** How strict something is: 0 nothing against, 1 ask first, 2 not now. */
export type Weigh<T> = (one: T) => number;

/** Null when nothing counts: nothing was taken, or only good things by someone who may not free. */
export function countingOf<T extends Taken>(taken: readonly T[], weigh: Weigh<T>): T | null {
  let since = -Infinity;
  for (const one of taken) if (one.at > since && isQualified(one.fact.author)) since = one.at;
  let counts: T | null = null;
  const stricter = (one: T): boolean => counts === null || weigh(one) > weigh(counts);
  for (const one of taken) {
    if (one.at === since && isQualified(one.fact.author) && stricter(one)) counts = one;
  }
  for (const one of taken) {
    if (one.at < since || isQualified(one.fact.author) || weigh(one) === 0) continue;
    // Of two as strict the newer: the older may be too old to stand, or answered by a check since.
    if (stricter(one) || (weigh(one) === weigh(counts!) && one.at > counts!.at)) counts = one;
  }
  return counts;
}

export type StartWhy = StartView['reasons'][number];
export const weightOf = (reasons: readonly { readonly word: StartWhy['word'] }[]): number =>
  reasons.reduce((most, r) => Math.max(most, r.word === 'not-now' ? 2 : 1), 0);

export interface CountingInput {
  /** Effective facts up to `t`, in order. */
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly rules: RulesDocument;
  /** When a check last cleared the start; null when the last one did not. */
  readonly clearedAt: EpochMs | null;
  readonly note: (at: EpochMs) => void;
}
/** Filled sign by sign. */
export interface Found {
  readonly reasons: StartWhy[];
  /** Signs with nothing that counts and is recent enough, with why. */
  readonly notTaken: string[];
  /** What counts and is too old. */
  readonly tooOld: EventId[];
}

/** Beyond a limit it stands, however old, until a newer one or a check that cleared the start after it. */
export const stillStands = (at: EpochMs, { clearedAt }: CountingInput): boolean =>
  clearedAt === null || clearedAt <= at;

/**
 * The one thing taken of a sign that is judged. Null when none counts, and when what counts is too
 * old to say anything of now; either is named in `found`, unless the sign is not asked for and was
 * never taken.
 */
export function judgedOf<T extends Taken>(
  taken: readonly T[],
  weigh: Weigh<T>,
  { name, hours, asked = true }: { readonly name: string; readonly hours: number; readonly asked?: boolean },
  input: CountingInput,
  found: Found,
): T | null {
  const counts = countingOf(taken, weigh);
  const until = (one: Taken): EpochMs => one.at + hours * HOUR;
  const isRecent = (one: Taken): boolean => until(one) > input.t;
  for (const one of taken) if (isRecent(one)) input.note(until(one));
  if (counts && isRecent(counts)) return counts;
  if (asked || counts) {
    const why = taken.some(isRecent)
      ? ' (again, by a nurse or therapist)'
      : taken.length > 0
        ? ` (older than ${hours} h)`
        : '';
    found.notTaken.push(name + why);
  }
  if (!counts) return null;
  found.tooOld.push(counts.fact.id);
  return weigh(counts) > 0 && stillStands(counts.at, input) ? counts : null;
}
