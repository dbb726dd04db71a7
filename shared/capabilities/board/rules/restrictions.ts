/** What is in force and asks for more help: what a late or corrected entry may not undo. */
import type { EventId } from '../../../kernel/ids.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { assessmentRecorded } from '../../assessments/events.ts';
import type { TierJudgement } from '../../assessments/rules/tier.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Restriction } from '../../corrections/rules/claims.ts';
import type { Capability } from '../../handling/rules/types.ts';
import type { orderChanged } from '../../orders/events.ts';
import { limits, questionOf, type OrdersInForce } from '../../orders/rules/orders.ts';
import type { Triggers } from '../../orders/rules/triggers.ts';
import type { HoldView } from '../moving-view.ts';

interface InForce {
  readonly triggers: Triggers;
  readonly holds: readonly HoldView[];
  readonly orders: OrdersInForce;
  readonly tier: TierJudgement;
  readonly capability: Capability;
}
type Assessment = PayloadOf<typeof assessmentRecorded>;

/**
 * Holds, orders that limit, open triggers (the arrival apart) and what was last found less: a stage
 * or part not met, help not waited for, a pressure drop. Said again, a restriction is as old as it
 * was first said: repeating it does not open the way to an entry it stood against. Facts up to the
 * instant asked about, in order.
 */
export function restrictionsOf(facts: readonly Fact[], inForce: InForce): Restriction[] {
  const { seen } = inForce.tier;
  const triggers = new Set<EventId>();
  for (const o of inForce.triggers.open) if (o.kind !== 'arrival') triggers.add(o.event);
  const holds = new Set<string>(inForce.holds.map((h) => h.hold));
  const orders = new Set<string>();
  for (const { order } of inForce.orders.list) if (limits(order)) orders.add(questionOf(order));
  const notMet =
    [...seen.stages.values()].some((s) => s.outcome === 'not-met') ||
    [...seen.parts.values()].some((p) => !p.met);
  const dropped = inForce.tier.pressureDrop !== null;
  const { waitsForHelp, followsInstructions } = inForce.capability;
  const notWaiting = waitsForHelp === 'no' || waitsForHelp === 'varies' || followsInstructions === 'no';

  const stands = (fact: Fact): boolean => {
    if (triggers.has(fact.id)) return true;
    switch (fact.type) {
      case 'hold-placed':
        return holds.has((fact.data as { hold: string }).hold);
      case 'order-changed': {
        const { order } = fact.data as PayloadOf<typeof orderChanged>;
        return limits(order) && orders.has(questionOf(order));
      }
      case 'assessment-recorded': {
        const { stages, readings, cooperation: says } = fact.data as Assessment;
        return (
          (notMet && (seen.foundLess.has(fact.id) || stages.some(foundLess))) ||
          (dropped && readings.some((r) => r.kind === 'pressure')) ||
          (notWaiting &&
            says !== undefined &&
            (says.waitsForHelp !== 'yes' || says.followsInstructions !== 'yes'))
        );
      }
      default:
        return false;
    }
  };
  return facts
    .filter(stands)
    .map(({ id, occurred, recorded, position }) => ({ event: id, occurred, recorded, position }));
}

/** As recorded: of a symptom or a part, too, that took no stage back. What was judged so is asked beside it. */
const foundLess = (stage: Assessment['stages'][number]): boolean =>
  stage.outcome === 'not-met' || stage.symptom || stage.findings.some((f) => f.result === 'not-met');
