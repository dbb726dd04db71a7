/** What is said late of a piece, or beside what was said before: the safer of it stands. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { after, AIDE, entry, hour } from './item-told.testkit.ts';

const since = (h: number) => ({ at: hour(h), by: AIDE });
const seen = (h: number, place: string) => entry(h, 'item-seen', { place });
const taken = (h: number, usedBy: string, isolation = false) => entry(h, 'item-taken', { usedBy, isolation });
const back = (h: number, place?: string) => entry(h, 'item-back', place === undefined ? {} : { place });
const notThere = (h: number) => entry(h, 'item-not-there');
const cleaned = (h: number) => entry(h, 'item-cleaning', { clean: true });
const broken = (h: number, defect: string) => entry(h, 'item-out-of-service', { defect });
const inService = (h: number) => entry(h, 'item-in-service');

describe('a lift with two faults', () => {
  const both = [broken(3, 'brake-or-wheel'), broken(6, 'strap-or-stitching')];
  const second = { ...since(6), defect: 'strap-or-stitching' };

  it('given the coordinator looked between them, then the second one stands, in whatever order it was written down', () => {
    expect(after(...both, inService(5)).outOfService).toEqual(second);
    expect(after(both[1]!, both[0]!, inService(5)).outOfService).toEqual(second);
    expect(after(both[0]!, inService(5), both[1]!).outOfService).toEqual(second);
  });
  it('given the coordinator looked before both, then the first one stands', () => {
    const first = { ...since(3), defect: 'brake-or-wheel' };
    expect(after(...both, inService(2)).outOfService).toEqual(first);
  });
  it('given the coordinator looked after both, then it is in service', () => {
    expect(after(...both, inService(5), inService(7))).toMatchObject({
      outOfService: null,
      backInService: since(7),
    });
  });
  it('given an earlier look is written down late, then the later one stands', () => {
    expect(after(broken(3, 'brake-or-wheel'), inService(5), inService(4)).backInService).toEqual(since(5));
  });
  it('given it came from another ward with one, then a look before the next one leaves that', () => {
    const from = { from: 'ward-2', name: 'Ward 2', clean: null, battery: null };
    const came = entry(4, 'item-received', {
      ...from,
      outOfService: { defect: 'brake-or-wheel', at: new Date(hour(3)).toISOString() },
    });
    expect(after(came, both[1]!, inService(5)).outOfService).toEqual(second);
    expect(after(came, inService(5)).outOfService).toBeNull();
  });
});

describe('a lift from a room with infection steps', () => {
  it('given the next person has it without its being said to be back, then it is to be cleaned afterwards', () => {
    const state = after(cleaned(0), taken(1, 'anna', true), taken(6, 'ben'), back(7));
    expect(state.clean).toEqual({ ...since(7), is: false });
  });
  it('given it was cleaned before, in that minute, or is known to be dirty, then the room goes with it', () => {
    const next = [taken(1, 'anna', true), taken(6, 'ben')];
    expect(after(...next).inUse).toMatchObject({ usedBy: 'ben', isolation: true });
    expect(after(cleaned(1), ...next).inUse?.isolation).toBe(true);
    const dirty = entry(4, 'item-cleaning', { clean: false });
    expect(after(next[0]!, dirty, next[1]!).inUse?.isolation).toBe(true);
  });
  it('given it was cleaned between the two, then whoever brings it back has wiped it', () => {
    expect(after(taken(1, 'anna', true), cleaned(4), taken(6, 'ben'), back(7)).clean).toEqual({
      ...since(7),
      is: true,
    });
  });
  it('given that is told only when it is back, then it is to be cleaned', () => {
    expect(after(cleaned(0), back(4), taken(3, 'anna', true)).clean).toEqual({ ...since(3), is: false });
    expect(after(back(4), taken(3, 'anna', true)).clean).toEqual({ ...since(3), is: false });
    expect(after(taken(2, 'ben'), back(4), taken(3, 'anna', true)).clean).toEqual({ ...since(4), is: false });
  });
  it('given that is told when the next person has it, then it is to be cleaned, also once it is back', () => {
    const state = after(cleaned(0), taken(4, 'ben'), taken(3, 'anna', true));
    expect(state).toMatchObject({ inUse: { usedBy: 'ben' }, clean: { is: false } });
    expect(after(cleaned(0), taken(4, 'ben'), taken(3, 'anna', true), back(5)).clean?.is).toBe(false);
  });
  it('given it was cleaned since it came back, then it is clean', () => {
    expect(after(back(4), cleaned(5), taken(3, 'anna', true)).clean).toEqual({ ...since(5), is: true });
  });
  it('given a late word of a room without, then nothing is said of its being clean', () => {
    expect(after(cleaned(0), back(4), taken(3, 'anna')).clean).toEqual({ ...since(0), is: true });
  });
});

describe('a late word that it is back', () => {
  it('given somebody saw it since, then it is where it was seen, from that time on', () => {
    const there = { ...since(4), words: 'Bay 2' };
    expect(after(seen(4, 'Bay 2'), back(3, 'Store room')).place).toEqual(there);
    expect(after(seen(4, 'Bay 2'), back(3)).place).toEqual(there);
  });
  it('given it was looked for in vain since, then it is not there', () => {
    expect(after(notThere(5), back(3, 'Store room'))).toMatchObject({ missing: since(5), place: null });
  });
});

describe('a search in vain', () => {
  it('given an earlier one is told late, then a sighting before the later one finds nothing', () => {
    expect(after(notThere(5), notThere(3), seen(4, 'Store room'))).toMatchObject({
      missing: since(5),
      place: null,
    });
  });
  it('given a late word that somebody had it before, then it is not there', () => {
    expect(after(notThere(5), taken(3, 'anna')).missing).toEqual(since(5));
    expect(after(notThere(5), taken(6, 'anna')).missing).toBeNull();
  });
});
