/**
 * Marks of a time axis on the ward's own clock: d3's time scales know the browser's zone and UTC, a
 * ward's clock changes are in neither. Found by asking what the ward's clock shows.
 */
import { wardDate, wardTime } from '../board/clock.ts';

const QUARTER = 15 * 60_000;

/** "07:00" as 7; null when it is no full hour. In the hour that is repeated both count. */
function fullHour(at: number, zone: string): number | null {
  const [hour, minute] = wardTime(at, zone).slice(0, 5).split(':');
  return minute === '00' ? Number(hour) : null;
}

/** Instants in [from, to] at which the ward's clock shows a full hour that `every` divides. */
export function hourTicks(from: number, to: number, zone: string, every: number): number[] {
  const ticks: number[] = [];
  for (let at = Math.ceil(from / QUARTER) * QUARTER; at <= to; at += QUARTER) {
    const hour = fullHour(at, zone);
    if (hour === null || hour % every !== 0) continue;
    ticks.push(at);
    // The next one is about `every` hours on; a change of the clock moves it by no more than two.
    at += Math.max(0, every - 2) * 4 * QUARTER;
  }
  return ticks;
}

/** Hours between marks so that about `most` of them fit. */
const STEPS = [1, 2, 3, 6, 12, 24] as const;
export const everyHours = (from: number, to: number, most: number): number =>
  STEPS.find((step) => (to - from) / (step * 3_600_000) <= most) ?? 24;

export interface Tick {
  readonly at: number;
  readonly label: string;
  /** The day begins here, or is named here for want of hours. */
  readonly day: boolean;
}

/** What stands under a time axis with room for `most` labels: hours for a short time, dates for a long one. */
export function timeTicks(from: number, to: number, zone: string, most: number): Tick[] {
  const every = everyHours(from, to, most);
  const ticks = hourTicks(from, to, zone, every).map((at) => {
    const day = fullHour(at, zone) === 0;
    return { at, day, label: day ? wardDate(at, zone) : wardTime(at, zone) };
  });
  if (every < 24) return ticks;
  const skip = Math.ceil(ticks.length / Math.max(1, most));
  return ticks.filter((_, i) => i % skip === 0);
}
