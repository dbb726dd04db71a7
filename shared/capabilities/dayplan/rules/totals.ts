import type { StayId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import type { Goal } from '../../sessions/values.ts';
import type { WardCalendar } from '../../wards/context.ts';

/** One stay on one ward day. `recorded: false` is a gap, never a zero. */
export interface WardDayTotal {
  /** Date on the ward's clock on which the ward day began, '2026-10-25'. */
  readonly day: string;
  readonly from: EpochMs;
  readonly to: EpochMs;
  readonly stay: StayId;
  readonly recorded: boolean;
  readonly sessions: { done: number; part: number; stopped: number; notDone: Record<string, number> };
  readonly timesUp: number;
  /** Sums of what was written down; null when no amount was. */
  readonly minutesOutOfBed: number | null;
  readonly metres: number | null;
  /** The goal set by a person and in force at the end of that day (or at `t`). */
  readonly goal: Goal | null;
  readonly goalMet: boolean | null;
}

/** Each ward day from arrival until the stay ended or `t`. */
export function totalsOf(_record: StayRecord, _calendar: WardCalendar, _t: EpochMs): WardDayTotal[] {
  throw new Error('signature only');
}
