/** Movement debt in words. The hours are counted here, from the server's clock: a row holds only instants. */
import type { DebtView } from '@footboard/shared/capabilities/board/activity-view';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { say } from './say.ts';

/** Waking time since last up (ms); it stands still at night. Never below 0. */
export const awakeMs = (debt: DebtView, now: number): number =>
  Math.max(0, (debt.pausedAt ?? now) - debt.since - debt.sleptMs);

/** "5 waking hours since last up". Hours and no days: a waking day is no day of the clock. */
export function debtWords(debt: DebtView, lastUp: StayView['lastUp'], now: number): string {
  const hours = Math.floor(awakeMs(debt, now) / 3_600_000);
  const time = hours === 0 ? say('debt-under') : say('debt-hours', { n: hours }, hours);
  const words = say(lastUp ? 'debt-since-up' : 'debt-since-arrival', { hours: time });
  return debt.pausedAt === null ? words : say('debt-paused', { words });
}
