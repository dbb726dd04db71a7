/**
 * One stay as the board shows it: the rooms' rules put together. Pure: facts and an instant in, a
 * view with its reasons out, and the next instant at which that view can change by time alone.
 */
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import { earlyWarningOf } from '../../assessments/rules/early-warning.ts';
import { mayStartNow } from '../../assessments/rules/may-start-now.ts';
import { nextCheckOf } from '../../assessments/rules/next-check.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { onlySafer } from '../../corrections/rules/claims.ts';
import { effectiveFacts, type Effective } from '../../corrections/rules/effective.ts';
import { visitOf } from '../../dayplan/rules/visits.ts';
import { capabilityOf } from '../../handling/rules/capability.ts';
import { planStay } from '../../handling/rules/plan.ts';
import type { PlanInput, Stated } from '../../handling/rules/types.ts';
import { holdsInForce, leavesBoneInDoubt } from '../../orders/rules/holds.ts';
import { bedNotReviewed } from '../../orders/rules/order-review.ts';
import type { Triggers } from '../../orders/rules/triggers.ts';
import { lastEventOf, lastUpOf, sessionsOf } from '../../sessions/rules/activity.ts';
import { movementDebt } from '../../sessions/rules/debt.ts';
import { firstTimeUpAt } from '../../sessions/rules/first-time-up.ts';
import { latelyOf } from '../../sessions/rules/lately.ts';
import { proposalOf } from '../../sessions/rules/progression.ts';
import { chairOf, toiletTimes } from '../../sessions/rules/where-left.ts';
import { arrivalOf, type Standing } from '../../stays/rules/standing.ts';
import type { WardCalendar, WardState } from '../../wards/context.ts';
import type { HoldView } from '../moving-view.ts';
import type { StayView } from '../view.ts';
import { knownAt, type Known } from './known.ts';
import { seenWalkingInForce } from './on-own.ts';
import { restrictionsOf } from './restrictions.ts';
import { withOpenClaims, type AsTold, type Evaluated } from './safer-stands.ts';
import { signsOf } from './signs.ts';
import { todayOf } from './today.ts';
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
  let next = Infinity;
  const note = (at: EpochMs): void => {
    if (at > t && at < next) next = at;
  };
  const known = knownAt(effective, ward, calendar, t, note);
  const { facts, rules, standing, orders, triggers, tier, kept } = known;
  const day = calendar.wardDay(t);
  note(day.to);
  note(calendar.night(t).until);

  const holds = kept.at('holds', t, note, [], (n) => holdsInForce(facts, t, rules, n));
  const { trust, due } = kept.at('trust', t, note, [], (n) =>
    trustAndDue({ ...known, t, calendar, note: n }),
  );
  const capability = kept.at('capability', t, note, [], (n) => {
    const found = capabilityOf({ ...known, t, calendar, orders: orders.forPlan, weight: standing.weight });
    if (found.nextChange !== null) n(found.nextChange);
    return found;
  });
  const firstTimeUp = kept.at('first-time-up', t, note, [], (n) => firstTimeUpAt(known.upSoFar, t, rules, n));
  const { input, plan } = kept.at('plan', t, note, [holds, trust, capability, firstTimeUp], (n) => {
    const given = planInput(known, { t, holds, trust, capability, firstTimeUp, note: n });
    const made = planStay(given);
    if (made.nextChange !== null) n(made.nextChange);
    return { input: given, plan: made };
  });
  const sessions = kept.at('sessions', t, note, [], (n) => sessionsOf(facts, t, n));
  const lastUp = kept.at('last-up', t, note, [sessions], () => laterUp(lastUpOf(sessions), known.upInCheck));
  const { today, goalInput, goalNow, amounts } = kept.at(
    'today',
    t,
    note,
    [plan, sessions, holds, trust],
    (n) => {
      n(day.to);
      return todayOf(known, { ...input, t, holds, trust }, plan.day, sessions, day, calendar, n);
    },
  );
  const staged = standing.scope.kind === 'staged';
  const comfort = standing.scope.kind === 'comfort';
  const start = staged
    ? kept.at('may-start', t, note, [capability, holds], (n) =>
        mayStartNow({ ...known, t, capability, holds, orders: orders.forPlan, note: n }),
      )
    : null;
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
    onOwn: staged ? onOwnView(known) : null,
    walkingSupport: known.walkingSupport?.value ?? null,
    cautions: comfort
      ? plan.cautions
      : [...plan.cautions, ...bedNotReviewed(orders.list, day, calendar.zone)],
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
    mayStart: start && start.view,
    nextCheck:
      start &&
      kept.at('next-check', t, note, [trust, firstTimeUp, start], (n) =>
        nextCheckOf({ ...known, t, trust, firstTimeUpPending: firstTimeUp, against: start.signs, note: n }),
      ),
    earlyWarning: kept.at('early-warning', t, note, [], (n) => earlyWarningOf(facts, t, rules, n)),
    proposal: kept.at(
      'proposal',
      t,
      note,
      [goalInput, goalNow, sessions, trust],
      () =>
        goalInput &&
        proposalOf({
          ...goalInput,
          facts,
          sessions,
          today: goalNow,
          trust: trust.state,
          beyondStop: known.beyondStop,
        }),
    ),
    debt: kept.at('debt', t, note, [lastUp, holds, goalNow, amounts], (n) =>
      comfort || standing.began === null
        ? null
        : movementDebt({
            t,
            began: standing.began,
            arrival: facts.find((f) => f.type === 'stay-begun')?.id ?? null,
            scope: standing.scope.kind,
            lastUp,
            holds,
            activityOrder: orders.forPlan.activity,
            calendar,
            rules,
            today: goalNow,
            amounts,
            note: n,
          }),
    ),
    signs: kept.at('signs', t, note, [sessions, holds, trust], (n) =>
      comfort
        ? []
        : signsOf({
            ...known,
            t,
            calendar,
            sessions,
            holds,
            trust,
            activityOrder: orders.forPlan.activity,
            note: n,
          }),
    ),
    measures: known.measures,
    chair: kept.at('chair', t, note, [sessions], (n) => chairOf(sessions, facts, t, calendar, rules, n)),
    toilet: kept.at('toilet', t, note, [sessions], (n) => {
      n(day.to);
      return toiletTimes(sessions, day);
    }),
    ...known.besidePlan,
    visit: kept.at('visit', t, note, [], (n) => visitOf(facts, t, n)),
    lately: kept.at('lately', t, note, [sessions], (n) => {
      n(day.to);
      return latelyOf(sessions, calendar.wardDay(day.from - 1), standing.began ?? t);
    }),
    wall: standing.wall,
    shown: 'whole',
  };
  return {
    view,
    nextChange: next === Infinity ? null : next,
    claims: effective.claims,
    arrival: input.arrival,
    open: () => restrictionsOf(facts, { triggers, holds, orders, tier, capability }),
  };
}

