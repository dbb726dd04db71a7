/**
 * What the handling rules need to know of a person, derived from what was seen and what is ordered.
 * Each answer is the lesser of the two; what was never seen counts as absent, never as normal.
 */
import type { EpochMs } from '../../../kernel/times.ts';
import { HOUR } from '../../../kernel/times.ts';
import type { PartMeaning } from '../../assessments/rules/protocol.ts';
import type { StageStanding } from '../../assessments/rules/seen.ts';
import { partKey } from '../../assessments/rules/seen.ts';
import type { TierInput, TierJudgement } from '../../assessments/rules/tier.ts';
import type { Side } from '../../assessments/values.ts';
import { arrivalOf } from '../../stays/rules/standing.ts';
import type { Because } from '../../board/because.ts';
import type { WeightBearing } from '../../orders/values.ts';
import type { Capability, PlanInput } from './types.ts';

export interface CapabilityInput extends TierInput {
  readonly tier: TierJudgement;
  readonly orders: PlanInput['orders'];
  readonly weight: PlanInput['weight'];
}

const SIDES = ['left', 'right'] as const;
const legOf = (side: Side) => `${side}-leg` as const;
const BEARING: readonly WeightBearing[] = ['none', 'limited', 'unrestricted'];
const lesser = (a: WeightBearing, b: WeightBearing): WeightBearing =>
  BEARING.indexOf(a) <= BEARING.indexOf(b) ? a : b;

type Say = (rule: string, facts: readonly (string | undefined)[], words: string) => void;

/** Of the whole person: one leg that bears without limit is still partial when the other bears nothing. */
export function bearsAsAWhole(left: WeightBearing, right: WeightBearing): Capability['bears'] {
  if (left === 'unrestricted' && right === 'unrestricted') return 'full';
  if (left === 'none' || right === 'none') {
    return left === 'unrestricted' || right === 'unrestricted' ? 'partial' : 'none';
  }
  return 'partial';
}

export function capabilityOf(input: CapabilityInput): Capability {
  const { tier } = input;
  const because: Because[] = [];
  const arrival = arrivalOf(input.facts);
  const say: Say = (rule, from, words) => {
    const facts = from.filter((f) => f !== undefined) as Because['facts'];
    // What was never seen was not seen since the arrival.
    because.push({ rule, facts: facts.length === 0 && arrival ? [arrival] : facts, words });
  };

  const legs = legsOf(input, say);
  const cooperation = cooperationOf(input, say);
  const mayPush = armsByOrder(input, say);
  const armStrength = bothOneNone(input, 'arm-pushes', mayPush);
  const grip = bothOneNone(input, 'grip', mayPush);
  const edge = tier.cleared.has('edge') ? tier.seen.stages.get('edge') : undefined;
  const today = input.calendar.wardDay(input.t);
  const sitsUnheld = edge !== undefined && sitsWithNothingHolding(input, edge, say);
  const sittingBalance = sitsUnheld && edge.fact.occurred >= today.from;
  const weight = weightOf(input);

  const follows = cooperation.followsInstructions === 'yes';
  const came = tier.seen.parts.get('comes-to-edge');
  const comesAlone =
    edge !== undefined &&
    tier.clearedFree.has('edge') &&
    !edge.securedWith &&
    edge.people === 0 &&
    came?.met !== false;
  const assists = !follows ? 'not' : comesAlone ? 'fully' : tier.cleared.has('upright') ? 'partly' : 'not';
  say(
    'capability/assists',
    follows
      ? [came?.met === false ? came.fact.id : (edge?.fact.id ?? tier.seen.stages.get('upright')?.fact.id)]
      : (because.find((b) => b.rule === 'capability/worst-of-the-window')?.facts ?? []),
    assists === 'fully'
      ? 'Comes to the edge of the bed alone: assists fully in bed'
      : assists === 'partly'
        ? 'Sits upright in bed but was not seen to come to the edge alone: assists partly'
        : follows
          ? 'Not seen upright in bed: counts as not able to assist'
          : 'Following instructions was not seen: counts as not able to assist',
  );
  const changes = [cooperation.changesAt, sittingBalance ? today.to : null].filter((c) => c !== null);
  return {
    ...legs,
    followsInstructions: cooperation.followsInstructions,
    waitsForHelp: cooperation.waitsForHelp,
    armStrength,
    grip,
    comesAlone,
    sitsUnheld,
    sittingBalance,
    assists,
    strongerSide: strongerSide(input, legs.weightBearing),
    ...weight,
    cleared: tier.cleared,
    clearedFree: tier.clearedFree,
    standings: tier.seen.stages,
    because,
    nextChange: changes.length ? Math.min(...changes) : null,
  };
}

/** Whoever was held at the edge was not seen to sit alone; a part not met counts whatever its gate. */
function sitsWithNothingHolding({ tier }: CapabilityInput, edge: StageStanding, say: Say): boolean {
  const sat = tier.seen.parts.get('sits-unheld');
  const notMet = sat?.met === false;
  if (!notMet && !edge.securedWith) return true;
  const why = notMet ? 'Sitting unheld was not met at the last check' : 'Held safe at the edge of the bed';
  const fact = notMet ? sat.fact.id : edge.fact.id;
  say('capability/sitting-balance', [fact], `${why}: counts as no sitting balance`);
  return false;
}

