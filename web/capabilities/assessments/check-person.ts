import type { OxygenFlowBefore } from '@footboard/shared/capabilities/assessments/rules/may-start';
import { inject, type InjectionKey } from 'vue';

/** What the checks' limits need to know of the person. */
export interface CheckPerson {
  /** Their own target, by order, in %. */
  readonly oxygenTarget: { readonly low: number; readonly high: number } | null;
  readonly oxygenFlowBefore: OxygenFlowBefore;
}
export const CHECK_PERSON: InjectionKey<CheckPerson> = Symbol('CheckPerson');
export const useCheckPerson = (): CheckPerson =>
  inject(CHECK_PERSON, { oxygenTarget: null, oxygenFlowBefore: null });
