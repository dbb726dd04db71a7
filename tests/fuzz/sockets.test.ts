/**
 * Malformed socket messages and packets. Whatever is sent: no exception, no crash, an answer of the
 * documented shape where one is asked for, and nothing is written.
 */
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { countInputs, patience, reasonOf, times } from './depth.ts';
import { anyMessage, anyPackets } from './messages.ts';
import { Screens, faultsOfMessages, faultsOfPackets, floodedOut } from './sockets.ts';
import { unchanged } from './unchanged.ts';
import { newTally, openWorld } from './world.ts';
import type { World } from './world.ts';

const TOGETHER = 10;

describe.each([['off'], ['on']] as const)(
  'malformed messages with the limits %s',
  { timeout: patience },
  (limits) => {
    let world: World;
    beforeAll(async () => {
      world = await openWorld(limits === 'off' ? 'off' : undefined);
    });
    afterAll(() => world.footboard.close());

    it('FUZZ-2 meet no exception and change nothing', async () => {
      const tally = newTally();
      const screens = new Screens(world, tally, limits === 'on');
      const batch = fc.array(anyMessage(Object.keys(world.voices)), {
        minLength: TOGETHER,
        maxLength: TOGETHER,
      });
      const done = await fc.check(
        fc.asyncProperty(batch, async (messages) => {
          const faults = await faultsOfMessages(world, screens, messages);
          if (faults.length > 0) throw new Error(faults.join('\n'));
        }),
        times(14),
      );
      screens.close();
      countInputs(`limits ${limits}`, tally, done.failed);
      expect(reasonOf(done)).toBe('');
      expect(tally.taken).toBeGreaterThan(0);
    });

    it('FUZZ-2 given packets that are none, the server goes on and changes nothing', async () => {
      const tally = newTally();
      const voices = Object.keys(world.voices);
      const done = await fc.check(
        fc.asyncProperty(fc.constantFrom(...voices), anyPackets, async (voice, packets) => {
          const faults = await faultsOfPackets(world, voice, packets, tally);
          if (faults.length > 0) throw new Error(faults.join('\n'));
        }),
        times(24),
      );
      countInputs(`limits ${limits}`, tally, done.failed);
      expect(reasonOf(done)).toBe('');
    });
  },
);

describe('a flood on one socket', () => {
  let world: World;
  beforeAll(async () => {
    world = await openWorld();
  });
  afterAll(() => world.footboard.close());

  it('FUZZ-3 is put out and changes nothing', async () => {
    const tally = newTally();
    const screens = new Screens(world, tally, true);
    const faults = await unchanged(world, async () =>
      (await floodedOut(screens, 'nurse', 200)) ? [] : ['the socket is still open'],
    );
    screens.close();
    expect(faults).toEqual([]);
    // As many answers as a minute allows, and not one for each message.
    expect(tally.taken).toBeLessThan(100);
  });
});
