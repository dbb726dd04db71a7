/**
 * Weights and lengths in the units of the ward. Everything is stored in SI; these are for the screens
 * alone. The factors are exact: 1 lb = 0.45359237 kg and 1 ft = 0.3048 m (international yard and pound
 * agreement, 1959; NIST Special Publication 811, appendix B).
 */
import type { Units } from '@footboard/shared/capabilities/wards/values';

export const KG_PER_POUND = 0.45359237;
export const METRES_PER_FOOT = 0.3048;
export type Quantity = keyof Units;

/** How much of SI one unit is. */
const SI_PER: Readonly<Record<Units[Quantity], number>> = {
  kg: 1,
  lb: KG_PER_POUND,
  m: 1,
  ft: METRES_PER_FOOT,
};
const rounded = (amount: number, decimals: number): number => Number(amount.toFixed(decimals));

/** An amount as it stands in a field: to a tenth, which is finer than anybody reads a scale or a corridor. */
export function toShown(si: number, quantity: Quantity, units: Units): number {
  const unit = units[quantity];
  return SI_PER[unit] === 1 ? si : rounded(si / SI_PER[unit], 1);
}
/** What was typed, in SI: to the gram and the millimetre, so that it reads back as it was typed. */
export function fromShown(shown: number, quantity: Quantity, units: Units): number {
  const unit = units[quantity];
  return SI_PER[unit] === 1 ? shown : rounded(shown * SI_PER[unit], 3);
}
/** "154 lb", "6.6 ft": within a sentence, to a tenth below ten and whole beyond; SI as it was written down. */
export function amountIn(si: number, quantity: Quantity, units: Units): string {
  const unit = units[quantity];
  if (SI_PER[unit] === 1) return `${si} ${unit}`;
  const shown = si / SI_PER[unit];
  return `${rounded(shown, Math.abs(shown) < 10 ? 1 : 0)} ${unit}`;
}
/** The weight in the units that the ward does not use, so that a slip of unit is seen before it is sent. */
export function otherWeights(kg: number, units: Units): string[] {
  const pounds = Math.round(kg / KG_PER_POUND);
  const stones = `${Math.floor(pounds / 14)} st ${pounds % 14} lb`;
  return units.weight === 'kg' ? [`${pounds} lb`, stones] : [`${rounded(kg, 1)} kg`, stones];
}
