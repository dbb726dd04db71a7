/** How many lifts the top of the wall counts. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { LoggedEvent } from '../../../kernel/event-type.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { foldWard } from '../../wards/rules/ward-state.ts';
import type { ItemId } from '../values.ts';
import { after, entry, hour, hourOf, READY, WARD } from './item-told.testkit.ts';
import { liftsOf } from './lifts.ts';

const FLOOR = { kind: 'floor-lift', powered: true };
const TRACK = { kind: 'ceiling-lift', powered: true, covers: ['Bay 1'] };
const STANDING = { kind: 'standing-aid', powered: true };
/** A ward that keeps these on its list. */
function wardWith(list: Record<string, object>) {
  const setUp = entry(0, 'ward-set-up', {
    name: 'Ward 1',
    zone: 'UTC',
    wardDayFrom: '07:00',
    nightFrom: '21:00',
    nightTo: '07:00',
  });
  const added = Object.entries(list).map(([item, is]) =>
    entry(0, 'item-added', {
      item,
      is: { label: item, model: 'A', inspectionDue: '2026-09-01', home: 'Store room', ...is },
    }),
  );
  return foldWard(WARD, [setUp, ...added])!;
}
function counted(list: Record<string, object>, said: Record<string, readonly LoggedEvent[]> = {}) {
  const notes: number[] = [];
  const items = new Map(Object.entries(said).map(([item, entries]) => [item as ItemId, after(...entries)]));
  const lifts = liftsOf({ ward: wardWith(list), items, t: hour(3), day: '2026-03-03' }, (at) =>
    notes.push(hourOf(at)),
  );
  return { lifts, notes };
}

describe('the lifts at the top of the wall', () => {
  const list = {
    'lift-1': FLOOR,
    'lift-2': FLOOR,
    'lift-3': FLOOR,
    'track-1': TRACK,
    'track-2': TRACK,
    'stand-1': STANDING,
    'stand-2': STANDING,
  };
  const said = {
    'lift-1': READY,
    'lift-2': READY,
    'track-1': [...READY, entry(2, 'item-taken', { usedBy: 'anna' })],
    'lift-3': [...READY, entry(2, 'item-cleaning', { clean: false })],
    // Nobody knows whether it is charged; of the last two nobody has said anything.
    'stand-1': READY.slice(0, 2),
  };

  it('are those to be used now, those that somebody has, and those not known; a dirty one is only among all', () => {
    expect(counted(list, said).lifts).toEqual({ usable: 2, inUse: 1, unknown: 3, all: 7 });
  });
  it('are no slings, and no aids that a person works by hand', () => {
    const more = { ...list, 'sling-1': { kind: 'sling' }, 'stand-3': { kind: 'standing-aid' } };
    expect(counted(more, { ...said, 'sling-1': READY, 'stand-3': READY }).lifts).toEqual(
      counted(list, said).lifts,
    );
  });
  it('are counted anew when the first of what is known gets old', () => {
    const { batteryHours } = DEFAULT_RULES.aids;
    expect(Math.min(...counted({ 'lift-1': FLOOR }, { 'lift-1': READY }).notes)).toBe(batteryHours.value);
  });
  it('are not spoken of on a ward that lists none', () => {
    expect(counted({}).lifts).toBeNull();
    expect(counted({ 'sling-1': { kind: 'sling' } }, { 'sling-1': READY }).lifts).toBeNull();
  });
});
