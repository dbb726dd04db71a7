/** The four verbs as users-job.md 3c tells them apart; who may lower help: design, rule 2. */
import { describe, expect, it } from 'vitest';
import type { EventId } from '../../../kernel/ids.ts';
import {
  check,
  correct,
  hours,
  retract,
  session,
  stayOf,
  trigger,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from './effective.ts';

const factsOf = (...told: readonly Told[]) =>
  effectiveFacts(stayOf(...told)).facts.filter((f) => f.type !== 'stay-begun');
const weight = (at: number, kg: number, id: string): Told => ({
  type: 'weight-recorded',
  at,
  id,
  payload: { weight: { kg, how: 'measured' } },
});
const aideWeight = (at: number, kg: number): Told => ({ ...weight(at, kg, 'e'), role: 'aide' });

describe('effective facts', () => {
  it('are ordered by when they occurred; at one instant a permission comes before a restriction', () => {
    const set: Told = { type: 'on-own-set', at: 2, id: 'z', payload: { where: ['room'], when: ['day'] } };
    const facts = factsOf(trigger('fall', 2), set, weight(1, 70, 'w'));
    expect(facts.map((f) => f.type)).toEqual(['weight-recorded', 'on-own-set', 'trigger-recorded']);
  });

  it('carry the corrected data and time under the id of the original entry', () => {
    const [fact] = factsOf(weight(1, 80, 'w'), {
      ...correct(3, 'w', weight(1, 88, 'x'), 'nurse', 2),
      id: 'c',
    });
    expect(fact).toMatchObject({
      id: 'w',
      data: { weight: { kg: 88 } },
      occurred: hours(2),
      correctedBy: 'c',
      author: { role: 'nurse' },
    });
  });

  it('let a correction of a correction speak of the original: the last one counts', () => {
    const facts = factsOf(
      weight(1, 80, 'w'),
      { ...correct(3, 'w', weight(1, 88, 'x')), id: 'c1' },
      { ...correct(4, 'c1', weight(1, 90, 'x')), id: 'c2' },
    );
    expect(facts).toMatchObject([{ id: 'w', data: { weight: { kg: 90 } }, correctedBy: 'c2' }]);
  });

  it.each([
    ['c1', 'c2'],
    ['c2', 'c1'],
  ])(
    'let the one with the later id stand of two corrections of one instant, logged as %s, %s',
    (one, two) => {
      const as = (id: string, kg: number): Told => ({ ...correct(3, 'w', weight(1, kg, 'x')), id });
      const kg: Record<string, number> = { c1: 81, c2: 82 };
      const facts = factsOf(weight(1, 80, 'w'), as(one, kg[one]!), as(two, kg[two]!));
      expect(facts).toMatchObject([{ data: { weight: { kg: 82 } }, correctedBy: 'c2' }]);
    },
  );

  it.each([
    ['w1', 'w2'],
    ['w2', 'w1'],
  ])('of one instant stand in the order of their ids, logged as %s, %s', (one, two) => {
    expect(factsOf(weight(1, 80, one), weight(1, 81, two)).map(({ id }) => id)).toEqual(['w1', 'w2']);
  });

  it.each([5, null, {}, [], 'x'])(
    'leave the entry as it is when a correction is not of its shape: %j',
    (value) => {
      const wrong = { ...correct(3, 'w', { type: 'weight-recorded', payload: value }), id: 'c' };
      expect(factsOf(weight(1, 80, 'w'), wrong)).toMatchObject([
        { id: 'w', data: { weight: { kg: 80 } }, correctedBy: null },
      ]);
    },
  );

  it('take the correction made last, in whatever order the two arrived', () => {
    const entries = [
      weight(1, 80, 'w'),
      { ...correct(3, 'w', weight(1, 88, 'x')), id: 'c1' },
      { ...correct(4, 'w', weight(1, 90, 'x')), id: 'c2' },
    ];
    for (const told of [entries, entries.toReversed()]) {
      expect(factsOf(...told)).toMatchObject([{ data: { weight: { kg: 90 } }, correctedBy: 'c2' }]);
    }
  });

  it('leave out what was retracted, and bring it back when the retraction is retracted', () => {
    const entry = { ...trigger('fall', 1), id: 'f' };
    const withdrawn = { ...retract(2, 'f'), id: 'r1' };
    expect(factsOf(entry, withdrawn)).toEqual([]);
    const back = effectiveFacts(stayOf(entry, withdrawn, { ...retract(3, 'r1'), id: 'r2' }));
    expect(back.facts.map((f) => f.id)).toContain('f');
    expect([...back.retracted]).toEqual(['r1']);
  });

  it('fall back to the entry when its correction is retracted', () => {
    const facts = factsOf(
      weight(1, 80, 'w'),
      { ...correct(2, 'w', weight(1, 60, 'x')), id: 'c' },
      { ...retract(3, 'c'), id: 'r' },
    );
    expect(facts).toMatchObject([{ data: { weight: { kg: 80 } }, correctedBy: null }]);
  });

  it('keep what addenda and amendments speak of, and list them', () => {
    const text = { ref: 't1' };
    const { facts, changes } = effectiveFacts(
      stayOf(
        weight(1, 80, 'w'),
        { type: 'addendum-made', at: 2, id: 'a', payload: { target: 'w', text, reason: 'said-more-later' } },
        { type: 'amendment-made', at: 3, id: 'm', payload: { target: 'w', text, reason: 'unclear' } },
      ),
    );
    expect(facts.find((f) => f.id === 'w')).toMatchObject({ data: { weight: { kg: 80 } } });
    expect(changes.get('w' as EventId)).toEqual([
      { verb: 'addendum', event: 'a' },
      { verb: 'amendment', event: 'm' },
    ]);
  });

  it('ignore a correction of another type', () => {
    const facts = factsOf(weight(1, 80, 'w'), correct(2, 'w', trigger('fall', 1)));
    expect(facts).toMatchObject([{ id: 'w', type: 'weight-recorded', correctedBy: null }]);
  });
});

describe('a correction or retraction that may lower help', () => {
  it('FACT-2 counts from a qualified author and asks for a look', () => {
    const { facts, lookAgain, conflicts } = effectiveFacts(
      stayOf({ ...trigger('fall', 1), id: 'f' }, { ...retract(2, 'f', 'charge-nurse'), id: 'r' }),
    );
    expect(facts.map((f) => f.id)).not.toContain('f');
    expect(lookAgain).toMatchObject([{ event: 'r', at: hours(2) }]);
    expect(conflicts).toEqual([]);
  });

  it.each(['aide', 'records'] as const)(
    'does not count from %s: the original stands, both are shown',
    (role) => {
      const { facts, lookAgain, conflicts } = effectiveFacts(
        stayOf({ ...trigger('fall', 1), id: 'f' }, { ...retract(2, 'f', role), id: 'r' }),
      );
      expect(facts.map((f) => f.id)).toContain('f');
      expect(conflicts).toMatchObject([{ safer: 'f', other: 'r' }]);
      expect(lookAgain).toMatchObject([{ event: 'r' }]);
    },
  );

  it.each([
    ['a lighter weight', weight(1, 80, 'e'), weight(1, 60, 'x'), 1],
    ['a heavier weight', weight(1, 80, 'e'), weight(1, 90, 'x'), 0],
    ['a check that cleared more', check('stand', 1), check('walk', 1), 1],
    [
      'a check in which a stage was not met',
      check('walk', 1),
      check('walk', 1, { walk: { outcome: 'not-met' } }),
      0,
    ],
    ['a fall made an ordinary session', session(1, { events: ['lowered-to-floor'] }), session(1), 1],
    [
      'an ordinary session made a longer one',
      { ...session(1, { metres: 10 }), role: 'nurse' },
      session(1, { metres: 20 }),
      0,
    ],
    [
      "an aide's walk told again by a nurse: now it may be the first",
      { ...session(1), role: 'aide' },
      session(1),
      1,
    ],
    ["an aide's reading of the scales said again by a nurse", aideWeight(1, 80), weight(1, 80, 'x'), 1],
  ] as const)('%s: asks for a look %#', (_what, entry, by, looks) => {
    const { lookAgain } = effectiveFacts(stayOf({ ...entry, id: 'e' }, correct(2, 'e', by)));
    expect(lookAgain).toHaveLength(looks);
  });

  it.each<[string, Told]>([
    [
      'a narrower "on own": a wider one may stand behind it',
      { type: 'on-own-set', at: 1, payload: { where: ['room'], when: ['day'] } },
    ],
    [
      'a drain taken out: it asks for a look',
      { type: 'attachment-removed', at: 1, payload: { attachment: 'd', kind: 'chest-drain' } },
    ],
    ['the support seen in use', { type: 'seen-walking', at: 1, payload: { walkingSupport: 'frame' } }],
    [
      'an arrival: it asks for a look',
      { type: 'stay-begun', at: 1, payload: { stay: 's', person: 'p', bed: 'b', from: 'home' } },
    ],
  ])('FACT-2 does not count from an aide who withdraws %s', (_what, entry) => {
    const { facts, conflicts } = effectiveFacts(stayOf({ ...entry, id: 'e' }, retract(2, 'e', 'aide')));
    expect(facts.map((f) => f.id)).toContain('e');
    expect(conflicts).toMatchObject([{ safer: 'e' }]);
  });
  it('FACT-2 goes on asking for a look when an aide takes a withdrawal back', () => {
    const drain: Told = {
      type: 'attachment-added',
      at: 1,
      id: 'd',
      payload: { attachment: 'd', kind: 'chest-drain', disconnects: 'nurse', needsOwnPerson: false },
    };
    const asked = [drain, { ...retract(2, 'd', 'aide'), id: 'r' }];
    expect(effectiveFacts(stayOf(...asked, retract(3, 'r', 'aide'))).lookAgain).toContainEqual(
      expect.objectContaining({ event: 'r' }),
    );
  });

  it('is harmless for an aide where it only makes it safer or touches no help', () => {
    const { facts, conflicts } = effectiveFacts(
      stayOf({ ...session(1, { metres: 10 }), id: 's' }, correct(2, 's', session(1, { metres: 5 }), 'aide')),
    );
    expect(conflicts).toEqual([]);
    expect(facts.find((f) => f.id === 's')).toMatchObject({ data: { session: { metres: 5 } } });
  });
});
