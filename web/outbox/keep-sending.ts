/** When what is unsent goes out again by itself. Started once, for the whole program. */
import { watch } from 'vue';
import { useMeStore } from '../people/me-store.ts';
import { onSignedIn } from '../people/sign-in-first.ts';
import { useBoardStore } from '../sync/board-store.ts';
import { useOutbox } from './outbox.ts';

/** Common practice, no source: soon enough for a ward, seldom enough for its network. */
const AGAIN_EVERY_MS = 15_000;

export function keepSending(): () => void {
  const outbox = useOutbox();
  const me = useMeStore();
  const board = useBoardStore();
  const flush = () => void outbox.flush();
  const shown = () => {
    if (document.visibilityState === 'visible') flush();
  };
  const ofWhoIsHere = () => {
    if (me.person) void outbox.flushOf(me.person.staff);
  };
  window.addEventListener('online', flush);
  window.addEventListener('focus', flush);
  window.addEventListener('pageshow', flush);
  document.addEventListener('visibilitychange', shown);
  const timer = setInterval(flush, AGAIN_EVERY_MS);
  const stops = [
    watch(
      () => board.age.state,
      (state) => void (state === 'live' && flush()),
    ),
    watch(() => me.person?.staff, ofWhoIsHere, { immediate: true }),
    onSignedIn(ofWhoIsHere),
  ];
  flush();
  return () => {
    window.removeEventListener('online', flush);
    window.removeEventListener('focus', flush);
    window.removeEventListener('pageshow', flush);
    document.removeEventListener('visibilitychange', shown);
    clearInterval(timer);
    for (const stop of stops) stop();
  };
}
