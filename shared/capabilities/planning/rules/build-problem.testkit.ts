/** What the day plan is asked for one invented ward: a nurse until the afternoon, an aide until the night, one bed and one lift. */
import { HOUR } from '../../../kernel/times.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { BedView, StayView } from '../../board/view.ts';
import type { PeopleOn, WardState } from '../../wards/context.ts';
import { wardCalendar } from '../../wards/rules/calendar.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { buildProblem } from './build-problem.ts';
import type { PlanInput } from './plan-input.ts';
import { move, toldStay } from './told-stay.testkit.ts';

/** 09:00 on the ward's clock, winter time; the night begins at 21:00, so the grid has 48 slots. */
export const T = Date.UTC(2026, 2, 3, 8);
export const at = (h: number) => T + h * HOUR;
const time = (from: number, to: number, breaks: [number, number][] = []) => ({
  from: at(from),
  to: at(to),
  breaks: breaks.map(([a, b]) => ({ from: at(a), to: at(b) })),
});
const ON: PeopleOn = new Map([
  [
    '2026-03-03',
    new Map([
      ['ana', time(-2, 6, [[2, 2.5]])],
      ['ben', time(-2, 12)],
    ]) as never,
  ],
]);
const WARD = {
  ward: 'w1',
  name: 'Invented',
  zone: 'Europe/Berlin',
  wardDayFrom: '07:00',
  nightFrom: '21:00',
  nightTo: '07:00',
  beds: [{ bed: 'b1', label: 'A1', bay: 'Bay A', ceilingTrack: false }],
  items: new Map([['lift', { label: 'Lift 1' }]]),
  staff: new Map([
    ['ana', { role: 'nurse', active: true }],
    ['ben', { role: 'aide', active: true }],
  ]),
  carers: new Map([['b1', { until: at(9), who: { nurse: 'ana', aide: null } }]]),
  peopleOn: ON,
  rules: null,
} as unknown as WardState;

export type Told = Partial<StayView> & { readonly plans?: readonly TaskPlan[] };
export const inBed = (
  { plans = [move()], ...more }: Told = {},
  fit: PlanInput['stays'][number]['fit'] = [],
) => {
  const stay = toldStay(plans, more);
  const bed = { bed: 'b1', label: 'A1', bay: 'Bay A', stay } as unknown as BedView;
  return { bed, stay, fit };
};
export const built = (stays: PlanInput['stays'], more: Partial<PlanInput> = {}) =>
  buildProblem({
    t: T,
    ward: WARD,
    calendar: wardCalendar(WARD),
    rules: DEFAULT_RULES,
    stays,
    expected: [],
    items: [{ item: 'lift' as never, usable: 'usable' }],
    accepted: null,
    ...more,
  });
