/** How much is fuzzed: a few hundred in `npm test`, a hundred times as many in `npm run test:deep`. */
import { appendFileSync } from 'node:fs';
import { expect } from 'vitest';
import type { Tally } from './world.ts';

export { patience } from '@footboard/shared/kernel/runs.testkit';

const scale = Number(process.env['FOOTBOARD_DEEP'] ?? 1) || 1;
const fixed = process.env['FOOTBOARD_SEED'];
const count = process.env['FOOTBOARD_COUNT'];
/** The seed of this run; a failure of fast-check prints it, and the deep run lists it. */
const seed = fixed === undefined ? Date.now() % 2 ** 31 : Number(fixed);

/** The report names the guilty input itself: nothing is gained by shrinking a whole batch. */
export const times = (few: number) => ({ numRuns: Math.ceil(few * scale), seed, endOnFailure: true });

/** Leaves for the deep run how many inputs were sent, and what became of them. */
export function countInputs(of: string, tally: Tally, failed: boolean): void {
  const became = [...tally.statuses].toSorted(([a], [b]) => a - b);
  const said = became.map(([status, n]) => `${status || 'closed'}: ${n}`).join(', ');
  if (count === undefined) return;
  const test = `${expect.getState().currentTestName ?? 'fuzz'} (${of}; taken ${tally.taken}; ${said})`;
  appendFileSync(count, `${JSON.stringify({ test, of: 'inputs', runs: tally.sent, seed, failed })}\n`);
}

/** Why a run failed, short enough to read, with the seed that brings it back; empty when it did not. */
export const reasonOf = (done: { failed: boolean; seed: number; errorInstance: unknown }): string =>
  done.failed ? `FOOTBOARD_SEED=${done.seed}: ${String(done.errorInstance).slice(0, 8_000)}` : '';
