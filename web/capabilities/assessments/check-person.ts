import type { OxygenFlowBefore } from '@footboard/shared/capabilities/assessments/rules/may-start';
import { inject, type InjectionKey } from 'vue';

/** What a check needs to know of the person and the ward. */
export interface CheckPerson {
  /** Their own target, by order, in %. */
  readonly oxygenTarget: { readonly low: number; readonly high: number } | null;
  /** Oxygen flow at the checks before this one, litres per minute; or that it was not written down. */
  readonly oxygenFlowBefore: OxygenFlowBefore;
  /** The ward's time zone, in which the times of readings are said; null outside a check. */
  readonly zone: string | null;
}
export const CHECK_PERSON: InjectionKey<CheckPerson> = Symbol('CheckPerson');
export const useCheckPerson = (): CheckPerson =>
  inject(CHECK_PERSON, { oxygenTarget: null, oxygenFlowBefore: null, zone: null });
