import { createPinia, setActivePinia } from 'pinia';
import { flushPromises } from '@vue/test-utils';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { CommandId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import type { CommandAccepted, Problem } from '@footboard/shared/wire/http';
import type { PreparedCommand, Sent } from '../commanding/send-command.ts';
import { useOutbox } from './outbox.ts';
import { inMemory, type OutboxStorage } from './storage.ts';

const problem = (status: number): Problem => ({
  type: '/problems/x',
  title: 'No',
  status,
  detail: 'No.',
  remedy: 'Ask.',
});
const entry = (id: string, stay = 's1', staff: string | null = 'ada'): PreparedCommand => ({
  ward: 'w1' as WardId,
  name: 'record-session',
  commandId: id as CommandId,
  staff: staff as StaffId | null,
  body: {
    commandId: id as CommandId,
    occurred: { at: '2026-11-25T12:00:00.000Z' },
    entered: { at: '2026-11-25T12:00:00.000Z', offsetMinutes: 0 },
    source: { kind: 'person' },
    expect: 'latest',
    fromOutbox: false,
    data: { stay },
  },
});

/** What outlives a page: as IndexedDB does, without one. */
const lasting = (): OutboxStorage => ({ ...inMemory(), lasting: true });
type Answer = 'accepted' | 'unreachable' | number;
/** A page with its outbox over `storage`; the answers are given in turn, then all are accepted. */
function page(storage: OutboxStorage, ...answers: Answer[]) {
  setActivePinia(createPinia());
  const outbox = useOutbox();
  const sent: PreparedCommand[] = [];
  outbox.deliverBy(async (command): Promise<Sent> => {
    sent.push(command);
    const answer = answers.shift() ?? 'accepted';
    if (answer === 'accepted') {
      const { commandId } = command;
      return {
        kind: 'accepted',
        accepted: {
          commandId,
          outcome: 'accepted',
          position: 1,
          events: [],
          shown: true,
          repeated: false,
        } satisfies CommandAccepted,
      };
    }
    if (answer === 'unreachable') return { kind: 'not-sent', problem: problem(0), command };
    if (answer === 429) return { kind: 'not-sent', problem: problem(429), command, again: 30_000 };
    return { kind: 'problem', problem: problem(answer) };
  });
  void outbox.open(async () => storage);
  const ids = () => sent.map((c) => c.commandId as string);
  return { outbox, sent, ids };
}
const left = async (storage: OutboxStorage) =>
  (await storage.all()).map((e) => `${e.command.commandId} ${e.state}`);

beforeEach(() => vi.stubGlobal('BroadcastChannel', undefined));
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe('the outbox', () => {
  it('keeps an entry before it is sent, and lets it go when the server has taken it', async () => {
    const storage = lasting();
    const { outbox, sent } = page(storage);
    outbox.deliverBy(async (command) => {
      sent.push(command);
      expect(await left(storage)).toEqual(['a waiting']);
      return { kind: 'problem', problem: problem(422) };
    });
    await outbox.send(entry('a'), 'Session');
    expect(sent).toHaveLength(1);
    expect(await left(storage)).toEqual(['a refused']);

    const other = page(lasting());
    expect((await other.outbox.send(entry('b'), 'Session')).kind).toBe('accepted');
    expect(other.outbox.entries).toEqual([]);
  });

  it('gives back after a reload what was not answered: the same command, said to come from an outbox', async () => {
    const storage = lasting();
    const before = page(storage, 'unreachable');
    expect((await before.outbox.send(entry('a'), 'Session')).kind).toBe('not-sent');

    const { outbox, sent } = page(storage);
    await outbox.flush();
    expect(sent).toEqual([{ ...entry('a'), body: { ...entry('a').body, fromOutbox: true } }]);
    expect(await left(storage)).toEqual([]);
  });

  it('gives back what a crash cut off in the middle of its first sending', async () => {
    const storage = lasting();
    const before = page(storage);
    before.outbox.deliverBy(() => new Promise(() => undefined));
    void before.outbox.send(entry('a'), 'Session');
    await flushPromises();

    const { outbox, sent } = page(storage);
    await outbox.flush();
    expect(sent).toMatchObject([{ commandId: 'a', body: { fromOutbox: true } }]);
  });

  it('sends the entries of one stay in their order, and none past one that waits; another stay goes on', async () => {
    const { outbox, ids, sent } = page(lasting(), 'unreachable', 'unreachable');
    await outbox.send(entry('a'), 'first');
    const second = await outbox.send(entry('b'), 'second');
    expect(second.kind).toBe('not-sent');
    expect(ids()).toEqual(['a', 'a']);
    expect((await outbox.send(entry('c', 's2'), 'other stay')).kind).toBe('accepted');
    await outbox.flush();
    expect(ids()).toEqual(['a', 'a', 'c', 'a', 'b']);
    // It waited behind another one: its time is that of an outbox, not of a live entry.
    expect(sent.at(-1)!.body.fromOutbox).toBe(true);
  });

  it('keeps what needs a sign-in for its author: nobody else who signs in sends it', async () => {
    const storage = lasting();
    const { outbox, ids } = page(storage, 401);
    await outbox.send(entry('a'), 'Session');
    expect(await left(storage)).toEqual(['a needs-sign-in']);
    await outbox.flushOf('noor' as StaffId);
    await outbox.flush();
    expect(ids()).toEqual(['a']);
    await outbox.flushOf('ada' as StaffId);
    expect(ids()).toEqual(['a', 'a']);
    expect(await left(storage)).toEqual([]);
  });

  it('never changes whose an entry is once it was sent under a name', async () => {
    const { outbox } = page(lasting(), 401);
    await outbox.send(entry('a'), 'Session');
    await outbox.claim('a', 'noor' as StaffId);
    expect(outbox.entries[0]!.command.staff).toBe('ada');
    await outbox.hold(entry('b', 's1', null), 'Session');
    await outbox.claim('b', 'noor' as StaffId);
    expect(outbox.entries[1]!.command.staff).toBe('noor');
  });

  it.each([400, 403, 404, 409, 413, 422, 500])(
    'sets an entry aside that was answered %i, over reloads and retries, until a person closes it',
    async (status) => {
      const storage = lasting();
      const before = page(storage, status);
      await before.outbox.send(entry('a'), 'Session');
      const { outbox, sent } = page(storage);
      await outbox.flush();
      expect(sent).toEqual([]);
      expect(outbox.refused.map((e) => e.problem?.status)).toEqual([status]);
      await outbox.close('a');
      expect(await left(storage)).toEqual([]);
    },
  );

  it('sends a refused entry again as a new command, in the place of the old one', async () => {
    const storage = lasting();
    const { outbox, sent } = page(storage, 422, 422);
    await outbox.send(entry('a'), 'Session');
    await outbox.anew('a');
    expect(sent).toHaveLength(2);
    expect(sent[1]!.commandId).not.toBe('a');
    expect(sent[1]!.body.commandId).toBe(sent[1]!.commandId);
    expect(await left(storage)).toEqual([`${sent[1]!.commandId} refused`]);
  });

  it('lets a corrected entry take the place of the refused one', async () => {
    const storage = lasting();
    const { outbox } = page(storage, 422, 'unreachable');
    await outbox.send(entry('a'), 'Session');
    await outbox.send(entry('b'), 'Session', 'a');
    expect(await left(storage)).toEqual(['b waiting']);
  });

  it('waits as long as the server asks it to', async () => {
    vi.useFakeTimers({ toFake: ['Date'] });
    const { outbox, ids } = page(lasting(), 429);
    await outbox.send(entry('a'), 'Session');
    await outbox.flush();
    expect(ids()).toEqual(['a']);
    vi.setSystemTime(Date.now() + 30_001);
    await outbox.flush();
    expect(ids()).toEqual(['a', 'a']);
  });

  it('tells of what went out with nobody waiting for it, once', async () => {
    const { outbox } = page(lasting(), 'unreachable');
    const told: string[] = [];
    outbox.onSettled(({ says }, { kind }) => told.push(`${says} ${kind}`));
    await outbox.send(entry('a'), 'Session');
    await outbox.flush();
    await outbox.send(entry('b'), 'Check');
    expect(told).toEqual(['Session accepted']);
  });

  it('sends all the same when the browser keeps nothing, and says so', async () => {
    const full: OutboxStorage = { ...lasting(), put: () => Promise.reject(new Error('full')) };
    const { outbox, ids } = page(full, 'unreachable');
    await outbox.send(entry('a'), 'Session');
    expect(outbox.lasting).toBe(false);
    expect(outbox.waiting.map((e) => e.says)).toEqual(['Session']);
    await outbox.flush();
    expect(ids()).toEqual(['a', 'a']);
  });
});
