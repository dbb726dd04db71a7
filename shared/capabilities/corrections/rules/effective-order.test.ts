/** What counts depends on the entries alone, never on how they arrived or on how they point at each other. */
import { describe, expect, it } from 'vitest';
import {
  confirm,
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

describe('somebody who may only make it safer', () => {
  const confirmed = named('p', confirm(1, 'first'));
  const ended = named('h', { type: 'hold-ended', at: 1, payload: { hold: 'hold-1', placedBy: 'placed' } });
  const off = named('o', { type: 'went-off-ward', at: 1, payload: { reason: 'test' } });

  it.each([
    ['a confirmed plan', confirmed],
    ['the end of a hold', ended],
    ['what bears on no help', off],
  ])('withdraws %s, and nobody is asked to look', (_what, entry) => {
    const { retracted, conflicts, lookAgain } = of(entry, named('r', retract(2, entry.id!, 'aide')));
    expect([...retracted]).toEqual([entry.id]);
    expect({ conflicts, lookAgain }).toEqual({ conflicts: [], lookAgain: [] });
  });
  it.each([
    ['a confirmed plan', confirmed],
    ['the end of a hold', ended],
  ])('does not bring %s back by taking its withdrawal back: both are shown', (_what, entry) => {
    const told = [entry, named('r1', retract(2, entry.id!)), named('r2', retract(3, 'r1', 'aide'))];
    const { facts, conflicts } = of(...told);
    expect(facts.map((f) => f.id)).not.toContain(entry.id);
    expect(conflicts).toMatchObject([{ safer: 'r1', other: 'r2' }]);
  });
});

describe('a correction of a kind that this program does not know', () => {
  it('leaves the entry as it is, also where the entry is of that kind', () => {
    const record = stayOf(weight(1, 80, 'w'), named('c', correct(2, 'w', weight(1, 90, 'w'))));
    const type = 'from-a-newer-program';
    const events = record.events.map((e) => {
      if (e.id === 'w') return { ...e, type };
      return e.id === 'c' ? { ...e, payload: { ...(e.payload as object), type } } : e;
    });
    const { facts } = effectiveFacts({ ...record, events });
    expect(facts.at(-1)).toMatchObject({ id: 'w', type, data: { weight: { kg: 80 } }, correctedBy: null });
  });
});
