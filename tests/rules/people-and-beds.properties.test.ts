/**
 * What no sequence of entries may bring about, whoever enters them, in whatever order and however late: two
 * people in one bed, a person in two, a person in a bed that is not on the board.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CommandType } from '@footboard/shared/kernel/command-type';
import { streamKey } from '@footboard/shared/kernel/event-type';
import type { StayId, WardId } from '@footboard/shared/kernel/ids';
import { patience, runs } from '@footboard/shared/kernel/runs.testkit';
import { MINUTE } from '@footboard/shared/kernel/times';
import { standingOf } from '@footboard/server/capabilities/stays/standing';
import { LARCH, ROWAN, STAFF, T0, worldWith } from '@footboard/server/capabilities/given.testkit';
import type { Entering, World } from '@footboard/server/capabilities/world.testkit';
import { command } from './entries.testkit.ts';

const other = (ward: WardId): WardId => (ward === LARCH ? ROWAN : LARCH);

describe('people and beds', { timeout: patience }, () => {
  const STAYS = ['s1', 's2', 's3', 's4', 's5', 's6'];
  const BEDS = ['b1', 'b2', 'b3', 'b4'];
  const act = fc.record({
    does: fc.constantFrom(
      'begin',
      'begin',
      'begin',
      'move',
      'move',
      'swap',
      'swap',
      'transfer',
      'end',
      'close',
    ),
    ward: fc.constantFrom(LARCH, LARCH, LARCH, ROWAN),
    stay: fc.constantFrom(...STAYS),
    second: fc.constantFrom(...STAYS),
    bed: fc.constantFrom(...BEDS),
    from: fc.constantFrom(...BEDS),
    /** Whether the entry says where the people really are. */
    informed: fc.boolean(),
    late: fc.constantFrom(0, 0, 0, 10, 90),
  });
  type Act = typeof act extends fc.Arbitrary<infer A> ? A : never;

  const bedOf = (world: World, { ward, informed, from }: Act, stay: string): string =>
    informed ? (standing(world, ward, stay)?.bed ?? from) : from;
  const standing = (world: World, ward: WardId, id: string) => {
    const events = world.events(ward, streamKey('stay', id));
    return standingOf({ stay: id as StayId, version: events.length, events });
  };

  function entryOf(world: World, a: Act): [CommandType, object] {
    const from = bedOf(world, a, a.stay);
    switch (a.does) {
      case 'begin':
        return [command('begin-stay'), { stay: a.stay, person: `p-${a.stay}`, bed: a.bed, from: 'home' }];
      case 'move':
        return [command('move-stay'), { stay: a.stay, from, to: a.bed }];
      case 'swap':
        return [
          command('swap-stays'),
          { first: { stay: a.stay, bed: from }, second: { stay: a.second, bed: bedOf(world, a, a.second) } },
        ];
      case 'transfer':
        return [
          command('transfer-stay'),
          { stay: a.stay, bed: from, to: { ward: other(a.ward), bed: a.bed, stay: a.second } },
        ];
      case 'end':
        return [command('end-stay'), { stay: a.stay, bed: from, to: 'home' }];
      default:
        return [command('close-bed'), { bed: a.bed }];
    }
  }

  function faults(world: World): string[] {
    const found: string[] = [];
    for (const ward of [LARCH, ROWAN]) {
      const occupied = new Map<string, string>();
      for (const bed of BEDS) {
        let inIt: string | null = null;
        let last = -Infinity;
        for (const event of world.events(ward, streamKey('bed', bed))) {
          const who = (event.payload as { stay?: string }).stay ?? null;
          if (event.occurred < last) found.push(`${bed}: ${event.type} before what came before it`);
          last = event.occurred;
          if (event.type === 'bed-taken' && inIt !== null) found.push(`${bed}: ${who} put on ${inIt}`);
          if (event.type === 'bed-freed' && inIt !== who)
            found.push(`${bed}: ${who} taken out, ${inIt} was in it`);
          if (event.type === 'bed-withdrawn' && inIt !== null) found.push(`${bed}: closed under ${inIt}`);
          inIt = event.type === 'bed-taken' ? who : null;
        }
        if (inIt === null) continue;
        if (occupied.has(inIt)) found.push(`${inIt} lies in ${occupied.get(inIt)} and in ${bed}`);
        occupied.set(inIt, bed);
        if (!world.ward(ward).state!.beds.some((b) => b.bed === bed))
          found.push(`${inIt} is in a bed off the board`);
      }
      for (const id of STAYS) {
        const s = standing(world, ward, id);
        const lies = occupied.get(id) ?? null;
        const should = s && s.ended === null ? s.bed : null;
        if (lies !== should) found.push(`${id}: the stay says ${should}, the bed's guard ${lies}`);
      }
    }
    return found;
  }

  it('no two people in one bed, no person in two, nobody in a closed one, though two entries race', () => {
    const seen = { accepted: 0, raced: 0 };
    fc.assert(
      fc.property(fc.array(fc.tuple(act, act), { minLength: 5, maxLength: 25, size: 'max' }), (pairs) => {
        const world = worldWith();
        let now = T0;
        for (const pair of pairs) {
          now += 30 * MINUTE;
          const decided = pair.map((a) => {
            const entering: Entering = {
              ward: a.ward,
              by: STAFF['charge-nurse'],
              occurred: now - a.late * MINUTE,
              now,
            };
            const [type, data] = entryOf(world, a);
            return { entering, type, data, decision: world.decide(type, data, entering) };
          });
          const written = new Set<string>();
          for (const { entering, type, data, decision } of decided) {
            if (!('accept' in decision)) continue;
            const streams = decision.accept.map((e) => `${e.ward ?? entering.ward} ${e.stream}`);
            // The log's key on (ward, stream, version): the later of two writers to one stream decides again.
            if (streams.some((s) => written.has(s))) {
              seen.raced += 1;
              world.enter(type, data, entering);
            } else {
              seen.accepted += 1;
              world.append(decision.accept, entering);
            }
            for (const s of streams) written.add(s);
          }
          expect(faults(world)).toEqual([]);
        }
      }),
      runs(150, 'cases'),
    );
    // The histories are worth something only if much of them was accepted, and some of it raced.
    expect(seen.accepted).toBeGreaterThan(200);
    expect(seen.raced).toBeGreaterThan(5);
  });
});
