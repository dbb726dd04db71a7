/** A ward that is fuzzed: a real server on an embedded database in memory, and everybody who may knock. */
import { HOUR } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { Footboard } from '@footboard/server/start';
import { openAccessWorld } from '../journeys/access-kit.ts';
import { StillClock, beginStay } from '../journeys/http-kit.ts';
import { HERE } from './inputs.ts';
import type { Input } from './inputs.ts';
import { judge } from './judge.ts';
import type { Verdict } from './judge.ts';
import { compared } from './unchanged.ts';
import { everybody } from './voices.ts';
import type { Voice } from './voices.ts';
import { send } from './wire.ts';

/** A Wednesday morning; the clock stands still, so that time alone changes nothing. */
export const NOW: EpochMs = Date.parse('2026-11-25T10:00:00Z');

/** So many at once. */
const TOGETHER = 5;

export interface World {
  readonly footboard: Footboard;
  readonly port: number;
  /** Everybody who may knock, by a name for the report. */
  readonly voices: Readonly<Record<string, Voice>>;
}

export interface Tally {
  sent: number;
  /** Fitted after all, and was taken. */
  taken: number;
  readonly statuses: Map<number, number>;
}
export const newTally = (): Tally => ({ sent: 0, taken: 0, statuses: new Map() });

export async function sendOne({ port, voices }: World, input: Input): Promise<Verdict> {
  const mine = Object.entries(voices[input.voice]?.headers() ?? {});
  const named = new Set(input.headers.map(([name]) => name.toLowerCase()));
  const headers = [...mine.filter(([name]) => !named.has(name)), ...input.headers].map(
    ([name, value]) => [name, value === HERE ? `127.0.0.1:${port}` : value] as const,
  );
  return judge(input, await send(port, { ...input, headers }));
}

/** Sends them a few at a time and answers what is wrong: with answers, and with what was written. */
export const faultsOf = (world: World, inputs: readonly Input[], tally: Tally): Promise<string[]> =>
  compared(world, async () => {
    const found: string[] = [];
    const writers: string[] = [];
    const tables = new Set<string>();
    const signedOut = new Set<string>();
    let events = 0;
    let outcomes = 0;
    for (let at = 0; at < inputs.length; at += TOGETHER) {
      const some = inputs.slice(at, at + TOGETHER);
      const verdicts = await Promise.all(some.map((input) => sendOne(world, input)));
      for (const [index, { fault, status, written }] of verdicts.entries()) {
        const input = some[index]!;
        const said = `${status} ${input.what}, as ${input.voice}`;
        const taken = status >= 200 && status < 300;
        tally.sent += 1;
        tally.taken += taken ? 1 : 0;
        tally.statuses.set(status, (tally.statuses.get(status) ?? 0) + 1);
        if (taken && input.method === 'DELETE') signedOut.add(input.voice);
        if (fault !== null) found.push(`${said}: ${fault}\n  ${shown(input)}`);
        if (!written) continue;
        if (written.events + written.outcomes > 0) writers.push(`  ${said}\n  ${shown(input)}`);
        events += written.events;
        outcomes += written.outcomes;
        for (const table of written.tables) tables.add(table);
      }
    }
    // A voice that was signed out signs in again: that writes a session too.
    if (signedOut.size > 0) for (const table of ['session', 'signing_window']) tables.add(table);
    for (const voice of signedOut) await world.voices[voice]?.renew();
    return { found, events, outcomes, tables, writers };
  });

const shown = ({ method, path, headers, body, length }: Input): string =>
  JSON.stringify(
    { method, path, headers, body: body === null ? null : body.toString(), length },
    (_, value) =>
      typeof value === 'string' && value.length > 600 ? `${value.slice(0, 600)}...(${value.length})` : value,
  );

/** @param limits left out: the limits of a real ward. */
export async function openWorld(limits?: 'off'): Promise<World> {
  const clock = new StillClock(NOW - 6 * HOUR);
  const world = await openAccessWorld({
    clock,
    // Sessions and signing windows stand still too, or they would run out in a long run.
    accessClock: new StillClock(NOW),
    ...(limits ? { limits } : {}),
  });
  const keeper = await world.as('ines');
  await keeper.enter('add-staff-member', { staff: 'spare', name: 'Spare One', role: 'aide' });
  await keeper.enter('begin-stay', beginStay('stay-1'));
  await keeper.enter('begin-stay', beginStay('gone', '1B'));
  await keeper.enter('end-stay', { stay: 'gone', bed: 'bed-1B', to: 'home' });
  clock.at = NOW;
  const { footboard } = world;
  const port = Number(new URL(footboard.url).port);
  return { footboard, port, voices: await everybody(world, `http://127.0.0.1:${port}`) };
}
