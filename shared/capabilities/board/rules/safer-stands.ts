/**
 * Design rule 2, on the whole view: an entry that came late or changed what was said, while something
 * that occurred at or after it is still open, does not lower help. The stay is looked at with the
 * entry as told and with it as if it might only make safer; the plans are joined and the two facts
 * shown as a conflict.
 */
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import { joinStarts } from '../../assessments/rules/may-start-now.ts';
import { standsAgainst, type Claim, type Restriction } from '../../corrections/rules/claims.ts';
import { holdsAsMuch } from '../../orders/rules/holds.ts';
import { asksMore, joinPlans, joinReasons } from '../../handling/rules/join-plans.ts';
import { GUARDS } from '../../stays/rules/scope.ts';
import type { TaskPlan, TierView } from '../moving-view.ts';
import type { StayView } from '../view.ts';
import { conflictWords, inOwnWords } from './in-own-words.ts';
import { withLesserGoal } from './lesser-goal.ts';
import { namingArrival } from './naming-arrival.ts';

export interface Evaluated {
  readonly view: StayView;
  /** The view is the same at every instant from the one asked about until this one; null for ever. */
  readonly nextChange: EpochMs | null;
}
export interface AsTold extends Evaluated {
  /** The entry of the arrival; null at an instant before it. */
  readonly arrival: EventId | null;
  /** What is in force at that instant and asks for more help. */
  readonly open: () => readonly Restriction[];
  readonly claims: readonly Claim[];
}
interface Against {
  readonly claim: Claim;
  readonly by: Restriction;
}

/** `ifOnlySafer`: the stay as if these entries were by someone who may only make it safer. */
export function withOpenClaims(
  told: AsTold,
  ifOnlySafer: (entries: ReadonlySet<EventId>) => AsTold,
): Evaluated {
  if (told.claims.length === 0) return { view: told.view, nextChange: told.nextChange };
  let { nextChange } = told;
  const look = (entries: Iterable<EventId>): AsTold => {
    const seen = ifOnlySafer(new Set(entries));
    nextChange = sooner(nextChange, seen.nextChange);
    const unnamed = told.arrival !== null && seen.arrival === null;
    return unnamed ? { ...seen, view: namingArrival(seen.view, told.arrival) } : seen;
  };

  // Every such entry there is: one that does not count may bring out another.
  const claims = new Map<EventId, Claim>();
  let safer = told;
  for (;;) {
    const before = claims.size;
    for (const claim of safer.claims) claims.set(claim.event, claim);
    if (claims.size === before) break;
    safer = look(claims.keys());
  }
  // What is open is asked with none of them counted: an entry must not itself close what stands
  // against it, nor two of them each other's. Those that nothing stands against count from there on.
  const against = new Map<EventId, Against>();
  for (;;) {
    const open = [...safer.open(), ...told.open()];
    const before = claims.size;
    against.clear();
    for (const claim of claims.values()) {
      const by = standsAgainst(claim, open);
      if (by) against.set(claim.event, { claim, by });
    }
    for (const event of claims.keys()) if (!against.has(event)) claims.delete(event);
    if (claims.size === before) break;
    safer = claims.size === 0 ? told : look(claims.keys());
  }
  // An entry that counts now may itself have brought out one that does not.
  for (;;) {
    const open = safer.open();
    const before = against.size;
    for (const claim of safer.claims) {
      const by = against.has(claim.event) ? null : standsAgainst(claim, open);
      if (by) against.set(claim.event, { claim, by });
    }
    if (against.size === before) break;
    safer = look(against.keys());
  }

  // One by one in the order in which they became known: what stood before each is not lowered by it.
  const inTurn = [...against.values()].toSorted(
    (a, b) => a.claim.recorded - b.claim.recorded || a.claim.position - b.claim.position,
  );
  const lowering: Against[] = [];
  const views = [told.view];
  for (let i = inTurn.length - 1; i >= 0; i--) {
    const without = i === 0 ? safer : look(inTurn.slice(i).map(({ claim }) => claim.event));
    if (lessHelp(without.view, views.at(-1)!)) lowering.unshift(inTurn[i]!);
    views.push(without.view);
  }
  // Joined even where nothing is lowered today: what is open or attached must still be there once
  // another fact that asks for as much is gone.
  const view = inOwnWords(
    views.reduce((all, one) => joined(one, all, against)),
    against,
  );
  return { view: lowering.length === 0 ? view : withConflicts(view, lowering, against), nextChange };
}

const sooner = (a: EpochMs | null, b: EpochMs | null): EpochMs | null =>
  a === null ? b : b === null ? a : Math.min(a, b);

/**
 * Whether the second view frees something that the first does not: less help in any task, by day or
 * by night, or less of what asks for help. The latter too, as another fact may ask for as much today.
 */
