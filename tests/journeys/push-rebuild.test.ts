import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { WardId } from '@footboard/shared/kernel/ids';
import { arrives, attached, bedsOf, leaves, newWard, openHospital, walked, wardEvents } from './push-kit.ts';
import type { Hospital } from './push-kit.ts';

describe('a board built again, and two servers on one database', () => {
  let hospital: Hospital;
  beforeAll(async () => {
    hospital = await openHospital();
  });
  afterAll(() => hospital.close());

  async function ward(): Promise<WardId> {
    const id = newWard();
    const position = await hospital.append(id, ...wardEvents(id, ['b1', 'b2']), ...arrives('s1', 'b1'));
    await hospital.boards.waitFor(id, position, 10_000);
    return id;
  }
  const stored = (id: WardId) =>
    hospital.database.query<{ revision: number; bed: string; row: string }>(
      'select revision, bed, row from board_bed where ward = $1 order by revision, bed',
      [id],
    );

  it('PROJ-6 a rebuild beside the board in use changes nothing that a screen sees', async () => {
    const id = await ward();
    const screen = await hospital.screen(id);
    await screen.join();

    expect(await hospital.boards.rebuild(id)).toBe(2);

    const rows = await stored(id);
    const of = (revision: number) => rows.filter((row) => row.revision === revision).map((row) => row.row);
    expect(of(2)).toHaveLength(2);
    expect(of(2)).toEqual(of(1));
    expect(screen.applied).toEqual([]);
    // The one after next keeps the last revision and lets go of the one before.
    expect(await hospital.boards.rebuild(id)).toBe(3);
    expect([...new Set((await stored(id)).map((row) => row.revision))]).toEqual([2, 3]);
  });

  it('PROJ-7 a rebuild under a stream of entries leaves no gap on a screen', async () => {
    const id = await ward();
    const screen = await hospital.screen(id);
    await screen.join();
    let position = 0;
    const writing = (async () => {
      for (let n = 0; n < 40; n++) position = await hospital.append(id, attached('s1', `a${n}`));
    })();
    const revisions = [await hospital.boards.rebuild(id), await hospital.boards.rebuild(id)];
    await writing;
    await screen.until(({ state }) => state!.p >= position);

    expect(revisions).toEqual([2, 3]);
    expect(screen.gaps).toBe(0);
    expect(screen.state!.board.beds[0]!.stay!.attachments).toHaveLength(40);
    expect(screen.state!.board).toEqual(hospital.boards.snapshot(id)!.board);
  });

  it('PROJ-8 a start takes up where the last one stopped, with the same bytes and the same numbers', async () => {
    const id = await ward();
    const shown = hospital.boards.snapshot(id)!;
    const later = hospital.secondBoards();
    await later.start();
    expect(JSON.stringify(later.snapshot(id)!.board)).toBe(JSON.stringify(shown.board));
    expect(later.snapshot(id)).toMatchObject({ feed: shown.feed, p: shown.p });
    await later.stop();
  });

  it('PROJ-9 two servers over one database do not fight: each serves every change, linked', async () => {
    const id = await ward();
    const other = hospital.secondBoards();
    await other.start();
    const links: [number, number][] = [];
    other.onPatch((patch) => {
      if (patch.ward === id) links.push([patch.from, patch.to]);
    });
    const start = other.snapshot(id)!.feed;
    let position = 0;
    for (let n = 0; n < 25; n++) position = await hospital.append(id, attached('s1', `a${n}`));
    await Promise.all([other.waitFor(id, position, 20_000), hospital.boards.waitFor(id, position, 20_000)]);

    expect(other.snapshot(id)!.p).toBe(position);
    expect(JSON.stringify(other.snapshot(id)!.board)).toBe(
      JSON.stringify(hospital.boards.snapshot(id)!.board),
    );
    expect(links[0]![0]).toBe(start);
    for (let n = 1; n < links.length; n++) expect(links[n]![0]).toBe(links[n - 1]![1]);
    const feeds = await hospital.database.query<{ feed: number; from_feed: number }>(
      'select feed, from_feed from ward_feed where ward = $1 order by feed',
      [id],
    );
    expect(feeds.every(({ feed, from_feed: from }) => from === feed - 1)).toBe(true);
    expect(feeds.at(-1)!.feed).toBe(hospital.boards.snapshot(id)!.feed);
    await other.stop();
  });

  it('PROJ-10 after a failed write it says so, waits, and goes on without losing an event', async () => {
    const id = await ward();
    await hospital.database.query('alter table ward_feed rename to ward_feed_away');
    const position = await hospital.append(id, ...arrives('s2', 'b2'));
    const faults = hospital.faults.length;
    expect(await hospital.boards.waitFor(id, position, 1)).toBe(false);
    while (hospital.boards.stateOf(id) !== 'paused-on-failure') await hospital.log.head(id);
    expect(hospital.faults.length).toBeGreaterThanOrEqual(faults);
    expect(bedsOf(hospital.boards.snapshot(id)!)[1]![1]).toBe('empty');

    await hospital.database.query('alter table ward_feed_away rename to ward_feed');
    expect(await hospital.boards.waitFor(id, position, 20_000)).toBe(true);
    expect(bedsOf(hospital.boards.snapshot(id)!)[1]![1]).toBe('occupied');
    while (hospital.boards.stateOf(id) !== 'live') await hospital.log.head(id);
  });

  it('PROJ-13 ward day totals are committed with the board and are the same after a rebuild', async () => {
    const id = await ward();
    const position = await hospital.append(id, walked('s1'), ...leaves('s1', 'b1'), ...arrives('s3', 'b1'));
    await hospital.boards.waitFor(id, position, 10_000);
    const totals = async (revision: number) => {
      const rows = await hospital.database.query<{ stay: string; row: string }>(
        'select stay, row from ward_day_total where ward = $1 and revision = $2 order by day, stay',
        [id, revision],
      );
      return rows.map(({ row }) => row);
    };
    const before = await totals(1);
    expect(before.map((row) => JSON.parse(row) as object)).toMatchObject([
      { stay: 's1', recorded: true, timesUp: 1 },
      { stay: 's3', recorded: false, timesUp: 0 },
    ]);
    await hospital.boards.rebuild(id);
    expect(await totals(2)).toEqual(before);
  });
});
