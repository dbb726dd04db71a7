import { describe, expect, it } from 'vitest';
import type { WardId } from '../kernel/ids.ts';
import { judgeAge, serverNow } from './age.ts';
import { heartbeat } from './messages.ts';
import type { Heartbeat } from './messages.ts';

const T = Date.UTC(2026, 5, 1, 9, 0);
const beat = (change: Partial<Heartbeat> = {}): Heartbeat =>
  heartbeat.parse({
    ward: 'w1' as WardId,
    clock: T,
    rate: 1,
    head: 7,
    projected: 7,
    feed: 3,
    readAt: T - 500,
    evaluatedAt: T - 700,
    trailingSince: null,
    demo: false,
    ...change,
  });
const judged = (change: Partial<Heartbeat>, afterMs: number) =>
  judgeAge({ beat: beat(change), heardAtMono: 1_000, nowMono: 1_000 + afterMs });

// The ten seconds are design rule 5.
describe('a screen says LAST KNOWN, the whole board, within ten seconds', () => {
  it('PUSH-1 is live on a fresh beat, and known up to the oldest thing it rests on', () => {
    expect(judged({}, 0)).toEqual({ state: 'live', since: T - 700 });
  });
  it('says so when nothing was ever heard', () => {
    expect(judgeAge({ beat: null, heardAtMono: null, nowMono: 5 })).toEqual({
      state: 'last-known',
      since: null,
      why: 'never-heard',
    });
  });
  it('turns when the beat itself is over ten seconds old, not before', () => {
    const fresh = { readAt: T, evaluatedAt: T };
    expect(judged(fresh, 10_000)).toEqual({ state: 'live', since: T });
    expect(judged(fresh, 10_001)).toEqual({ state: 'last-known', since: T, why: 'no-heartbeat' });
  });
  it('turns when beats go on but the database was not read', () => {
    expect(judged({ readAt: T - 10_001 }, 0)).toMatchObject({ state: 'last-known', why: 'no-database' });
    expect(judged({ readAt: T - 9_000 }, 999).state).toBe('live');
    // Fresh when last heard of, then silence: the link is what is gone.
    expect(judged({ readAt: T - 500 }, 9_501)).toMatchObject({ why: 'no-heartbeat', since: T - 700 });
    expect(judged({ readAt: T - 9_000 }, 1_001)).toMatchObject({ why: 'no-database', since: T - 9_000 });
  });
  it('turns when the board was not evaluated', () => {
    expect(judged({ evaluatedAt: T - 10_001 }, 0)).toMatchObject({ why: 'no-evaluation', since: T - 10_001 });
  });
  it('turns when the projection has trailed the log for ten seconds', () => {
    expect(judged({ trailingSince: T - 9_999 }, 0).state).toBe('live');
    expect(judged({ trailingSince: T - 10_001 }, 0)).toEqual({
      state: 'last-known',
      since: T - 10_001,
      why: 'projection-trails',
    });
  });
  it('counts real seconds when the demo clock runs sixty times as fast', () => {
    const fast = { rate: 60, evaluatedAt: T };
    expect(judged({ ...fast, readAt: T - 9_000 * 60 }, 0).state).toBe('live');
    expect(judged({ ...fast, readAt: T - 10_001 * 60 }, 0)).toMatchObject({ why: 'no-database' });
    expect(serverNow(beat({ rate: 60 }), 0, 1_000)).toBe(T + 60_000);
  });
  it('does not run the server clock backwards when the screen clock does', () => {
    expect(serverNow(beat(), 1_000, 400)).toBe(T);
  });
});
