/** Keeps the board that is shown, gives it back when the server does not answer, and throws it away in time. */
import { watch } from 'vue';
import { useMeStore } from '../people/me-store.ts';
import { useBoardStore } from '../sync/board-store.ts';
import { keptBoards } from './kept-boards.ts';
import { WIRE_VERSION } from '@footboard/shared/wire/messages';

/** A server that is there answers sooner; a screen without one is not left empty. Common practice, no source. */
const GIVE_BACK_AFTER_MS = 1_500;
/** A change is kept soon; a board without changes is kept anew for its age. */
const KEEP_AFTER_MS = 3_000;
const KEEP_AGAIN_MS = 20_000;
const GONE = new Set(['sign-in-first', 'not-allowed', 'device-revoked', 'no-such-ward']);

/** Called once, for the whole program. @returns stops it */
export function keepLastKnown(boards: typeof keptBoards = keptBoards): () => void {
  const board = useBoardStore();
  const me = useMeStore();
  /** Null while the server has not said who is here. */
  const whose = () =>
    me.page === null
      ? null
      : [me.device?.device ?? '', me.person?.via === 'session' ? me.person.staff : ''].join(' ');
  let known: string | null = null;
  let keptFeed: number | null = null;
  let writing = Promise.resolve();
  let late: ReturnType<typeof setTimeout> | undefined;
  const inTurn = (work: () => Promise<void>) => void (writing = writing.then(work).catch(() => undefined));

  function keep(): void {
    const { snapshot, heard, standing } = board;
    const silent = board.silentFor();
    if (!snapshot || !heard || silent === null || standing !== 'joined' || board.restored) return;
    const now = whose();
    if (now === null) return;
    keptFeed = snapshot.feed;
    inTurn(() =>
      boards.put({
        ward: snapshot.ward,
        wire: WIRE_VERSION,
        whose: now,
        // Plain data: IndexedDB takes no proxies.
        snapshot: JSON.parse(JSON.stringify(snapshot)) as typeof snapshot,
        beat: { ...heard.beat },
        heard: Date.now() - silent,
      }),
    );
  }
  const drop = () => inTurn(() => boards.drop());

  async function giveBack(ward: string): Promise<void> {
    const kept = (await boards.all(Date.now())).find((one) => one.ward === ward);
    const here = whose();
    if (!kept || (here !== null && here !== kept.whose)) return;
    board.restore({
      snapshot: kept.snapshot,
      beat: kept.beat,
      heardAgo: Math.max(0, Date.now() - kept.heard),
    });
  }

  const timer = setInterval(keep, KEEP_AGAIN_MS);
  let soon: ReturnType<typeof setTimeout> | undefined;
  const onHide = () => keep();
  window.addEventListener('pagehide', onHide);
  void boards.all(Date.now());
  const stops = [
    watch(
      () => board.ward,
      (ward) => {
        clearTimeout(late);
        if (ward !== null) late = setTimeout(() => void giveBack(ward), GIVE_BACK_AFTER_MS);
      },
      { immediate: true },
    ),
    watch(
      () => board.snapshot?.feed ?? null,
      (feed) => {
        if (feed === null || feed === keptFeed) return;
        soon ??= setTimeout(() => {
          soon = undefined;
          keep();
        }, KEEP_AFTER_MS);
      },
    ),
    watch(
      () => board.standing,
      (standing) => void (GONE.has(standing) && drop()),
    ),
    // The server has taken the board back: it may be shown less from now on.
    watch(
      () => [board.ward, board.snapshot === null] as const,
      ([ward, none], [before, wasNone]) =>
        void (ward !== null && ward === before && none && !wasNone && drop()),
      { flush: 'sync' },
    ),
    watch(
      whose,
      (now) => {
        if (now === null) return;
        if (known !== null && now !== known) drop();
        known = now;
      },
      { immediate: true },
    ),
    // Whoever is here was not known while the server was away.
    watch(
      () => board.age.state,
      (state) => void (state === 'live' && me.page === null && me.load()),
    ),
  ];
  return () => {
    clearInterval(timer);
    clearTimeout(late);
    clearTimeout(soon);
    window.removeEventListener('pagehide', onHide);
    for (const stop of stops) stop();
  };
}
