/** The promises of the log, written once for every database it runs on (docs/promises.md). */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CommandSeen, VersionConflict } from '@footboard/server/log/log';
import type { CommandId, EventId, StaffId, WardId } from '@footboard/shared/kernel/ids';
import { isSameCommand } from '@footboard/server/log/read';
import { AT, entry, newId, newWard, outcome, rejection, request, tampering } from './log-fixture.ts';
import type { Open, Opened } from './log-fixture.ts';

export function logContract(on: string, open: Open): void {
  describe(`the log on ${on}`, () => {
    let opened: Opened;
    beforeAll(async () => {
      opened = await open();
    });
    afterAll(async () => {
      await opened?.close();
    });

    it('LOG-1 positions of a ward are contiguous from 1, whatever the stream', async () => {
      const { log } = opened;
      const ward = newWard();
      const first = await log.append(request(ward, 'stay/s1', 1, 3));
      const second = await log.append(request(ward, 'stay/s2', 1, 1));
      expect(first.events.map((e) => e.position)).toEqual([1, 2, 3]);
      expect(second.events.map((e) => e.position)).toEqual([4]);
      expect((await log.readWard(ward, 0, 10)).map((e) => e.position)).toEqual([1, 2, 3, 4]);
      expect(await log.head(ward)).toBe(4);
      expect((await log.heads()).get(ward)).toBe(4);
    });

    it('LOG-1 each ward counts for itself', async () => {
      const { log } = opened;
      const [a, b] = [newWard(), newWard()];
      await log.append(request(a, 'stay/s1', 1, 2));
      expect((await log.append(request(b, 'stay/s1'))).events[0]!.position).toBe(1);
      expect(await log.head(newWard())).toBe(0);
    });

    it('LOG-2 a refused append leaves no hole and no trace', async () => {
      const { log } = opened;
      const ward = newWard();
      await log.append(request(ward, 'stay/s1'));
      const refused = {
        command: outcome(ward),
        events: [entry(ward, 'stay/s2', 1), entry(ward, 'stay/s1', 1)],
      };
      await expect(log.append(refused)).rejects.toBeInstanceOf(VersionConflict);
      expect(await log.outcomeOf(ward, refused.command.commandId)).toBeNull();
      expect((await log.readStream(ward, 'stay/s2')).events).toEqual([]);
      expect((await log.append(request(ward, 'stay/s3'))).events[0]!.position).toBe(2);
      expect((await log.verify(ward)).faults).toEqual([]);
    });

    it('CLAIMED-2 entries that wait for a signature are found by their mark, the newest first, until one names them', async () => {
      const { log, database } = opened;
      const ward = newWard();
      const others = 'nurse-bo' as StaffId;
      const claimed = { kind: 'person', unconfirmed: true } as const;
      const agency = { kind: 'person', cosign: 'agency' } as const;
      // A serial that tries to look like the mark is only a text.
      const plain = { kind: 'paper', serial: '"unconfirmed":true,"cosign":"' } as const;
      const events = [
        entry(ward, 'stay/s1', 1, { source: claimed }),
        entry(ward, 'stay/s1', 2, { source: agency }),
        entry(ward, 'stay/s2', 1, { source: claimed, author: { staff: others, role: 'aide' } }),
        entry(ward, 'stay/s2', 2, { source: plain }),
        entry(ward, 'stay/s2', 3, { source: claimed }),
        entry(ward, 'ward/w', 1, { source: { ...claimed, ...agency } }),
      ];
      await log.append({ command: outcome(ward), events });
      const [first, second, , , fifth] = events;
      const find = async (
        mark: 'unconfirmed' | 'cosign',
        more: { by?: StaffId; notBy?: StaffId; limit?: number },
      ) =>
        (
          await log.readUnsigned(ward, {
            mark,
            signature: mark === 'cosign' ? 'entry-cosigned' : 'entry-confirmed',
            limit: 10,
            ...more,
          })
        ).map(({ stream, id }) => [stream, id]);
      const mine = { by: events[0]!.author.staff };
      expect(await find('unconfirmed', mine)).toEqual([
        ['stay/s2', fifth!.id],
        ['stay/s1', first!.id],
      ]);
      expect(await find('unconfirmed', { ...mine, limit: 1 })).toEqual([['stay/s2', fifth!.id]]);
      expect(await find('cosign', { notBy: others })).toEqual([['stay/s1', second!.id]]);
      expect(await find('cosign', { notBy: mine.by })).toEqual([]);

      const signed = entry(ward, 'stay/s1', 3, { type: 'entry-confirmed', payload: { target: first!.id } });
      await log.append({ command: outcome(ward), events: [signed] });
      expect(await find('unconfirmed', mine)).toEqual([['stay/s2', fifth!.id]]);
      const indexes = await database.query<{ name: string }>(
        `select indexname as name from pg_indexes where tablename = 'event' order by 1`,
      );
      expect(indexes.map(({ name }) => name)).toEqual(
        expect.arrayContaining(['event_cosign', 'event_unconfirmed']),
      );
    });

    it('LOG-3 a version already taken is a VersionConflict', async () => {
      const { log } = opened;
      const ward = newWard();
      await log.append(request(ward, 'stay/s1', 1, 2));
      const error = await rejection(log.append(request(ward, 'stay/s1', 2)));
      expect(error).toBeInstanceOf(VersionConflict);
      expect((error as VersionConflict).ward).toBe(ward);
      await expect(log.append(request(ward, 'stay/s1', 3))).resolves.toBeTruthy();
    });

    it('LOG-4 a command id has one outcome, given back with its position', async () => {
      const { log } = opened;
      const ward = newWard();
      const command = outcome(ward, { result: { outcome: 'accepted', note: 'ä "quoted" \\' } });
      await log.append({ command, events: [entry(ward, 'stay/s1', 1), entry(ward, 'stay/s1', 2)] });
      const again = await rejection(log.append({ command, events: [entry(ward, 'stay/s1', 3)] }));
      expect(again).toBeInstanceOf(CommandSeen);
      expect((again as CommandSeen).stored).toEqual({ ...command, position: 2 });
      expect(await log.outcomeOf(ward, command.commandId)).toEqual({ ...command, position: 2 });
      expect(await log.head(ward)).toBe(2);
    });

    it('LOG-4 twins sent at once give one outcome and one set of events', async () => {
      const { log } = opened;
      const ward = newWard();
      const command = outcome(ward);
      const answers = await Promise.allSettled(
        Array.from({ length: 4 }, () => log.append({ command, events: [entry(ward, 'stay/s1', 1)] })),
      );
      expect(answers.filter((a) => a.status === 'fulfilled')).toHaveLength(1);
      const refused = answers.flatMap((a) => (a.status === 'rejected' ? [a.reason as unknown] : []));
      expect(refused.every((reason) => reason instanceof CommandSeen)).toBe(true);
      expect(await log.head(ward)).toBe(1);
    });

    it('LOG-5 the same id with another body or author is told apart', async () => {
      const { log } = opened;
      const ward = newWard();
      const command = outcome(ward);
      await log.append({ command, events: [entry(ward, 'stay/s1', 1)] });
      const otherBody = { ...command, bodyHash: 'cd'.repeat(32) };
      const otherAuthor = { ...command, author: { staff: 'aide-bo' as StaffId, role: 'aide' as const } };
      for (const other of [otherBody, otherAuthor]) {
        const error = await rejection(log.append({ command: other, events: [entry(ward, 'stay/s1', 2)] }));
        expect(error).toBeInstanceOf(CommandSeen);
        expect(isSameCommand((error as CommandSeen).stored, other)).toBe(false);
        expect(isSameCommand((error as CommandSeen).stored, command)).toBe(true);
      }
    });

    it('LOG-4 a refusal by rule is stored with no event', async () => {
      const { log } = opened;
      const ward = newWard();
      const command = outcome(ward, { outcome: 'refused', result: { refused: 'bed-occupied' } });
      expect(await log.append({ command, events: [] })).toEqual({ events: [] });
      expect(await log.outcomeOf(ward, command.commandId)).toEqual({ ...command, position: 0 });
      expect(await log.head(ward)).toBe(0);
    });

    it('LOG-6 an append over streams and wards is all or nothing, answered in the order asked', async () => {
      const { log } = opened;
      const [a, b] = [newWard(), newWard()].toSorted() as [WardId, WardId];
      await log.append(request(a, 'stay/before', 1, 5));
      const done = await log.append({
        command: outcome(b),
        events: [
          entry(b, 'stay/s2', 1),
          entry(a, 'stay/s1', 1),
          entry(b, 'bed/b1', 1),
          entry(a, 'bed/a1', 1),
        ],
      });
      expect(done.events.map((e) => [e.ward, e.position])).toEqual([
        [b, 1],
        [a, 6],
        [b, 2],
        [a, 7],
      ]);
      const half = {
        command: outcome(a),
        events: [entry(a, 'stay/s3', 1), entry(b, 'stay/s2', 1)],
      };
      await expect(log.append(half)).rejects.toBeInstanceOf(VersionConflict);
      expect(await log.head(a)).toBe(7);
      expect(await log.head(b)).toBe(2);
      for (const ward of [a, b]) expect((await log.verify(ward)).faults).toEqual([]);
    });

    it('LOG-7 update, delete and truncate are refused and say why', async () => {
      const { database, log } = opened;
      const ward = newWard();
      await log.append(request(ward, 'stay/s1'));
      const statements = [
        `update event set payload = '{}'`,
        'delete from event',
        'truncate event',
        `update command_outcome set result = '{}'`,
        'delete from command_outcome',
        'truncate command_outcome',
      ];
      const words = await Promise.all(
        statements.map(async (statement) => ((await rejection(database.query(statement))) as Error).message),
      );
      expect(words).toEqual(
        ['event', 'command_outcome'].flatMap((table) =>
          ['UPDATE', 'DELETE', 'TRUNCATE'].map(
            (verb) => `${verb} on ${table} is refused: nothing recorded is lost or overwritten`,
          ),
        ),
      );
      expect((await log.verify(ward)).faults).toEqual([]);
    });

    it('LOG-8 recorded never falls with position, even when the clock goes back', async () => {
      const { database, log } = opened;
      const ward = newWard();
      const playAt = (iso: string) =>
        database.query(
          `create or replace function footboard_clock() returns timestamptz language sql volatile
             as $$ select timestamptz '${iso}' $$`,
        );
      try {
        await playAt('2026-03-29T01:30:00Z');
        await log.append(request(ward, 'stay/s1', 1));
        await playAt('2026-03-29T00:10:00Z');
        await log.append(request(ward, 'stay/s1', 2, 2));
        await playAt('2026-03-29T02:00:00.250Z');
        await log.append(request(ward, 'stay/s1', 4));
      } finally {
        await database.query(
          `create or replace function footboard_clock() returns timestamptz language sql volatile
             as $$ select clock_timestamp() $$`,
        );
      }
      expect((await log.readWard(ward, 0, 10)).map((e) => new Date(e.recorded).toISOString())).toEqual([
        '2026-03-29T01:30:00.000Z',
        '2026-03-29T01:30:00.000Z',
        '2026-03-29T01:30:00.000Z',
        '2026-03-29T02:00:00.250Z',
      ]);
    });

    it('LOG-9 stores the canonical bytes: RFC 8785, example of section 3.2.3', async () => {
      const { database, log } = opened;
      const ward = newWard();
      // RFC 8785 (JSON Canonicalization Scheme), section 3.2.2 input and 3.2.3 expected output.
      const payload: unknown = JSON.parse(
        String.raw`{ "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
                     "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
                     "literals": [null, true, false] }`,
      );
      const expected = String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`;
      await log.append({ command: outcome(ward), events: [entry(ward, 'stay/s1', 1, { payload })] });
      const [row] = await database.query<{ payload: string; digest: string; payload_hash: string }>(
        `select payload, payload_hash, encode(sha256(convert_to(payload, 'UTF8')), 'hex') as digest
           from event where ward = $1`,
        [ward],
      );
      expect(row!.payload).toBe(expected);
      expect(row!.payload_hash).toBe(row!.digest);
    });

    it('LOG-10 an event reads back as it was appended', async () => {
      const { log } = opened;
      const ward = newWard();
      const event = entry(ward, 'stay/s1', 1, {
        payload: { kind: 'faint', note: { ref: 'text-1' } },
        precision: 'about',
        enteredOffsetMinutes: -150,
        source: { kind: 'paper', serial: 'sheet "7"' },
      });
      const { events } = await log.append({ command: outcome(ward), events: [event] });
      const { schemaVersion: _, ...fields } = event;
      const logged = { ...fields, position: 1, recorded: events[0]!.recorded };
      expect(await log.readWard(ward, 0, 10)).toEqual([logged]);
      // A copy has the payload too, whether or not anybody looked at it before.
      const [read] = await log.readWard(ward, 0, 10);
      expect({ ...read }).toEqual(logged);
      expect(JSON.parse(JSON.stringify(read))).toEqual(logged);
      expect(await log.readStream(ward, 'stay/s1')).toEqual({
        stream: 'stay/s1',
        version: 1,
        events: [logged],
      });
    });

    it('LOG-10 reads by stream, by several streams and in pages, bounded by position', async () => {
      const { log } = opened;
      const ward = newWard();
      await log.append(request(ward, 'stay/s1', 1, 2));
      await log.append(request(ward, 'stay/s2', 1, 2));
      await log.append(request(ward, 'stay/s1', 3, 2));
      const versions = async (after: number, upTo?: number) =>
        (await log.readStream(ward, 'stay/s1', after, upTo)).events.map((e) => e.version);
      expect(await versions(0)).toEqual([1, 2, 3, 4]);
      expect(await versions(2)).toEqual([3, 4]);
      expect(await versions(0, 5)).toEqual([1, 2, 3]);
      const slices = await log.readStreams(ward, ['stay/s2', 'stay/none', 'stay/s1']);
      expect([...slices].map(([stream, s]) => [stream, s.version, s.events.length])).toEqual([
        ['stay/s2', 2, 2],
        ['stay/none', 0, 0],
        ['stay/s1', 4, 4],
      ]);
      expect((await log.readWard(ward, 2, 3)).map((e) => e.position)).toEqual([3, 4, 5]);
      expect((await log.readWard(ward, 4, 9, 5)).map((e) => e.position)).toEqual([5]);
    });

    it('LOG-11 a large append is chained like many small ones', async () => {
      const { log } = opened;
      const ward = newWard();
      await log.append(request(ward, 'stay/s1', 1, 250));
      const report = await log.verify(ward);
      expect(report).toMatchObject({ events: 250, faults: [], head: { position: 250 } });
      expect(report.head).toEqual(await log.anchor(ward));
    });

    it('LOG-11 verify finds a changed payload, also when its hash was changed with it', async () => {
      const { database, log } = opened;
      const ward = newWard();
      await log.append(request(ward, 'stay/s1', 1, 3));
      await tampering(database, 'event', () =>
        database.query(`update event set payload = '{"kind":"faint"}' where ward = $1 and position = 2`, [
          ward,
        ]),
      );
      expect((await log.verify(ward)).faults).toEqual([
        { position: 2, fault: 'the payload is not the one recorded' },
      ]);
      await tampering(database, 'event', () =>
        database.query(
          `update event set payload_hash = encode(sha256(convert_to(payload, 'UTF8')), 'hex')
            where ward = $1 and position = 2`,
          [ward],
        ),
      );
      expect((await log.verify(ward)).faults).toEqual([
        { position: 2, fault: expect.stringContaining('the chain breaks') },
      ]);
    });

    it('LOG-11 verify covers every column, not only the payload', async () => {
      const { database, log } = opened;
      const changes = {
        stream: `'stay/other'`,
        version: '9',
        id: `'other'`,
        type: `'came-back'`,
        schema_version: '7',
        occurred: 'occurred - 1',
        precision: `'about'`,
        entered: 'entered + 1',
        entered_offset: '0',
        recorded: 'recorded - 1',
        author_staff: `'somebody'`,
        author_role: `'aide'`,
        source: `'{"kind":"demo"}'`,
        command_id: `'other'`,
      };
      const unnoticed: string[] = [];
      for (const [column, value] of Object.entries(changes)) {
        const ward = newWard();
        await log.append(request(ward, 'stay/s1', 1, 2));
        await tampering(database, 'event', () =>
          database.query(`update event set ${column} = ${value} where ward = $1 and position = 1`, [ward]),
        );
        const { faults } = await log.verify(ward);
        if (!faults.some((f) => f.position === 1 && f.fault.startsWith('the chain breaks'))) {
          unnoticed.push(column);
        }
      }
      expect(unnoticed).toEqual([]);
    });

    it('LOG-11 verify finds a hole, and a cut tail by the head and by an anchor', async () => {
      const { database, log } = opened;
      const ward = newWard();
      await log.append(request(ward, 'stay/s1', 1, 5));
      const anchor = await log.anchor(ward);
      expect((await log.verify(ward, anchor)).faults).toEqual([]);
      const cut = (condition: string) =>
        tampering(database, 'event', () =>
          database.query(`delete from event where ward = $1 and ${condition}`, [ward]),
        );

      await cut('position = 5');
      expect((await log.verify(ward)).faults).toEqual([
        { position: 5, fault: expect.stringContaining('the tail was cut') },
      ]);
      // A thorough hand moves the head too: only the anchor kept elsewhere can tell.
      await database.query(
        `update ward_head h set position = e.position, chain = e.chain from event e
          where h.ward = $1 and e.ward = $1 and e.position = 4`,
        [ward],
      );
      expect((await log.verify(ward)).faults).toEqual([]);
      expect((await log.verify(ward, anchor)).faults).toEqual([
        { position: 5, fault: expect.stringContaining('the tail was cut') },
      ]);
      await cut('position = 2');
      expect((await log.verify(ward)).faults).toContainEqual({
        position: 2,
        fault: 'the event is missing',
      });
    });

    it('LOG-11 a log rewritten from an earlier point differs from its anchor', async () => {
      const { database, log } = opened;
      const ward = newWard();
      await log.append(request(ward, 'stay/s1', 1, 2));
      const anchor = await log.anchor(ward);
      await tampering(database, 'event', () => database.query('delete from event where ward = $1', [ward]));
      await database.query('delete from ward_head where ward = $1', [ward]);
      await log.append(request(ward, 'stay/s1', 1, 2));
      expect((await log.verify(ward)).faults).toEqual([]);
      expect((await log.verify(ward, anchor)).faults).toEqual([
        { position: 2, fault: 'the log differs from the exported anchor' },
      ]);
    });

    it('LOG-12 growth rings at once for what this process appends, and stops when asked', async () => {
      const { log } = opened;
      const ward = newWard();
      const rung: WardId[] = [];
      const stop = log.onGrowth((which) => rung.push(which));
      await log.append(request(ward, 'stay/s1'));
      expect(rung).toContain(ward);
      stop();
      const before = rung.length;
      await log.append(request(ward, 'stay/s1', 2));
      expect(rung).toHaveLength(before);
    });

    it('LOG-13 an event type from a newer program is refused in words on reading', async () => {
      const { log } = opened;
      const ward = newWard();
      await log.append({
        command: outcome(ward, { commandId: newId() as CommandId }),
        events: [entry(ward, 'stay/s1', 1, { schemaVersion: 99, id: newId() as EventId, occurred: AT })],
      });
      await expect(log.readWard(ward, 0, 10)).rejects.toThrow(/version 99.*update Footboard/);
    });
  });
}
