/** The sheets of the bedside page: what each is called, which form lies on it, and what that form needs. */
import type { Component } from 'vue';
import type { OxygenFlowBefore } from '@footboard/shared/capabilities/assessments/rules/may-start';
import type { BedView, BoardView, StayView } from '@footboard/shared/capabilities/board/view';
import type { RulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import type { Role } from '@footboard/shared/kernel/author';
import AsleepForm from '../assessments/AsleepForm.vue';
import CheckFlow from '../assessments/CheckFlow.vue';
import CriticalCareForm from '../assessments/CriticalCareForm.vue';
import EarlyWarningForm from '../assessments/EarlyWarningForm.vue';
import SeenWalkingForm from '../assessments/SeenWalkingForm.vue';
import OnOwnForm from '../handling/OnOwnForm.vue';
import HoldForm from '../orders/HoldForm.vue';
import HoldReviewForm from '../orders/HoldReviewForm.vue';
import OrderForm from '../orders/OrderForm.vue';
import TriggerForm from '../orders/TriggerForm.vue';
import GoalForm from '../sessions/GoalForm.vue';
import SessionForm from '../sessions/SessionForm.vue';
import ArrivalForm from '../stays/ArrivalForm.vue';
import AttachmentForm from '../stays/AttachmentForm.vue';
import AwayForm from '../stays/AwayForm.vue';
import IsolationForm from '../stays/IsolationForm.vue';
import LeaveForm from '../stays/LeaveForm.vue';
import LeavingForm from '../stays/LeavingForm.vue';
import MoveForm from '../stays/MoveForm.vue';
import ScopeForm from '../stays/ScopeForm.vue';
import TherapistLineForm from '../stays/TherapistLineForm.vue';
import TransferForm from '../stays/TransferForm.vue';
import UsualWayForm from '../stays/UsualWayForm.vue';
import WallShowingForm from '../stays/WallShowingForm.vue';
import WeightForm from '../stays/WeightForm.vue';
import type { WardDocuments } from '../wards/use-ward-documents.ts';

/** What was in the bed when the sheet was opened. It does not change under the hands. */
export interface SheetSubject {
  readonly ward: string;
  readonly bed: string;
  readonly label: string;
  /** Null on the sheet of an arrival. */
  readonly stay: string | null;
  readonly view: StayView | null;
  readonly name: string | null;
  /** Litres per minute at the checks before; null when never written down, or not read yet. */
  readonly oxygenFlowBefore: OxygenFlowBefore;
}
/** What a form may need besides, as it is now. */
export interface SheetWorld {
  readonly board: BoardView;
  readonly beds: readonly BedView[];
  readonly documents: WardDocuments;
  readonly role: Role | null;
}
export interface SheetKind {
  readonly title: string;
  readonly form: Component;
  readonly props: (subject: SheetSubject, world: SheetWorld) => Record<string, unknown>;
}

const stayOnly: SheetKind['props'] = ({ stay }) => ({ stay });
const stayAndView: SheetKind['props'] = ({ stay, view }) => ({ stay, view });
const stayAndBed: SheetKind['props'] = ({ stay, bed }) => ({ stay, bed });

export const SHEETS = {
  session: {
    title: 'Session',
    form: SessionForm,
    props: ({ stay, view }, { documents }) => ({ stay, view, rules: documents.rules }),
  },
  check: {
    title: 'Check',
    form: CheckFlow,
    props: ({ stay, view, oxygenFlowBefore }, { board, documents, role }) => ({
      stay,
      view,
      protocol: documents.protocol,
      rules: documents.rules,
      board,
      role,
      oxygenFlowBefore,
    }),
  },
  trigger: { title: 'Something happened', form: TriggerForm, props: stayOnly },
  hold: { title: 'Hold', form: HoldForm, props: ({ stay }, { role }) => ({ stay, role }) },
  'hold-review': {
    title: 'Review a hold',
    form: HoldReviewForm,
    props: ({ stay, view }) => ({ stay, holds: view?.holds ?? [], version: view?.version ?? 0 }),
  },
  order: { title: 'Order changed', form: OrderForm, props: stayOnly },
  attachment: { title: 'Attached', form: AttachmentForm, props: stayAndView },
  'on-own': { title: 'On own', form: OnOwnForm, props: stayAndView },
  goal: { title: 'Goal', form: GoalForm, props: stayAndView },
  weight: { title: 'Weight', form: WeightForm, props: stayOnly },
  'usual-way': { title: 'Usual way of moving', form: UsualWayForm, props: stayAndView },
  'seen-walking': { title: 'Seen walking on arrival', form: SeenWalkingForm, props: stayOnly },
  'early-warning': { title: 'NEWS2', form: EarlyWarningForm, props: stayOnly },
  'critical-care': { title: 'Critical-care signs', form: CriticalCareForm, props: stayOnly },
  asleep: { title: 'Asleep', form: AsleepForm, props: stayOnly },
  scope: { title: 'Which plan applies', form: ScopeForm, props: stayAndView },
  'wall-showing': { title: 'On the wall', form: WallShowingForm, props: stayAndView },
  isolation: { title: 'Infection steps', form: IsolationForm, props: stayAndView },
  leaving: {
    title: 'Expected to leave',
    form: LeavingForm,
    props: ({ stay, view }, { board }) => ({ stay, view, zone: board.zone }),
  },
  'therapist-line': { title: 'Line for the bedside', form: TherapistLineForm, props: stayAndView },
  away: { title: 'Off the ward or back', form: AwayForm, props: stayAndView },
  move: {
    title: 'Move or swap beds',
    form: MoveForm,
    props: ({ stay, bed }, { beds }) => ({ stay, bed, beds }),
  },
  transfer: {
    title: 'To another ward',
    form: TransferForm,
    props: ({ stay, bed, ward }) => ({ stay, bed, ward }),
  },
  leave: { title: 'Leaves the ward', form: LeaveForm, props: stayAndBed },
  arrival: {
    title: 'Arrival',
    form: ArrivalForm,
    props: ({ bed }, { board }) => ({ bed, zone: board.zone }),
  },
} satisfies Record<string, SheetKind>;
export type SheetName = keyof typeof SHEETS;

/** The "More" menu, in groups as people look for them. */
const MORE: readonly { readonly group: string; readonly sheets: readonly SheetName[] }[] = [
  {
    group: 'Safer',
    sheets: ['hold', 'hold-review', 'order', 'attachment', 'early-warning', 'critical-care'],
  },
  {
    group: 'The person',
    sheets: [
      'asleep',
      'on-own',
      'goal',
      'weight',
      'usual-way',
      'seen-walking',
      'therapist-line',
      'scope',
      'wall-showing',
    ],
  },
  { group: 'The place', sheets: ['isolation', 'away', 'leaving', 'move', 'transfer', 'leave'] },
];

/** The menu of a ward: what its own rules turn on, and nothing they leave off. */
export const moreOf = ({ criticalCare }: RulesDocument): typeof MORE =>
  MORE.map(({ group, sheets }) => ({
    group,
    sheets: sheets.filter((sheet) => sheet !== 'critical-care' || criticalCare.on.value),
  }));
