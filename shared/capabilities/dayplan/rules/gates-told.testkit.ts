/** The gate that stops somebody at noon of the first whole day, told whole; and a person never checked here. */
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, hours, recordOf, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import type { StayView } from '../../board/view.ts';
import { sayTime } from '../../wards/rules/calendar.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { gateOf, type Gate, type GateInput } from './round-gates.ts';
import { at, MORNING, rowOf } from './round.testkit.ts';

export const NOON = at(4);
export const say: GateInput['say'] = (t) => sayTime(calendar.zone, t);
export const gateAt = (t: number, stay: StayView): Gate | null =>
  gateOf(stay, { t, night: calendar.night(t), rules: DEFAULT_RULES, say });
/** For whom all else is known, current and free to get up. */
export const gate = (...told: readonly Told[]): Gate | null => gateAt(NOON, rowOf(NOON, ...told));
/** Nobody has checked on this ward how they may be moved. */
export const unchecked = (...told: readonly Told[]): StayView =>
  evaluateStay(stayOf(...told), ward, calendar, NOON).view;
/** In a bed, and not one of the entries is here yet. */
export const unread = (): StayView => evaluateStay(recordOf([]), ward, calendar, NOON).view;
/** Half past eight is 0.5 on the round's morning. */
export const h = (afterEight: number): number => MORNING + afterEight;
export const iso = (afterEight: number): string => new Date(hours(h(afterEight))).toISOString();