type AtThatTime = Pick<PlanInput, 't' | 'holds' | 'trust' | 'capability'> & {
  readonly firstTimeUp: PlanInput['firstTimeUpPending'];
  readonly note: (at: EpochMs) => void;
};
function planInput(known: Known, { t, holds, trust, capability, firstTimeUp, note }: AtThatTime): PlanInput {
  const { facts, rules, standing, orders, triggers, tier, sedatedAt } = known;
  if (sedatedAt) note(sedatedAt.at + rules.handling.sedativeNightHours.value * HOUR);
  return {
    t,
    arrival: arrivalOf(facts),
    rules,
    tier: tier.view,
    capability,
    trust,
    holds,
    orders: orders.forPlan,
    attachments: known.attachments,
    weight: standing.weight,
    onOwn: known.onOwn,
    seenWalking: seenWalkingInForce(facts, triggers.seen, t, rules, note),
    walkingSupport: known.walkingSupport,
    pressureDrop: tier.pressureDrop,
    firstTimeUpPending: firstTimeUp,
    sedatedAt,
    everWalkedHere: tier.everWalked,
    fence: standing.scope.fence,
    spineOrPelvisInDoubt: spineOrPelvis(holds, standing, triggers),
  };
}

const onOwnView = ({ onOwn }: Known): StayView['onOwn'] =>
  onOwn && { where: [...onOwn.value.where], when: [...onOwn.value.when], event: onOwn.fact };

/** A hold for an unclear fracture or after a fall, the fence, or a fall nobody has checked yet. */
function spineOrPelvis(
  holds: readonly HoldView[],
  standing: Standing,
  triggers: Triggers,
): Stated<true> | null {
  const hold = holds.find(leavesBoneInDoubt);
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
