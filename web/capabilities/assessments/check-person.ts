import { inject, type InjectionKey } from 'vue';

/** What the checks' limits need to know of the person. */
export interface CheckPerson {
  /** Their own target, by order, in %. */
  readonly oxygenTarget: { readonly low: number; readonly high: number } | null;
  /** Oxygen flow written down at the checks before this one, litres per minute; null when never. */
  readonly oxygenFlowBefore: number | null;
}
export const CHECK_PERSON: InjectionKey<CheckPerson> = Symbol('CheckPerson');
export const useCheckPerson = (): CheckPerson =>
  inject(CHECK_PERSON, { oxygenTarget: null, oxygenFlowBefore: null });
