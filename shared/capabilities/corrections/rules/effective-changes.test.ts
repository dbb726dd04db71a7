/** What is told of each change of an entry, and to whom it stands open: design, rule 2; users-job.md 3c. */
import { describe, expect, it } from 'vitest';
import {
  check,
  confirmation,
  correct,
  cosignature,
  hours,
  onOwn,
  retract,
  session,
  stayOf,
  trigger,
  unconfirmed,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from './effective.ts';

const of = (...told: readonly Told[]) => effectiveFacts(stayOf(...told));
const weight = (at: number, kg: number, id = 'w', role: Told['role'] = 'nurse'): Told => ({
  type: 'weight-recorded',
  at,
  id,
  role,
  payload: { weight: { kg, how: 'measured' } },
});
const named = (id: string, told: Told): Told => ({ ...told, id });
const data = (what: ReturnType<typeof of>, id = 'w') => what.facts.find((f) => f.id === id)?.data;
const text = { ref: 't1' };
const addendum = (at: number, target: string, id = 'a'): Told => ({
  type: 'addendum-made',
  at,
  id,
  payload: { target, text, reason: 'said-more-later' },
});

describe('a stay in which nobody changed an entry', () => {
  it('has its facts in order and nothing else', () => {
    expect(of(weight(2, 80), trigger('fall', 1))).toMatchObject({
      changes: new Map(),
      retracted: new Set(),
      confirmed: new Map(),
      cosigned: new Map(),
      conflicts: [],
      lookAgain: [],
      claims: [],
    });
    expect(of(weight(2, 80), trigger('fall', 1)).facts.map((f) => f.occurred)).toEqual([0, 1, 2].map(hours));
    // Of one instant and rank by entry, with and without a change beside them.
    const pair = [weight(2, 80, 'y'), weight(2, 81, 'x')];
    const ids = (...more: readonly Told[]) =>
      of(...pair, ...more)
        .facts.map((f) => f.id)
        .slice(1);
    expect(ids()).toEqual(['x', 'y']);
    expect(ids(addendum(3, 'x'))).toEqual(['x', 'y']);
  });
});

describe('an entry of a kind that this program does not know', () => {
  it('is a fact like any other, with no rank and no change of its own', () => {
    const record = stayOf(weight(1, 80));
    const events = record.events.map((e) => (e.id === 'w' ? { ...e, type: 'from-a-newer-program' } : e));
    const { facts, claims } = effectiveFacts({ ...record, events });
    expect(facts.at(-1)).toMatchObject({ id: 'w', type: 'from-a-newer-program', rank: 0 });
    expect(claims).toEqual([]);
  });
});

describe('the changes of an entry', () => {
  it('are listed under the entry and under what each speaks of, oldest first', () => {
    const { changes } = of(
      weight(1, 80),
      named('c2', correct(4, 'c1', weight(1, 90))),
      named('c1', correct(3, 'w', weight(1, 88))),
      named('r', retract(5, 'c2')),
      addendum(2, 'w'),
    );
    expect(Object.fromEntries(changes)).toEqual({
      w: [
        { verb: 'addendum', event: 'a' },
        { verb: 'correction', event: 'c1' },
        { verb: 'correction', event: 'c2' },
      ],
      c1: [{ verb: 'correction', event: 'c2' }],
      c2: [{ verb: 'retraction', event: 'r' }],
    });
  });
  it('of one instant are in the order of their entries, and the last one counts', () => {
    const pair = [named('c2', correct(3, 'w', weight(1, 90))), named('c1', correct(3, 'w', weight(1, 88)))];
    expect(data(of(weight(1, 80), ...pair))).toMatchObject({ weight: { kg: 90 } });
    expect(data(of(weight(1, 80), ...pair.toReversed()))).toMatchObject({ weight: { kg: 90 } });
  });
});

describe('a change that may lower help', () => {
  it('by somebody qualified is told as a claim about the entry, from when the entry occurred', () => {
    const { claims, lookAgain } = of(
      named('f', trigger('fall', 1)),
      named('r', { ...retract(3, 'f', 'charge-nurse'), recorded: 4 }),
    );
    expect(claims).toEqual([
      {
        event: 'r',
        verb: 'retraction',
        entry: 'f',
        about: hours(1),
        author: { staff: 'staff-charge-nurse', role: 'charge-nurse' },
        occurred: hours(3),
        recorded: hours(4),
        position: 3,
      },
    ]);
    expect(lookAgain).toEqual([
      { event: 'r', at: hours(3), words: 'An entry withdrawn: look again before moving' },
    ]);
  });
  it('by anyone else is shown beside what stands, and asks for a look', () => {
    const withdrawn = of(named('f', trigger('fall', 1)), named('r', retract(3, 'f', 'aide')));
    expect(withdrawn).toMatchObject({ claims: [], retracted: new Set() });
    expect(withdrawn.conflicts).toEqual([
      {
        question: 'correction',
        safer: 'f',
        other: 'r',
        words: 'An entry withdrawn by someone who may not lower help: the original stands',
        at: hours(3),
      },
    ]);
    const corrected = of(weight(1, 80), named('c', correct(3, 'w', weight(1, 60), 'aide')));
    expect(data(corrected)).toMatchObject({ weight: { kg: 80 } });
    expect(corrected.conflicts).toMatchObject([
      {
        safer: 'w',
        other: 'c',
        words: 'An entry corrected by someone who may not lower help: the original stands',
      },
    ]);
    expect(corrected.lookAgain).toMatchObject([{ words: 'An entry corrected: look again before moving' }]);
  });
  it('that moves an entry is about the earliest of the times it was given', () => {
    const about = (...told: readonly Told[]) => {
      const { claims } = of(...told);
      expect(new Set(claims.map((c) => `${c.verb} of ${c.entry}`))).toEqual(new Set(['correction of w']));
      return claims.map((c) => [c.event, c.about]);
    };
    const moved = (to: number) => named('c', correct(6, 'w', weight(1, 60), 'nurse', to));
    expect(about(weight(3, 80), moved(2))).toEqual([['c', hours(2)]]);
    expect(about(weight(3, 80), moved(5))).toEqual([['c', hours(3)]]);
    const again = named('d', correct(7, 'w', weight(1, 70), 'nurse', 4));
    expect(about(weight(3, 80), moved(2), again)).toEqual([
      ['c', hours(2)],
      ['d', hours(2)],
    ]);
  });
  it('by taking a correction back is about the entry, or where the correction had moved it', () => {
    const about = (moved?: number) =>
      of(
        weight(3, 80),
        named('c', correct(6, 'w', weight(1, 90), 'nurse', moved)),
        named('r', retract(7, 'c')),
      ).claims.map(({ event, verb, entry, about: from }) => ({ event, verb, entry, from }));
    const claim = { event: 'r', verb: 'retraction', entry: 'w' };
    expect(about()).toEqual([{ ...claim, from: hours(3) }]);
    expect(about(2)).toEqual([{ ...claim, from: hours(2) }]);
    expect(about(5)).toEqual([{ ...claim, from: hours(3) }]);
  });
  it('of an entry that is not there is about itself', () => {
    const { claims, facts, changes } = of(
      named('r1', retract(3, 'nowhere')),
      named('r2', retract(4, 'r1')),
      named('c', correct(5, 'nowhere', weight(1, 90))),
    );
    expect(facts.map((f) => f.type)).toEqual(['stay-begun']);
    expect(claims).toMatchObject([{ event: 'r2', entry: 'nowhere', about: hours(4) }]);
    expect([...changes.keys()]).toEqual(['nowhere', 'r1']);
  });
});

describe('what is taken back', () => {
  it('may be an addendum or a second signature by anyone: no rule reads them', () => {
    const noted = of(weight(1, 80), addendum(2, 'w'), named('r', retract(3, 'a', 'aide')));
    expect(noted).toMatchObject({ retracted: new Set(['a']), conflicts: [], lookAgain: [] });
    const student: Told = { ...session(1), id: 's', source: { kind: 'person', cosign: 'student' } };
    const signed = of(student, named('k', cosignature(2, 's')), named('r', retract(3, 'k', 'aide')));
    expect(signed).toMatchObject({ retracted: new Set(['k']), cosigned: new Map(), conflicts: [] });
  });
  it('may be a withdrawal by anyone where the entry bears on no help', () => {
    const off = named('o', { type: 'went-off-ward', at: 1, payload: { reason: 'test' } });
    const back = of(off, named('r1', retract(2, 'o', 'aide')), named('r2', retract(3, 'r1', 'aide')));
    expect(back).toMatchObject({ retracted: new Set(['r1']), conflicts: [], lookAgain: [] });
    expect(back.facts.map((f) => f.id)).toContain('o');
  });
  it('is not a withdrawal, by an aide, of what allows more', () => {
    const told = [named('own', onOwn(1)), named('r1', retract(2, 'own'))];
    const back = of(...told, named('r2', retract(3, 'r1', 'aide')));
    expect(back.facts.map((f) => f.id)).not.toContain('own');
    expect(back.conflicts).toMatchObject([{ safer: 'r1', other: 'r2' }]);
    expect(of(...told, retract(3, 'r1')).facts.map((f) => f.id)).toContain('own');
  });
  it('in a circle is the later of the two: the earlier one counts', () => {
    const [one, other] = [named('r1', retract(2, 'r2')), named('r2', retract(3, 'r1'))];
    expect([...of(one, other).retracted]).toEqual(['r2']);
    expect([...of(other, one).retracted]).toEqual(['r2']);
  });
  it('is not a correction, by an aide, whatever it said', () => {
    const heavier = named('c', correct(2, 'w', weight(1, 90)));
    const kept = of(weight(1, 80), heavier, named('r', retract(3, 'c', 'aide')));
    expect(data(kept)).toMatchObject({ weight: { kg: 90 } });
    expect(kept.conflicts).toMatchObject([{ safer: 'c', other: 'r' }]);
  });
});

describe('a correction', () => {
  it('of a version that this program does not know, or of a kind it does not know, leaves the entry', () => {
    const { payload, ...rest } = named('c', correct(2, 'w', weight(1, 90)));
    const but = (more: object): Told => ({ ...rest, payload: { ...(payload as object), ...more } });
    for (const told of [but({ schemaVersion: 2 }), but({ type: 'from-a-newer-program' })]) {
      const left = of(weight(1, 80), told);
      expect(data(left)).toMatchObject({ weight: { kg: 80 } });
      expect(left.lookAgain).toEqual([]);
    }
    // An older one is raised to today's.
    const { payload: walked, ...walk } = named('c', correct(2, 's', session(1, { metres: 5 })));
    const older: Told = { ...walk, payload: { ...(walked as object), schemaVersion: 1 } };
    expect(data(of(named('s', session(1)), older), 's')).toMatchObject({ session: { metres: 5 } });
  });
  it('whose time is none keeps the time of the entry', () => {
    const { payload, ...rest } = named('c', correct(2, 'w', weight(1, 90)));
    const odd: Told = { ...rest, payload: { ...(payload as object), occurred: 'yesterday' } };
    expect(of(weight(1, 80), odd).facts.at(-1)).toMatchObject({
      id: 'w',
      occurred: hours(1),
      data: { weight: { kg: 90 } },
    });
  });
  it('puts the entry where it occurred, with the rank of what it now says', () => {
    const set = (scope: object): Told => ({ type: 'scope-set', at: 1, payload: scope });
    const { facts } = of(
      named('s', set({ scope: 'comfort' })),
      weight(3, 80),
      named('c', correct(5, 's', set({ scope: 'staged' }), 'nurse', 4)),
    );
    expect(facts.map((f) => [f.id, f.occurred, f.rank])).toEqual([
      ['e00001', hours(0), 0],
      ['w', hours(3), 0],
      ['s', hours(4), -1],
    ]);
  });
});

describe('a confirmation', () => {
  const claimed = named('x', unconfirmed(check('edge', 1), 'therapist'));
  const by = (at: number, id: string, role: Told['role'] = 'therapist'): Told => ({
    ...confirmation(at, 'x', role),
    staff: 'staff-therapist',
    id,
  });
  it('that comes second adds nothing to the first', () => {
    const { confirmed, claims, lookAgain, facts } = of(claimed, by(2, 'k1'), by(3, 'k2', 'nurse'));
    expect([...confirmed].map(([entry, told]) => [entry, told.id])).toEqual([['x', 'k1']]);
    expect(facts.find((f) => f.id === 'x')!.author.role).toBe('therapist');
    expect(claims.filter((c) => c.verb === 'confirmation').map((c) => [c.event, c.entry, c.about])).toEqual([
      ['k1', 'x', hours(1)],
      ['k2', 'x', hours(1)],
    ]);
    expect(lookAgain).toMatchObject([
      { event: 'k1', words: 'An entry confirmed: look again before moving' },
      { event: 'k2' },
    ]);
  });
  it('by its author while they may not free is told and frees nothing; a later one may', () => {
    const { confirmed, facts, claims } = of(claimed, by(2, 'k1', 'aide'), by(3, 'k2'));
    expect([...confirmed.values()].map((told) => told.id)).toEqual(['k1']);
    expect(facts.find((f) => f.id === 'x')!.author.role).toBe('therapist');
    expect(claims.map((c) => c.event)).toEqual(['k2']);
  });
  it('of what is not there is nothing', () => {
    const told = of(named('k', confirmation(2, 'nowhere')), named('s', cosignature(2, 'nowhere')));
    expect(told).toMatchObject({ confirmed: new Map(), cosigned: new Map(), claims: [], changes: new Map() });
  });
  it('taken back by somebody qualified is about the entry it confirmed', () => {
    const { claims } = of(claimed, by(2, 'k'), named('r', retract(3, 'k')));
    expect(claims).toMatchObject([{ event: 'r', verb: 'retraction', entry: 'x', about: hours(1) }]);
  });
  it('makes what an aide’s reading says count, as if said in its own time', () => {
    const reading = named('x', unconfirmed(weight(1, 60, 'x'), 'nurse'));
    const stoodBy = { ...confirmation(4, 'x'), id: 'k', recorded: 4.5 };
    const { facts } = of(reading, stoodBy);
    expect(facts.find((f) => f.id === 'x')).toMatchObject({
      occurred: hours(1),
      author: { staff: 'staff-nurse', role: 'nurse' },
      correctedBy: null,
    });
  });
});
