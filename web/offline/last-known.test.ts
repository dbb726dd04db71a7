import { createPinia, setActivePinia } from 'pinia';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { nextTick } from 'vue';
import type { WardId } from '@footboard/shared/kernel/ids';
import { WIRE_VERSION } from '@footboard/shared/wire/messages';
import { HOUR, NOON, beatOf, bedRow, snapshotOf } from '../board/rows.testkit.ts';
import { useMeStore } from '../people/me-store.ts';
import { useBoardStore } from '../sync/board-store.ts';
import { fakeLink } from '../sync/link.testkit.ts';
import { keepLastKnown } from './keep-last-known.ts';
import { stillGood, type KeptBoard, type keptBoards } from './kept-boards.ts';

const W = 'w1' as WardId;
/** What outlives a page: as IndexedDB does, without one. */
function drawer() {
  const held = new Map<string, KeptBoard>();
  const boards: typeof keptBoards = {
    put: async (kept) => void held.set(kept.ward, kept),
    all: async (now) => [...held.values()].flatMap((one) => stillGood(one, now) ?? []),
    drop: async () => held.clear(),
  };
  return { held, boards };
}
const signedInAs = (staff: string | null, device: string | null = null) => {
  useMeStore().page = {
    access: 'accounts',
    firstRun: false,
    person: staff && { staff, name: 'Noor Haddad', via: 'session', wide: false, until: NOON + HOUR },
    device: device && { device, kind: 'wall', ward: W, level: 'bed-only' },
    wards: [],
  } as unknown as ReturnType<typeof useMeStore>['page'];
};
let stop: () => void = () => undefined;
/** A page of the program over what the device has kept. */
function page(kept: ReturnType<typeof drawer>, whose: string | null = 'noor') {
  stop();
  useBoardStore().leave();
  setActivePinia(createPinia());
  vi.spyOn(useMeStore(), 'load').mockResolvedValue();
  if (whose !== null) signedInAs(whose);
  stop = keepLastKnown(kept.boards);
  const link = fakeLink();
  useBoardStore().join(W, { open: link.open });
  return { link, board: useBoardStore() };
}
const answer = (link: ReturnType<typeof fakeLink>) => {
  link.reports.up();
  const now = Date.now();
  const beat = beatOf({ clock: now, readAt: now, evaluatedAt: now });
  link.answer({ answer: 'snapshot', snapshot: snapshotOf([bedRow('A1'), bedRow('A2')]), beat });
};
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms);

beforeEach(() => {
  vi.useFakeTimers({ now: NOON });
  setActivePinia(createPinia());
});
afterEach(() => {
  stop();
  useBoardStore().leave();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

describe('the last known board of a device', () => {
  it('given a server that does not answer, is shown as last known with the time it was true', async () => {
    const kept = drawer();
    answer(page(kept).link);
    await pass(4_000);
    const { board } = page(kept, null);
    await pass(1_000);
    expect(board.board).toBeNull();
    await pass(2_000);
    expect(board.beds.map((b) => b.label)).toEqual(['A1', 'A2']);
    expect(board.age).toMatchObject({ state: 'last-known', since: NOON });
    expect(board.restored).toBe(true);
  });

  it('given a server that answers, is not shown', async () => {
    const kept = drawer();
    answer(page(kept).link);
    await pass(4_000);
    const { link, board } = page(kept);
    answer(link);
    await pass(3_000);
    expect(board.restored).toBe(false);
    expect(board.age.state).toBe('live');
  });

  it.each([
    [
      'the sign-in ended',
      { answer: 'refused', refused: 'sign-in-first', detail: 'Gone.', remedy: 'Sign in.' },
    ],
    ['the ward is not theirs', { answer: 'refused', refused: 'not-allowed', detail: 'No.', remedy: 'Ask.' }],
  ])('SCREEN-13 is thrown away when %s', async (_why, refused) => {
    const kept = drawer();
    const { link } = page(kept);
    answer(link);
    await pass(4_000);
    expect(kept.held.size).toBe(1);
    link.answer(refused);
    await pass(10);
    expect(kept.held.size).toBe(0);
  });

  it('SCREEN-13 is thrown away when the device is put out, or may be shown less from now on', async () => {
    for (const why of ['device-revoked', 'join-again'] as const) {
      const kept = drawer();
      const { link } = page(kept);
      answer(link);
      await pass(4_000);
      link.reports.out({ ward: W, why, detail: 'Out.', remedy: 'Pair it again.' });
      await pass(10);
      expect(kept.held.size).toBe(0);
    }
  });

  it('SCREEN-13 is thrown away when somebody else is here, and not shown to them', async () => {
    const kept = drawer();
    answer(page(kept).link);
    await pass(4_000);
    const [before] = kept.held.values();
    signedInAs('ada');
    await nextTick();
    await pass(10);
    expect(kept.held.size).toBe(0);
    kept.held.set(W, before!);
    const { board } = page(kept, 'ada');
    await pass(4_000);
    expect(board.board).toBeNull();
  });

  it('SCREEN-13 is not shown after a day, in another form, or where its age cannot be told', async () => {
    const kept = drawer();
    answer(page(kept).link);
    await pass(4_000);
    const one = [...kept.held.values()][0]!;
    const heard = one.heard;
    expect(stillGood(one, heard + 24 * HOUR)).not.toBeNull();
    expect(stillGood(one, heard + 24 * HOUR + 1)).toBeNull();
    expect(stillGood(one, heard - 5 * 60_000)).toBeNull();
    expect(stillGood({ ...one, heard: Number.NaN }, heard)).toBeNull();
    expect(stillGood({ ...one, wire: WIRE_VERSION - 1 }, heard)).toBeNull();
    expect(stillGood({ ...one, snapshot: { ...one.snapshot, board: {} } }, heard)).toBeNull();
    expect(stillGood({ ...one, ward: 'w2' }, heard)).toBeNull();
  });

  it('keeps nothing while the server has not said who is here', async () => {
    const kept = drawer();
    answer(page(kept, null).link);
    await pass(30_000);
    expect(kept.held.size).toBe(0);
    expect(useMeStore().load).toHaveBeenCalled();
  });
});
