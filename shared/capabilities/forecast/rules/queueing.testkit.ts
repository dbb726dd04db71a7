/**
 * Formulas of queueing theory that the simulator is held against in their own case. Not part of the
 * product: a ward is neither of these.
 */

/** Erlang B by its recursion (A. K. Erlang 1917; the recursion as in any textbook, from memory). */
export function erlangB(servers: number, offered: number): number {
  let b = 1;
  for (let n = 1; n <= servers; n++) b = (offered * b) / (n + offered * b);
  return b;
}

/** Erlang C: chance that an arrival waits, M/M/c. `offered` in erlangs, below `servers`. */
export function erlangC(servers: number, offered: number): number {
  const b = erlangB(servers, offered);
  return (servers * b) / (servers - offered * (1 - b));
}

/** Chance that an arrival of M/M/c waits longer than `t`, holds of mean `hold`. */
export const erlangWaitsOver = (servers: number, offered: number, hold: number, t: number): number =>
  erlangC(servers, offered) * Math.exp((-(servers - offered) * t) / hold);

/**
 * M/M/c//N (machine repair, finite source): the chance of each number of open requests. `ratio` is the
 * rate of one idle source times the mean hold.
 */
export function finiteSource(sources: number, servers: number, ratio: number): number[] {
  const weights = [1];
  for (let n = 1; n <= sources; n++)
    weights.push((weights[n - 1]! * (sources - n + 1) * ratio) / Math.min(n, servers));
  const total = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => w / total);
}

/** The same as an arriving request sees it: the steady state with one source fewer (arrival theorem). */
export function finiteSourceWaitsOver(
  sources: number,
  servers: number,
  ratio: number,
  hold: number,
  t: number,
): number {
  const seen = finiteSource(sources - 1, servers, ratio);
  let chance = 0;
  for (let n = servers; n < sources; n++) {
    // All busy with n open: n - servers + 1 must end first, each after an exponential of rate servers/hold.
    const x = (servers * t) / hold;
    let term = Math.exp(-x);
    let sum = term;
    for (let k = 1; k <= n - servers; k++) {
      term *= x / k;
      sum += term;
    }
    chance += seen[n]! * sum;
  }
  return chance;
}

/** Engset: chance that an arriving request of a finite source finds all servers busy and is lost. */
export function engsetLost(sources: number, servers: number, ratio: number): number {
  let b = 1;
  for (let n = 1; n <= servers; n++) {
    const up = (sources - n) * ratio * b;
    b = up / (n + up);
  }
  return b;
}
