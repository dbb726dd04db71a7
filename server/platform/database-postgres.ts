import { Client, Pool, types as postgresTypes } from 'pg';
import type { PoolClient, PoolConfig } from 'pg';
import { Kysely, PostgresDialect } from 'kysely';
import type { PostgresPoolClient } from 'kysely';
import type { Database, NoTables } from './database-port.ts';
import { AnswerLost, DatabaseUnreachable, endsSession, refusalOf } from './database-errors.ts';
import { openListener } from './listener.ts';

const POOL_SIZE = 8;
const CONNECT_WITHIN_MS = 5_000;
/** Texts with a name stay prepared on every connection; lists of changing length must not fill its memory. */
const NAMED_TEXTS = 400;

/** 64-bit integers (20) and arrays of them (1016) as numbers: ours are positions and milliseconds. */
const types = {
  getTypeParser: ((oid: number, format?: 'text' | 'binary') => {
    if (oid === 20) return Number;
    return format === 'binary'
      ? postgresTypes.getTypeParser(oid, 'binary')
      : postgresTypes.getTypeParser(oid, 'text');
  }) as typeof postgresTypes.getTypeParser,
};

function statementNames(): (sql: string) => string | undefined {
  const names = new Map<string, string>();
  return (sql) => {
    const known = names.get(sql);
    if (known !== undefined) return known;
    if (names.size >= NAMED_TEXTS) return undefined;
    const name = `footboard_${names.size + 1}`;
    names.set(sql, name);
    return name;
  };
}

/** Tells a lost answer from a refusal. */
function whatWentWrong(error: unknown): unknown {
  const refusal = refusalOf(error);
  return refusal && !endsSession(refusal.code) ? error : new AnswerLost(error);
}

/** @throws DatabaseUnreachable */
export async function openPostgres(databaseUrl: string): Promise<Database> {
  const settings: PoolConfig = {
    connectionString: databaseUrl,
    connectionTimeoutMillis: CONNECT_WITHIN_MS,
    keepAlive: true,
    application_name: 'footboard',
    types,
  };
  const pool = new Pool({ ...settings, max: POOL_SIZE });
  // An idle connection that breaks is dropped by the pool; the next caller gets a new one.
  pool.on('error', () => undefined);
  // One that breaks while lent tells its caller by the failing query; without a listener of its own
  // the same error would also end the process.
  pool.on('connect', (client) => client.on('error', () => undefined));
  const nameOf = statementNames();
  const listener = openListener(() => new Client(settings));

  const connect = async (): Promise<PoolClient> => {
    try {
      return await pool.connect();
    } catch (error) {
      throw new DatabaseUnreachable(error);
    }
  };
  const send = async (client: PoolClient, sql: string, params: readonly unknown[], withinMs?: number) => {
    // Without parameters a text may hold several statements (a migration does): the simple protocol.
    if (params.length === 0) return client.query(sql);
    const name = nameOf(sql);
    return client.query({
      text: sql,
      values: params as unknown[],
      ...(name === undefined ? {} : { name }),
      ...(withinMs === undefined ? {} : { query_timeout: withinMs }),
    });
  };

  const kysely = new Kysely<NoTables>({
    dialect: new PostgresDialect({
      pool: {
        connect: async () => {
          const client = await connect();
          let broken = false;
          const query = async (sql: string, params: readonly unknown[]) => {
            try {
              return await send(client, sql, params);
            } catch (error) {
              const wrong = whatWentWrong(error);
              broken ||= wrong instanceof AnswerLost;
              throw wrong;
            }
          };
          return { query, release: () => client.release(broken) } as unknown as PostgresPoolClient;
        },
        end: () => pool.end(),
      },
    }),
  });

  const database: Database = {
    kind: 'postgres',
    kysely,
    async query<Row>(sql: string, params: readonly unknown[] = [], within?: { ms: number }) {
      const client = await connect();
      let broken = false;
      try {
        return (await send(client, sql, params, within?.ms)).rows as Row[];
      } catch (error) {
        const wrong = whatWentWrong(error);
        broken = wrong instanceof AnswerLost;
        throw wrong;
      } finally {
        client.release(broken);
      }
    },
    listen: (channel, heard, restored) => listener.listen(channel, heard, restored),
    async close() {
      await listener.close();
      await kysely.destroy();
      if (!pool.ended) await pool.end();
    },
  };
  try {
    await database.query('select 1');
  } catch (error) {
    await database.close();
    throw error;
  }
  return database;
}
