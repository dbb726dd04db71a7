/**
 * A clock that only goes forward and counts sleep. `performance.now()` may stand still while the
 * machine sleeps, so a jump of the wall clock ahead of it is added. A wall clock set forward by hand
 * then makes a board look old until the next heartbeat, which is the safe mistake.
 */
export function makeMono(
  performanceNow: () => number = () => performance.now(),
  wallNow: () => number = () => Date.now(),
): () => number {
  let lastTick = performanceNow();
  let lastWall = wallNow();
  let slept = 0;
  return () => {
    const tick = performanceNow();
    const wall = wallNow();
    const jump = wall - lastWall - (tick - lastTick);
    if (jump > 1_000) slept += jump;
    lastTick = tick;
    lastWall = wall;
    return tick + slept;
  };
}
