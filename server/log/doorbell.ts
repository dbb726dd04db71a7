import type { WardId } from '@footboard/shared/kernel/ids';
import type { Database } from '../platform/database.ts';

const CHANNEL = 'footboard_growth';
/** Wards that grow within this time are told in one message: other processes only, and within a blink. */
const GATHER_MS = 20;

/**
 * Tells other processes that a ward's log has grown, after the commit and apart from it. Inside the
 * append, NOTIFY would make every commit of the database, whatever its ward, wait for one lock
 * (PostgreSQL orders notifications by commit), and wards must not wait for each other. A bell lost
 * between commit and ringing costs the listener one poll: the bell is never the truth.
 */
export class Doorbell {
  readonly #database: Database;
  readonly #grown = new Set<WardId>();
  #ringing = false;

  constructor(database: Database) {
    this.#database = database;
  }

  ring(wards: Iterable<WardId>): void {
    // The embedded database has no second process.
    if (this.#database.kind === 'pglite') return;
    for (const ward of wards) this.#grown.add(ward);
    if (this.#ringing || this.#grown.size === 0) return;
    this.#ringing = true;
    setTimeout(() => void this.#ringNow(), GATHER_MS).unref();
  }

  async #ringNow(): Promise<void> {
    const wards = [...this.#grown];
    this.#grown.clear();
    try {
      // A bell has nothing to flush: waiting for the disk here would only delay the next append.
      await this.#database.query(
        `select set_config('synchronous_commit', 'off', true), pg_notify('${CHANNEL}', ward)
           from unnest($1::text[]) as ward`,
        [wards],
      );
    } catch {
      // Whoever listens polls anyway.
    }
    this.#ringing = false;
    this.ring([]);
  }

  /** @returns when listening has begun. */
  answer(heard: (ward: WardId) => void, restored: () => void): Promise<() => Promise<void>> {
    return this.#database.listen(CHANNEL, (ward) => heard(ward as WardId), restored);
  }
}
