/**
 * The commit of one step of a runner as one statement, one round trip: checkpoint (compare-and-set),
 * rows, feed row and ward day totals, all or nothing. A command waits for this, so round trips count.
 */
import type { Database } from '../platform/database.ts';
import { bedsGone, storedBoard } from './board-image.ts';
import { CheckpointMoved } from './store-port.ts';
import type { Commit, Standing } from './store-port.ts';
import { latestTotals } from './totals-told.ts';

/** Every part asks whether the checkpoint moved: if another runner was first, nothing is written. */
const COMMIT = `
  with moved as (
    update projection
       set position = $5, feed = $6, evaluated_at = $7, board = coalesce($8::text, board)
     where ward = $1 and name = 'board' and revision = $2
       and position = $3 and feed = $4 and retired_at is null
    returning 1 as one
  ), beds as (
    insert into board_bed (ward, revision, bed, row)
    select $1, $2, told.bed, told.row from moved, unnest($9::text[], $10::text[]) as told (bed, row)
    on conflict (ward, revision, bed) do update set row = excluded.row
  ), beds_gone as (
    delete from board_bed
     where ward = $1 and revision = $2 and bed = any ($11::text[]) and exists (select 1 from moved)
  ), fed as (
    insert into ward_feed (ward, feed, from_feed, position, t, changes)
    select $1, $12::bigint, $13::bigint, $5, $7, $14::text from moved where $12::bigint is not null
  ), told as (
    select * from unnest($15::bigint[], $16::text[], $17::text[]) as told (day, stay, row)
  ), totals as (
    insert into ward_day_total (ward, revision, day, stay, row)
    select $1, $2, told.day, told.stay, told.row from moved, told
    on conflict (ward, revision, day, stay) do update set row = excluded.row
  ), totals_gone as (
    -- Days of a stay told whole that are not told again; never one that is written above.
    delete from ward_day_total as old
     where ward = $1 and revision = $2 and stay = any ($18::text[]) and exists (select 1 from moved)
       and not exists (select 1 from told where told.day = old.day and told.stay = old.stay)
  )
  select count(*)::integer as moved from moved`;

/** @throws CheckpointMoved */
export async function commitInOne(
  database: Pick<Database, 'query'>,
  { ward, after, patch, totals }: Commit,
  before: Standing,
): Promise<void> {
  const { revision, position, feed, evaluatedAt } = after.checkpoint;
  const old = before.image;
  const board = storedBoard(after.image);
  const rows = [...after.image.rows].filter(([bed, row]) => old?.rows.get(bed)?.text !== row.text);
  const told = latestTotals(totals);
  const [result] = await database.query<{ moved: number }>(COMMIT, [
    ward,
    revision,
    before.checkpoint.position,
    before.checkpoint.feed,
    position,
    feed,
    evaluatedAt,
    old !== null && storedBoard(old) === board ? null : board,
    rows.map(([bed]) => bed),
    rows.map(([, row]) => row.text),
    [...bedsGone(old, after.image)],
    patch?.to ?? null,
    patch?.from ?? null,
    patch ? feedChanges(patch) : null,
    told.rows.map(({ day }) => day),
    told.rows.map(({ stay }) => stay),
    told.rows.map(({ row }) => row),
    told.replaced,
  ]);
  if (result?.moved !== 1) throw new CheckpointMoved(ward);
}

/** What a feed row keeps of a patch; the rest stands in its columns. */
export const feedChanges = ({ board, beds, order }: NonNullable<Commit['patch']>): string =>
  JSON.stringify({ board, beds, order });
