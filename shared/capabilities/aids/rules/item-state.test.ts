/** What is known of a piece of equipment after what was said of it. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { StayId } from '../../../kernel/ids.ts';
import { toIso } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { itemAt, NOTHING_SEEN } from './item-state.ts';
import { after, AIDE, entry, hour, READY } from './item-told.testkit.ts';

const since = (h: number) => ({ at: hour(h), by: AIDE });
const seen = (h: number, place: string) => entry(h, 'item-seen', { place });
const taken = (h: number, usedBy: string) => entry(h, 'item-taken', { usedBy });
const back = (h: number, place?: string) => entry(h, 'item-back', place === undefined ? {} : { place });
const broken = (h: number) => entry(h, 'item-out-of-service', { defect: 'strap-or-stitching' });
const inService = (h: number) => entry(h, 'item-in-service');

describe('a lift that was brought back', () => {
  it('without a word where to, is where it was before, from the time it came back', () => {
    expect(after(seen(0, 'Bay 2'), taken(1, 'anna'), back(3)).place).toEqual({ ...since(3), words: 'Bay 2' });
    expect(after(taken(1, 'anna'), back(3)).place).toBeNull();
  });
  it('to a place that was said, is there', () => {
    const state = after(seen(0, 'Bay 2'), taken(1, 'anna'), back(3, 'Store room'));
    expect(state.place).toEqual({ ...since(3), words: 'Store room' });
  });
  it('was wiped by whoever brought it, then', () => {
    expect(after(taken(1, 'anna'), back(3)).clean).toEqual({ ...since(3), is: true });
  });
  it('is not known to be clean when that is the first that is said of it', () => {
    expect(after(back(3, 'Store room'))).toMatchObject({ clean: null, inUse: null });
  });
  it('stays with the person who has it since, when the entry comes late', () => {
    const state = after(taken(1, 'anna'), taken(4, 'ben'), back(2, 'Store room'));
    expect(state.inUse).toEqual({ ...since(4), usedBy: 'ben' as StayId, isolation: false });
    expect(state.place).toBeNull();
  });
});

describe('a lift that somebody looked for in vain', () => {
  it('is there when it was seen later, or taken later, though that was written down first', () => {
    const found = after(seen(4, 'Bay 2'), entry(2, 'item-not-there'));
    expect(found).toMatchObject({ missing: null, place: { words: 'Bay 2' } });
    const used = after(taken(4, 'anna'), entry(2, 'item-not-there'));
    expect(used).toMatchObject({ missing: null, inUse: { usedBy: 'anna' } });
  });
  it('is not there when that was the last of it', () => {
    const state = after(seen(1, 'Bay 2'), taken(2, 'anna'), back(3), entry(4, 'item-not-there'));
    expect(state).toMatchObject({ missing: since(4), place: null });
  });
});

describe('a lift that was out of service', () => {
  it('is in service when the coordinator has returned it, also within the minute it was found broken', () => {
    expect(after(broken(4), inService(5))).toMatchObject({ outOfService: null, backInService: since(5) });
    expect(after(broken(5), inService(5)).outOfService).toBeNull();
  });
  it('is out of service when it was found broken after the coordinator looked, whichever was written first', () => {
    const found = { ...since(5), defect: 'strap-or-stitching' };
    expect(after(broken(5), inService(4)).outOfService).toEqual(found);
    expect(after(inService(4), broken(5)).outOfService).toEqual(found);
    expect(after(inService(5), broken(5)).outOfService).toEqual(found);
  });
});

it('of two entries of the same minute, the one written down last counts', () => {
  const read = (band: string) => entry(2, 'battery-read', { band });
  expect(after(read('full'), read('low')).battery).toEqual({ ...since(2), band: 'low' });
  const cleaning = (clean: boolean) => entry(2, 'item-cleaning', { clean });
  expect(after(cleaning(false), cleaning(true)).clean).toEqual({ ...since(2), is: true });
});

describe('a lift between two wards', () => {
  const received = (h: number, known: object) =>
    entry(h, 'item-received', {
      from: 'ward-2',
      name: 'Ward 2',
      clean: null,
      battery: null,
      outOfService: null,
      ...known,
    });
  const before = [...READY, taken(1, 'anna'), entry(1, 'item-bound', { keptFor: 'anna' })];

  it('brings along what was known of it there, each with its own time, and nothing of its earlier time here', () => {
    const state = after(
      ...before,
      received(6, {
        clean: { is: false, at: toIso(hour(3)) },
        battery: { band: 'half', at: toIso(hour(4)) },
        outOfService: { defect: 'brake-or-wheel', at: toIso(hour(5)) },
      }),
    );
    expect(state).toEqual({
      ...NOTHING_SEEN,
      moved: since(6),
      clean: { ...since(3), is: false },
      battery: { ...since(4), band: 'half' },
      outOfService: { ...since(5), defect: 'brake-or-wheel' },
      lastFault: { ...since(5), defect: 'brake-or-wheel' },
    });
  });
  it('brings nothing along when nothing was known of it there', () => {
    expect(after(...before, received(6, {}))).toEqual({ ...NOTHING_SEEN, moved: since(6) });
  });
  it('that has left is known here as it was last', () => {
    const left = entry(6, 'item-sent', { to: 'ward-2', name: 'Ward 2' });
    expect(after(...before, left)).toEqual(after(...before));
  });
});

describe('what is still known of a lift', () => {
  const rules = DEFAULT_RULES.aids;
  const { placeHours, cleanHours } = rules;
  const knownAt = (h: number) => itemAt(after(...READY), hour(h), rules, () => undefined);

  it('is known from the minute it was seen, and not for a time before', () => {
    expect(knownAt(0)).toMatchObject({ place: { words: 'Store room' }, clean: { is: true } });
    expect(knownAt(-1)).toMatchObject({ place: null, clean: null, battery: null });
  });
  it('is where it stands, and that it is clean, for the ward’s hours and no longer', () => {
    expect(knownAt(placeHours.value - 0.01).place).toEqual({ ...since(0), words: 'Store room' });
    expect(knownAt(placeHours.value).place).toBeNull();
    expect(knownAt(cleanHours.value - 0.01).clean).toEqual({ ...since(0), is: true });
    expect(knownAt(cleanHours.value).clean).toBeNull();
  });
});
