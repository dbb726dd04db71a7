/** How two looks at one stay are joined while an entry is in doubt, and which entries are, as it was read before. */
import { describe, expect, it } from 'vitest';
import type { Author } from '../../../kernel/author.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import type { Claim, Restriction } from '../../corrections/rules/claims.ts';
import type { StayView } from '../view.ts';
import { lessHelp, withOpenClaims, type AsTold } from './safer-stands.ts';
import { against, AT, BASE, EACH_ONE, id, other, OTHERWISE } from './told-joined.testkit.ts';

const theo = { staff: 'theo', role: 'therapist' } as Author;
/** Entered at `recorded` of something before; position after time, unless said. */
const claim = (event: string, recorded: number, more: Partial<Claim> = {}): Claim => ({
  event: id(event),
  verb: 'late',
  entry: id(event),
  about: AT - 100,
  author: theo,
  occurred: AT - 100,
  recorded,
  position: recorded,
  ...more,
});
const restriction = (event: string, recorded = AT - 50, more: Partial<Restriction> = {}): Restriction => ({
  event: id(event),
  occurred: AT - 60,
  recorded,
  position: recorded,
  ...more,
});
const look = (
  view: StayView,
  claims: readonly Claim[],
  open: readonly Restriction[],
  nextChange: number | null = null,
): AsTold => ({ view, nextChange, arrival: null, claims, open: () => open });

const doubtful = claim('doubtful', AT - 10);
const faint = restriction('faint');
/** One entry in doubt, against which a faint stands. */
const joined = (told: StayView, safer: StayView, verb: Claim['verb'] = 'late') => {
  const one = { ...doubtful, verb };
  return withOpenClaims(look(told, [one], [faint]), () => look(safer, [one], [faint])).view;
};

const both = (frees: boolean, view: StayView) =>
  [frees ? 'frees something' : 'frees nothing', ...against(view)].join('\n');

heldAgainst(new URL('told-joined.txt', import.meta.url), [
  ...OTHERWISE.flatMap(([title, more]) => [
    [`without it: ${title}`, () => both(lessHelp(other(more), BASE), joined(BASE, other(more)))] as const,
    [`with it: ${title}`, () => both(lessHelp(BASE, other(more)), joined(other(more), BASE))] as const,
  ]),
  ...EACH_ONE.flatMap(([what, one, another]) => [
    [
      `each has its own ${what}`,
      () => both(lessHelp(other(one), other(another)), joined(other(another), other(one))),
    ] as const,
    [
      `each has its own ${what}, the other way round`,
      () => both(lessHelp(other(another), other(one)), joined(other(one), other(another))),
    ] as const,
  ]),
  ...(['late', 'correction', 'retraction', 'confirmation'] as const).map(
    (verb) =>
      [
        `what is said of a ${verb}`,
        () => against(joined(BASE, other({ checkBeforeMoving: true }), verb)).join('\n'),
      ] as const,
  ),
  ...OTHERWISE.flatMap(([first, more], i) =>
    OTHERWISE.slice(i + 1)
      .filter((_, j) => (i + j) % 7 === 0)
      .map(
        ([second, also]) =>
          [
            `without it ${first}, with it ${second}`,
            () => against(joined(other(also), other(more))).join('\n'),
          ] as const,
      ),
  ),
]);

it('a look that plans a task less frees it', () => {
  for (const part of ['day', 'night'] as const) {
    const less = other({ plan: { ...BASE.plan!, [part]: BASE.plan![part].slice(0, -1) } });
    expect([lessHelp(BASE, less), lessHelp(less, BASE)]).toEqual([true, false]);
  }
});

/** Looks, by which entries do not count, and what is asked of them in turn. */
function asked(told: AsTold, looks: Readonly<Record<string, AsTold>>) {
  const sets: string[] = [];
  const seen = withOpenClaims(told, (entries: ReadonlySet<EventId>) => {
    const key = [...entries].join(' ');
    sets.push(key);
    const found = looks[key];
    if (!found) throw new Error(`nothing was prepared for: ${key}`);
    return found;
  });
  const conflicts = seen.view.trust.conflicts.map((c) => `${c.safer} against ${c.other}`);
  return { sets, conflicts, nextChange: seen.nextChange };
}
const safer = other({ checkBeforeMoving: true });
const saferStill = other({ checkBeforeMoving: true, firstTimeUpPending: true });

