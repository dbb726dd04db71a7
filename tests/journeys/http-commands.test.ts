import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { commandAccepted } from '@footboard/shared/wire/http';
import type { WardId } from '@footboard/shared/kernel/ids';
import { StillClock, WARD, aSession, asProblem, beginStay, openWard } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

const clock = new StillClock(Date.parse('2026-11-25T06:00:00Z'));
let ward: Ward;
const version = async () => (await ward.footboard.log.readStream(WARD as WardId, 'stay/stay-1')).version;
const head = () => ward.footboard.log.head(WARD as WardId);

beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('begin-stay', beginStay('stay-1'));
  clock.at = Date.parse('2026-11-25T10:00:00Z');
});
afterAll(() => ward.footboard.close());

describe('a command that is taken', () => {
  it('answers with its events, their versions, and that the board shows it', async () => {
    const before = await head();
    const answer = await ward.enter('begin-stay', beginStay('stay-2', '1B'));
    expect(answer).toMatchObject({ outcome: 'accepted', shown: true, repeated: false });
    expect(answer.events.map((event) => `${event.stream} ${event.version} ${event.type}`)).toEqual(
      expect.arrayContaining(['stay/stay-2 1 stay-begun', 'bed/bed-1B 1 bed-taken']),
    );
    expect(answer.position).toBe(await head());
    expect(await head()).toBe(before + answer.events.length);
  });

  it('CMD-8 keeps names out of the log', async () => {
    const events = await ward.footboard.log.readWard(WARD as WardId, 0, 1_000);
    const log = JSON.stringify(events);
    expect(log).toContain('stay-begun');
    for (const personal of ['Rosa', 'R-100', '1941', 'Noor', 'Haddad']) expect(log).not.toContain(personal);
  });

  it('CMD-7 takes the author from the staff list, never from the body', async () => {
    const { events } = await ward.enter('record-session', aSession('stay-1', '2026-11-25T09:30:00Z'), 'ada');
    const written = await ward.footboard.log.readStream(WARD as WardId, 'stay/stay-1');
    expect(written.events.find((event) => event.id === events[0]!.id)?.author).toEqual({
      staff: 'ada',
      role: 'aide',
    });
    const sent = await ward.send('record-session', aSession('stay-1', '2026-11-25T09:30:00Z'), 'ada', {
      author: { staff: 'ines', role: 'charge-nurse' },
    } as object);
    expect(asProblem(sent).errors).toMatchObject([{ pointer: '/author' }]);
  });
});

describe('a command sent again', () => {
  it('CMD-1 is stored once and answered the same, for a lost answer costs nothing', async () => {
    const commandId = randomUUID();
    const data = aSession('stay-1', '2026-11-25T09:00:00Z');
    const first = await ward.enter('record-session', data, 'ada', { commandId });
    const after = await head();
    const second = await ward.enter('record-session', data, 'ada', { commandId });
    expect(second).toEqual({ ...first, repeated: true });
    expect(await head()).toBe(after);
  });

  it('is the same entry when it comes from the outbox the second time', async () => {
    const commandId = randomUUID();
    const data = aSession('stay-1', '2026-11-25T09:05:00Z');
    await ward.enter('record-session', data, 'ada', { commandId });
    const again = await ward.enter('record-session', data, 'ada', { commandId, fromOutbox: true });
    expect(again.repeated).toBe(true);
  });

  it('gives the stored "no" again, even when the rule would say yes by now', async () => {
    const commandId = randomUUID();
    const refused = await ward.send('begin-stay', beginStay('stay-9', '1A'), 'ines', { commandId });
    expect(asProblem(refused)).toMatchObject({
      type: '/problems/bed-occupied',
      status: 422,
      repeated: false,
    });
    await ward.enter('move-stay', { stay: 'stay-1', from: 'bed-1A', to: 'bed-2A' });
    const again = await ward.send('begin-stay', beginStay('stay-9', '1A'), 'ines', { commandId });
    expect(asProblem(again)).toMatchObject({ type: '/problems/bed-occupied', repeated: true });
    await ward.enter('move-stay', { stay: 'stay-1', from: 'bed-2A', to: 'bed-1A' });
  });

  it('CMD-2 with another content is refused and says so', async () => {
    const commandId = randomUUID();
    await ward.enter('record-session', aSession('stay-1', '2026-11-25T09:10:00Z'), 'ada', { commandId });
    const before = await head();
    const other = await ward.send('record-session', aSession('stay-1', '2026-11-25T09:11:00Z'), 'ada', {
      commandId,
    });
    expect(asProblem(other)).toMatchObject({
      type: '/problems/command-id-reused',
      status: 422,
      errors: [{ pointer: '/commandId', remedy: expect.stringContaining('id of its own') }],
    });
    expect(await head()).toBe(before);
  });

  it('CMD-2 by another person is refused, so that nobody signs for another', async () => {
    const commandId = randomUUID();
    const data = aSession('stay-1', '2026-11-25T09:12:00Z');
    await ward.enter('record-session', data, 'ada', { commandId });
    const other = await ward.send('record-session', data, 'noor', { commandId });
    expect(asProblem(other)).toMatchObject({ type: '/problems/command-id-reused', status: 422 });
  });

  it('CMD-1 at the same moment as its twin ends in one outcome', async () => {
    const commandId = randomUUID();
    const data = aSession('stay-1', '2026-11-25T09:15:00Z');
    const before = await head();
    const twins = await Promise.all(
      [1, 2, 3, 4].map(() => ward.enter('record-session', data, 'ada', { commandId })),
    );
    expect(await head()).toBe(before + 1);
    expect(new Set(twins.map((twin) => twin.events[0]!.id)).size).toBe(1);
    expect(twins.filter((twin) => !twin.repeated)).toHaveLength(1);
  });

  it('is answered to the first set-up too, when its answer was lost', async () => {
    const commandId = randomUUID();
    const staff = { staff: 'otto', name: 'Otto Berg', role: 'charge-nurse' };
    const setUp = { name: 'Birch', zone: 'Europe/Lisbon', beds: [{ bed: 'b1', label: '1', bay: 'A' }] };
    await ward.enter('set-up-ward', setUp, null, {}, 'birch');
    await ward.enter('add-staff-member', staff, null, { commandId }, 'birch');
    const again = await ward.enter('add-staff-member', staff, null, { commandId }, 'birch');
    expect(again.repeated).toBe(true);
  });
});

