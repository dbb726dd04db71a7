import { pino } from 'pino';
import { describe, expect, it } from 'vitest';
import { recordTrigger } from '@footboard/shared/capabilities/orders/commands';
import { triggerRecorded } from '@footboard/shared/capabilities/orders/events';
import { newEvent } from '@footboard/shared/kernel/event-type';
import type { LoggedEvent, StreamKey } from '@footboard/shared/kernel/event-type';
import { NOBODY } from '../access/identity.ts';
import type { StaffId, WardId } from '@footboard/shared/kernel/ids';
import { CommandSeen, LogUnavailable, VersionConflict } from '../log/log.ts';
import type { AppendRequest, CommandOutcome, Log, StreamSlice } from '../log/log.ts';
import { accept, decider, refuse } from './decider.ts';
import type { Decider, Decision } from './decider.ts';
import { Commands } from './handle-command.ts';
import { Streams } from './streams.ts';

const WARD = 'w' as WardId;
const NOW = Date.parse('2026-11-25T10:00:00Z');
const STREAM = 'stay/s1' as StreamKey;
const SET_UP = {
  name: 'W',
  zone: 'Europe/Berlin',
  wardDayFrom: '07:00',
  nightFrom: '21:00',
  nightTo: '07:00',
};

/** A log in memory. `rivals` others take the next version of the stay just before each of the first appends. */
function memoryLog({ rivals = 0, fails = null as Error | null } = {}) {
  const events: LoggedEvent[] = [];
  const outcomes = new Map<string, CommandOutcome>();
  const requests: AppendRequest[] = [];
  const versionOf = (stream: StreamKey) => events.filter((e) => e.stream === stream).length;
  const put = (stream: StreamKey, type: string, payload: unknown) => {
    const position = events.length + 1;
    events.push({
      ward: WARD,
      position,
      stream,
      version: versionOf(stream) + 1,
      type,
      payload,
    } as LoggedEvent);
    return position;
  };
  put('ward/w', 'ward-set-up', SET_UP);
  let left = rivals;
  const log: Pick<Log, 'append' | 'outcomeOf' | 'readStreams'> = {
    async append(request) {
      if (fails) throw fails;
      const seen = outcomes.get(request.command.commandId);
      if (seen) throw new CommandSeen(seen);
      if (left > 0) {
        left -= 1;
        put(STREAM, 'trigger-recorded', { kind: 'faint' });
      }
      for (const event of request.events) {
        if (event.version !== versionOf(event.stream) + 1) throw new VersionConflict(WARD, event.stream);
      }
      requests.push(request);
      const appended = request.events.map((e) => ({
        ward: WARD,
        position: put(e.stream, e.type, e.payload),
        recorded: NOW,
      }));
      const position = appended.at(-1)?.position ?? 0;
      outcomes.set(request.command.commandId, { ...request.command, position });
      return { events: appended };
    },
    async outcomeOf(_ward, id) {
      return outcomes.get(id) ?? null;
    },
    async readStreams(_ward, streams, after = new Map()) {
      const slices = streams.map((stream): [StreamKey, StreamSlice] => [
        stream,
        {
          stream,
          version: versionOf(stream),
          events: events.filter((e) => e.stream === stream && e.version > (after.get(stream) ?? 0)),
        },
      ]);
      return new Map(slices);
    },
  };
  return { log: log as Log, requests, head: () => events.length };
}

type Memory = ReturnType<typeof memoryLog>;

/** Commands on that log, with one decider whose decisions the test gives. `decided` counts them. */
function given(
  memory: Memory,
  decide: (seen: number) => Decision,
  onAccepted: (name: string, data: unknown) => Promise<void> = async () => {},
) {
  let decided = 0;
  const one = decider({
    command: recordTrigger,
    reads: () => [{ ward: WARD, stream: STREAM }],
    decide: (_data, context) => {
      decided += 1;
      return decide(context.slice(STREAM).version);
    },
  });
  const logged: string[] = [];
  const logger = pino({ level: 'info' }, { write: (line: string) => void logged.push(line) });
  const commands = new Commands({
    log: memory.log,
    streams: new Streams(memory.log),
    boards: { waitFor: async () => true },
    clock: { now: () => NOW, rate: 1 },
    authors: {
      authorOf: async () => ({
        author: { staff: 'ada' as StaffId, role: 'aide' },
        entitled: 'aide',
        adds: {},
      }),
      claimed: () => 'ada' as StaffId,
    },
    deciders: new Map<string, Decider>([[recordTrigger.name, one]]),
    logger,
    onAccepted,
  });
  const send = (more: object = {}) =>
    commands.handle({
      ward: WARD,
      name: recordTrigger.name,
      claim: { ...NOBODY, claimed: 'ada' as StaffId },
      body: {
        commandId: 'c1',
        occurred: { at: '2026-11-25T09:59:00Z' },
        entered: { at: '2026-11-25T10:00:00Z', offsetMinutes: 0 },
        source: { kind: 'person' },
        expect: 'latest',
        data: { stay: 's1', kind: 'fall', note: 'secret words' },
        ...more,
      },
    });
  return { send, decided: () => decided, logged };
}
const fall = () => accept(newEvent(triggerRecorded, STREAM, { kind: 'fall' }));

