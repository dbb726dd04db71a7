/**
 * A timer at the bedside counts from an instant that is kept, so that closing the sheet or reloading the
 * page does not stop it. It decides and records nothing.
 */
export interface RunningTimer {
  /** This device's clock (epoch ms). */
  readonly startedAt: number;
  readonly seconds: number;
}
/** Past its end a timer says for a while that time is up, then it is forgotten. */
const FORGOTTEN_AFTER_MS = 10 * 60_000;
const keyOf = (of: string): string => `footboard.timer.${of}`;

/** Whole seconds left, never below zero. A clock put back makes it no longer than it is. */
export const secondsLeft = ({ startedAt, seconds }: RunningTimer, now: number): number =>
  Math.min(seconds, Math.max(0, Math.ceil((startedAt + seconds * 1_000 - now) / 1_000)));

export function keepTimer(of: string, timer: RunningTimer | null): void {
  try {
    if (timer) sessionStorage.setItem(keyOf(of), JSON.stringify(timer));
    else sessionStorage.removeItem(keyOf(of));
  } catch {
    // A browser that keeps nothing times until the page goes.
  }
}

export function keptTimer(of: string, now: number): RunningTimer | null {
  try {
    const kept = JSON.parse(sessionStorage.getItem(keyOf(of)) ?? 'null') as Partial<RunningTimer> | null;
    if (typeof kept?.startedAt !== 'number' || typeof kept.seconds !== 'number') return null;
    const over = now - (kept.startedAt + kept.seconds * 1_000);
    return over < FORGOTTEN_AFTER_MS ? { startedAt: kept.startedAt, seconds: kept.seconds } : null;
  } catch {
    return null;
  }
}
