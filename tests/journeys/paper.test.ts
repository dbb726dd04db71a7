import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { claimedSource } from '@footboard/shared/kernel/author';
import type { WardId } from '@footboard/shared/kernel/ids';
import { HOUR } from '@footboard/shared/kernel/times';
import { paperSheets, type PaperSheet } from '@footboard/shared/wire/paper';
import { openPaper, type Paper } from '@footboard/server/capabilities/paper/sheets';
import { printAll } from '@footboard/server/capabilities/paper/hourly';
import { sheetLines } from '@footboard/server/capabilities/paper/sheet';
import { StillClock, WARD, asProblem, beginStay, openWard } from './http-kit.ts';
import type { Ward } from './http-kit.ts';

const at = (time: string) => Date.parse(`2026-11-25T${time}:00Z`);
const clock = new StillClock(at('09:00'));
let ward: Ward;

beforeAll(async () => {
  ward = await openWard(clock);
  await ward.enter('begin-stay', { ...beginStay('stay-1'), usual: { moves: 'walks', transfers: 'alone' } });
  await ward.enter('begin-stay', beginStay('stay-2', '1B'));
  clock.at = at('10:00');
});
afterAll(() => ward.footboard.close());

const sheet = () => fetch(`${ward.footboard.url}/api/wards/${WARD}/paper/sheet`);
const sheets = async (): Promise<PaperSheet[]> =>
  paperSheets.parse((await ward.get(`/api/wards/${WARD}/paper/sheets`)).body).sheets;

