/** The planted names of tests/journeys/privacy.test.ts on PostgreSQL: by a dump of the whole database, and by every row. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openAccessWorld } from '../journeys/access-kit.ts';
import type { AccessWorld } from '../journeys/access-kit.ts';
import { StillClock } from '../journeys/http-kit.ts';
import { everyRow, foundBelow, foundIn, liveOnTheWard } from '../journeys/planted-kit.ts';
import type { Kind } from '../journeys/planted-kit.ts';
import { ownDatabase } from './postgres.ts';

const clock = new StillClock(Date.now());
const folder = mkdtempSync(join(tmpdir(), 'footboard-planted-'));
let own: Awaited<ReturnType<typeof ownDatabase>>;
let world: AccessWorld;
beforeAll(async () => {
  own = await ownDatabase();
  const env = { DATABASE_URL: own.url, DATA_DIR: folder };
  world = await openAccessWorld({ clock, limits: 'off', env });
  await liveOnTheWard(world, clock);
  await world.footboard.access.accessLog.flush();
}, 180_000);
afterAll(async () => {
  await world?.close();
  await own.drop();
  rmSync(folder, { recursive: true, force: true });
});

const hasDump = (() => {
  try {
    return execFileSync('pg_dump', ['--version']).length > 0;
  } catch {
    return false;
  }
})();

describe('PRIVACY-3 a planted name on PostgreSQL', () => {
  it('given every row of every table, when it is searched, then it has no name; what may stand in clear is found', async () => {
    const rows = await everyRow(world.footboard.database);
    expect(rows.get('text_kept')!.length).toBeGreaterThan(500);
    const found = (kind: Kind) =>
      [...rows].flatMap(([table, bytes]) => foundIn(bytes, kind).map((where) => `${table}: ${where}`));
    expect([found('person'), found('staff')]).toEqual([[], []]);
    expect(found('clear').length).toBeGreaterThan(0);
    expect(foundBelow(folder, 'person').found).toEqual([]);
  });

  it.skipIf(!hasDump && process.env['REQUIRE_ALL'] !== '1')(
    'given a dump as a backup makes one, when it is searched, then it has no name; what may stand in clear is found',
    () => {
      const dump = execFileSync('pg_dump', ['--dbname', own.url], { maxBuffer: 256 * 1024 * 1024 });
      expect(dump.includes('COPY public.text_kept')).toBe(true);
      expect([foundIn(dump, 'person'), foundIn(dump, 'staff')]).toEqual([[], []]);
      expect(foundIn(dump, 'clear').length).toBeGreaterThan(0);
    },
  );
});
