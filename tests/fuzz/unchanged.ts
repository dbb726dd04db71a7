/** That nothing changed but what the answers speak of, and that the server goes on. */
import type { Database } from '@footboard/server/platform/database';
import { changedTables, rowsIn, stateOf } from './state.ts';
import { send } from './wire.ts';

/** What is looked at: a server by its port, and its database. */
interface Watched {
  readonly footboard: { readonly database: Database };
  readonly port: number;
}

export interface Acted {
  readonly found: readonly string[];
  /** Events and outcomes that the answers say were stored, and tables they may have written. */
  readonly events: number;
  readonly outcomes: number;
  readonly tables: ReadonlySet<string>;
  /** For the report: who says they wrote. */
  readonly writers: readonly string[];
}

/** For what may write nothing at all. */
export const unchanged = (world: Watched, act: () => Promise<readonly string[]>): Promise<string[]> =>
  compared(world, async () => ({
    found: await act(),
    events: 0,
    outcomes: 0,
    tables: new Set(),
    writers: [],
  }));

/** What was found wrong, by `act` itself and by looking at the database before and after it. */
export async function compared(world: Watched, act: () => Promise<Acted>): Promise<string[]> {
  const { database } = world.footboard;
  const before = await stateOf(database);
  const { found: already, events, outcomes, tables, writers } = await act();
  const found = [...already];
  const after = await stateOf(database);
  const grown = (table: string) => rowsIn(after, table) - rowsIn(before, table);
  if (grown('event') !== events) {
    found.push(`${grown('event')} events written, ${events} answered for`, ...writers);
  }
  if (grown('command_outcome') !== outcomes) {
    found.push(`${grown('command_outcome')} outcomes written, ${outcomes} answered for`, ...writers);
  }
  const counted = new Set(['event', 'command_outcome']);
  const wrong = changedTables(before, after).filter((table) => !tables.has(table) && !counted.has(table));
  if (wrong.length > 0) found.push(`changed without an answer that says so: ${wrong.join(', ')}`);
  if (Object.keys(Object.prototype).length > 0 || 'polluted' in {}) {
    found.push('the prototype of all objects changed');
  }
  const alive = await send(world.port, {
    method: 'GET',
    path: '/health/live',
    headers: [['Host', `127.0.0.1:${world.port}`]],
    body: null,
  });
  if (alive?.status !== 200) found.push(`the server answers ${alive?.status ?? 'nothing'}`);
  return found;
}
