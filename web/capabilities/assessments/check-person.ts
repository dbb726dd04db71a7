import { inject, type InjectionKey } from 'vue';

/** What the checks' limits need to know of the person: their own oxygen target, by order, in %. */
export interface CheckPerson {
  readonly oxygenTarget: { readonly low: number; readonly high: number } | null;
}
export const CHECK_PERSON: InjectionKey<CheckPerson> = Symbol('CheckPerson');
export const useCheckPerson = (): CheckPerson => inject(CHECK_PERSON, { oxygenTarget: null });
