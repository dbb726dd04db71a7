/**
 * The list as it was when somebody acted on it. It is made from the log alone, at the position, the
 * instant and the person the entry names, and kept beside the log: what a later program would make of
 * the same facts can then be held against what was shown. Who acted is not told here: overrides are
 * looked through to mend the list, never to grade anybody.
 */
import type { Round } from '@footboard/shared/capabilities/dayplan/rules/round';
import type { listActedOn } from '@footboard/shared/capabilities/dayplan/round-events';
import type { ListSeen } from '@footboard/shared/capabilities/dayplan/values';
import type { PayloadOf, LoggedEvent } from '@footboard/shared/kernel/event-type';
import { stayOf } from '@footboard/shared/kernel/event-type';
import type { WardId } from '@footboard/shared/kernel/ids';
import { ELAPSED_DAY, HOUR, toEpoch } from '@footboard/shared/kernel/times';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { RoundActs, RoundThen } from '@footboard/shared/wire/round';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import { Answered, problem } from '../../commanding/problems.ts';
import { InTurn } from '../../commanding/in-turn.ts';
import { hashText } from '../../log/canonical.ts';
import type { Log } from '../../log/log.ts';
import type { Database } from '../../platform/database.ts';
import type { Boards } from '../../projecting/board.ts';
import type { WardThen } from '../../projecting/open-boards.ts';
import { roundAt, roundText, weightsOf } from './round.ts';

export interface RoundListPorts {
  readonly database: Pick<Database, 'query'>;
  readonly log: Pick<Log, 'readPage' | 'head'>;
  /** The ward as it was known at a position of its log. */
  readonly wardThen: (ward: WardId, p: number) => Promise<WardThen>;
}
export const ROUND_LISTS = Symbol('RoundLists');

type Acted = LoggedEvent<PayloadOf<typeof listActedOn>>;
const TYPE = 'list-acted-on' satisfies (typeof listActedOn)['name'];
const PAGE = 1_000;
const SHOWN = 60;
const WAITS = 30 * ELAPSED_DAY;
export const REVIEWED_DAYS = 7;

interface Row {
  readonly event: string;
  readonly stay: string;
  readonly act: RoundActs['acts'][number]['act'];
  readonly instead: RoundActs['acts'][number]['instead'];
  readonly recorded: number;
  readonly position: number;
  readonly list_position: number;
  readonly list_at: number;
  readonly weights_version: number;
  readonly weights_hash: string;
  readonly digest_said: string;
  readonly digest: string;
  readonly place: number | null;
  readonly listed: number;
  readonly list: string;
}

export class RoundLists {
  readonly #turns = new InTurn();
  readonly #read = new Map<WardId, number>();
  /** Lists as they went out last, by their hash: an entry mostly speaks of one of them. */
  readonly #shown = new Map<string, string>();

  constructor(private readonly ports: RoundListPorts) {}

