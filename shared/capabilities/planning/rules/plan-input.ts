/** What a day's problem is made from, and what is said beside it. */
import type { ItemId } from '../../aids/values.ts';
import type { Usable } from '../../aids/rules/usable.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { BedView, StayView } from '../../board/view.ts';
import type { ExpectedArrival } from '../../dayplan/rules/huddle-state.ts';
import type { StayId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { WardCalendar, WardState } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { PlannedVisitId } from '../problem.ts';
import type { notPlannedWhy } from '../not-planned.ts';
import type { AcceptedPlan } from './accepted.ts';

/** One occupied bed with what of the list does each task of its plan. */
export interface PlanStay {
  readonly bed: BedView;
  readonly stay: StayView;
  readonly fit: readonly {
    readonly task: TaskPlan['task'];
    readonly need: string;
    readonly sets: readonly { readonly item: ItemId; readonly sling: ItemId | null }[];
  }[];
}
export interface PlanInput {
  readonly t: EpochMs;
  readonly ward: WardState;
  readonly calendar: WardCalendar;
  readonly rules: RulesDocument;
  readonly stays: readonly PlanStay[];
  readonly expected: readonly ExpectedArrival[];
  readonly items: readonly { readonly item: ItemId; readonly usable: Usable['word'] }[];
  readonly accepted: AcceptedPlan | null;
}

export interface NotPlanned {
  readonly stay: StayId;
  readonly label: string;
  readonly why: (typeof notPlannedWhy)[number];
}
/** What a screen says of a visit beside its id. */
export interface VisitAbout {
  readonly visit: PlannedVisitId;
  readonly label: string;
  /** Which time up of the day it is; null for a check. */
  readonly nth: number | null;
  readonly expected: boolean;
}
