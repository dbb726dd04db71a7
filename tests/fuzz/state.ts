/** What a database holds, as far as a malformed request must not change it. */
import type { Database } from '@footboard/server/platform/database';

/**
 * Left out: rows that count tries and looks, and what is only computed from the log, a moment after
 * an entry that was taken.
 */
const LEFT_OUT: ReadonlySet<string> = new Set([
  'access_record',
  'code_tries',
  'projection',
  'active_projection',
  'board_bed',
  'ward_feed',
  'ward_day_total',
  'unsigned_entry',
]);
/** Small tables that are compared by what they say, not only by how many rows they have. */
const BY_CONTENT: ReadonlySet<string> = new Set(['ward_head', 'account', 'invitation', 'glass', 'text_key']);

/** By table: rows, and what they say where that is compared. */
export type State = ReadonlyMap<string, string>;

let statement: string | undefined;

export async function stateOf(database: Database): Promise<State> {
  statement ??= await statementFor(database);
  const rows = await database.query<{ name: string; rows: string; says: string | null }>(statement);
  return new Map(rows.map(({ name, rows: count, says }) => [name, `${count} ${says ?? ''}`]));
}

async function statementFor(database: Database): Promise<string> {
  const rows = await database.query<{ name: string }>(
    `select table_name as name from information_schema.tables
      where table_schema = current_schema() and table_type = 'BASE TABLE' order by 1`,
  );
  return rows
    .map(({ name }) => name)
    .filter((name) => !LEFT_OUT.has(name))
    .map((name) => {
      const says = BY_CONTENT.has(name) ? `md5(string_agg(x::text, '|' order by x::text))` : 'null';
      return `select '${name}' as name, count(*)::text as rows, ${says} as says from "${name}" x`;
    })
    .join(' union all ');
}

export const rowsIn = (state: State, table: string): number => Number(state.get(table)?.split(' ')[0]);
export const changedTables = (before: State, after: State): string[] =>
  [...after].filter(([name, says]) => before.get(name) !== says).map(([name]) => name);