  /** A list that is about to be shown. */
  remember(digest: string, text: string): void {
    this.#shown.delete(digest);
    this.#shown.set(digest, text);
    if (this.#shown.size > SHOWN) this.#shown.delete(this.#shown.keys().next().value!);
  }

  /** Keeps up with what boards show, from what was missed on. @returns ends it, once nothing is being kept */
  follow(
    boards: Pick<Boards, 'wards' | 'onPatch'>,
    failed: (ward: WardId, error: unknown) => void,
  ): () => Promise<void> {
    const running = new Set<Promise<void>>();
    const keep = (ward: WardId, upTo?: number) => {
      const one = this.keepUp(ward, upTo)
        .catch((error: unknown) => failed(ward, error))
        .finally(() => running.delete(one));
      running.add(one);
    };
    for (const ward of boards.wards()) keep(ward);
    const stop = boards.onPatch(({ ward, p }) => keep(ward, p));
    return async () => {
      stop();
      await Promise.all(running);
    };
  }

  /** Keeps the list of each entry that has none yet. Called again, or by two servers, it does no harm. */
  keepUp(ward: WardId, upTo = Infinity): Promise<void> {
    return this.#turns.run(ward, async () => {
      const { log } = this.ports;
      for (let after = await this.#from(ward); after < upTo;) {
        const page = await log.readPage(ward, after, PAGE);
        for (const event of page) if (event.type === TYPE) await this.#keep(event as Acted);
        after = page.at(-1)?.position ?? after;
        this.#read.set(ward, after);
        if (page.length < PAGE) return;
      }
    });
  }

  async #from(ward: WardId): Promise<number> {
    const read = this.#read.get(ward);
    if (read !== undefined) return read;
    const [row] = await this.ports.database.query<{ last: number | null }>(
      'select max(position) as last from round_list where ward = $1',
      [ward],
    );
    return Number(row?.last ?? 0);
  }

  /** The list made again from the log; its text, and what of it is asked for most. */
  async #again(event: Acted): Promise<{ text: string; weights: ListSeen['weights'] }> {
    const { list } = event.payload;
    const then = await this.ports.wardThen(event.ward, Math.min(list.position, event.position));
    // A list is older than the entry about it, by as much as an outbox waits; what is told of another time
    // is met at the nearest of these.
    const t = Math.max(event.occurred - WAITS, Math.min(event.occurred + HOUR, toEpoch(list.at)));
    const { ward, calendar } = then;
    if (!ward || !calendar) throw new Error(`ward ${event.ward} was not set up at ${list.position}`);
    const round = roundAt({ ward, calendar, board: then.board(t), t, asker: event.author.staff });
    return { text: roundText(round), weights: weightsOf(rulesOf(ward)) };
  }

  async #keep(event: Acted): Promise<void> {
    const { act, instead = null, list } = event.payload;
    const stay = stayOf(event.stream)!;
    const shown = this.#shown.get(list.digest);
    const { text, weights } = shown ? { text: shown, weights: list.weights } : await this.#again(event);
    const round = JSON.parse(text) as Round;
    const open = openFor(round, stay);
    const at = open.findIndex((e) => e.stay === stay);
    await this.ports.database.query(
      `insert into round_list (ward, position, event, stay, act, instead, recorded, list_position, list_at,
         weights_version, weights_hash, digest_said, digest, place, listed, list)
       values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16) on conflict do nothing`,
      [
        event.ward,
        event.position,
        event.id,
        stay,
        act,
        instead,
        event.recorded,
        list.position,
        toEpoch(list.at),
        weights.version,
        weights.hash,
        list.digest,
        hashText(text),
        at < 0 ? null : at + 1,
        open.length,
        text,
      ],
    );
  }

  /** What was done by the list in the last days, the newest first. */
  async acts(ward: WardId, now: EpochMs): Promise<RoundActs> {
    const from = now - REVIEWED_DAYS * ELAPSED_DAY;
    const rows = await this.ports.database.query<Row>(
      'select * from round_list where ward = $1 and list_at >= $2 order by position desc limit 1000',
      [ward, from],
    );
    return { ward, from, to: now, acts: rows.map(lineOf) };
  }

  /** One of them with the list that whoever acted had before them. @throws Answered invalid-query */
  async actThen(ward: WardId, id: string): Promise<RoundThen> {
    const rows = await this.ports.database.query<Row>(
      'select * from round_list where ward = $1 and event = $2',
      [ward, id],
    );
    const row = rows[0];
    if (!row) {
      const detail = 'No list was kept for that entry.';
      const remedy = 'Choose one from the list of what was done by the round.';
      throw new Answered(
        problem('invalid-query', detail, remedy, { errors: [{ pointer: '/event', detail, remedy }] }),
      );
    }
    const [event] = await this.ports.log.readPage(ward, Number(row.position) - 1, 1);
    const again = await this.#again(event as Acted);
    const { entries, notListed, empty } = JSON.parse(row.list) as Round;
    return {
      ward,
      ...lineOf(row),
      position: Number(row.list_position),
      weights: { version: row.weights_version, hash: row.weights_hash },
      asShown: row.digest === row.digest_said,
      sameAgain: again.text === row.list,
      entries: entries.map(({ bed, label, stay, points, reasons, notHigher, changes, who }) => ({
        bed,
        label,
        stay,
        points,
        reasons: reasons.map(({ words, points: of }) => ({ words, points: of })),
        notHigher,
        changes,
        who,
      })),
      notListed: notListed.map(({ bed, label, stay, because, until }) => ({
        bed,
        label,
        stay,
        why: because.words,
        until,
      })),
      empty: empty.map(({ bed, label }) => ({ bed, label })),
    };
  }
}

/** Whom there was to choose from: somebody's own visit stands before the others without being one of them. */
const openFor = ({ entries }: Pick<Round, 'entries'>, stay: string): Round['entries'] =>
  entries.filter((e) => !e.yours || e.stay === stay);

function lineOf(row: Row): RoundActs['acts'][number] {
  const { entries, notListed } = JSON.parse(row.list) as Round;
  const of = [...entries, ...notListed].find((e) => e.stay === row.stay);
  return {
    event: row.event,
    at: Number(row.list_at),
    label: of?.label ?? null,
    act: row.act,
    place: row.place,
    listed: row.listed,
    first: openFor({ entries }, row.stay)[0]?.label ?? null,
    instead: row.instead,
  } as RoundActs['acts'][number];
}