describe('what I saw', () => {
  it('is taken while it is still so', async () => {
    const seen = { expect: { version: await version() } };
    const weight = { stay: 'stay-1', weight: { kg: 70, how: 'measured' } };
    expect(await ward.enter('record-weight', weight, 'noor', seen)).toMatchObject({ repeated: false });
  });

  it('CMD-3 goes back to the person when something came in between, and stores nothing', async () => {
    const seen = { expect: { version: await version() }, commandId: randomUUID() };
    await ward.enter('record-trigger', { stay: 'stay-1', kind: 'fall' }, 'ada');
    const before = await head();
    const weight = { stay: 'stay-1', weight: { kg: 71, how: 'measured' } };
    const sent = await ward.send('record-weight', weight, 'noor', seen);
    expect(asProblem(sent)).toMatchObject({
      type: '/problems/conflict',
      status: 409,
      errors: [{ pointer: '/expect/version' }],
    });
    expect(await head()).toBe(before);
    // Nothing is held against the id: looked at again, the same entry goes through.
    const { commandId } = seen;
    await ward.enter('record-weight', weight, 'noor', { commandId, expect: { version: await version() } });
  });

  it('is not a conflict for a repeat of what is stored', async () => {
    const envelope = { expect: { version: await version() }, commandId: randomUUID() };
    const weight = { stay: 'stay-1', weight: { kg: 72, how: 'measured' } };
    await ward.enter('record-weight', weight, 'noor', envelope);
    const again = await ward.enter('record-weight', weight, 'noor', envelope);
    expect(again.repeated).toBe(true);
  });

  it('of many at once with "latest" takes every one', async () => {
    const before = await version();
    const sent = await Promise.all(
      Array.from({ length: 8 }, (_, i) =>
        ward.send('record-session', aSession('stay-1', `2026-11-25T08:0${i}:00Z`), 'ada'),
      ),
    );
    expect(sent.map((one) => one.status)).toEqual(Array(8).fill(200));
    expect(await version()).toBe(before + 8);
  });
});

describe('a transfer', () => {
  it('CMD-9 ends one stay and begins the next on the other ward, or does neither', async () => {
    await ward.enter('begin-stay', beginStay('stay-t', '2A'));
    const to = { ward: 'birch', bed: 'b1', stay: 'stay-t2' };
    const answer = await ward.enter('transfer-stay', { stay: 'stay-t', bed: 'bed-2A', to });
    expect(commandAccepted.parse(answer).events.map((event) => `${event.ward} ${event.type}`)).toEqual(
      expect.arrayContaining([`${WARD} stay-ended`, 'birch stay-begun']),
    );
    const page = await ward.get('/api/wards/birch/stays/stay-t2');
    expect(page.body).toMatchObject({ previous: { ward: WARD, stay: 'stay-t' }, ended: null });

    await ward.enter('begin-stay', beginStay('stay-u', '2A'));
    const before = await head();
    const taken = await ward.send('transfer-stay', {
      stay: 'stay-u',
      bed: 'bed-2A',
      to: { ward: 'birch', bed: 'b1', stay: 'stay-u2' },
    });
    expect(asProblem(taken).type).toBe('/problems/bed-occupied');
    expect(await head()).toBe(before);
  });
});
