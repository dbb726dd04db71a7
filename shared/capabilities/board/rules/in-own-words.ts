/**
 * The rooms are asked what would be if a doubtful entry were by someone who may only make it safer, and
 * say so of its author. Here it is said as it is: by whom it was entered does not matter, that something
 * is still open against it does.
 */
import type { EventId } from '../../../kernel/ids.ts';
import type { Claim } from '../../corrections/rules/claims.ts';
import type { Because } from '../because.ts';
import type { StayView } from '../view.ts';

const WHAT: Readonly<Record<Claim['verb'], string>> = {
  late: 'Entered late',
  correction: 'An entry corrected',
  retraction: 'An entry withdrawn',
  confirmation: 'An entry confirmed',
};

/** The conflict between a doubtful entry and what is open against it, in words for both authors. */
export const conflictWords = ({ verb }: Claim): string =>
  `${WHAT[verb]}, and something that occurred at or after it is still open: the safer stands; tell both authors`;
const notCleared = ({ verb }: Claim): string =>
  `${WHAT[verb]}, and something that occurred at or after it is still open: what it cleared does not count`;

/** Rules whose reason is about who entered one of its facts, and what is said of a doubtful entry instead. */
const SAID: Readonly<Record<string, (claim: Claim) => string>> = {
  'tier/qualified-author': notCleared,
  'tier/one-leg-needs-therapist': notCleared,
  'trust/conflict': conflictWords,
  'next-check/conflict': conflictWords,
};

/** `doubted`: the claims that something stands against, by their entry. */
export function inOwnWords(
  view: StayView,
  doubted: ReadonlyMap<EventId, { readonly claim: Claim }>,
): StayView {
  const claimIn = (facts: readonly EventId[]): Claim | undefined =>
    facts.map((f) => doubted.get(f)?.claim).find((c) => c !== undefined);
  const reason = (b: Because): Because => {
    const claim = SAID[b.rule] && claimIn(b.facts);
    return claim ? { ...b, words: SAID[b.rule]!(claim) } : b;
  };
  const conflicts = view.trust.conflicts.map((c) => {
    const claim = doubted.get(c.other)?.claim;
    return claim ? { ...c, words: conflictWords(claim) } : c;
  });
  const { tier, trust, nextCheck } = view;
  return {
    ...view,
    tier: { ...tier, because: tier.because.map(reason) },
    trust: { ...trust, conflicts, because: trust.because.map(reason) },
    nextCheck: nextCheck && { ...nextCheck, because: nextCheck.because.map(reason) },
  };
}
