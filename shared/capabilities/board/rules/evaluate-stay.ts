import type { EpochMs } from '../../../kernel/times.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import type { WardCalendar, WardState } from '../../wards/context.ts';
import type { StayView } from '../view.ts';

/** The stay as the board shows it at `t`, and the next instant at which that can change by time alone. */
export function evaluateStay(
  _record: StayRecord,
  _ward: WardState,
  _calendar: WardCalendar,
  _t: EpochMs,
): { view: StayView; nextChange: EpochMs | null } {
  throw new Error('signature only');
}
