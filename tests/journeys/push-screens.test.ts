import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { itemDescription } from '@footboard/shared/capabilities/aids/values';
import { localDate } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { WardId } from '@footboard/shared/kernel/ids';
import { MINUTE } from '@footboard/shared/kernel/times';
import { SOCKET, WIRE_VERSION, joinAnswer } from '@footboard/shared/wire/messages';
import { bedsOf, newWard } from './push-kit.ts';
import { arrives, attached, bedAdded, leaves, openHospital, wardEvents } from './push-kit.ts';
import type { Hospital } from './push-kit.ts';

describe('a screen and its ward', () => {
  let hospital: Hospital;
  beforeAll(async () => {
    hospital = await openHospital();
  });
  afterAll(() => hospital.close());

  async function ward(): Promise<WardId> {
    const id = newWard();
    const position = await hospital.append(id, ...wardEvents(id, [`${id}-b1`, `${id}-b2`]));
    expect(await hospital.boards.waitFor(id, position, 10_000)).toBe(true);
    return id;
  }

  it('PUSH-3 gets the whole board when it joins, and each change linked to it after that', async () => {
    const id = await ward();
    const screen = await hospital.screen(id);
    const answer = await screen.join();
    expect(answer.answer).toBe('snapshot');
    expect(bedsOf(screen.state!)).toEqual([
      [`${id}-b1`, 'empty', null],
      [`${id}-b2`, 'empty', null],
    ]);
    const joinedAt = screen.state!.feed;

    const position = await hospital.append(id, ...arrives('s1', `${id}-b2`));
    await screen.until(({ state }) => state!.p >= position);

    expect(bedsOf(screen.state!)[1]).toEqual([`${id}-b2`, 'occupied', 's1']);
    expect(screen.applied[0]!.from).toBe(joinedAt);
    expect(screen.applied[0]!.beds.map((row) => row.bed)).toEqual([`${id}-b2`]);
    expect(screen.gaps).toBe(0);
  });

  it('PLANNED-7 hears at once that equipment of a planned visit broke, and that it is back in service', async () => {
    const id = await ward();
    const item = `${id}-lift`;
    const is = { label: 'Lift 1', kind: 'floor-lift', model: 'A', powered: true, home: 'Store' };
    const now = Date.now();
    // Ward days begin at 07:00.
    const day = localDate('Europe/Lisbon', now - 7 * 60 * MINUTE);
    await hospital.append(
      id,
      ...arrives('s1', `${id}-b1`),
      { stream: `ward/${id}`, type: 'item-added', payload: { item, is: itemDescription.parse(is) } },
      {
        stream: `ward/${id}`,
        type: 'day-plan-accepted',
        payload: {
          day,
          placements: [
            {
              visit: 's1-c',
              stay: 's1',
              kind: 'check',
              start: new Date(now + MINUTE).toISOString(),
              minutes: 30,
              crew: ['staff-1'],
              items: [item],
            },
          ],
          hash: 'a'.repeat(64),
          weightsVersion: 1,
          how: 'solver',
          gap: null,
          edited: false,
        },
      },
    );
    const screen = await hospital.screen(id);
    await screen.join();
    const stopped = () => screen.state!.board.beds[0]!.stay!.planned![0]!.stopped?.words ?? null;
    expect(stopped()).toBeNull();
    const of = { stream: `item/${item}` } as const;
    await hospital.append(id, { ...of, type: 'item-out-of-service', payload: { item, defect: 'other' } });
    await screen.until(() => (stopped() ?? '').startsWith('Lift 1 is out of service since'));
    await hospital.append(id, { ...of, type: 'item-in-service', payload: { item } });
    await screen.until(() => stopped() === null);
    expect(screen.gaps).toBe(0);
  });

  it('PUSH-4 comes back after a cut and is told exactly what changed meanwhile', async () => {
    const id = await ward();
    const screen = await hospital.screen(id);
    await screen.join();
    await hospital.append(id, ...arrives('s1', `${id}-b1`));
    await screen.until(({ state }) => bedsOf(state!)[0]![1] === 'occupied');

    screen.lose();
    await hospital.append(id, attached('s1', 'a1'));
    await hospital.append(id, attached('s1', 'a2'));
    const position = await hospital.append(id, ...arrives('s2', `${id}-b2`));
    await hospital.boards.waitFor(id, position, 10_000);
    await screen.comeBack();
    const answer = await screen.join();

    expect(answer.answer).toBe('changes');
    expect(screen.gaps).toBe(0);
    expect(screen.state).toEqual({ ...hospital.boards.snapshot(id)!, t: screen.state!.t });
    expect((await screen.join()).answer).toBe('current');
  });

  it('PUSH-5 gets everything when what it holds is from the future or older than what is kept', async () => {
    const id = await ward();
    const screen = await hospital.screen(id);
    expect((await screen.join(1_000_000)).answer).toBe('snapshot');
    await hospital.append(id, ...arrives('s1', `${id}-b1`));
    await screen.until(({ state }) => bedsOf(state!)[0]![1] === 'occupied');
    // Another server, started just now, holds no history in memory; what was stored is pruned.
    const other = hospital.secondBoards();
    await other.start();
    const first = screen.applied[0]!.from;
    expect(await other.patchesSince(id, first)).toHaveLength(1);
    await hospital.database.query('delete from ward_feed where ward = $1', [id]);
    expect(await other.patchesSince(id, first)).toBeNull();
    await other.stop();
  });

  it('PUSH-6 answers a malformed message with a refusal, and the server stays up', async () => {
    const id = await ward();
    const screen = await hospital.screen(id);
    const good = { requestId: 'r1', wireVersion: WIRE_VERSION, ward: id, feed: null };
    for (const bad of [
      null,
      'join',
      42,
      [],
      [good, good],
      {},
      { ...good, feed: 1.5 },
      { ...good, ward: '../etc' },
      { ...good, wireVersion: 'one' },
      { ...good, surplus: { deep: [1] } },
    ]) {
      const answer = joinAnswer.parse(await screen.ask(SOCKET.join, bad));
      expect(answer).toMatchObject({ answer: 'refused', refused: 'malformed' });
    }
    expect(joinAnswer.parse(await screen.ask(SOCKET.join, { ...good, wireVersion: 0 }))).toMatchObject({
      refused: 'old-page',
    });
    expect(joinAnswer.parse(await screen.ask(SOCKET.join, { ...good, ward: 'nowhere' }))).toMatchObject({
      refused: 'no-such-ward',
    });
    // Without an acknowledgement, unknown, binary: nobody to answer, nothing breaks.
    screen.socket.emit(SOCKET.join, good);
    screen.socket.emit(SOCKET.leave, { not: 'a ward' });
    screen.socket.emit('no-such-message', new Uint8Array(10));
    expect((await screen.join()).answer).toBe('snapshot');

    // Beyond 64 kB the connection is closed; the next one is served.
    const cut = new Promise<string>((resolve) => screen.socket.once('disconnect', resolve));
    screen.socket.emit(SOCKET.join, { ...good, requestId: 'x'.repeat(70_000) }, () => {});
    await cut;
    await screen.comeBack();
    expect((await screen.join()).answer).toMatch(/current|snapshot|changes/);
  });

  it('PUSH-7 loses and repeats nothing between the answer and what follows, joining in the thick of it', async () => {
    const id = await ward();
    await hospital.append(id, ...arrives('s1', `${id}-b1`));
    const screens = await Promise.all(Array.from({ length: 6 }, () => hospital.screen(id)));
    let position = 0;
    const writing = (async () => {
      for (let n = 0; n < 30; n++) position = await hospital.append(id, attached('s1', `a${n}`));
    })();
    for (let round = 0; round < 4; round++) {
      for (const screen of screens) {
        await screen.join(round % 2 === 0 ? null : undefined);
        expect(screen.state!.feed).toBeGreaterThan(0);
      }
    }
    await writing;
    await Promise.all(screens.map((screen) => screen.until(({ state }) => state!.p >= position)));
    for (const screen of screens) {
      expect(screen.gaps).toBe(0);
      expect(screen.state!.board).toEqual(hospital.boards.snapshot(id)!.board);
      const links = screen.applied.map((patch) => [patch.from, patch.to]);
      expect(links.every(([from, to]) => from! < to!)).toBe(true);
    }
  });

  it('PUSH-8 hears only its own ward, and none after leaving', async () => {
    const [one, two] = [await ward(), await ward()];
    const screen = await hospital.screen(one);
    await screen.join();
    const other = await hospital.screen(two);
    await other.join();
    await hospital.append(two, ...arrives('t1', `${two}-b1`));
    await other.until(({ state }) => bedsOf(state!)[0]![1] === 'occupied');
    await screen.ask(SOCKET.join, null);
    expect(screen.applied).toEqual([]);

    other.socket.emit(SOCKET.leave, two);
    await other.ask(SOCKET.join, null);
    const heard = other.applied.length;
    const position = await hospital.append(two, ...arrives('t2', `${two}-b2`));
    await hospital.boards.waitFor(two, position, 10_000);
    await other.ask(SOCKET.join, null);
    expect(other.applied).toHaveLength(heard);
  });

  it('PROJ-1 picks up a ward that appears later, a new bed, and a bed that is freed', async () => {
    const id = await ward();
    const screen = await hospital.screen(id);
    await screen.join();
    await hospital.append(id, bedAdded(id, `${id}-b3`));
    await screen.until(({ state }) => state!.board.beds.length === 3);
    await hospital.append(id, ...arrives('s1', `${id}-b3`));
    await screen.until(({ state }) => bedsOf(state!)[2]![1] === 'occupied');
    await hospital.append(id, ...leaves('s1', `${id}-b3`));
    await screen.until(({ state }) => bedsOf(state!)[2]![1] === 'empty');
    expect(screen.gaps).toBe(0);
  });

  it('PROJ-2 a late entry for a stay that has ended changes no row of the bed’s next occupant', async () => {
    const id = await ward();
    const bed = `${id}-b1`;
    await hospital.append(id, ...arrives('old', bed));
    await hospital.append(id, ...leaves('old', bed));
    const before = await hospital.append(id, ...arrives('next', bed));
    await hospital.boards.waitFor(id, before, 10_000);
    const rows = () => JSON.stringify(hospital.boards.snapshot(id)!.board);
    const shown = rows();

    const late = await hospital.append(id, {
      ...attached('old', 'a9'),
      occurred: Date.now() - 30 * MINUTE,
    });
    expect(await hospital.boards.waitFor(id, late, 10_000)).toBe(true);
    expect(rows()).toBe(shown);
  });

  it('has reported no fault', () => {
    expect(hospital.faults).toEqual([]);
  });
});
