/** What takes a piece off the list, what leaves the list alone, how a lent piece is called. Ours, practice. */
import { describe, expect, it } from 'vitest';
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import { itemDescription, type ItemId } from '../values.ts';
import { asLent, foldListed, NOTHING_LISTED } from './listed.ts';

const described = (label: string) =>
  itemDescription.parse({ label, kind: 'floor-lift', model: 'A', safeLoadKg: 200, home: 'Store' });
const said = (type: string, item: string, more: object = {}): LoggedEvent =>
  ({
    type,
    payload: { item, ...more },
    occurred: Date.UTC(2026, 2, 3, 8),
    author: { staff: 'hana', role: 'handling-coordinator' },
  }) as unknown as LoggedEvent;
const added = (item: string) => said('item-added', item, { is: described(item) });
const listed = (...items: readonly string[]) => ({
  ...NOTHING_LISTED,
  items: new Map(items.map((item) => [item as ItemId, described(item)])),
});
const fold = (...events: readonly LoggedEvent[]) => events.reduce(foldListed, NOTHING_LISTED);

describe('a piece that is taken off the list', () => {
  it('is gone from it, is with no other ward, and every other piece stays', () => {
    const all = ['lift-1', 'lift-2', 'lift-3'].map(added);
    expect(fold(...all, said('item-withdrawn', 'lift-2'))).toEqual(listed('lift-1', 'lift-3'));
  });

  it('changes nothing where it was never on the list', () => {
    expect(fold(added('lift-1'), said('item-withdrawn', 'lift-2'))).toEqual(listed('lift-1'));
  });
});

describe('what is said of a piece without moving it', () => {
  it.each(['item-taken', 'item-not-there', 'item-cleaning'])('%s leaves the list as it was', (type) => {
    const before = fold(added('lift-1'));
    expect(foldListed(before, said(type, 'lift-1'))).toBe(before);
  });
});

describe('the name of a lent piece', () => {
  it('has its owner in brackets only where at least one letter of it has room', () => {
    const [fits, full] = [36, 37].map((length) => 'L'.repeat(length)) as [string, string];
    expect(asLent(described(fits), 'Larch').label).toBe(`${fits} (L)`);
    expect(asLent(described(full), 'Larch').label).toBe(full);
  });

  it('ends with a whole word where the owner is cut between two', () => {
    const owner = 'Elderly care and rehabilitation north';
    expect(asLent(described('Track'), owner).label).toBe('Track (Elderly care and rehabilitation)');
  });

  it('is text that can be kept where the owner is cut within one sign of it', () => {
    const { label } = asLent(described('Lift 1'), `${'x'.repeat(30)}🌳 north`);
    expect(label).toBe(`Lift 1 (${'x'.repeat(30)})`);
    expect(() => encodeURIComponent(label)).not.toThrow();
    expect(asLent(described('Lift 1'), '🌳 north').label).toBe('Lift 1 (🌳 north)');
  });
});
