/** What counts depends on the entries alone, never on how they arrived or on how they point at each other. */
import { describe, expect, it } from 'vitest';
import {
  confirmation,
  correct,
  cosignature,
  retract,
  session,
  stayOf,
  unconfirmed,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from './effective.ts';

const of = (...told: readonly Told[]) => effectiveFacts(stayOf(...told));
const named = (id: string, told: Told): Told => ({ ...told, id });
const weight = (at: number, kg: number, id: string): Told => ({
  type: 'weight-recorded',
  at,
  id,
  payload: { weight: { kg, how: 'measured' } },
});

describe('what is told of several changes', () => {
  it('is in the order of the entries they speak of, however these arrived', () => {
    const told = [
      weight(1, 80, 'a'),
      weight(2, 81, 'b'),
      named('x', correct(3, 'b', weight(2, 60, 'b'), 'aide')),
      named('y', correct(4, 'a', weight(1, 60, 'a'), 'aide')),
    ];
    for (const arrived of [told, told.toReversed()]) {
      const { conflicts, lookAgain } = of(...arrived);
      expect(conflicts.map((c) => c.other)).toEqual(['y', 'x']);
      expect(lookAgain.map((l) => l.event)).toEqual(['y', 'x']);
    }
  });
  it('takes a confirmation in its time: a heavier weight after it asks for no look of its own', () => {
    const claimed = named('w', unconfirmed(weight(1, 80, 'w'), 'nurse'));
    const stoodBy = named('k', confirmation(3, 'w'));
    const heavier = (at: number) => named('c', correct(at, 'w', weight(1, 90, 'w')));
    expect(of(claimed, stoodBy, heavier(4)).lookAgain.map((l) => l.event)).toEqual(['k']);
    // Before it, the correction is what counts for the first time.
    expect(of(claimed, stoodBy, heavier(2)).lookAgain.map((l) => l.event)).toEqual(['k', 'c']);
  });
});

describe('a second signature', () => {
  it('changes neither the author nor the help, and asks for no look', () => {
    const walk: Told = { ...session(1), id: 's', source: { kind: 'person', cosign: 'student' } };
    const { facts, cosigned, lookAgain, claims } = of(walk, named('k', cosignature(2, 's')));
    expect([...cosigned.values()].map((by) => by.id)).toEqual(['k']);
    expect(facts.at(-1)).toMatchObject({ id: 's', author: { staff: 'staff-aide', role: 'aide' } });
    expect({ lookAgain, claims }).toEqual({ lookAgain: [], claims: [] });
  });
});

describe('corrections in a circle', () => {
  it('correct nothing, and come to an end', () => {
    const circle = [
      named('c1', correct(2, 'c2', weight(1, 60, 'w'))),
      named('c2', correct(3, 'c1', weight(1, 60, 'w'))),
    ];
    const { facts, retracted } = of(weight(1, 80, 'w'), ...circle, named('r', retract(4, 'c1', 'aide')));
    expect(facts.at(-1)).toMatchObject({ id: 'w', data: { weight: { kg: 80 } }, correctedBy: null });
    expect(retracted.size).toBe(0);
  });
});
