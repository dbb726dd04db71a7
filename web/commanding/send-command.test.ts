import { createPinia, setActivePinia } from 'pinia';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { commandEnvelope } from '@footboard/shared/kernel/command-type';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { NOON, bedRow, beatOf, snapshotOf } from '../board/rows.testkit.ts';
import { useWhoStore } from '../people/who-store.ts';
import { useBoardStore } from '../sync/board-store.ts';
import { fakeLink } from '../sync/link.testkit.ts';
import { deliverCommand, prepareCommand } from './send-command.ts';

const W = 'w1' as WardId;
const NO_PAUSES = [0, 0];
const ok = (body: unknown, status = 200) => Promise.resolve(Response.json(body, { status }));
const accepted = {
  commandId: 'c1',
  outcome: 'accepted',
  position: 3,
  events: [],
  shown: true,
  repeated: false,
};
const problem = { type: '/problems/x', title: 'No', status: 409, detail: 'changed', remedy: 'look again' };

type Fetch = (path: string, init: RequestInit) => Promise<Response>;
const server = (...answers: (() => Promise<Response>)[]) => {
  const heard: { path: string; headers: Record<string, string>; body: Record<string, unknown> }[] = [];
  const answer: Fetch = (path, init) => {
    heard.push({
      path,
      headers: init.headers as Record<string, string>,
      body: JSON.parse(init.body as string) as Record<string, unknown>,
    });
    return (answers[heard.length - 1] ?? answers.at(-1)!)();
  };
  vi.stubGlobal('fetch', answer);
  return heard;
};
const unreachable = () => Promise.reject(new TypeError('network'));

beforeEach(() => {
  localStorage.clear();
  setActivePinia(createPinia());
  useWhoStore().choose('n1' as StaffId);
});
afterEach(() => {
  useBoardStore().leave();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

const ask = { ward: W, name: 'record-session', data: { stay: 's1' } };

describe('a command', () => {
  it('carries the envelope the server asks for, the device and the chosen staff member', async () => {
    const heard = server(() => ok(accepted));
    const sent = await deliverCommand(prepareCommand(ask), NO_PAUSES);
    expect(sent.kind).toBe('accepted');
    const { data, ...envelope } = heard[0]!.body;
    expect(commandEnvelope.safeParse(envelope).error).toBeUndefined();
    expect(data).toEqual({ stay: 's1' });
    expect(heard[0]!.path).toBe('/api/wards/w1/commands/record-session');
    expect(heard[0]!.headers['x-footboard-staff']).toBe('n1');
  });

  it('has the server’s clock as its time, not a device clock that is wrong', () => {
    vi.useFakeTimers({ now: NOON + 5 * 3_600_000 });
    const link = fakeLink();
    useBoardStore().join(W, { open: link.open });
    link.reports.up();
    link.answer({ answer: 'snapshot', snapshot: snapshotOf([bedRow('A1')]), beat: beatOf() });
    const { body } = prepareCommand(ask);
    expect(body.occurred).toEqual({ at: '2026-11-25T12:00:00.000Z', precision: 'exact' });
    expect(body.entered.at).toBe('2026-11-25T17:00:00.000Z');
  });

  it('SCREEN-9 given a network failure, goes out again with the same id and body', async () => {
    const heard = server(unreachable, unreachable, () => ok(accepted));
    const sent = await deliverCommand(prepareCommand(ask), NO_PAUSES);
    expect(sent.kind).toBe('accepted');
    expect(heard).toHaveLength(3);
    expect(heard[1]!.body).toEqual(heard[0]!.body);
    expect(heard[2]!.body['commandId']).toBe(heard[0]!.body['commandId']);
  });

  it('given no answer at all, hands the same command back to be sent later', async () => {
    server(unreachable);
    const command = prepareCommand(ask);
    const sent = await deliverCommand(command, NO_PAUSES);
    expect(sent).toMatchObject({ kind: 'not-sent', command });
  });

  it('given a refusal, does not try again and says what to do', async () => {
    const heard = server(() => ok(problem, 409));
    const sent = await deliverCommand(prepareCommand(ask), NO_PAUSES);
    expect(sent).toEqual({ kind: 'problem', problem });
    expect(heard).toHaveLength(1);
  });

  it('given a server that says send again, sends the same again', async () => {
    const heard = server(
      () => ok({ ...problem, status: 503 }, 503),
      () => ok(accepted),
    );
    expect((await deliverCommand(prepareCommand(ask), NO_PAUSES)).kind).toBe('accepted');
    expect(heard[1]!.body).toEqual(heard[0]!.body);
  });

  it('given two taps, makes two commands with two ids', () => {
    expect(prepareCommand(ask).commandId).not.toBe(prepareCommand(ask).commandId);
  });
});
