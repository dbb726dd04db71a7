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

const RANGE = /(\d+(?:\.\d+)?)(?: to (\d+(?:\.\d+)?))? kg\b/g;
/** A sentence of the equipment rules, which are written in kilograms: "84.6 kg" is "187 lb", "20 to 1000 kg" is "44 to 2205 lb". */
export const weightsOf = (sentence: string): string =>
  chosen.value.weight === 'kg'
    ? sentence
    : sentence.replaceAll(RANGE, (_all, from: string, to: string | undefined) => {
        const first = amountOf(Number(from), 'weight');
        return to ? `${first.split(' ')[0]} to ${amountOf(Number(to), 'weight')}` : first;
      });
