/** Which pieces are on which of two wards, from the events of their logs. */
import { describe, expect, it } from 'vitest';
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import { HOUR, toIso } from '../../../kernel/times.ts';
import { itemDescription, type ItemId } from '../values.ts';
import { asLent, foldListed, NOTHING_LISTED } from './listed.ts';

const T0 = Date.UTC(2026, 2, 3, 8);
const LIFT = itemDescription.parse({
  label: 'Lift 1',
  kind: 'floor-lift',
  model: 'A',
  powered: true,
  safeLoadKg: 200,
  attachment: 'loops',
  worksWithModels: ['B'],
  lastExamined: '2026-01-02',
  home: 'Store',
});
const lift = 'lift-1' as ItemId;
const said = (type: string, more: object = {}, h = 1): LoggedEvent =>
  ({
    type,
    payload: { item: lift, ...more },
    occurred: T0 + h * HOUR,
    author: { staff: 'hana', role: 'handling-coordinator' },
  }) as unknown as LoggedEvent;
const fold = (...events: readonly LoggedEvent[]) => events.reduce(foldListed, NOTHING_LISTED);

const ADDED = said('item-added', { is: LIFT }, 0);
const LENT = said('item-lent', { to: 'rowan', name: 'Rowan', until: toIso(T0 + 6 * HOUR) });
const BORROWED = said('item-borrowed', { from: 'larch', name: 'Larch', is: asLent(LIFT, 'Larch') });
const ENDED = said('item-loan-ended', {}, 5);

describe('LEND-1 a piece is on one list at a time', () => {
  it.each<[string, LoggedEvent[], LoggedEvent[], [number, number]]>([
    ['before it is lent', [ADDED], [], [1, 0]],
    ['while it is lent', [ADDED, LENT], [BORROWED], [0, 1]],
    ['once it was given back', [ADDED, LENT, ENDED], [BORROWED, ENDED], [1, 0]],
    ['lent again', [ADDED, LENT, ENDED, LENT], [BORROWED, ENDED, BORROWED], [0, 1]],
  ])('%s', (_when, owner, borrower, counts) => {
    expect([fold(...owner).items.size, fold(...borrower).items.size]).toEqual(counts);
  });
  it('each ward knows with whom, since when, by whom, and until when', () => {
    const loan = { at: T0 + HOUR, by: 'hana' };
    expect(fold(ADDED, LENT).lent.get(lift)).toEqual({
      ...loan,
      ward: 'rowan',
      name: 'Rowan',
      until: T0 + 6 * HOUR,
      is: LIFT,
    });
    expect(fold(BORROWED).borrowed.get(lift)).toEqual({ ...loan, ward: 'larch', name: 'Larch', until: null });
  });
  it('given back, the borrower still knows whose it was, for a fault that is told late', () => {
    const after = fold(BORROWED, ENDED);
    expect([...after.givenBack]).toEqual([[lift, 'larch']]);
    expect(after.borrowed.size).toBe(0);
    expect(fold(BORROWED, ENDED, BORROWED).givenBack.size).toBe(0);
  });
  it('described anew while it is lent, it is so once it is back', () => {
    const is = { ...LIFT, safeLoadKg: 160 };
    const state = fold(ADDED, LENT, said('item-changed', { is }, 2));
    expect([state.items.size, state.lent.get(lift)!.is.safeLoadKg]).toEqual([0, 160]);
    expect(fold(ADDED, LENT, said('item-changed', { is }, 2), ENDED).items.get(lift)).toEqual(is);
  });
  it('what was never on the list is neither lent nor given back', () => {
    expect(fold(LENT, ENDED)).toBe(NOTHING_LISTED);
  });
});

describe('the copy that the borrower has', () => {
  it('has everything that fit and forecast ask, and its owner in its name', () => {
    const { label, home, ...rest } = asLent(LIFT, 'Larch');
    const { label: _own, home: _store, ...same } = LIFT;
    expect(rest).toEqual(same);
    expect([label, home]).toEqual(['Lift 1 (Larch)', 'Larch']);
    expect(itemDescription.safeParse(asLent(LIFT, 'Larch')).success).toBe(true);
  });
  it('keeps the name on the piece whole where both are too long', () => {
    const long = { ...LIFT, label: 'L'.repeat(38) };
    expect(asLent(long, 'Larch').label).toBe(long.label);
    const { label, home } = asLent({ ...LIFT, label: 'Lift 1' }, 'A ward with quite a long name of its own');
    expect(label).toBe('Lift 1 (A ward with quite a long name o)');
    expect(Math.max(label.length, home.length)).toBe(40);
    expect(itemDescription.safeParse({ ...LIFT, label, home }).error).toBeUndefined();
  });
});
