/** A safe working load as it is shown: never more than what is printed on the piece. */
import type { Units } from '../wards/values.ts';

/** International yard and pound agreement, 1959 (exact; from memory). */
const KG_PER_POUND = 0.45359237;

/** "200 kg"; in pounds cut down to the whole pound, with the kilograms beside it: "440 lb (200 kg)". */
export const loadIn = (kg: number, { weight }: Pick<Units, 'weight'>): string =>
  weight === 'kg' ? `${kg} kg` : `${Math.floor(kg / KG_PER_POUND + 1e-9)} lb (${kg} kg)`;
