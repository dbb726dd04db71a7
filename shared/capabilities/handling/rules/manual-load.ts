/**
 * Arithmetic behind "two people or a limb sling": the share of the body a carer would hold against
 * the limit of manual lifting. A model of weight, not a licence to lift: aids come first.
 */

/**
 * Whole leg as a share of body weight. Published tables run from 0.157 to 0.209; the heaviest is
 * taken (de Leva, J Biomech 1996;29:1223-30, women; from memory).
 */
export const LEG_SHARE = 0.2088;

/** Carers needed to carry `share` of `kg` within `limitKg` each; at least one. */
export const carersFor = (kg: number, share: number, limitKg: number): number =>
  // A billionth of a carer is rounding, not weight.
  Math.max(1, Math.ceil((kg * share) / limitKg - 1e-9));

/** Words for holding one leg, or null when one carer may; the weight nobody knows takes two. */
export function legWords(kg: number | null, limitKg: number): string | null {
  if (kg !== null && carersFor(kg, LEG_SHARE, limitKg) === 1) return null;
  return 'Lifting a leg: two people or a limb sling';
}
