/** Movement debt in words. The hours are counted here, from the server's clock: a row holds only instants. */
import type { DebtView, StayView } from '@footboard/shared/capabilities/board/view';
import { elapsed } from './clock.ts';

/** Waking time since last up (ms); it stands still at night. Never below 0. */
export const awakeMs = (debt: DebtView, now: number): number =>
  Math.max(0, (debt.pausedAt ?? now) - debt.since - debt.sleptMs);

/** "5 h awake since last up"; "up within the hour" says more than a count of minutes. */
export function debtWords(debt: DebtView, lastUp: StayView['lastUp'], now: number): string {
  const words = elapsed(awakeMs(debt, now));
  const since = lastUp ? 'since last up' : 'since arrival, no time up recorded';
  return `${words === 'now' ? 'under 1 min' : words} awake ${since}${debt.pausedAt === null ? '' : ', not counted at night'}`;
}
