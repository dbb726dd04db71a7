/** Ties the play to a server: seeds an empty database, sets its clock, and goes on live. */
import type { Log } from '@footboard/server/log/log';
import type { Clock } from '@footboard/server/platform/clock';
import type { Database } from '@footboard/server/platform/database';
import { SECOND, type EpochMs } from '@footboard/shared/kernel/times';
import { DemoClock } from './clock.ts';
import { LIVE_FROM } from './days.ts';
import { playLive, type Live } from './live.ts';
import { plot } from './plot.ts';
import { seed, type Seeded } from './seed.ts';
import type { DemoSettings } from './settings.ts';

/**
 * In the demo's own database the recorded time follows the demo's clock: a fixed instant while the
 * week is written, then the real clock, shifted and sped up. It never leaves this database.
 */
async function openDemoClock(database: Database): Promise<(at: EpochMs, rate: number) => Promise<void>> {
  await database.query(
    'create table if not exists demo_clock (only_one boolean primary key default true check (only_one), at double precision not null, began double precision not null, rate double precision not null)',
  );
  await database.query(
    `create or replace function footboard_clock() returns timestamptz language sql volatile as $$
       select to_timestamp((at + (extract(epoch from clock_timestamp()) * 1000 - began) * rate) / 1000) from demo_clock
     $$`,
  );
  return async (at, rate) => {
    await database.query(
      `insert into demo_clock (at, began, rate) values ($1, extract(epoch from clock_timestamp()) * 1000, $2)
       on conflict (only_one) do update set at = excluded.at, began = excluded.began, rate = excluded.rate`,
      [at, rate],
    );
  };
}

export interface Demo {
  readonly clock: Clock;
  /** Runs once the log is open and before the boards are: fills an empty log and sets the clock. */
  prepare(opened: { readonly log: Log; readonly database: Database }): Promise<void>;
  live(url: string): Live;
  /** What the seeding came to; null when the database already held a demo. */
  seeded(): Seeded | null;
}

export function playDemo(settings: DemoSettings, say: (line: string) => void): Demo {
  const entries = plot(settings.seed);
  const clock = new DemoClock(settings.speed);
  let seeded: Seeded | null = null;
  return {
    clock,
    async prepare({ log, database }) {
      const setClock = await openDemoClock(database);
      const [last] = await database.query<{ recorded: number | null }>(
        'select max(recorded) as recorded from ward_head',
      );
      let from = LIVE_FROM();
      if (last?.recorded) {
        // It goes on where it stopped; a night with the computer off is no gap in the ward's record.
        from = Math.max(from, last.recorded + SECOND);
      } else {
        seeded = await seed(
          log,
          entries.filter((entry) => entry.at <= from),
          (at) => setClock(at, 0),
        );
      }
      await setClock(from, settings.speed);
      clock.set(from);
    },
    live: (url) => playLive(url, entries, clock, say),
    seeded: () => seeded,
  };
}
