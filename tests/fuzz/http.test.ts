/**
 * Malformed requests over every address and command, made from the schemas that check them. Whatever
 * is sent: no 500, no crash, every no is a problem that says what to do, and nothing is written that
 * no answer speaks of.
 */
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { countInputs, patience, reasonOf, times } from './depth.ts';
import { anyMalformed, anyMalformedCommand } from './inputs.ts';
import type { Input } from './inputs.ts';
import { faultsOf, newTally, openWorld } from './world.ts';
import type { Tally, World } from './world.ts';

/** So many requests go out between two looks at the database. */
const TOGETHER = 20;

function fuzz(world: World, input: fc.Arbitrary<Input>, tally: Tally, batches: number) {
  const batch = fc.array(input, { minLength: TOGETHER, maxLength: TOGETHER });
  return fc.check(
    fc.asyncProperty(batch, async (inputs) => {
      const faults = await faultsOf(world, inputs, tally);
      if (faults.length > 0) throw new Error(faults.join('\n'));
    }),
    times(batches),
  );
}

describe('malformed requests with the limits off', { timeout: patience }, () => {
  let world: World;
  beforeAll(async () => {
    world = await openWorld('off');
  });
  afterAll(() => world.footboard.close());

  it('FUZZ-1 meet no 500, no crash, a problem that says what to do, and change nothing', async () => {
    const tally = newTally();
    const done = await fuzz(world, anyMalformed(Object.keys(world.voices)), tally, 42);
    countInputs('limits off', tally, done.failed);
    expect(reasonOf(done)).toBe('');
    // Most must reach the program and be refused there, or the fuzzer tries nothing.
    expect(tally.statuses.get(422)).toBeGreaterThan(tally.sent / 20);
  });
});

describe('malformed requests with the limits on', { timeout: patience }, () => {
  let world: World;
  beforeAll(async () => {
    world = await openWorld();
  });
  afterAll(() => world.footboard.close());

  it('FUZZ-3 are told to wait once they are too many, still without a 500, and change nothing', async () => {
    const tally = newTally();
    // One sender first, far beyond what a minute allows (some never reach the counter); then everybody.
    const flood = await fuzz(world, anyMalformedCommand(['nurse']), tally, 36);
    const done = flood.failed ? flood : await fuzz(world, anyMalformed(Object.keys(world.voices)), tally, 22);
    countInputs('limits on', tally, done.failed);
    expect(reasonOf(done)).toBe('');
    expect(tally.statuses.get(429)).toBeGreaterThan(0);
  });
});
