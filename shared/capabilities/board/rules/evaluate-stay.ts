/**
 * One stay as the board shows it: the rooms' rules put together. Pure: facts and an instant in, a
 * view with its reasons out, and the next instant at which that view can change by time alone.
 */
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import { earlyWarningOf, earlyWarningRises } from '../../assessments/rules/early-warning.ts';
import { mayStartNow } from '../../assessments/rules/may-start-now.ts';
import { meaningsMet } from '../../assessments/rules/meanings-met.ts';
import { nextCheckOf } from '../../assessments/rules/next-check.ts';
import { protocolInForce, protocolLookup, type ProtocolLookup } from '../../assessments/rules/protocol.ts';
import { judgeTier, tierWords, type TierInput, type TierJudgement } from '../../assessments/rules/tier.ts';
import type { Fact, StayRecord } from '../../corrections/facts.ts';
import { onlySafer } from '../../corrections/rules/claims.ts';
import { effectiveFacts, type Effective } from '../../corrections/rules/effective.ts';
import { capabilityOf } from '../../handling/rules/capability.ts';
import { planStay } from '../../handling/rules/plan.ts';
import type { PlanInput, Stated } from '../../handling/rules/types.ts';
import { measuresOf } from '../../measures/rules/measures-of.ts';
import { orderGoneBeyond } from '../../orders/rules/beyond-orders.ts';
import { holdsInForce } from '../../orders/rules/holds.ts';
import { ordersInForce, type OrdersInForce } from '../../orders/rules/orders.ts';
import { isCheck, triggersOf, type Triggers } from '../../orders/rules/triggers.ts';
import type { TriggerKind } from '../../orders/values.ts';
import {
  amountsOf,
  goalMet,
  lastEventOf,
  lastGoalSet,
  lastUpOf,
  longestWalkOf,
  sessionsOf,
  type DayAmounts,
  type SessionFact,
} from '../../sessions/rules/activity.ts';
import { movementDebt } from '../../sessions/rules/debt.ts';
import { firstTimeUpPending } from '../../sessions/rules/first-time-up.ts';
import { goalToday, type GoalInput, type GoalToday } from '../../sessions/rules/goals.ts';
import { proposalOf } from '../../sessions/rules/progression.ts';
import { attachmentsForPlan, standingOf, type Standing } from '../../stays/rules/standing.ts';
import type { WardCalendar, WardState } from '../../wards/context.ts';
import { rulesOf } from '../../wards/rules/ward-state.ts';
import type { HoldView, StayView, TaskPlan, TodayView, TrustView } from '../view.ts';
import { onOwnInForce, seenWalkingInForce, walkingSupportOf } from './on-own.ts';
import { restrictionsOf } from './restrictions.ts';
import { signsOf } from './signs.ts';
import { withOpenClaims, type AsTold, type Evaluated } from './safer-stands.ts';
import { trustAndDue } from './trust.ts';

export type { Evaluated };

/** The stay as the board shows it at `t`, from its whole stream. */
export function evaluateStay(
  record: StayRecord,
  ward: WardState,
  calendar: WardCalendar,
  t: EpochMs,
): Evaluated {
  return evaluateFacts(record, effectiveFacts(record), ward, calendar, t);
}

/**
 * The same from facts worked out earlier; they do not change with time. What came late or changed
 * what was said lowers help only where nothing stands against it (design rule 2).
 */
export function evaluateFacts(
  record: StayRecord,
  effective: Effective,
  ward: WardState,
  calendar: WardCalendar,
  t: EpochMs,
): Evaluated {
  const told = evaluateAsTold(record, effective, ward, calendar, t);
  if (effective.claims.length === 0) return told;
  return withOpenClaims(told, (entries) => {
    const safer = onlySafer(record, entries);
    return evaluateAsTold(safer, effectiveFacts(safer), ward, calendar, t);
  });
}

