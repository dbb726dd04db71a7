import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  START,
  WARD,
  WardLog,
  begun,
  hours,
  session,
  setUpWard,
} from '@footboard/shared/capabilities/board/rules/history.testkit';
import type { Told } from '@footboard/shared/capabilities/board/rules/history.testkit';
import { histories } from '@footboard/shared/capabilities/board/rules/random-history.testkit';
import type { LoggedEvent, StreamKey } from '@footboard/shared/kernel/event-type';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { StreamSlice } from '../log/log.ts';
import { BoardFold } from './board-fold.ts';
import type { StayTotals } from './store-port.ts';

const logOf = (events: readonly LoggedEvent[]) => ({
  readStreams: async (_ward: unknown, streams: readonly StreamKey[]) =>
    new Map<StreamKey, StreamSlice>(
      streams.map((stream) => {
        const its = events.filter((event) => event.stream === stream);
        return [stream, { stream, version: its.length, events: its }];
      }),
    ),
});

const ends = (stay: string, bed: string, at: number, log: WardLog) => {
  log.add(`stay/${stay}`, { type: 'stay-ended', payload: { bed, to: 'home' }, at });
  log.add(`bed/${bed}`, { type: 'bed-freed', payload: { bed, stay }, at });
};
const begins = (stay: string, bed: string, at: number, log: WardLog) => {
  log.add(`stay/${stay}`, { ...begun(stay, bed), at });
  log.add(`bed/${bed}`, { type: 'bed-taken', payload: { bed, stay }, at });
};

/** Two people in two beds; the first leaves in the middle and a third gets the bed; entries for the first go on coming, late. */
function wardLog(
  first: readonly Told[],
  second: readonly Told[],
  third: readonly Told[],
  leavesAfter: number,
) {
  const log = new WardLog();
  setUpWard(log, 2);
  begins('s1', 'bed-1', 0, log);
  begins('s2', 'bed-2', 0, log);
  const early = Math.min(leavesAfter, first.length);
  for (let n = 0; n < Math.max(early, second.length); n++) {
    if (n < early) log.add('stay/s1', first[n]!);
    if (second[n]) log.add('stay/s2', second[n]!);
  }
  ends('s1', 'bed-1', 30, log);
  begins('s3', 'bed-1', 31, log);
  for (let n = 0; n < Math.max(first.length - early, third.length); n++) {
    if (first[early + n]) log.add('stay/s1', first[early + n]!);
    if (third[n]) log.add('stay/s3', third[n]!);
  }
  return log.events;
}
const logs = fc
  .tuple(histories, histories, histories, fc.nat(12))
  .map(([first, second, third, after]) => wardLog(first, second, third, after));

class Rows {
  readonly #rows = new Map<string, string>();
  put(totals: readonly StayTotals[]): void {
    for (const { stay, replace, rows } of totals) {
      if (replace) for (const key of this.#rows.keys()) if (key.endsWith(` ${stay}`)) this.#rows.delete(key);
      for (const { day, row } of rows) this.#rows.set(`${day} ${stay}`, row);
    }
  }
  all(): [string, string][] {
    return [...this.#rows].toSorted(([a], [b]) => (a < b ? -1 : 1));
  }
}

/** Folds in pages cut at random, looking at the board after some of them as a live runner does. */
async function live(events: readonly LoggedEvent[], cuts: readonly number[], end: EpochMs) {
  const fold = new BoardFold(WARD, logOf(events));
  const rows = new Rows();
  let now = START;
  for (let from = 0, cut = 0; from < events.length; cut++) {
    const to = from + 1 + (cuts[cut % cuts.length]! % 9);
    const page = events.slice(from, to);
    await fold.take(page);
    now = Math.max(now, ...page.map(({ recorded }) => recorded));
    if (cut % 3 !== 2) rows.put(fold.view(Math.min(now, end)).totals);
    from = to;
  }
  const seen = fold.view(end);
  rows.put(seen.totals);
  return { bytes: JSON.stringify(seen.board), nextChange: seen.nextChange, totals: rows.all() };
}

async function atOnce(events: readonly LoggedEvent[], end: EpochMs) {
  const fold = new BoardFold(WARD, logOf(events));
  const rows = new Rows();
  await fold.take(events);
  rows.put(fold.totalsOfLeft(end));
  const seen = fold.view(end);
  rows.put(seen.totals);
  return { bytes: JSON.stringify(seen.board), nextChange: seen.nextChange, totals: rows.all() };
}

const instants = fc.integer({ min: 120, max: 160 }).map(hours);

describe('the fold of a ward', () => {
  it('PROJ-11 gives the same bytes whatever the pages, looked at on the way or not, and from the short streams alone', async () => {
    await fc.assert(
      fc.asyncProperty(
        logs,
        fc.array(fc.nat(), { minLength: 1, maxLength: 5 }),
        instants,
        async (events, cuts, t) => {
          const whole = await atOnce(events, t);
          const inPages = await live(events, cuts, t);
          expect(inPages.bytes).toBe(whole.bytes);
          expect(inPages.totals).toEqual(whole.totals);

          const position = 1 + (cuts[0]! % events.length);
          const restored = await BoardFold.restore(WARD, logOf(events), position);
          await restored.take(events.slice(position));
          const seen = restored.view(t);
          expect(JSON.stringify(seen.board)).toBe(whole.bytes);
          expect(seen.nextChange).toBe(whole.nextChange);
        },
      ),
      { numRuns: 60 },
    );
  });

  it('refuses a page that leaves a hole', async () => {
    const events = wardLog([], [], [], 0);
    const fold = new BoardFold(WARD, logOf(events));
    await fold.take(events.slice(0, 2));
    await expect(fold.take(events.slice(3))).rejects.toThrow(/does not follow 2/);
    await fold.take(events.slice(2));
    expect(fold.position).toBe(events.length);
  });

  it('PROJ-12 a late entry for somebody who has left changes their ward day, and a day without entries is a gap', async () => {
    const events = wardLog([session(4)], [], [], 0);
    const fold = new BoardFold(WARD, logOf(events));
    const rows = new Rows();
    await fold.take(events.slice(0, -1));
    rows.put(fold.view(hours(40)).totals);
    const day = () =>
      rows
        .all()
        .map(
          ([, row]) => JSON.parse(row) as { stay: string; from: number; recorded: boolean; timesUp: number },
        )
        .find(({ stay, from }) => stay === 's1' && from < START + 1)!;
    expect(day()).toMatchObject({ recorded: false, timesUp: 0 });

    await fold.take(events.slice(-1));
    const changed = fold.view(hours(40)).totals;
    rows.put(changed);
    expect(changed.map(({ stay }) => stay)).toEqual(['s1']);
    expect(day()).toMatchObject({ recorded: true, timesUp: 1 });
  });
});
