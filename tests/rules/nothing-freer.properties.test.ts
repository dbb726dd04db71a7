/** What no sequence of entries may bring about, in whatever order and however late: an aide who makes it freer. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StayId } from '@footboard/shared/kernel/ids';
import { patience, runs } from '@footboard/shared/kernel/runs.testkit';
import { MINUTE } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import { evaluateStay } from '@footboard/shared/capabilities/board/rules/evaluate-stay';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { policyRow } from '@footboard/shared/capabilities/people/policy/document';
import {
  arrived,
  claimedBy,
  LARCH,
  STAFF,
  T0,
  worldWith,
} from '@footboard/server/capabilities/given.testkit';
import type { Entering, World } from '@footboard/server/capabilities/world.testkit';
import { act, entryOf, standingBy } from './entries.testkit.ts';
import { freer } from './freer.testkit.ts';

function viewOf(world: World, t: EpochMs): StayView {
  const events = world.events(LARCH, streamKey('stay', 'anna'));
  const { state, calendar } = world.ward(LARCH);
  return evaluateStay({ stay: 'anna' as StayId, version: events.length, events }, state!, calendar!, t).view;
}

describe('an aide', { timeout: patience }, () => {
  it('makes nothing freer, whatever came before, by any entry that is accepted', () => {
    const seen = { byAide: 0, claimed: 0, corrections: 0, stoodBy: 0, freedByOthers: 0 };
    fc.assert(
      fc.property(fc.array(act, { minLength: 12, maxLength: 40, size: 'max' }), (acts) => {
        const world = worldWith(arrived('anna', 'b1'));
        let now = T0;
        acts.forEach((drawn, i) => {
          const a = standingBy(world, drawn);
          now += a.minutes * MINUTE;
          const when = { ward: LARCH, occurred: now - a.late * MINUTE, now };
          const [type, data] = entryOf(world, a, when.occurred, i);
          const claimed = !a.signedIn && policyRow(type.name)!.unconfirmed === 'recorded';
          const entering: Entering = claimed
            ? { ...when, ...claimedBy(STAFF[a.by]), entitled: a.by }
            : { ...when, by: STAFF[a.by] };
          const compared = a.by === 'aide' || claimed || i % 4 === 0;
          const before = compared ? viewOf(world, now) : null;
          const decision = world.enter(type, data, entering);
          if (before === null || !('accept' in decision)) return;
          const less = freer(before, viewOf(world, now), type.name === 'record-weight');
          const byAide = a.by === 'aide' || claimed;
          if (byAide) seen.byAide += 1;
          if (claimed && a.by !== 'aide') seen.claimed += 1;
          if (type.name === 'confirm-entry' && a.by !== 'aide') seen.stoodBy += 1;
          if (byAide && type.name.startsWith('make-')) seen.corrections += 1;
          if (!byAide && less.length > 0) seen.freedByOthers += 1;
          expect(byAide ? less : [], `${type.name} ${JSON.stringify(data)}`).toEqual([]);
        });
      }),
      runs(80),
    );
    // The comparison sees freeing where it happens, and aides were heard.
    expect(seen.byAide).toBeGreaterThan(100);
    expect(seen.corrections).toBeGreaterThan(5);
    expect(seen.claimed).toBeGreaterThan(50);
    expect(seen.stoodBy).toBeGreaterThan(1);
    expect(seen.freedByOthers).toBeGreaterThan(5);
  });
});
