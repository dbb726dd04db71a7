/**
 * Holds in force. Each hold id is its own question. Passing the review time frees nobody; only a
 * qualified person's "ended", naming the placing entry, does, and a renewal at or after it keeps the
 * hold. A hold placed by someone who may not free is reviewed within the ward's limit.
 */
import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import { HOUR, toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { HoldView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { holdEnded, holdPlaced, holdRenewed } from '../events.ts';
import { holdScope, type HoldScope } from '../values.ts';

type Placed = PayloadOf<typeof holdPlaced>;
interface Standing {
  readonly placed: Fact;
  readonly scope: HoldScope;
  readonly reviewAt: EpochMs;
  /** When somebody who may do so last placed or renewed it. */
  readonly said: EpochMs;
  readonly ended: boolean;
}

/** Scopes are listed from the narrowest to the widest; a wider one stops all that a narrower one stops. */
const width = (scope: HoldScope): number => holdScope.options.indexOf(scope);
const wider = (a: HoldScope, b: HoldScope): HoldScope => (width(a) >= width(b) ? a : b);

const keepsInBed = (scope: HoldScope): boolean => width(scope) >= width('out-of-bed');
/** Bed rest is reviewed daily, whatever later time was given: users' research 3a. The hours are the ward's. */
const daily = (said: EpochMs, { validity }: RulesDocument): EpochMs =>
  said + validity.holdReviewHours.value * HOUR;

/** `note` is told each later instant at which the answer changes by time alone. */
export function holdsInForce(
  facts: readonly Fact[],
  t: EpochMs,
  rules: RulesDocument,
  note: (at: EpochMs) => void,
): HoldView[] {
  const holds = new Map<string, Standing>();
  for (const fact of facts) {
    if (fact.type === 'hold-placed') {
      const p = fact.data as Placed;
      const last = holds.get(p.hold);
      const again = last && !last.ended;
      holds.set(p.hold, {
        placed: fact,
        scope: again ? wider(last.scope, p.scope) : p.scope,
        reviewAt: firstReview(fact, p, rules),
        said: fact.occurred,
        ended: false,
      });
    } else if (fact.type === 'hold-renewed') {
      const p = fact.data as PayloadOf<typeof holdRenewed>;
      const last = holds.get(p.hold);
      if (!last) continue;
      const renews = isQualified(fact.author);
      const reviewAt = renews ? toEpoch(p.reviewAt) : last.reviewAt;
      const said = renews ? fact.occurred : last.said;
      holds.set(p.hold, { ...last, reviewAt, said, ended: false });
    } else if (fact.type === 'hold-ended') {
      const p = fact.data as PayloadOf<typeof holdEnded>;
      const last = holds.get(p.hold);
      if (last && last.placed.id === p.placedBy && isQualified(fact.author)) {
        holds.set(p.hold, { ...last, ended: true });
      }
    }
  }
  const views: HoldView[] = [];
  for (const [hold, { placed, scope, ended, ...last }] of holds) {
    if (ended) continue;
    const reviewAt = keepsInBed(scope) ? Math.min(last.reviewAt, daily(last.said, rules)) : last.reviewAt;
    const p = placed.data as Placed;
    note(reviewAt);
    views.push({
      hold,
      scope,
      reason: p.reason,
      owner: p.owner,
      placedAt: placed.occurred,
      reviewAt,
      reviewDue: t >= reviewAt,
      event: placed.id,
      note: p.note ?? null,
    });
  }
  return views.toSorted((a, b) => width(b.scope) - width(a.scope) || (a.hold < b.hold ? -1 : 1));
}

/** Whatever its scope, such a hold stops every move until somebody looked: no lift replaces that. */
export const leavesBoneInDoubt = ({ reason }: Pick<HoldView, 'reason'>): boolean =>
  reason === 'fracture-unclear' || reason === 'after-fall';

/** Whether a hold still stops all that this one of the same id stopped, and leaves as much in doubt. */
export const holdsAsMuch = (now: HoldView, was: HoldView): boolean =>
  now.hold === was.hold &&
  width(now.scope) >= width(was.scope) &&
  (leavesBoneInDoubt(now) || !leavesBoneInDoubt(was));

function firstReview(fact: Fact, placed: Placed, rules: RulesDocument): EpochMs {
  const asked = toEpoch(placed.reviewAt);
  if (isQualified(fact.author)) return asked;
  return Math.min(asked, fact.occurred + rules.validity.aideHoldReviewHours.value * HOUR);
}
