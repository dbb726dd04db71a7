import { resolveLocal } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { ZONE } from './cast.ts';

/** The week played: Tuesday 20 to Monday 26 October 2026; the clocks go back on Sunday 25 at 01:00 UTC. */
const FIRST_DAY = Date.UTC(2026, 9, 20);
/** The demo goes live on Tuesday 27 October 2026 at 08:20, in time for the huddle. */
export const LIVE_DAY = 7;
export const CLOCK_CHANGE_DAY = 5;

/** The instant of a time on the ward's clock, `day` days after the first. */
export function at(day: number, clock: string, repeated: 'first' | 'second' = 'first'): EpochMs {
  const date = new Date(FIRST_DAY + day * 86_400_000).toISOString().slice(0, 10);
  const resolved = resolveLocal(ZONE, `${date}T${clock}`, repeated);
  if ('at' in resolved) return resolved.at;
  throw new Error(resolved.detail);
}
export const LIVE_FROM: () => EpochMs = () => at(LIVE_DAY, '08:20');