describe('the paper sheet of a ward', () => {
  it('PAPER-1 is a PDF with a serial of its own, and remembers who lay where when it was made', async () => {
    const [one, two] = [await sheet(), await sheet()];
    expect([one.status, one.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    expect(
      Buffer.from(await one.arrayBuffer())
        .subarray(0, 5)
        .toString(),
    ).toBe('%PDF-');
    expect((await two.arrayBuffer()).byteLength).toBeGreaterThan(1_000);
    const listed = await sheets();
    expect(listed.map(({ serial }) => serial)).toEqual(['alder-20261125-1000-02', 'alder-20261125-1000-01']);
    for (const { serial } of listed)
      expect(claimedSource.safeParse({ kind: 'paper', serial }).success).toBe(true);
    expect(listed[0]!.beds.map(({ label, stay }) => [label, stay])).toEqual([
      ['1A', 'stay-1'],
      ['1B', 'stay-2'],
      ['2A', null],
    ]);
    expect(listed[0]!.validUntil - listed[0]!.made).toBeLessThanOrEqual(12 * HOUR);
    expect(listed[0]!.superseded).toEqual([]);
    // Asked for by hand, if by nobody who is known.
    expect(listed[0]!.byItself).toBe(false);
  });

  it('uses up no serial for one who asks only whether it is there', async () => {
    const before = await sheets();
    const head = await fetch(`${ward.footboard.url}/api/wards/${WARD}/paper/sheet`, { method: 'HEAD' });
    expect([head.status, head.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    expect(await sheets()).toEqual(before);
  });

  it('PAPER-2 (A7) is listed as superseded for the bed whose entry was withdrawn after it, and for no other', async () => {
    const weighed = await ward.enter(
      'record-weight',
      { stay: 'stay-1', weight: { kg: 70, how: 'measured' } },
      'noor',
    );
    clock.at = at('10:30');
    await sheet();
    clock.at = at('13:30');
    await ward.enter(
      'make-retraction',
      { stay: 'stay-1', target: weighed.events[0]!.id, reason: 'wrong-person' },
      'noor',
    );
    await sheet();
    const [after, carried, ...before] = await sheets();
    expect(after!.superseded).toEqual([]);
    expect(carried!.superseded).toEqual(['bed-1A']);
    // Printed before the entry was made, they never carried it.
    expect(before.flatMap(({ superseded }) => superseded)).toEqual([]);
  });

  it('PAPER-3 says the plan of each bed as the board has it, with its checks and stops, and nobody’s name', async () => {
    await ward.enter(
      'place-hold',
      {
        stay: 'stay-2',
        hold: 'h1',
        scope: 'out-of-bed',
        reason: 'unstable',
        reviewAt: '2026-11-25T15:00:00Z',
      },
      'noor',
    );
    const { board, t } = ward.footboard.boards.snapshot(WARD as WardId)!;
    const [first, second, third] = sheetLines(board, t, () => 'nobody');
    expect(first!.stops.join()).toMatch(/CHECK BEFORE MOVING/);
    expect(first!.plans.map(({ of }) => of)).toEqual(['Day', 'Night']);
    expect(first!.plans[0]!.words[0]).toMatchObject({
      task: 'bed to chair',
      how: expect.stringMatching(/people|person/),
    });
    expect(second!.stops.join()).toMatch(/stay in bed, review 25 Nov 15:00/);
    expect(third!.standing).toEqual(['Empty']);
    expect(JSON.stringify([first, second])).not.toMatch(/Pinto|Rosa|R-100/);
    const german = sheetLines({ ...board, language: 'de' }, t, () => 'niemand');
    expect(german[0]!.stops.join()).toMatch(/VOR DEM BEWEGEN PRÜFEN/);
    // Stop and its review read as on the screens (docs/glossary-de.md), and no caution of a rule stays English.
    const words = german.flatMap(({ standing, stops, plans, minds }) => [
      ...standing,
      ...stops,
      ...plans.flatMap((plan) => plan.words.flatMap(({ task, how }) => [task, how])),
      ...minds,
    ]);
    expect(words.filter((one) => /HALT|\b(the|not|weigh|person|people|known|aid)\b/.test(one))).toEqual([]);
    expect(words.join()).toContain('im Bett bleiben, überprüfen 25. Nov. 15:00');
    expect(german[0]!.minds.join()).toContain('wiegen oder schätzen');
  });

  it('PAPER-4 is written each hour, whole or not at all, 48 a ward, and a ward that fails leaves the others theirs', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'footboard-paper-'));
    const { boards, log, vault, database } = ward.footboard;
    const streams = { ward: async () => ({ state: null, calendar: null }) } as never;
    const broken: Paper = openPaper({
      database,
      boards,
      log,
      streams,
      vault,
      clock,
      demo: false,
      publicUrl: null,
    });
    const failures: string[] = [];
    const failed = (of: string) => failures.push(of);
    let n = 0;
    const paper: Paper = {
      list: broken.list,
      make: async (of, by, origin) =>
        of === 'gone'
          ? broken.make(of, by, origin)
          : { serial: `alder-${String(++n).padStart(3, '0')}`, pdf: Buffer.from('%PDF-') },
    };
    const wards = () => ['gone', WARD] as WardId[];
    for (let hour = 0; hour < 50; hour++)
      await printAll({ paper, wards, folder, origin: 'https://board.example', failed });
    const files = readdirSync(join(folder, WARD)).toSorted();
    expect(files).toHaveLength(48);
    expect(files[0]).toBe('alder-003.pdf');
    expect(failures).toHaveLength(50);
    // A folder that cannot be one: said, and survived.
    writeFileSync(join(folder, 'file'), '');
    await printAll({
      paper,
      wards: () => [WARD as WardId],
      folder: join(folder, 'file'),
      origin: '',
      failed,
    });
    expect(failures).toHaveLength(51);
    rmSync(folder, { recursive: true, force: true });
  });

  it('given a ward that does not exist, says so and uses up no serial', async () => {
    expect(asProblem(await ward.get('/api/wards/nowhere/paper/sheet')).type).toMatch(/no-such-ward/);
    expect(asProblem(await ward.get('/api/wards/nowhere/paper/sheets')).status).toBe(404);
  });
});
