import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it, vi } from 'vitest';
import type { StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';
import { HOUR, MINUTE } from '@footboard/shared/kernel/times';
import { LogUnavailable } from '../log/log.ts';
import { openAccessLog } from './access-log.ts';
import { openParts } from './parts.testkit.ts';
import type { TestParts } from './parts.testkit.ts';
import type { AccessLog } from './ports.ts';

const [alder, rowan] = ['alder' as WardId, 'rowan' as WardId];
const [noor, ines] = ['noor' as StaffId, 'ines' as StaffId];
const [s1, s2] = ['s1' as StayId, 's2' as StayId];

let parts: TestParts;
let log: AccessLog;
beforeAll(async () => {
  parts = await openParts();
}, 60_000);
beforeEach(async () => {
  // Taking lines off is what keeping them for a time needs; only changing them is refused.
  await parts.database.query('delete from access_record');
  parts.said.length = 0;
  log = openAccessLog(parts);
});
afterEach(async () => {
  vi.useRealTimers();
  await log.stop();
});
afterAll(() => parts.close());

const rowsKept = async () =>
  (await parts.database.query<{ n: number }>('select count(*)::bigint as n from access_record'))[0]!.n;

describe('PRIVACY-1 who looked at what', () => {
  it('given notes on two wards, when one ward is read, then its lines come newest first and no other’s', async () => {
    log.note({ ward: alder, what: 'read-stay', stay: s1, staff: noor });
    parts.clock.at += MINUTE;
    log.note({ ward: rowan, what: 'read-stay', stay: s2, staff: noor });
    log.note({ ward: alder, what: 'read-stay', stay: s2, staff: ines });
    await log.flush();
    const lines = await log.read(alder, { limit: 10 });
    expect(lines.map(({ stay, staff, what, words }) => ({ stay, staff, what, words }))).toEqual([
      { stay: s2, staff: ines, what: 'read-stay', words: null },
      { stay: s1, staff: noor, what: 'read-stay', words: null },
    ]);
    expect(lines[0]!.at - lines[1]!.at).toBe(MINUTE);
    expect(await log.read(alder, { stay: s1, limit: 10 })).toHaveLength(1);
  });

  it('given more lines than a page, when the next page is asked for, then none is left out or told twice', async () => {
    for (let n = 0; n < 450; n++) log.note({ ward: alder, what: 'read-stay', stay: `s${n}` as StayId });
    await log.flush();
    const seen: string[] = [];
    let before: number | undefined;
    for (;;) {
      const lines = await log.read(alder, { limit: 100, ...(before === undefined ? {} : { before }) });
      if (lines.length === 0) break;
      seen.push(...lines.map(({ stay }) => stay!));
      before = lines.at(-1)!.number;
    }
    expect(seen).toEqual(Array.from({ length: 450 }, (_, n) => `s${449 - n}`));
  });

  it('given words, when they are kept, then the database holds them sealed and they open on their own line only', async () => {
    log.note({ ward: alder, what: 'break-glass', staff: noor, words: 'Fall in the corridor' });
    log.note({ ward: alder, what: 'erase-stay', staff: noor, words: 'Asked by the family' });
    await log.flush();
    expect((await log.read(alder, { limit: 10 })).map(({ words }) => words)).toEqual([
      'Asked by the family',
      'Fall in the corridor',
    ]);
    const [row] = await parts.database.query<{ words: Uint8Array }>(
      "select words from access_record where what = 'break-glass'",
    );
    expect(Buffer.from(row!.words).includes('corridor')).toBe(false);
    expect(() => parts.keys.open('access record alder erase-stay 0', row!.words)).toThrow(/authenticate/);
  });

  it('given a line that is kept, when somebody would change it, then the database refuses', async () => {
    log.note({ ward: alder, what: 'read-stay', stay: s1, staff: noor });
    await log.flush();
    await expect(parts.database.query("update access_record set staff = 'ada'")).rejects.toThrow(/refused/);
    await expect(parts.database.query('truncate access_record')).rejects.toThrow(/refused/);
  });

  it('given a whole board that is on a screen all day, when it is read again and again, then one line an hour, person and ward', async () => {
    // On the hour, so that the next two looks lie in the same one.
    parts.clock.at = Math.ceil(parts.clock.at / HOUR) * HOUR;
    const look = () => {
      log.note({ ward: alder, what: 'read-board-whole', staff: noor });
      log.note({ ward: rowan, what: 'read-board-whole', staff: noor });
      log.note({ ward: alder, what: 'read-board-whole', staff: ines });
      log.note({ ward: alder, what: 'read-board-whole', staff: null });
    };
    look();
    parts.clock.at += HOUR - 1;
    look();
    await log.flush();
    expect(await rowsKept()).toBe(3);
    parts.clock.at += 1;
    look();
    await log.flush();
    expect(await rowsKept()).toBe(6);
  });
});

describe('PRIVACY-2 no line is lost', () => {
  it('given a note, when nobody waits for it, then it is written by itself', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    log.note({ ward: alder, what: 'read-stay', stay: s1, staff: noor });
    expect(await rowsKept()).toBe(0);
    vi.runOnlyPendingTimers();
    vi.useRealTimers();
    await expect.poll(rowsKept).toBe(1);
  });

  it('given two hundred notes, when no time has passed, then they are written already', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    for (let n = 0; n < 200; n++) log.note({ ward: alder, what: 'read-stay', stay: s1, staff: noor });
    vi.useRealTimers();
    await expect.poll(rowsKept).toBe(200);
  });

  it('given notes that wait, when the server closes, then they are written', async () => {
    for (let n = 0; n < 3; n++) log.note({ ward: alder, what: 'read-stay', stay: s1, staff: noor });
    await log.stop();
    expect(await rowsKept()).toBe(3);
  });

  it('given a database that is away, when it is back, then the lines stand there once, in order', async () => {
    parts.away = true;
    for (let n = 0; n < 250; n++) log.note({ ward: alder, what: 'read-stay', stay: `s${n}` as StayId });
    await expect(log.flush()).rejects.toBeInstanceOf(LogUnavailable);
    await expect(log.flush()).rejects.toBeInstanceOf(LogUnavailable);
    parts.away = false;
    log.note({ ward: alder, what: 'read-stay', stay: s1 });
    await log.flush();
    const stays = (await log.read(alder, { limit: 1000 })).map(({ stay }) => stay).toReversed();
    expect(stays).toEqual([...Array.from({ length: 250 }, (_, n) => `s${n}`), 's1']);
    // Once when it went, once when it came back; ids only.
    expect(parts.said).toHaveLength(2);
  });

  it('given a database that stays away, when ten thousand lines wait, then the oldest go and the log of the server says so', async () => {
    parts.away = true;
    for (let n = 0; n < 10_005; n++) log.note({ ward: alder, what: 'read-stay', stay: `s${n}` as StayId });
    await expect(log.flush()).rejects.toThrow(/cannot be reached/);
    parts.away = false;
    await log.flush();
    expect(await rowsKept()).toBe(10_000);
    const [oldest] = (await log.read(alder, { limit: 20_000 })).toReversed();
    expect(oldest!.stay).toBe('s5');
    expect(parts.said.join('')).toContain('oldest lines are lost');
  });
});
