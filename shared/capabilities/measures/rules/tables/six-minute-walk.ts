/**
 * The reference distance of the six-minute walk. Enright & Sherrill, Am J Respir Crit Care Med
 * 1998;158:1384-7: confirmed in the paper's own abstract. The two lower limits are from memory.
 * Fitted at ages 40 to 80; there is no prediction outside them, and a shorter walk is not multiplied.
 */
import type { ReadBy } from '../../values.ts';
import { TO_SIGN, type Published } from './published.ts';

interface Equation {
  readonly perCm: number;
  readonly perYear: number;
  readonly perKg: number;
  readonly constant: number;
  /** How far below the reference the lower limit of normal lies (m). */
  readonly lowerBy: number;
}
export const SIX_MINUTE_WALK: Published & {
  readonly ages: readonly [from: number, to: number];
  readonly male: Equation;
  readonly female: Equation;
} = {
  source: 'Enright & Sherrill, Am J Respir Crit Care Med 1998;158:1384-7 (the lower limit from memory)',
  ...TO_SIGN,
  ages: [40, 80],
  male: { perCm: 7.57, perYear: -5.02, perKg: -1.76, constant: -309, lowerBy: 153 },
  female: { perCm: 2.11, perYear: -5.78, perKg: -2.29, constant: 667, lowerBy: 139 },
};

/** Reference distance and lower limit of normal (m) for an age, sex, height (cm) and weight (kg); null outside the ages fitted. */
export function sixMinuteReference(
  by: ReadBy,
  heightCm: number,
  weightKg: number,
): { readonly reference: number; readonly lower: number } | null {
  const [from, to] = SIX_MINUTE_WALK.ages;
  if (by.age < from || by.age > to) return null;
  const { perCm, perYear, perKg, constant, lowerBy } = SIX_MINUTE_WALK[by.sex];
  const reference = perCm * heightCm + perYear * by.age + perKg * weightKg + constant;
  return { reference, lower: reference - lowerBy };
}
