/** The projection tables: one read of what stands, and one transaction for rows, checkpoint and feed. */
import { sql } from 'kysely';
import type { Kysely, Transaction } from 'kysely';
import type { WardId } from '@footboard/shared/kernel/ids';
import type { Patch } from '@footboard/shared/wire/messages';
import type { Database } from '../platform/database.ts';
import { imageFromStored, storedBoard } from './board-image.ts';
import { commitInOne, feedChanges } from './commit-statement.ts';
import { CheckpointMoved } from './store-port.ts';
import type { Commit, ProjectionStore, StayTotals } from './store-port.ts';
import { latestTotals } from './totals-told.ts';

type ProjectionTables = {
  projection: {
    ward: string;
    name: string;
    revision: number;
    position: number;
    feed: number;
    evaluated_at: number;
    board: string;
    retired_at: number | null;
  };
  active_projection: { ward: string; name: string; revision: number };
  board_bed: { ward: string; revision: number; bed: string; row: string };
  ward_feed: {
    ward: string;
    feed: number;
    from_feed: number;
    position: number;
    t: number;
    changes: string;
  };
  ward_day_total: { ward: string; revision: number; day: number; stay: string; row: string };
};

export const BOARD = 'board';

const CHUNK = 500;
const inChunks = <T>(all: readonly T[]): T[][] => {
  const chunks: T[][] = [];
  for (let at = 0; at < all.length; at += CHUNK) chunks.push(all.slice(at, at + CHUNK));
  return chunks;
};

/** All rows of a board, into a revision that has none. */
async function putBeds(tx: Transaction<ProjectionTables>, { ward, after }: Commit): Promise<void> {
  const { revision } = after.checkpoint;
  const rows = [...after.image.rows].map(([bed, row]) => ({ ward, revision, bed, row: row.text }));
  for (const chunk of inChunks(rows)) await tx.insertInto('board_bed').values(chunk).execute();
}

/** Two statements however many rows. */
async function putTotals(
  tx: Kysely<ProjectionTables>,
  ward: WardId,
  revision: number,
  totals: readonly StayTotals[],
): Promise<void> {
  const { replaced, rows } = latestTotals(totals);
  if (replaced.length > 0) {
    await sql`delete from ward_day_total where ward = ${ward} and revision = ${revision}
      and stay = any(${replaced}::text[])`.execute(tx);
  }
  if (rows.length === 0) return;
  await sql`insert into ward_day_total (ward, revision, day, stay, row)
    select ${ward}::text, ${revision}::integer, told.* from unnest(
      ${rows.map(({ day }) => day)}::bigint[], ${rows.map(({ stay }) => stay)}::text[],
      ${rows.map(({ row }) => row)}::text[]) as told
    on conflict (ward, revision, day, stay) do update set row = excluded.row`.execute(tx);
}

async function putFeed(tx: Transaction<ProjectionTables>, patch: Patch | null): Promise<void> {
  if (!patch) return;
  await tx
    .insertInto('ward_feed')
    .values({
      ward: patch.ward,
      feed: patch.to,
      from_feed: patch.from,
      position: patch.p,
      t: patch.t,
      changes: feedChanges(patch),
    })
    .execute();
}

/** The checkpoint of a revision that has none yet. */
async function putCheckpoint(tx: Transaction<ProjectionTables>, { ward, after }: Commit): Promise<void> {
  const { revision, position, feed, evaluatedAt } = after.checkpoint;
  await tx
    .insertInto('projection')
    .values({
      ward,
      name: BOARD,
      revision,
      position,
      feed,
      evaluated_at: evaluatedAt,
      board: storedBoard(after.image),
      retired_at: null,
    })
    .execute();
}

/** The first commit of a ward: whoever inserts the active revision is the one. */
async function beginProjection(tx: Transaction<ProjectionTables>, commit: Commit): Promise<void> {
  const { ward, after } = commit;
  const { revision } = after.checkpoint;
  const put = await tx
    .insertInto('active_projection')
    .values({ ward, name: BOARD, revision })
    .onConflict((on) => on.doNothing())
    .executeTakeFirst();
  if (Number(put.numInsertedOrUpdatedRows ?? 0) !== 1) throw new CheckpointMoved(ward);
  await putCheckpoint(tx, commit);
}