describe('an entry that says "latest"', () => {
  it('is decided again on what is new, and taken', async () => {
    const memory = memoryLog({ rivals: 2 });
    const seen: number[] = [];
    const { send } = given(memory, (version) => {
      seen.push(version);
      return fall();
    });
    expect(await send()).toMatchObject({ accepted: { outcome: 'accepted', repeated: false } });
    expect(seen).toEqual([0, 1, 2]);
  });

  it('CMD-4 is decided again three times at most, then the person is asked to send again', async () => {
    const memory = memoryLog({ rivals: 9 });
    const { send, decided } = given(memory, fall);
    expect(await send()).toMatchObject({
      problem: { status: 409, type: '/problems/conflict', remedy: 'Send again with the same id.' },
    });
    expect(decided()).toBe(4);
    expect(memory.requests).toEqual([]);
  });

  it('may be refused by what came in between', async () => {
    const memory = memoryLog({ rivals: 1 });
    const no = refuse('stay-ended', 'the stay ended', 'Enter it on the new stay.', '/stay');
    const { send } = given(memory, (version) => (version === 0 ? fall() : no));
    expect(await send()).toMatchObject({
      problem: { type: '/problems/stay-ended', status: 422, errors: [{ pointer: '/data/stay' }] },
    });
  });
});

describe('an entry that says "what I saw"', () => {
  it('goes back at once when another came in the same moment', async () => {
    const memory = memoryLog({ rivals: 1 });
    const { send, decided } = given(memory, fall);
    expect(await send({ expect: { version: 0 } })).toMatchObject({
      problem: { status: 409, errors: [{ pointer: '/expect/version' }] },
    });
    expect(decided()).toBe(1);
    expect(memory.requests).toEqual([]);
  });
});

describe('a decision that needs nothing', () => {
  it('is a success at position 0, stored like any other', async () => {
    const memory = memoryLog();
    const { send } = given(memory, () => accept());
    expect(await send()).toMatchObject({ accepted: { position: 0, events: [], repeated: false } });
    expect(await send()).toMatchObject({ accepted: { position: 0, events: [], repeated: true } });
  });
});

describe('a mistake of the program', () => {
  const broken = { problem: { status: 500, type: '/problems/broken' } };

  it('CMD-6 in a payload stores nothing, says so, and keeps what was written out of answer and log lines', async () => {
    const memory = memoryLog();
    const before = memory.head();
    const { send, logged } = given(memory, () =>
      accept({ stream: STREAM, type: 'trigger-recorded', payload: { kind: 'secret words' } }),
    );
    const answer = await send();
    expect(answer).toMatchObject(broken);
    expect(memory.head()).toBe(before);
    expect(JSON.stringify(answer)).not.toMatch(/secret|schema|Error|\.ts/);
    expect(logged.join()).toContain('kind (invalid_value)');
    expect(logged.join()).not.toContain('secret words');
  });

  it('in writing to a stream that was not read stores nothing', async () => {
    const memory = memoryLog();
    const { send } = given(memory, () => accept(newEvent(triggerRecorded, 'stay/other', { kind: 'fall' })));
    expect(await send()).toMatchObject(broken);
    expect(memory.requests).toEqual([]);
  });

  it('leaves the id free for the next try', async () => {
    const memory = memoryLog();
    let first = true;
    const { send } = given(memory, () => {
      if (!first) return fall();
      first = false;
      throw new Error('a bug');
    });
    expect(await send()).toMatchObject(broken);
    expect(await send()).toMatchObject({ accepted: { repeated: false } });
  });
});

describe('a database that is away', () => {
  it('is a 503 that says nothing was stored', async () => {
    const memory = memoryLog({ fails: new LogUnavailable(new Error('refused')) });
    const { send } = given(memory, fall);
    expect(await send()).toMatchObject({ problem: { status: 503, type: '/problems/database-away' } });
  });
});

describe('the server’s own log lines', () => {
  it('name ids and outcome, and nothing a person said', async () => {
    const { send, logged } = given(memoryLog(), fall);
    await send();
    expect(logged.join()).toContain('"id":"c1"');
    expect(logged.join()).not.toContain('secret words');
  });
});

describe('who is told of accepted entries', () => {
  const toldOf = (told: unknown[]) => async (name: string, data: unknown) => void told.push([name, data]);

  it('hears of each once, with its data, before it is answered', async () => {
    const told: unknown[] = [];
    const { send } = given(memoryLog(), fall, toldOf(told));
    expect(await send()).toHaveProperty('accepted');
    expect(told).toEqual([[recordTrigger.name, { stay: 's1', kind: 'fall', note: 'secret words' }]]);
    await send();
    expect(told).toHaveLength(1);
  });

  it('hears nothing of what was refused or went wrong', async () => {
    const told: unknown[] = [];
    await given(memoryLog(), () => refuse('stay-unknown', 'no', 'no'), toldOf(told)).send();
    await given(memoryLog(), fall, toldOf(told)).send({ expect: { version: 7 } });
    await given(memoryLog({ fails: new Error('x') }), fall, toldOf(told)).send();
    expect(told).toEqual([]);
  });

  it('cannot make a stored entry look as if it were not', async () => {
    const { send, logged } = given(memoryLog(), fall, () => Promise.reject(new Error('away')));
    expect(await send()).toHaveProperty('accepted');
    expect(logged.join('')).toContain('after an accepted command');
    expect(logged.join('')).not.toContain('secret words');
  });
});
