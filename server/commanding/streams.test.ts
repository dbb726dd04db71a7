import { describe, expect, it } from 'vitest';
import type { LoggedEvent, StreamKey } from '@footboard/shared/kernel/event-type';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { Log, StreamSlice } from '../log/log.ts';
import { Streams } from './streams.ts';

const WARD = 'w' as WardId;
const STAY = 'stay/s' as StreamKey;

/** A log in memory that counts the events it hands out. */
function memoryLog() {
  const events: LoggedEvent[] = [];
  let handedOut = 0;
  const log: Pick<Log, 'readStreams'> = {
    async readStreams(ward, streams, after = new Map()) {
      const slices = streams.map((stream): [StreamKey, StreamSlice] => {
        const held = after.get(stream) ?? 0;
        const its = events.filter((e) => e.ward === ward && e.stream === stream && e.version > held);
        handedOut += its.length;
        return [stream, { stream, version: its.at(-1)?.version ?? held, events: its }];
      });
      return new Map(slices);
    },
  };
  return {
    log: log as Log,
    handedOut: () => handedOut,
    grow(stream: StreamKey, type = 'came-back', payload: unknown = {}, ward = WARD) {
      const version = events.filter((e) => e.stream === stream && e.ward === ward).length + 1;
      events.push({ ward, stream, version, type, payload, position: events.length + 1 } as LoggedEvent);
    },
  };
}
const SET_UP = {
  name: 'W',
  zone: 'Europe/Berlin',
  wardDayFrom: '07:00',
  nightFrom: '21:00',
  nightTo: '07:00',
};
const versionsOf = (slice: StreamSlice) => slice.events.map((event) => event.version);

describe('the streams a decision reads', () => {
  it('are whole and in order, whether read now or held from before', async () => {
    const memory = memoryLog();
    const streams = new Streams(memory.log);
    memory.grow(STAY);
    memory.grow(STAY);
    const needs = [{ ward: WARD, stream: STAY }];
    expect(versionsOf((await streams.read(needs)).slice(WARD, STAY))).toEqual([1, 2]);
    memory.grow(STAY);
    const again = (await streams.read(needs)).slice(WARD, STAY);
    expect(again.version).toBe(3);
    expect(versionsOf(again)).toEqual([1, 2, 3]);
    expect(memory.handedOut()).toBe(3);
  });

  it('never rest on a held copy alone: what another process wrote is seen', async () => {
    const memory = memoryLog();
    const here = new Streams(memory.log);
    memory.grow('ward/w', 'ward-set-up', SET_UP);
    expect((await here.ward(WARD)).state?.name).toBe('W');
    memory.grow('ward/w', 'ward-changed', { name: 'Other' });
    expect((await here.ward(WARD)).state?.name).toBe('Other');
  });

  it('are empty at version 0 when nobody began them, and looked for again', async () => {
    const memory = memoryLog();
    const streams = new Streams(memory.log);
    const needs = [{ ward: WARD, stream: STAY }];
    expect((await streams.read(needs)).slice(WARD, STAY)).toMatchObject({ version: 0, events: [] });
    memory.grow(STAY);
    expect((await streams.read(needs)).slice(WARD, STAY).version).toBe(1);
  });

  it('of two wards do not mix, even under one name', async () => {
    const memory = memoryLog();
    const other = 'v' as WardId;
    memory.grow('bed/b1', 'bed-taken', { bed: 'b1', stay: 's' });
    const streams = new Streams(memory.log);
    const read = await streams.read([
      { ward: WARD, stream: 'bed/b1' },
      { ward: other, stream: 'bed/b1' },
    ]);
    expect(read.slice(WARD, 'bed/b1').version).toBe(1);
    expect(read.slice(other, 'bed/b1').version).toBe(0);
  });

  it('are read again in full after they were let go', async () => {
    const memory = memoryLog();
    const streams = new Streams(memory.log, 1);
    memory.grow(STAY);
    memory.grow('stay/t');
    for (const stream of [STAY, 'stay/t', STAY] as StreamKey[]) {
      expect(versionsOf((await streams.read([{ ward: WARD, stream }])).slice(WARD, stream))).toEqual([1]);
    }
  });

  it('that were not asked for are a mistake, not an empty stream', async () => {
    const read = await new Streams(memoryLog().log).read([{ ward: WARD, stream: STAY }]);
    expect(() => read.slice(WARD, 'bed/b1')).toThrow('was not among those');
  });
});
