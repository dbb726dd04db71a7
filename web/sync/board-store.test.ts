import { createPinia, setActivePinia } from 'pinia';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { Patch } from '@footboard/shared/wire/messages';
import { NOON, beatOf, bedRow, snapshotOf, stayRow } from '../board/rows.testkit.ts';
import { useBoardStore } from './board-store.ts';
import { fakeLink } from './link.testkit.ts';

const W = 'w1' as WardId;
const rows = () => [bedRow('A1'), bedRow('A2'), bedRow('A3', null)];
const patchTo = (from: number, to: number, over: Partial<Patch> = {}): Patch => ({
  ward: W,
  from,
  to,
  p: 41,
  t: NOON + 1_000,
  beds: [],
  ...over,
});

/** A beat as the server would send it `ms` after noon, everything well unless said otherwise. */
const beatAt = (ms: number, over: Parameters<typeof beatOf>[0] = {}) =>
  beatOf({ clock: NOON + ms, readAt: NOON + ms, evaluatedAt: NOON + ms, ...over });

function joined() {
  const link = fakeLink();
  const store = useBoardStore();
  store.join(W, { open: link.open });
  link.reports.up();
  link.answer({ answer: 'snapshot', snapshot: snapshotOf(rows()), beat: beatAt(0) });
  return { link, store };
}

/** Let time pass with a beat every 2 s, as a healthy server sends them. */
function passWithBeats(link: ReturnType<typeof fakeLink>, fromMs: number, forMs: number, over = {}) {
  for (let ms = fromMs + 2_000; ms <= fromMs + forMs; ms += 2_000) {
    vi.advanceTimersByTime(2_000);
    link.reports.beat(beatAt(ms, over));
  }
}

