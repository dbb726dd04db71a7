/** Stretches of the ward's clock ("12:00-12:45") as instants. Pure. */
import { ELAPSED_DAY, MINUTE } from '../../../kernel/times.ts';
import type { Period } from '../../wards/context.ts';
import { boundaryAt, wallAt } from '../../wards/rules/zone.ts';

const minuteOf = (clock: string): number => {
  const [hour = 0, minute = 0] = clock.split(':').map(Number);
  return (hour * 60 + minute) * MINUTE;
};

/** Every one that touches the grid; one that ends before it begins ends on the next date. */
export function wallWindows(
  windows: readonly string[],
  zone: string,
  grid: { readonly start: number; readonly end: number },
): Period[] {
  const midnight = Math.floor(wallAt(zone, grid.start) / ELAPSED_DAY) * ELAPSED_DAY;
  return [-1, 0, 1, 2]
    .flatMap((day) =>
      windows.map((window): Period => {
        const [begins = '', ends = ''] = window.split('-');
        const from = midnight + day * ELAPSED_DAY + minuteOf(begins);
        const over = minuteOf(ends) <= minuteOf(begins) ? ELAPSED_DAY : 0;
        const to = midnight + day * ELAPSED_DAY + over + minuteOf(ends);
        return { from: boundaryAt(zone, from), to: boundaryAt(zone, to) };
      }),
    )
    .filter(({ from, to }) => from < grid.end && to > grid.start);
}
