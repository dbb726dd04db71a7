/**
 * The ward day totals beside the board: for each stay with new facts, and for everybody in a bed
 * when the ward day turns or the rules change, the rows that changed. A stay that has left is worked out once and
 * dropped, so that memory follows the beds.
 */
import { totalsOf } from '@footboard/shared/capabilities/dayplan/rules/totals';
import type { WardCalendar } from '@footboard/shared/capabilities/wards/context';
import type { RulesDocument } from '@footboard/shared/capabilities/wards/rules/rules-document';
import type { LoggedEvent, StreamKey } from '@footboard/shared/kernel/event-type';
import { stayOf } from '@footboard/shared/kernel/event-type';
import type { StayId } from '@footboard/shared/kernel/ids';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { StayTotals } from './store-port.ts';

interface Kept {
  events: LoggedEvent[];
  /** False when earlier events of the stream were not folded here. */
  whole: boolean;
  /** Rows as last handed out, by start of the ward day. */
  written: ReadonlyMap<EpochMs, string>;
}

export class DayTotals {
  readonly #stays = new Map<StayId, Kept>();
  #due = new Set<StayId>();
  #left = new Set<StayId>();
  #day: EpochMs | null = null;
  #rules: RulesDocument | null = null;

  take(events: readonly LoggedEvent[]): void {
    // A page speaks of few streams: each is looked up once.
    const streams = new Map<StreamKey, Kept | null>();
    for (const event of events) {
      let kept = streams.get(event.stream);
      if (kept === undefined) {
        const stay = stayOf(event.stream);
        kept = stay === null ? null : this.#keptOf(stay, event.version === 1);
        streams.set(event.stream, kept);
        if (stay !== null) this.#due.add(stay);
      }
      kept?.events.push(event);
    }
  }

  #keptOf(stay: StayId, whole: boolean): Kept {
    const known = this.#stays.get(stay);
    if (known) return known;
    const kept: Kept = { events: [], whole, written: new Map() };
    this.#stays.set(stay, kept);
    return kept;
  }

  /** Stays of which only part of the stream is here: to be read whole and put. */
  partial(): readonly StayId[] {
    return [...this.#due].filter((stay) => !this.#stays.get(stay)!.whole);
  }
  put(stay: StayId, events: readonly LoggedEvent[]): void {
    const written = this.#stays.get(stay)?.written ?? new Map<EpochMs, string>();
    this.#stays.set(stay, { events: [...events], whole: true, written });
    this.#due.add(stay);
  }

  /** The stay holds no bed any more. */
  leaves(stay: StayId): void {
    if (this.#stays.has(stay)) this.#left.add(stay);
  }

  /** Rows of stays that have left since the last call; they are forgotten. */
  drainLeft(calendar: WardCalendar, rules: RulesDocument, t: EpochMs): StayTotals[] {
    const rows: StayTotals[] = [];
    for (const stay of this.#left) rows.push(...this.#changed(stay, calendar, rules, t));
    this.forgetLeft();
    return rows;
  }

  forgetLeft(): void {
    for (const stay of this.#left) {
      this.#stays.delete(stay);
      this.#due.delete(stay);
    }
    this.#left = new Set();
  }

  /** All rows that changed since the last call. */
  drain(calendar: WardCalendar, rules: RulesDocument, t: EpochMs): StayTotals[] {
    const rows = this.drainLeft(calendar, rules, t);
    const day = calendar.wardDay(t).from;
    const due = day === this.#day && rules === this.#rules ? this.#due : this.#stays.keys();
    for (const stay of due) rows.push(...this.#changed(stay, calendar, rules, t));
    this.#due = new Set();
    this.#day = day;
    this.#rules = rules;
    return rows;
  }

  #changed(stay: StayId, calendar: WardCalendar, rules: RulesDocument, t: EpochMs): StayTotals[] {
    const kept = this.#stays.get(stay)!;
    const record = { stay, version: kept.events.at(-1)?.version ?? 0, events: kept.events };
    const now = new Map<EpochMs, string>();
    for (const total of totalsOf(record, calendar, t, rules)) now.set(total.from, JSON.stringify(total));
    const before = kept.written;
    kept.written = now;
    // A leaving that is told late takes days back; of what was stored earlier nothing is known here.
    const replace = before.size === 0 || [...before.keys()].some((day) => !now.has(day));
    const rows = [...now]
      .filter(([day, row]) => replace || before.get(day) !== row)
      .map(([day, row]) => ({ day, row }));
    return replace || rows.length > 0 ? [{ stay, replace, rows }] : [];
  }
}