let hidden = false;
beforeEach(() => {
  vi.useFakeTimers({ now: NOON });
  setActivePinia(createPinia());
  hidden = false;
  vi.spyOn(document, 'visibilityState', 'get').mockImplementation(() => (hidden ? 'hidden' : 'visible'));
});
afterEach(() => {
  useBoardStore().leave();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

describe('joining', () => {
  it('given rows, says how much they tell, so that another level gets everything anew', () => {
    const { link } = joined();
    const quiet = bedRow('A1', stayRow({ shown: 'ask-at-the-bedside' }));
    const wall = [quiet, bedRow('A2', stayRow({ shown: 'bed-only' }))];
    link.answer({ answer: 'snapshot', snapshot: snapshotOf(wall), beat: beatAt(0) });
    link.reports.up();
    expect(link.held).toEqual([undefined, 'bed-only']);
    link.answer({ answer: 'snapshot', snapshot: snapshotOf([quiet]), beat: beatAt(0) });
    link.reports.up();
    expect(link.held.at(-1)).toBeUndefined();
  });
  it('given nothing painted, asks for everything and paints the snapshot', () => {
    const { link, store } = joined();
    expect(link.asked).toEqual([null]);
    expect(store.standing).toBe('joined');
    expect(store.beds.map((b) => b.label)).toEqual(['A1', 'A2', 'A3']);
    expect(store.age.state).toBe('live');
  });

  it('given a link that comes back, asks from the feed number it has painted', () => {
    const { link, store } = joined();
    link.reports.down();
    link.reports.up();
    expect(link.asked).toEqual([null, 7]);
    link.answer({
      answer: 'changes',
      patches: [patchTo(7, 8, { beds: [bedRow('A2', null)] })],
      beat: beatAt(0),
    });
    expect(store.snapshot?.feed).toBe(8);
    expect(store.bedsById.get('bed-A2')?.state).toBe('empty');
  });

  it('SCREEN-8 a new page starts with no board and last known', () => {
    joined();
    setActivePinia(createPinia());
    const fresh = useBoardStore();
    expect(fresh.board).toBeNull();
    expect(fresh.age).toMatchObject({ state: 'last-known', why: 'never-heard' });
    expect({ ...localStorage }).toEqual({});
  });

  it('SCREEN-8 a kept board is last known whatever its age, is added to by nothing, and gives way to the answer', () => {
    const link = fakeLink();
    const store = useBoardStore();
    store.join(W, { open: link.open });
    store.restore({ snapshot: snapshotOf(rows()), beat: beatAt(0), heardAgo: 500 });
    expect(store.beds).toHaveLength(3);
    expect(store.age).toEqual({ state: 'last-known', since: NOON, why: 'no-heartbeat' });
    // The link is up, and what comes before the answer counts for nothing.
    link.reports.up();
    expect(link.asked).toEqual([null]);
    link.reports.beat(beatAt(1_000));
    link.reports.patch(patchTo(7, 8, { beds: [bedRow('A2', null)] }));
    expect(store.age.state).toBe('last-known');
    expect(store.snapshot?.feed).toBe(7);
    link.answer({ answer: 'snapshot', snapshot: { ...snapshotOf(rows()), feed: 3 }, beat: beatAt(1_000) });
    expect(store.age.state).toBe('live');
    expect(store.snapshot?.feed).toBe(3);
    expect(store.restored).toBe(false);
  });

  it('SCREEN-8 a kept board of another ward, or after the server has answered, is not shown', () => {
    const { store } = joined();
    const kept = snapshotOf([bedRow('B9')]);
    store.restore({ snapshot: kept, beat: beatAt(0), heardAgo: 0 });
    expect(store.beds.map((b) => b.label)).toEqual(['A1', 'A2', 'A3']);
    store.join('w2' as WardId, { open: fakeLink().open });
    store.restore({ snapshot: kept, beat: beatAt(0), heardAgo: 0 });
    expect(store.board).toBeNull();
  });

  it('SCREEN-8 given another ward, drops the first ward entirely before the second answers', () => {
    const { link, store } = joined();
    const second = fakeLink();
    store.join('w2' as WardId, { open: second.open });
    expect(link.closed).toBe(true);
    expect(store.board).toBeNull();
    link.reports.beat(beatAt(500));
    expect(store.age).toMatchObject({ why: 'never-heard' });
  });
});

describe('patches', () => {
  it('replaces the changed row and keeps the others as the same objects', () => {
    const { link, store } = joined();
    const before = store.bedsById;
    link.reports.patch(patchTo(7, 8, { beds: [bedRow('A1', stayRow({ version: 5 }))] }));
    expect(store.bedsById.get('bed-A1')?.stay?.version).toBe(5);
    expect(store.bedsById.get('bed-A2')).toBe(before.get('bed-A2'));
  });

  it('given one it has painted, ignores it', () => {
    const { link, store } = joined();
    link.reports.patch(patchTo(6, 7, { beds: [bedRow('A1', null)] }));
    expect(store.bedsById.get('bed-A1')?.state).toBe('occupied');
    expect(link.asked).toHaveLength(1);
  });

  it('SCREEN-7 given a gap, leaves the board as it was and asks again from where it stands', () => {
    const { link, store } = joined();
    link.reports.patch(patchTo(9, 10, { beds: [bedRow('A1', null)] }));
    expect(store.bedsById.get('bed-A1')?.state).toBe('occupied');
    expect(link.asked).toEqual([null, 7]);
  });

  it('given a beat that is further than the board, asks for the lost patch', () => {
    const { link } = joined();
    passWithBeats(link, 0, 6_000);
    link.reports.beat(beatAt(6_100, { feed: 9 }));
    expect(link.asked).toEqual([null, 7]);
  });
});

describe('what cannot be taken in', () => {
  it('SCREEN-7 given three failures in a row, asks for a reload and closes the link', () => {
    const { link, store } = joined();
    link.reports.unreadable('patch');
    link.reports.unreadable('answer');
    expect(store.standing).toBe('joined');
    expect(link.asked.at(-1)).toBeNull();
    link.reports.unreadable('answer');
    expect(store.standing).toBe('needs-reload');
    expect(link.closed).toBe(true);
  });

  it('given a success between failures, counts again from none', () => {
    const { link, store } = joined();
    for (let round = 0; round < 3; round++) {
      link.reports.unreadable('patch');
      link.answer({ answer: 'current', beat: beatAt(0) });
    }
    expect(store.standing).toBe('joined');
  });

  it('SCREEN-7 given a server of another version, says that this page is old', () => {
    const link = fakeLink();
    const store = useBoardStore();
    store.join(W, { open: link.open });
    link.reports.up();
    link.answer({ answer: 'refused', refused: 'old-page', detail: 'The page is old.', remedy: 'Reload.' });
    expect(store.standing).toBe('old-page');
    expect(store.refusal?.remedy).toBe('Reload.');
  });
});

describe('last known', () => {
  it('given beats every 2 s, stays live and the clock is the server’s', () => {
    const { link, store } = joined();
    passWithBeats(link, 0, 60_000);
    expect(store.age.state).toBe('live');
    expect(store.now).toBe(NOON + 60_000);
  });

  it('given a cut link, reads last known just after 10 s, with the time of the last beat', () => {
    const { store } = joined();
    vi.advanceTimersByTime(10_000);
    expect(store.age.state).toBe('live');
    vi.advanceTimersByTime(1_000);
    expect(store.age).toEqual({ state: 'last-known', since: NOON, why: 'no-heartbeat' });
  });

  it('given beats whose database read stands still, reads last known though the link is up', () => {
    const { link, store } = joined();
    passWithBeats(link, 0, 12_000, { readAt: NOON });
    expect(store.age).toMatchObject({ state: 'last-known', why: 'no-database', since: NOON });
  });

  it('given a projection that trails for over 10 s, reads last known', () => {
    const { link, store } = joined();
    passWithBeats(link, 0, 12_000, { head: 45, trailingSince: NOON });
    expect(store.age).toMatchObject({ state: 'last-known', why: 'projection-trails' });
  });

  it('SCREEN-6 given old beats delivered late in a bundle, does not take them for fresh ones', () => {
    const { link, store } = joined();
    passWithBeats(link, 0, 4_000);
    vi.advanceTimersByTime(15_000);
    expect(store.age.state).toBe('last-known');
    link.reports.beat(beatAt(6_000));
    link.reports.beat(beatAt(8_000));
    expect(store.age.state).toBe('last-known');
  });

  it('given a fresh beat again, is live again at once', () => {
    const { link, store } = joined();
    vi.advanceTimersByTime(20_000);
    link.reports.beat(beatAt(20_000));
    expect(store.age.state).toBe('live');
  });

  it('given a demo clock at 60 times, counts the 10 s in real time', () => {
    const { link, store } = joined();
    link.answer({ answer: 'current', beat: beatAt(0, { rate: 60 }) });
    vi.advanceTimersByTime(9_000);
    expect(store.age.state).toBe('live');
    expect(store.now).toBe(NOON + 540_000);
    vi.advanceTimersByTime(2_000);
    expect(store.age.state).toBe('last-known');
  });
});

describe('a tab that was away', () => {
  it('SCREEN-5 covers the board while hidden and judges its age before showing it', () => {
    const { store } = joined();
    expect(store.covered).toBe(false);
    hidden = true;
    document.dispatchEvent(new Event('visibilitychange'));
    expect(store.covered).toBe(true);
    vi.advanceTimersByTime(30_000);
    expect(store.covered).toBe(true);
    hidden = false;
    document.dispatchEvent(new Event('visibilitychange'));
    expect(store.covered).toBe(false);
    expect(store.age.state).toBe('last-known');
  });

  it('SCREEN-5 given a page restored from the browser’s memory, judges before showing', () => {
    const { store } = joined();
    window.dispatchEvent(new Event('pagehide'));
    expect(store.covered).toBe(true);
    vi.setSystemTime(NOON + 3_600_000);
    window.dispatchEvent(new Event('pageshow'));
    expect(store.covered).toBe(false);
    expect(store.age).toMatchObject({ state: 'last-known', since: NOON });
  });

  it('SCREEN-5 given a machine that slept 30 s, trusts nothing until the server has answered a new question', () => {
    const { link, store } = joined();
    vi.setSystemTime(NOON + 30_000);
    vi.advanceTimersByTime(500);
    expect(store.age.state).toBe('last-known');
    expect(link.asked).toEqual([null, 7]);
    link.reports.beat(beatAt(29_900));
    expect(store.age.state).toBe('last-known');
    link.answer({ answer: 'current', beat: beatAt(30_500) });
    expect(store.age.state).toBe('live');
  });
});
