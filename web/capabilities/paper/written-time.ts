/** The time that stands on paper, on the ward's clock, as an instant. */
import { MINUTE } from '@footboard/shared/kernel/times';
import { wardTime } from '../../board/clock.ts';

/**
 * "14:05" as its last happening up to `now` on the ward's clock; null while it is no time. Searched
 * by minutes, so that a clock change needs no rule of its own; in a repeated hour the later one.
 */
export function writtenInstant(text: string, zone: string, now: number): number | null {
  if (!/^([01]\d|2[0-3]):[0-5]\d$/.test(text)) return null;
  const from = Math.floor(now / MINUTE) * MINUTE;
  for (let back = 0; back < 25 * 60; back++) {
    const at = from - back * MINUTE;
    if (wardTime(at, zone).startsWith(text)) return at;
  }
  return null;
}
