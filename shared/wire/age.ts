/**
 * How old is what the screen shows? The pure rule behind LAST KNOWN (design rule 5). Thresholds are
 * real milliseconds: a demo clock that runs faster is divided by its rate.
 */
import type { EpochMs } from '../kernel/times.ts';
import { BEAT_EVERY_MS, LAST_KNOWN_AFTER_MS } from './messages.ts';
import type { Heartbeat } from './messages.ts';

export interface Heard {
  readonly beat: Heartbeat | null;
  /** The screen's own monotonic clock (performance.now()) when that beat arrived. */
  readonly heardAtMono: number | null;
  readonly nowMono: number;
}

export type WhyLastKnown =
  'never-heard' | 'no-heartbeat' | 'no-database' | 'no-evaluation' | 'projection-trails';

export type Age =
  | { readonly state: 'live'; readonly since: EpochMs }
  | {
      readonly state: 'last-known';
      /** The instant, on the server's clock, up to which the board is known to be true; null when nothing was ever heard. */
      readonly since: EpochMs | null;
      readonly why: WhyLastKnown;
    };

/** The server's clock at this moment, counted on from the last beat. */
export const serverNow = (beat: Heartbeat, heardAtMono: number, nowMono: number): EpochMs =>
  beat.clock + Math.max(0, nowMono - heardAtMono) * beat.rate;

/** Up to when the board is known to be true: the oldest of what it rests on. */
const knownUntil = (beat: Heartbeat): EpochMs =>
  Math.min(beat.clock, beat.readAt, beat.evaluatedAt, beat.trailingSince ?? beat.clock);

/**
 * Judged again every time before anything is painted: after waking, on focus, after a frozen tab.
 * Over ten seconds without a beat, a database read or an evaluation, or ten seconds of projection
 * trailing the log, and the whole board is last known.
 */
export function judgeAge({ beat, heardAtMono, nowMono }: Heard): Age {
  if (beat === null || heardAtMono === null) return { state: 'last-known', since: null, why: 'never-heard' };
  const since = knownUntil(beat);
  // After two beats have failed to come, it is the link that is gone: what the last one said of the
  // server's reads and evaluations grows old only because nobody says anything newer.
  const silent = nowMono - heardAtMono > 2.5 * BEAT_EVERY_MS;
  const last = (why: WhyLastKnown): Age => ({
    state: 'last-known',
    since,
    why: silent ? 'no-heartbeat' : why,
  });
  const now = serverNow(beat, heardAtMono, nowMono);
  const tooOld = (at: EpochMs) => (now - at) / beat.rate > LAST_KNOWN_AFTER_MS;
  if (nowMono - heardAtMono > LAST_KNOWN_AFTER_MS) return last('no-heartbeat');
  if (tooOld(beat.readAt)) return last('no-database');
  if (beat.trailingSince !== null && tooOld(beat.trailingSince)) return last('projection-trails');
  if (tooOld(beat.evaluatedAt)) return last('no-evaluation');
  return { state: 'live', since };
}
