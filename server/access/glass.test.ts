import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { StaffId, StayId, WardId } from '@footboard/shared/kernel/ids';
import { HOUR, MINUTE, SECOND } from '@footboard/shared/kernel/times';
import { openAccessLog } from './access-log.ts';
import { openGlass } from './glass.ts';
import { openParts } from './parts.testkit.ts';
import type { TestParts } from './parts.testkit.ts';
import type { AccessLog, Glass } from './ports.ts';

const [alder, rowan] = ['alder' as WardId, 'rowan' as WardId];
const [ines, milo] = ['ines' as StaffId, 'milo' as StaffId];

let parts: TestParts;
let glass: Glass;
let log: AccessLog;
beforeAll(async () => {
  parts = await openParts();
  glass = openGlass(parts);
  log = openAccessLog(parts);
}, 60_000);
afterAll(async () => {
  await log.stop();
  await parts.close();
});

const remedyOf = (what: Promise<unknown>) =>
  what.then(
    () => 'nothing was refused',
    (error: { answer?: { type: string } }) => error.answer?.type,
  );

describe('GLASS-1 an opening lasts one hour, for one person, on one ward', () => {
  it('given nobody opened the ward, when it is opened, then it is open at once, for that person and ward only', async () => {
    expect(await glass.open(alder, milo)).toBeNull();
    const begun = await glass.begin(alder, milo, 'emergency', 'Fall in the corridor');
    expect(await glass.open(alder, milo)).toEqual(begun);
    expect(await glass.open(rowan, milo)).toBeNull();
    expect(await glass.open(alder, ines)).toBeNull();
  });

  it('given an opening, when its hour is over to the millisecond, then it is shut, remembered or not', async () => {
    const begun = await glass.begin(rowan, milo, 'cross-cover', 'Covers the night');
    expect(begun.ends - begun.began).toBe(HOUR);
    parts.clock.at = begun.ends - 1;
    expect(await glass.open(rowan, milo)).not.toBeNull();
    parts.clock.at = begun.ends;
    expect(await glass.open(rowan, milo)).toBeNull();
    expect(await openGlass(parts).open(rowan, milo)).toBeNull();
  });

  it('given an opening made in another process, when some seconds have passed, then it is seen here', async () => {
    parts.clock.at += HOUR;
    expect(await glass.open(rowan, milo)).toBeNull();
    await openGlass(parts).begin(rowan, milo, 'emergency', 'Called for help');
    parts.clock.at += 5 * SECOND;
    expect(await glass.open(rowan, milo)).not.toBeNull();
  });

  it('given why it was opened, when it is kept, then the database holds no word of it', async () => {
    const rows = await parts.database.query<{ words: Uint8Array }>('select words from glass');
    expect(rows.length).toBeGreaterThan(0);
    for (const { words } of rows) expect(Buffer.from(words).toString('latin1')).not.toMatch(/corridor|night/);
  });
});

describe('GLASS-2 somebody else looks at it afterwards', () => {
  it('given what was read while it was open, when it is listed, then that person’s looks on that ward count and no others', async () => {
    parts.clock.at += HOUR;
    const begun = await glass.begin(alder, milo, 'other', 'Looks for a relative');
    const look = (ward: WardId, staff: StaffId, what: 'read-stay' | 'break-glass' = 'read-stay') =>
      log.note({ ward, what, staff, stay: 's1' as StayId });
    look(alder, milo, 'break-glass');
    look(alder, milo);
    parts.clock.at += MINUTE;
    look(alder, milo);
    look(alder, ines);
    look(rowan, milo);
    parts.clock.at = begun.ends;
    look(alder, milo);
    await log.flush();
    const [newest] = await glass.list(alder);
    expect(newest).toMatchObject({
      glass: begun.glass,
      words: 'Looks for a relative',
      looked: 2,
      reviewed: null,
    });
  });

  it('given an opening, when its own person reviews it, or it is not of this ward, then that is refused and nothing is written', async () => {
    const [newest] = await glass.list(alder);
    expect(await remedyOf(glass.review(alder, newest!.glass, milo, 'All well'))).toBe('/problems/own-glass');
    expect(await remedyOf(glass.review(rowan, newest!.glass, ines, 'All well'))).toBe(
      '/problems/no-such-glass',
    );
    expect(await remedyOf(glass.review(alder, 'none', ines, 'All well'))).toBe('/problems/no-such-glass');
    expect((await glass.list(alder))[0]!.reviewed).toBeNull();
  });

  it('given an opening, when somebody else reviews it, then it stands, and a second review does not overwrite it', async () => {
    const [newest] = await glass.list(alder);
    await glass.review(alder, newest!.glass, ines, 'Not called for: spoken with Milo');
    const reviewed = { at: parts.clock.at, by: ines, words: 'Not called for: spoken with Milo' };
    expect((await glass.list(alder))[0]!.reviewed).toEqual(reviewed);
    expect(await remedyOf(glass.review(alder, newest!.glass, 'ada' as StaffId, 'Fine'))).toBe(
      '/problems/conflict',
    );
    expect((await glass.list(alder))[0]!.reviewed).toEqual(reviewed);
  });
});
