/** Movement debt in words. The hours are counted here, from the server's clock: a row holds only instants. */
import type { DebtView, StayView } from '@footboard/shared/capabilities/board/view';

/** Waking time since last up (ms); it stands still at night. Never below 0. */
export const awakeMs = (debt: DebtView, now: number): number =>
  Math.max(0, (debt.pausedAt ?? now) - debt.since - debt.sleptMs);

/** "5 waking hours since last up". Hours and no days: a waking day is no day of the clock. */
export function debtWords(debt: DebtView, lastUp: StayView['lastUp'], now: number): string {
  const hours = Math.floor(awakeMs(debt, now) / 3_600_000);
  const words = hours === 0 ? 'under 1 waking hour' : `${hours} waking ${hours === 1 ? 'hour' : 'hours'}`;
  const since = lastUp ? 'since last up' : 'since arrival, no time up recorded';
  return `${words} ${since}${debt.pausedAt === null ? '' : ', not counted at night'}`;
}
