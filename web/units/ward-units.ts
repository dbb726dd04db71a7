/** The units that the screens of this ward write in. Told by the board once it is there, as the language is. */
import { readonly, shallowRef } from 'vue';
import { DEFAULT_UNITS, type Units } from '@footboard/shared/capabilities/wards/values';
import { amountIn, type Quantity } from './units.ts';

const chosen = shallowRef<Units>(DEFAULT_UNITS);
export const wardUnits = readonly(chosen);
export const followWardUnits = (units: Units): void => {
  chosen.value = units;
};

/** "40 m" or "131 ft". */
export const amountOf = (si: number, quantity: Quantity): string => amountIn(si, quantity, chosen.value);