describe('which entries are in doubt', () => {
  it('given none, the view is as it was told, and nothing else is looked at', () => {
    const told = look(BASE, [], [faint], AT + 5);
    const seen = withOpenClaims(told, () => {
      throw new Error('looked');
    });
    expect(seen).toEqual({ view: BASE, nextChange: AT + 5 });
    expect(seen.view).toBe(BASE);
  });
  it('given one against which nothing stands, it counts', () => {
    const a = claim('a', AT - 10);
    expect(asked(look(BASE, [a], [], AT + 9), { a: look(safer, [a], [], AT + 3) })).toEqual({
      sets: ['a'],
      conflicts: [],
      nextChange: AT + 3,
    });
  });
  it('given one against which something stands only while it does not count, it does not', () => {
    const a = claim('a', AT - 10);
    expect(asked(look(BASE, [a], []), { a: look(safer, [a], [faint], AT + 3) })).toEqual({
      sets: ['a'],
      conflicts: ['faint against a'],
      nextChange: AT + 3,
    });
  });
  it('given one that lowers nothing, both looks are joined and no conflict is told', () => {
    const a = claim('a', AT - 10);
    expect(asked(look(BASE, [a], [faint], AT + 1), { a: look(BASE, [a], [faint], AT + 7) })).toEqual({
      sets: ['a'],
      conflicts: [],
      nextChange: AT + 1,
    });
  });
  it('given two, each is told that lowers help beside the one that became known before it', () => {
    const [a, b] = [claim('a', AT - 20), claim('b', AT - 10)];
    const looks = { 'b a': look(saferStill, [b, a], [faint]), b: look(safer, [b, a], [faint]) };
    expect(asked(look(BASE, [b, a], [faint]), looks)).toEqual({
      sets: ['b a', 'b'],
      conflicts: ['faint against a', 'faint against b'],
      nextChange: null,
    });
    const onlyLater = { ...looks, 'b a': look(safer, [b, a], [faint]) };
    expect(asked(look(BASE, [b, a], [faint]), onlyLater).conflicts).toEqual(['faint against b']);
    const onlyEarlier = { ...looks, b: look(BASE, [b, a], [faint]) };
    expect(asked(look(BASE, [b, a], [faint]), onlyEarlier).conflicts).toEqual(['faint against a']);
  });
  it('given two that became known at one time, their place in the log decides which was first', () => {
    const [a, b] = [claim('a', AT - 10, { position: 8 }), claim('b', AT - 10, { position: 9 })];
    const looks = { 'b a': look(saferStill, [b, a], [faint]), b: look(safer, [b, a], [faint]) };
    expect(asked(look(BASE, [b, a], [faint]), looks).sets).toEqual(['b a', 'b']);
  });
  it('given one that brings out another while it does not count, both are in doubt', () => {
    const [a, b] = [claim('a', AT - 20), claim('b', AT - 10)];
    const looks = {
      a: look(safer, [a, b], [faint], AT + 4),
      'a b': look(saferStill, [a, b], [faint], AT + 2),
      b: look(safer, [a, b], [faint], AT + 6),
    };
    expect(asked(look(BASE, [a], [faint]), looks)).toEqual({
      sets: ['a', 'a b', 'b'],
      conflicts: ['faint against a', 'faint against b'],
      nextChange: AT + 2,
    });
  });
  it('given two of which one counts, the other is judged by what is open with that one counted', () => {
    const [a, b] = [claim('a', AT - 20), claim('b', AT - 10)];
    const order = restriction('order', AT - 15);
    // Only b came after the order; nothing stands against a.
    const looks = { 'a b': look(saferStill, [a, b], [order]), b: look(safer, [a, b], [order]) };
    expect(asked(look(BASE, [a, b], [order]), looks)).toEqual({
      sets: ['a b', 'b'],
      conflicts: ['order against b'],
      nextChange: null,
    });
  });
  it('given one that counts and so closes what stood against the other, that one is free', () => {
    const [a, b] = [claim('a', AT - 20), claim('b', AT - 10)];
    const order = restriction('order', AT - 15);
    const looks = { 'a b': look(saferStill, [a, b], [order]), b: look(safer, [a, b], []) };
    expect(asked(look(BASE, [a, b], []), looks)).toEqual({
      sets: ['a b', 'b'],
      conflicts: [],
      nextChange: null,
    });
  });
  it('given one that brings out another only now that it counts, that one is judged too', () => {
    const [a, b, c] = [claim('a', AT - 20), claim('b', AT - 10), claim('c', AT - 5)];
    const order = restriction('order', AT - 15);
    const looks = {
      'a b': look(saferStill, [a, b], [order]),
      b: look(safer, [b, c], [order]),
      'b c': look(saferStill, [b, c], [order]),
      c: look(safer, [b, c], [order]),
    };
    expect(asked(look(BASE, [a, b], [order]), looks)).toEqual({
      sets: ['a b', 'b', 'b c', 'c'],
      conflicts: ['order against b', 'order against c'],
      nextChange: null,
    });
  });
  it('given a view in doubt, nobody goes up and a step back stays', () => {
    const step = (which: string) => OTHERWISE.find(([title]) => title === `a step ${which}`)![1].proposal!;
    const of = (which: string) => {
      const stepping = { proposal: step(which) };
      return joined(other(stepping), other({ ...stepping, checkBeforeMoving: true })).proposal?.step ?? null;
    };
    expect([of('up'), of('back')]).toEqual([null, 'back']);
  });
});
