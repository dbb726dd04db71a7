import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { judgeAge } from '@footboard/shared/wire/age';
import type { WardId } from '@footboard/shared/kernel/ids';
import { MINUTE, SECOND } from '@footboard/shared/kernel/times';
import type { Screen } from './push-kit.ts';
import { HandTime, arrives, attached, bedsOf, held, newWard, openHospital, wardEvents } from './push-kit.ts';
import type { Hospital } from './push-kit.ts';

/** Just heard: what a wall concludes at the moment a beat arrives. */
const judged = (screen: Screen) => judgeAge({ beat: screen.beat, heardAtMono: 0, nowMono: 0 });

describe('the age of a board', () => {
  const time = new HandTime();
  let hospital: Hospital;
  beforeAll(async () => {
    hospital = await openHospital({ time });
  });
  afterAll(() => hospital.close());

  async function wall() {
    const ward = newWard();
    const position = await hospital.append(ward, ...wardEvents(ward, ['b1']), ...arrives('s1', 'b1'));
    await shown(ward, position);
    const screen = await hospital.screen(ward);
    await screen.join();
    return { ward, screen };
  }
  /** Without letting the clock move: asks the database, one round trip at a time, until the board has it. */
  async function shown(ward: WardId, position: number) {
    while ((hospital.boards.snapshot(ward)?.p ?? 0) < position) await hospital.log.head(ward);
  }
  /** Lets this much time pass, a second at a time so that every poll has its turn. */
  async function pass(ms: number) {
    for (let passed = 0; passed < ms; passed += SECOND) {
      time.advance(SECOND);
      for (let turn = 0; turn < 3; turn++) await hospital.log.heads().catch(() => null);
    }
  }

  it('PUSH-9 a paused projector leaves the board LAST KNOWN within ten seconds, and live again after', async () => {
    const { ward, screen } = await wall();
    expect(judged(screen).state).toBe('live');

    hospital.boards.pauseProjector(ward);
    const position = await hospital.append(ward, attached('s1', 'a1'));
    await pass(3 * SECOND);
    const beat = hospital.boards.heartbeat(ward)!;
    expect(beat.head).toBe(position);
    expect(beat.projected).toBeLessThan(position);
    expect(beat.trailingSince).not.toBeNull();
    await pass(10 * SECOND);
    await screen.nextBeat();
    expect(judged(screen)).toMatchObject({ state: 'last-known', why: 'projection-trails' });

    hospital.boards.resumeProjector(ward);
    await screen.until(({ state }) => state!.p >= position);
    await screen.nextBeat();
    expect(screen.beat!.trailingSince).toBeNull();
    expect(judged(screen).state).toBe('live');
  });

  it('PROJ-3 time alone changes the board at its instant, without an event or a request', async () => {
    const { ward, screen } = await wall();
    const wait = 30 * SECOND;
    const position = await hospital.append(ward, held('s1', 'h1', time.now() + wait));
    await screen.until(({ state }) => state!.p >= position);
    const hold = () => screen.state!.board.beds[0]!.stay!.holds[0]!;
    expect(hold().reviewDue).toBe(false);
    const feed = screen.state!.feed;

    // Only the ward's own scheduler is let go, not the poll.
    expect(time.advanceOnly(wait)).toBe(1);
    await screen.until(({ state }) => state!.feed > feed);

    expect(hold().reviewDue).toBe(true);
    const patch = screen.applied.at(-1)!;
    expect(patch.p).toBe(position);
    expect(patch.t).toBe(time.now());
    expect(await hospital.log.head(ward)).toBe(position);
  });

  it('PROJ-4 writes nothing and sends nothing while not a byte changes', async () => {
    const { ward, screen } = await wall();
    const feed = screen.state!.feed;
    await pass(20 * SECOND);
    const { evaluatedAt } = hospital.boards.heartbeat(ward)!;
    await pass(2 * SECOND);
    await screen.nextBeat();
    expect(screen.beat!.evaluatedAt).toBeGreaterThan(evaluatedAt);
    expect(screen.beat!.feed).toBe(feed);
    expect(screen.applied).toEqual([]);
    expect(bedsOf(hospital.boards.snapshot(ward)!)).toEqual([['b1', 'occupied', 's1']]);
  });

  it('PROJ-5 the board as known then and seen then comes from the log alone, byte for byte', async () => {
    const { ward, screen } = await wall();
    const seen: { p: number; t: number; bytes: string }[] = [];
    for (let n = 0; n < 5; n++) {
      const position = await hospital.append(ward, attached('s1', `a${n}`));
      await screen.until(({ state }) => state!.p >= position);
      const { p, t, board } = hospital.boards.snapshot(ward)!;
      seen.push({ p, t, bytes: JSON.stringify(board) });
      time.advance(7 * MINUTE);
    }
    for (const { p, t, bytes } of seen) {
      expect(JSON.stringify(await hospital.boards.boardAsOf(ward, p, t))).toBe(bytes);
    }
  });

  // The last one: it takes the database away.
  it('PUSH-10 with the database gone the beats go on and say since when it was not read', async () => {
    const { screen } = await wall();
    const { readAt } = screen.beat!;
    expect(judged(screen).state).toBe('live');

    await hospital.database.close();
    await pass(8 * SECOND);
    await screen.nextBeat();
    expect(screen.beat!.readAt).toBeLessThanOrEqual(readAt + SECOND);
    expect(judged(screen).state).toBe('live');
    await pass(4 * SECOND);
    await screen.nextBeat();
    expect(judged(screen)).toMatchObject({ state: 'last-known', why: 'no-database' });
    expect(hospital.faults.length).toBeGreaterThan(0);
  });
});