export function lessHelp(before: StayView, after: StayView): boolean {
  const gone = <T>(list: (view: StayView) => readonly T[], key: (one: T) => unknown): boolean => {
    const still = new Set(list(after).map((one) => JSON.stringify(key(one))));
    return list(before).some((one) => !still.has(JSON.stringify(key(one))));
  };
  return (
    before.scope.kind !== after.scope.kind ||
    (before.checkBeforeMoving && !after.checkBeforeMoving) ||
    (before.firstTimeUpPending && !after.firstTimeUpPending) ||
    (after.onOwn !== null && before.onOwn === null) ||
    (after.tier.notch ?? -1) > (before.tier.notch ?? -1) ||
    before.holds.some((was) => !after.holds.some((now) => holdsAsMuch(now, was))) ||
    gone(
      (view) => view.trust.openTriggers,
      (one) => one.event,
    ) ||
    gone(
      (view) => view.orders,
      (one) => one.order,
    ) ||
    gone(
      (view) => view.attachments,
      (one) => one,
    ) ||
    (['day', 'night'] as const).some((part) =>
      before.plan?.[part].some((was, i) => {
        const now = after.plan?.[part][i];
        return now === undefined || (was !== now && asksMore(was, now));
      }),
    )
  );
}

/** The two views of the same stay, whatever asks for more of each. */
function joined(safer: StayView, told: StayView, doubted: ReadonlyMap<EventId, Against>): StayView {
  // Outside the staged check there is no plan to join: the scope that guards more stands as a whole.
  const base = GUARDS.indexOf(told.scope.kind) > GUARDS.indexOf(safer.scope.kind) ? told : safer;
  const view: StayView = {
    ...base,
    tier: safer.plan && told.plan ? lowerTier(safer.tier, told.tier, doubted) : base.tier,
    trust: {
      state: lessTrusted(safer.trust.state, told.trust.state),
      openTriggers: union(safer.trust.openTriggers, told.trust.openTriggers, (o) => o.event),
      conflicts: union(safer.trust.conflicts, told.trust.conflicts, (c) => JSON.stringify(c)),
      because: joinReasons(safer.trust.because, told.trust.because),
    },
    holds: union(safer.holds, told.holds, (h) => JSON.stringify([h.hold, h.scope])),
    orders: union(safer.orders, told.orders, (o) => JSON.stringify(o)),
    attachments: union(safer.attachments, told.attachments, (a) => JSON.stringify(a)),
    cautions: union(safer.cautions, told.cautions, (c) => c.words),
    plan:
      safer.plan && told.plan
        ? {
            day: joinTasks(safer.plan.day, told.plan.day),
            night: joinTasks(safer.plan.night, told.plan.night),
          }
        : base.plan,
    checkBeforeMoving: safer.checkBeforeMoving || told.checkBeforeMoving,
    onOwn: safer.onOwn && told.onOwn,
    due: soonerDue(safer.due, told.due),
    firstTimeUpPending: safer.firstTimeUpPending || told.firstTimeUpPending,
    mayStart: safer.mayStart && told.mayStart ? joinStarts(safer.mayStart, told.mayStart) : base.mayStart,
  };
  return withLesserGoal(view, safer, told);
}

/** The two facts of each, in place of what the rooms say of an entry they were told not to count. */
function withConflicts(
  view: StayView,
  lowering: readonly Against[],
  doubted: ReadonlyMap<EventId, Against>,
): StayView {
  const shown = lowering.map(({ claim, by }) => ({
    question: claim.verb === 'late' ? 'late entry' : 'correction',
    safer: by.event,
    other: claim.event,
    words: conflictWords(claim),
  }));
  const others = view.trust.conflicts.filter((c) => !doubted.has(c.other));
  const reasons = view.trust.because.filter(
    (b) => b.rule !== 'trust/conflict' || others.some((c) => c.words === b.words && b.facts[1] === c.other),
  );
  const because = shown.map((c) => ({ rule: 'trust/conflict', facts: [c.safer, c.other], words: c.words }));
  return {
    ...view,
    // Nobody goes up while two entries disagree.
    proposal: view.proposal?.step === 'up' ? null : view.proposal,
    trust: {
      ...view.trust,
      state: lessTrusted(view.trust.state, 're-check'),
      conflicts: [...shown, ...others],
      because: [...because, ...reasons.filter((b) => b.rule !== 'trust/current')],
    },
  };
}

const TRUST: readonly StayView['trust']['state'][] = ['current', 're-check', 'not-known'];
const lessTrusted = (a: StayView['trust']['state'], b: StayView['trust']['state']) =>
  TRUST.indexOf(a) > TRUST.indexOf(b) ? a : b;
const URGENCY: readonly StayView['due']['state'][] = ['none', 'not-due', 'at-next-move', 'due', 'overdue'];
/** The more urgent of the two; of two as urgent, the one that was due first. */
const soonerDue = (a: StayView['due'], b: StayView['due']): StayView['due'] => {
  const more = URGENCY.indexOf(b.state) - URGENCY.indexOf(a.state);
  return more > 0 || (more === 0 && (b.at ?? Infinity) < (a.at ?? Infinity)) ? b : a;
};
const joinTasks = (a: readonly TaskPlan[], b: readonly TaskPlan[]): TaskPlan[] =>
  a.map((plan, i) => joinPlans(plan, b[i]!));

function union<T>(a: readonly T[], b: readonly T[], key: (one: T) => string): T[] {
  const known = new Set(a.map(key));
  return [...a, ...b.filter((one) => !known.has(key(one)))];
}

/** The lower of the two, by the author who said it. */
function lowerTier(safer: TierView, told: TierView, doubted: ReadonlyMap<EventId, Against>): TierView {
  if ((told.notch ?? -1) < (safer.notch ?? -1)) return told;
  const by = safer.because[0]?.facts.map((f) => doubted.get(f)?.claim.author).find((a) => a !== undefined);
  return by && safer.by ? { ...safer, by } : safer;
}
