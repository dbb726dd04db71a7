/**
 * How many random cases a property tries: few in `npm test`, many in `npm run test:deep`. The deep run
 * sets FOOTBOARD_DEEP to how many times as many (a part of one when mutants are hunted), and FOOTBOARD_COUNT to a file in which each property
 * leaves what it did. FOOTBOARD_SEED fixes the random seed; a failure prints its own.
 */
import { appendFileSync } from 'node:fs';
import * as fc from 'fast-check';
import { expect } from 'vitest';

const times = Number(process.env.FOOTBOARD_DEEP ?? 1) || 1;
const seed = process.env.FOOTBOARD_SEED === undefined ? undefined : Number(process.env.FOOTBOARD_SEED);
const count = process.env.FOOTBOARD_COUNT;

/** Whether properties go to their ordinary depth at least: then rare kinds of cases must have come up. */
export const whole = times >= 1;
/** Whether this is the deep run. */
export const deep = times > 1;
/** How long a test over random cases may take (ms). */
export const patience = deep ? 6 * 3_600_000 : 60_000;

/** What a property has done, as the deep run reads it. */
export interface Done {
  readonly test: string;
  readonly of: 'histories' | 'cases';
  readonly runs: number;
  readonly seed: number;
  readonly failed: boolean;
}

/**
 * The parameters of a property: `few` cases, or as many times more in the deep run. `histories` are
 * whole streams of events that are evaluated; only they count for the depth that was promised.
 */
export function runs<T>(few: number, of: Done['of'] = 'histories'): fc.Parameters<T> {
  return {
    numRuns: Math.ceil(few * times),
    ...(seed === undefined ? {} : { seed }),
    ...(count === undefined ? {} : { reporter: (done: fc.RunDetails<T>) => leave(count, of, done) }),
  };
}

function leave<T>(file: string, of: Done['of'], done: fc.RunDetails<T>): void {
  const test = expect.getState().currentTestName ?? 'a test';
  const said: Done = { test, of, runs: done.numRuns, seed: done.seed, failed: done.failed };
  appendFileSync(file, `${JSON.stringify(said)}\n`);
  if (done.failed) throw new Error(fc.defaultReportMessage(done), { cause: done.errorInstance });
}