/** Every fact taken as it stands. */
function evaluateAsTold(
  record: StayRecord,
  effective: Effective,
  ward: WardState,
  calendar: WardCalendar,
  t: EpochMs,
): AsTold {
  const rules = rulesOf(ward);
  const protocols = protocolLookup(ward.protocols);
  let next = Infinity;
  const note = (at: EpochMs): void => {
    if (at > t && at < next) next = at;
  };
  const facts = factsUpTo(effective.facts, t, note);
  const day = calendar.wardDay(t);
  note(day.to);
  note(calendar.night(t).until);

  const standing = standingOf(facts);
  const orders = ordersInForce(facts);
  const triggers = triggersOf(facts, effective.lookAgain, protocols, earlyWarningRises(facts, rules));
  const holds = holdsInForce(facts, t, rules, note);
  const judged: TierInput = { facts, t, calendar, rules, protocols };
  const tier = judgeTier(judged);
  const conflicts = conflictsOf(facts, effective, orders, standing, tier, protocols);
  const { trust, due } = trustAndDue({
    facts,
    t,
    rules,
    calendar,
    standing,
    tier,
    triggers,
    conflicts,
    tierWords: () => tierWords(judged),
    note,
  });

  const sedatedAt = lastOf(triggers, 'sedation');
  if (sedatedAt) note(sedatedAt.at + rules.handling.sedativeNightHours.value * HOUR);
  const firstTimeUp = firstTimeUpPending(facts, protocols);
  const onOwn = onOwnInForce(facts, triggers.seen);
  const walkingSupport = walkingSupportOf(facts);
  const staged = standing.scope.kind === 'staged';

  const capability = capabilityOf({ ...judged, tier, orders: orders.forPlan, weight: standing.weight });
  if (capability.nextChange !== null) note(capability.nextChange);
  const input: PlanInput = {
    t,
    rules,
    tier: tier.view,
    capability,
    trust,
    holds,
    orders: orders.forPlan,
    attachments: attachmentsForPlan(standing),
    weight: standing.weight,
    onOwn,
    seenWalking: seenWalkingInForce(facts, triggers.seen, t, rules, note),
    walkingSupport,
    pressureDrop: tier.pressureDrop,
    firstTimeUpPending: firstTimeUp,
    sedatedAt,
    everWalkedHere: tier.everWalked,
    fence: standing.scope.fence,
    spineOrPelvisInDoubt: spineOrPelvis(holds, standing, triggers),
  };
  const plan = planStay(input);
  if (plan.nextChange !== null) note(plan.nextChange);

  const sessions = sessionsOf(facts, t, note);
  const protocol = protocolInForce(ward.protocols);
  const lastUp = laterUp(lastUpOf(sessions), upInCheck(facts, protocols));
  const { today, goalInput, goalNow, amounts } = todayOf(
    input,
    plan.day,
    tier,
    standing,
    sessions,
    facts,
    day,
  );
  const view: StayView = {
    stay: record.stay,
    version: record.version,
    began: standing.began ?? facts[0]?.occurred ?? effective.facts[0]?.occurred ?? 0,
    away: standing.away,
    scope: standing.scope,
    tier: tier.view,
    trust,
    holds,
    orders: orders.list,
    plan: staged ? { day: plan.day, night: plan.night } : null,
    checkBeforeMoving: staged && plan.checkBeforeMoving,
    onOwn:
      staged && onOwn
        ? { where: [...onOwn.value.where], when: [...onOwn.value.when], event: onOwn.fact }
        : null,
    walkingSupport,
    cautions: plan.cautions,
    due,
    lastUp,
    lastEvent: lastEventOf(sessions),
    today,
    usualWay: standing.usualWay,
    attachments: standing.attachments.map(({ of }) => ({
      attachment: of.attachment,
      kind: of.kind,
      disconnects: of.disconnects,
      tetherMetres: of.tetherMetres ?? null,
      needsOwnPerson: of.needsOwnPerson,
    })),
    firstTimeUpPending: firstTimeUp !== null,
    mayStart: staged
      ? mayStartNow({
          facts,
          t,
          rules,
          protocols,
          tier,
          capability,
          holds,
          orders: orders.forPlan,
          attachments: input.attachments,
          note,
        })
      : null,
    nextCheck: staged
      ? nextCheckOf({ facts, t, rules, protocol, tier, trust, firstTimeUpPending: firstTimeUp, note })
      : null,
    earlyWarning: earlyWarningOf(facts, t, rules, note),
    proposal: goalInput && proposalOf({ ...goalInput, facts, sessions, t, calendar, today: goalNow }),
    debt:
      standing.scope.kind === 'comfort' || standing.began === null
        ? null
        : movementDebt({
            t,
            began: standing.began,
            lastUp,
            holds,
            calendar,
            rules,
            today: goalNow,
            amounts,
            note,
          }),
    signs:
      standing.scope.kind === 'comfort'
        ? []
        : signsOf({
            facts,
            t,
            calendar,
            rules,
            protocol,
            tier,
            tierWords: () => tierWords(judged),
            sessions,
            standing,
            note,
          }),
    measures: measuresOf(facts, t),
  };
  return {
    view,
    nextChange: next === Infinity ? null : next,
    claims: effective.claims,
    open: () => restrictionsOf(facts, { triggers, holds, orders, tier, capability }),
  };
}

function factsUpTo(facts: readonly Fact[], t: EpochMs, note: (at: EpochMs) => void): readonly Fact[] {
  let end = facts.length;
  while (end > 0 && facts[end - 1]!.occurred > t) end--;
  if (end === facts.length) return facts;
  note(facts[end]!.occurred);
  return facts.slice(0, end);
}

