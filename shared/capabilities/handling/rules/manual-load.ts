/**
 * Arithmetic behind "two people or a limb sling": the share of the body a carer would carry against
 * the ward's limits. Two limits are in use: 35 lb for lifting (Waters, Am J Nurs 2007;107(8):53-58)
 * and about 22 lb for a limb held up with two hands (peri-operative nursing ergonomic guidance, 2022).
 * A model of weight, not a licence to lift: aids come first.
 */
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { People, Task } from '../values.ts';
import type { Demand } from './demand.ts';
import { caution } from './demand.ts';
import { heaviestShare } from './tables/segments.ts';
import type { PlanInput } from './types.ts';

/** Carers needed to carry `share` of `kg` within `limitKg` each; at least one. */
export const carersFor = (kg: number, share: number, limitKg: number): number =>
  // A billionth of a carer is rounding, not weight.
  Math.max(1, Math.ceil((kg * share) / limitKg - 1e-9));

/** The heaviest body (kg) of which `carers` may carry `share` within `limitKg` each. */
export const heaviestFor = (share: number, limitKg: number, carers = 1): number => (limitKg * carers) / share;

const LEG = heaviestShare('leg');

type Limits = Pick<RulesDocument['handling'], 'liftLimitKgPerCarer' | 'limbHoldKgPerCarer'>;

export interface LegLoad {
  /** What to do, in words; never the body's weight. */
  readonly words: string;
  /** Share, limit and both sources. */
  readonly why: string;
}

/**
 * Lifting a leg, or only holding it up, by the heaviest published share; null when one carer may do
 * both. The weight nobody knows counts as too heavy for two.
 */
export function legLoad(kg: number | null, limits: Limits): LegLoad | null {
  const { liftLimitKgPerCarer: lift, limbHoldKgPerCarer: hold } = limits;
  const lifters = kg === null ? 3 : carersFor(kg, LEG.share, lift.value);
  const holders = kg === null ? 3 : carersFor(kg, LEG.share, hold.value);
  if (lifters === 1 && holders === 1) return null;
  const most = Math.max(lifters, holders);
  const tooHeavy = most > 2;
  const [limit, what] = lifters > 1 && (lifters > 2 || !tooHeavy) ? [lift, 'lift'] : [hold, 'hold up'];
  return {
    words: tooHeavy
      ? 'Leg: a limb sling; too heavy for two people, or weight unknown'
      : lifters === 2
        ? 'Leg: two people or a limb sling'
        : 'Holding a leg up: two people or a limb sling',
    why:
      `A leg is up to ${(LEG.share * 100).toFixed(1)} % of the body (${LEG.source}); ` +
      `one carer may ${what} ${limit.value} kg (${limit.source})`,
  };
}

/** Where a leg is moved for the person: in bed and over its edge, unless somebody only stands by. */
export function legDemands(task: Task, people: People, input: PlanInput): Demand[] {
  if ((task !== 'in-bed' && task !== 'edge-of-bed') || people === 'on-own' || people === 'stand-by') {
    return [];
  }
  const load = legLoad(input.capability.weightKg, input.rules.handling);
  if (!load) return [];
  const said = caution('manual-load', load.words, [input.weight?.fact]);
  return [{ ...said, because: { ...said.because, words: load.why }, tells: true }];
}