export function openProjectionStore(database: Pick<Database, 'kysely' | 'query'>): ProjectionStore {
  const db = database.kysely.withTables<ProjectionTables>();
  return {
    async standing(ward) {
      return db.transaction().execute(async (tx) => {
        const found = await tx
          .selectFrom('active_projection as a')
          .innerJoin('projection as p', (join) =>
            join
              .onRef('p.ward', '=', 'a.ward')
              .onRef('p.name', '=', 'a.name')
              .onRef('p.revision', '=', 'a.revision'),
          )
          .select(['p.revision', 'p.position', 'p.feed', 'p.evaluated_at', 'p.board'])
          .where('a.ward', '=', ward)
          .where('a.name', '=', BOARD)
          // Against a commit between these two reads: rows and checkpoint must be of one moment.
          .forShare('p')
          .executeTakeFirst();
        if (!found) return null;
        const rows = await tx
          .selectFrom('board_bed')
          .select(['bed', 'row'])
          .where('ward', '=', ward)
          .where('revision', '=', found.revision)
          .execute();
        return {
          checkpoint: {
            revision: found.revision,
            position: Number(found.position),
            feed: Number(found.feed),
            evaluatedAt: Number(found.evaluated_at),
          },
          image: imageFromStored(found.board, new Map(rows.map((row) => [row.bed, row.row]))),
        };
      });
    },

    async commit(commit) {
      if (commit.before) return commitInOne(database, commit, commit.before);
      await db.transaction().execute(async (tx) => {
        await beginProjection(tx, commit);
        await putBeds(tx, commit);
        await putFeed(tx, commit.patch);
        await putTotals(tx, commit.ward, commit.after.checkpoint.revision, commit.totals);
      });
    },

    async clearRevision(ward, revision) {
      for (const table of ['projection', 'board_bed', 'ward_day_total'] as const) {
        await sql`delete from ${sql.table(table)} where ward = ${ward} and revision >= ${revision}`.execute(
          db,
        );
      }
    },
    putTotals: (ward, revision, totals) => putTotals(db, ward, revision, totals),

    async flip(commit) {
      const { ward, before, after } = commit;
      const { revision, evaluatedAt } = after.checkpoint;
      await db.transaction().execute(async (tx) => {
        const retired = await tx
          .updateTable('projection')
          .set({ retired_at: evaluatedAt })
          .where('ward', '=', ward)
          .where('name', '=', BOARD)
          .where('revision', '=', before.checkpoint.revision)
          .where('position', '=', before.checkpoint.position)
          .where('feed', '=', before.checkpoint.feed)
          .where('retired_at', 'is', null)
          .executeTakeFirst();
        if (Number(retired.numUpdatedRows) !== 1) throw new CheckpointMoved(ward);
        // The revision just retired stays as it was; older ones have served their time.
        for (const table of ['projection', 'board_bed', 'ward_day_total'] as const) {
          await sql`delete from ${sql.table(table)} where ward = ${ward} and revision < ${before.checkpoint.revision}`.execute(
            tx,
          );
        }
        await putCheckpoint(tx, commit);
        await putBeds(tx, commit);
        if (commit.keepTotals) {
          await sql`insert into ward_day_total (ward, revision, day, stay, row)
            select ward, ${revision}, day, stay, row from ward_day_total
             where ward = ${ward} and revision = ${before.checkpoint.revision}`.execute(tx);
        }
        await putTotals(tx, commit.ward, commit.after.checkpoint.revision, commit.totals);
        await putFeed(tx, commit.patch);
        await tx
          .updateTable('active_projection')
          .set({ revision })
          .where('ward', '=', ward)
          .where('name', '=', BOARD)
          .execute();
      });
    },

    async feedAfter(ward, feed) {
      const rows = await db
        .selectFrom('ward_feed')
        .selectAll()
        .where('ward', '=', ward)
        .where('feed', '>', feed)
        .where('changes', '<>', '')
        .orderBy('feed')
        .execute();
      return rows.map((row) => ({
        ward,
        from: Number(row.from_feed),
        to: Number(row.feed),
        p: Number(row.position),
        t: Number(row.t),
        ...(JSON.parse(row.changes) as Pick<Patch, 'board' | 'beds' | 'order'>),
      }));
    },

    async carriedBy(ward, positions) {
      const found = await Promise.all(
        positions.map(async (position) => {
          const row = await db
            .selectFrom('ward_feed')
            .select('feed')
            .where('ward', '=', ward)
            .where('position', '>=', position)
            .orderBy('feed')
            .limit(1)
            .executeTakeFirst();
          return row ? ([[position, Number(row.feed)]] as const) : [];
        }),
      );
      return new Map(found.flat());
    },

    /** What changed is the bulk and goes first; its number and position stay, for receipts. */
    async pruneFeed(ward, before, named) {
      await db
        .updateTable('ward_feed')
        .set({ changes: '' })
        .where('ward', '=', ward)
        .where('t', '<', before)
        .where('changes', '<>', '')
        .execute();
      await db.deleteFrom('ward_feed').where('ward', '=', ward).where('t', '<', named).execute();
    },

    async dayTotals(ward, day) {
      const rows = await db
        .selectFrom('ward_day_total as d')
        .innerJoin('active_projection as a', (join) =>
          join.onRef('a.ward', '=', 'd.ward').onRef('a.revision', '=', 'd.revision'),
        )
        .select(['d.day', 'd.stay', 'd.row'])
        .where('d.ward', '=', ward)
        .where('d.day', '=', day)
        .where('a.name', '=', BOARD)
        .orderBy('d.stay')
        .execute();
      return rows.map((row) => ({ day: Number(row.day), stay: row.stay, row: row.row }));
    },
  };
}