function conflictsOf(
  facts: readonly Fact[],
  effective: Effective,
  orders: OrdersInForce,
  standing: Standing,
  tier: TierJudgement,
  protocols: ProtocolLookup,
): TrustView['conflicts'] {
  const conflicts = [...tier.conflicts, ...orders.conflicts, ...standing.conflicts];
  if (effective.conflicts.length > 0) {
    const lastCheck = facts.findLast((f) => isCheck(f))?.occurred ?? -Infinity;
    for (const { at, ...conflict } of effective.conflicts) if (lastCheck <= at) conflicts.push(conflict);
  }
  const check = tier.assessment;
  if (check && isCheck(check)) {
    const before = facts.filter((f) => f.type === 'order-changed' && f.occurred <= check.occurred);
    const order = before.length > 0 ? orderGoneBeyond(check, ordersInForce(before).forPlan, protocols) : null;
    if (order && orders.list.some((o) => o.event === order)) {
      conflicts.push({
        question: 'order and check',
        safer: order,
        other: check.id,
        words: 'The check shows more than the order in force allowed: the order stands; tell both authors',
      });
    }
  }
  return conflicts;
}

function lastOf(triggers: Triggers, kind: TriggerKind): Stated<true> | null {
  const last = triggers.seen.findLast((x) => x.kind === kind);
  return last ? { value: true, fact: last.event, at: last.at } : null;
}

/** A hold for an unclear fracture or after a fall, the fence, or a fall nobody has checked yet. */
function spineOrPelvis(
  holds: readonly HoldView[],
  standing: Standing,
  triggers: Triggers,
): Stated<true> | null {
  const hold = holds.find((h) => h.reason === 'fracture-unclear' || h.reason === 'after-fall');
  if (hold) return { value: true, fact: hold.event, at: hold.placedAt };
  const { scopeFact, scope } = standing;
  if (scopeFact && scope.fence === 'unstable-spine-pelvis-or-long-bone') {
    return { value: true, fact: scopeFact.id, at: scopeFact.occurred };
  }
  const fall = triggers.open.find((o) => o.kind === 'fall');
  return fall ? { value: true, fact: fall.event, at: fall.at } : null;
}

type LastUp = StayView['lastUp'];
const laterUp = (a: LastUp, b: LastUp): LastUp => (a && (!b || a.at >= b.at) ? a : b);

/** A staged check that reached the edge of the bed or more was being up, too. */
function upInCheck(facts: readonly Fact[], protocols: ProtocolLookup): LastUp {
  for (const fact of facts.toReversed()) {
    if (!isCheck(fact)) continue;
    const met = meaningsMet(fact.data, protocols);
    const activity = met.has('walk') ? 'walk' : met.has('turn') || met.has('stand') ? 'stand' : 'edge-sit';
    if (activity !== 'edge-sit' || met.has('edge')) return { at: fact.occurred, event: fact.id, activity };
  }
  return null;
}

function todayOf(
  input: PlanInput,
  plan: readonly TaskPlan[],
  tier: TierJudgement,
  standing: Standing,
  sessions: readonly SessionFact[],
  facts: readonly Fact[],
  day: { readonly from: EpochMs; readonly to: EpochMs },
): { today: TodayView; goalInput: GoalInput | null; goalNow: GoalToday; amounts: DayAmounts } {
  const staged = standing.scope.kind === 'staged';
  const known = input.trust.state !== 'not-known';
  const goalInput: GoalInput | null = staged
    ? {
        cleared: known ? tier.cleared : null,
        tierFact: tier.assessment?.id ?? null,
        holds: input.holds,
        plan,
        activityOrder: input.orders.activity,
        usualWay:
          standing.usualWay && standing.usualWayFact
            ? { value: standing.usualWay, fact: standing.usualWayFact.id }
            : null,
        longestWalk: longestWalkOf(sessions),
        set: lastGoalSet(facts),
        rules: input.rules,
      }
    : null;
  const goalNow: GoalToday = goalInput ? goalToday(goalInput) : { goal: null, proposed: false, because: [] };
  const { goal, proposed } = goalNow;
  const because = [...goalNow.because];
  const amounts = amountsOf(sessions, day, goal);
  if (!amounts.recorded) {
    because.push({
      rule: 'today/not-recorded',
      facts: [],
      words: 'No session recorded since the ward day began',
    });
  }
  const today: TodayView = {
    wardDayFrom: day.from,
    goal,
    goalProposed: proposed,
    recorded: amounts.recorded,
    timesUp: amounts.timesUp,
    minutesOutOfBed: amounts.minutesOutOfBed,
    metres: amounts.metres,
    notDone: amounts.notDone,
    met: goalMet(goal, amounts),
    because,
  };
  return { today, goalInput, goalNow, amounts };
}
