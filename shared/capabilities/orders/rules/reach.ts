/** How far a check goes, and how far the orders and holds of its time let one go: places among the stages. */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { assessmentRecorded } from '../../assessments/events.ts';
import { STAGE_MEANINGS, type ProtocolLookup, type StageMeaning } from '../../assessments/rules/protocol.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { HoldScope, Order } from '../values.ts';
import { holdsInForce } from './holds.ts';
import { ordersInForce } from './orders.ts';

type Assessment = PayloadOf<typeof assessmentRecorded>;
const placeOf = (meaning: StageMeaning): number => STAGE_MEANINGS.indexOf(meaning);

export interface HowFar {
  /** The last stage tested; -1 when none that is known here. */
  readonly tested: number;
  /** The first stage not met. */
  readonly lost: number | null;
}

/** Whether anybody can say what the stages of a check were. */
export const isReadable = ({ data }: Fact<Assessment>, protocols: ProtocolLookup): boolean =>
  protocols(data.protocol.id, data.protocol.version) !== null;

export function howFar(check: Fact<Assessment>, protocols: ProtocolLookup): HowFar {
  const { protocol, stages } = check.data;
  const known = protocols(protocol.id, protocol.version)?.stages;
  let tested = -1;
  let lost: number | null = null;
  for (const { stage, outcome } of stages) {
    const shows = known?.find((s) => s.id === stage)?.shows;
    if (!shows || outcome === 'not-tested') continue;
    const place = placeOf(shows);
    tested = Math.max(tested, place);
    if (outcome === 'not-met') lost = Math.min(lost ?? place, place);
  }
  return { tested, lost };
}

type Activity = Extract<Order, { about: 'activity' }>['most'];
/** The last stage, with all before it, that an order of this activity lets somebody do. */
const BY_ORDER: Readonly<Record<Activity, StageMeaning>> = {
  bed: 'upright',
  'edge-of-bed': 'edge',
  chair: 'edge',
  stand: 'turn',
  walk: 'walk',
  'no-limit': 'walk',
};
const BY_HOLD: Readonly<Record<HoldScope, StageMeaning>> = {
  walking: 'turn',
  standing: 'edge',
  'out-of-bed': 'upright',
  'raising-the-back': 'clear',
  'all-including-turning': 'clear',
};

/** Facts up to the check. A leg that may bear nothing leaves standing on the other; two leave the edge. */
export function mayGoTo(facts: readonly Fact[], at: EpochMs, rules: RulesDocument): number {
  const { activity, weightBearing } = ordersInForce(facts).forPlan;
  const bearNothing = (['left-leg', 'right-leg'] as const).filter(
    (limb) => weightBearing.get(limb)?.value.bears === 'none',
  ).length;
  const holds = holdsInForce(facts, at, rules, () => undefined);
  return Math.min(
    placeOf(BY_ORDER[activity?.value ?? 'no-limit']),
    placeOf((['walk', 'stand', 'edge'] as const)[bearNothing]!),
    ...holds.map((h) => placeOf(BY_HOLD[h.scope])),
  );
}