function legsOf({ tier, orders }: CapabilityInput, say: Say): Pick<Capability, 'weightBearing' | 'bears'> {
  const stand = tier.cleared.has('stand') ? tier.seen.stages.get('stand') : undefined;
  const bearing = (side: Side): WeightBearing => {
    const part = tier.seen.parts.get(partKey('leg-bears', side));
    const seen =
      stand && (stand.oneLeg === null || stand.oneLeg === side) && part?.met !== false
        ? 'unrestricted'
        : 'none';
    const order = orders.weightBearing.get(legOf(side));
    if (order && lesser(order.value.bears, seen) !== seen) {
      say('capability/lesser-of-order-and-seen', [order.fact], `${side} leg: ${order.value.bears} by order`);
    }
    return order ? lesser(order.value.bears, seen) : seen;
  };
  const [left, right] = [bearing('left'), bearing('right')];
  const bears = bearsAsAWhole(left, right);
  say(
    stand ? 'capability/weight-bearing' : 'capability/not-seen-standing',
    [stand?.fact.id],
    stand
      ? `Seen standing: left leg ${left}, right leg ${right}; as a whole ${bears}`
      : 'Not seen standing here, so counts as bearing no weight',
  );
  return { weightBearing: { 'left-leg': left, 'right-leg': right }, bears };
}

/** The worst answer of the window decides help; with none in the window the last one known stands. */
function cooperationOf(
  { tier, t, rules }: CapabilityInput,
  say: Say,
): Pick<Capability, 'followsInstructions' | 'waitsForHelp'> & { changesAt: EpochMs | null } {
  const window = rules.validity.cooperationWindowHours.value * HOUR;
  const all = tier.seen.cooperation;
  const latest = all.at(-1);
  if (!latest) {
    say(
      'capability/not-recorded',
      [],
      'Whether the person waits for help and follows instructions is not recorded',
    );
    return { followsInstructions: 'not known', waitsForHelp: 'not known', changesAt: null };
  }
  const counts = all.filter((c) => c === latest || c.at > t - window);
  const worst = <T extends string>(order: readonly T[], of: (c: (typeof all)[number]) => T): T =>
    order.find((value) => counts.some((c) => of(c) === value)) ?? of(latest);
  const waitsForHelp = worst(['no', 'varies', 'yes'], (c) => c.value.waitsForHelp);
  const followsInstructions = worst(['no', 'yes'], (c) => c.value.followsInstructions);
  say(
    'capability/worst-of-the-window',
    counts.filter((c) => c.value.waitsForHelp === waitsForHelp).map((c) => c.fact),
    `Waits for help: ${waitsForHelp}; follows instructions: ${followsInstructions} (the worst of the last ${rules.validity.cooperationWindowHours.value} h decides)`,
  );
  const older = counts.filter((c) => c !== latest).map((c) => c.at + window);
  return { followsInstructions, waitsForHelp, changesAt: older.length ? Math.min(...older) : null };
}

/**
 * Sides whose arm may push and pull. An arm with an order of none or limited does neither: a number
 * in the order is shown and never turned into how much of a push it allows (design: order).
 */
function armsByOrder({ orders }: CapabilityInput, say: Say): readonly Side[] {
  return SIDES.filter((side) => {
    const order = orders.weightBearing.get(`${side}-arm`);
    if (!order || order.value.bears === 'unrestricted') return true;
    say(
      'capability/arm-by-order',
      [order.fact],
      `${side} arm: ${order.value.bears} by order, so it does not push and its grip does not count`,
    );
    return false;
  });
}

/** Of both sides, those that were seen and that the orders allow; an order never makes up for what was not seen. */
function bothOneNone(
  { tier }: CapabilityInput,
  shows: PartMeaning,
  allowed: readonly Side[],
): Capability['grip'] {
  const found = SIDES.map((side) => tier.seen.parts.get(partKey(shows, side)));
  if (allowed.length === 0) return 'none';
  if (found.every((f) => f === undefined)) return 'not known';
  const met = SIDES.filter((side, i) => found[i]?.met && allowed.includes(side)).length;
  return met === 2 ? 'both' : met === 1 ? 'one' : 'none';
}

function strongerSide({ tier }: CapabilityInput, bearing: Capability['weightBearing']): Side | null {
  const [left, right] = [BEARING.indexOf(bearing['left-leg']), BEARING.indexOf(bearing['right-leg'])];
  if (left !== right) return left > right ? 'left' : 'right';
  for (const shows of ['leg-against-resistance', 'leg-against-gravity'] as const) {
    const [l, r] = SIDES.map((side) => tier.seen.parts.get(partKey(shows, side))?.met);
    if (l === true && r === false) return 'left';
    if (r === true && l === false) return 'right';
  }
  return null;
}

function weightOf({ weight, rules }: CapabilityInput): Pick<Capability, 'weightKg' | 'weightMarked'> {
  if (!weight) return { weightKg: null, weightMarked: 'unknown' };
  const { kg, how } = weight.value;
  if (how === 'measured') return { weightKg: kg, weightMarked: 'measured' };
  const margin = rules.handling.estimatedWeightMargin.value;
  // To a tenth of a per cent, so that 0.07 is not said as 7.000000000000001.
  const percent = Math.round(margin * 1000) / 10;
  return { weightKg: kg * (1 + margin), weightMarked: `estimated, ${percent} % added` };
}
