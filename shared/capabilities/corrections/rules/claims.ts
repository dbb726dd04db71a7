/**
 * Entries that speak of the past and may lower help: those entered after something that occurred at
 * or after them, and the corrections, retractions and confirmations that count. Design rule 2: such an entry lowers
 * help only while no restriction, trigger, failed attempt or lower finding that occurred at or after
 * it is still open. Which of them are open is the board's to say; here is who stands against whom.
 */
import type { Author } from '../../../kernel/author.ts';
import { saidBy } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { Fact, StayRecord } from '../facts.ts';
import { puttingInMayLowerHelp } from './lowers-help.ts';

/** When an entry occurred and when it became known. */
export interface Known {
  readonly occurred: EpochMs;
  readonly recorded: EpochMs;
  readonly position: number;
}

export interface Claim extends Known {
  readonly event: EventId;
  readonly verb: 'late' | 'correction' | 'retraction' | 'confirmation';
  /** The entry changed; the entry itself when it is late. It never stands against its own change. */
  readonly entry: EventId;
  /** From here on an open restriction stands against it: when what it speaks of occurred. */
  readonly about: EpochMs;
  readonly author: Author;
}

/** Something in force that asks for more help. */
export interface Restriction extends Known {
  readonly event: EventId;
}

/** Known after the other. Of one instant and recorded together, neither is the later one. */
const knownAfter = (a: Known, b: Known): boolean =>
  a.recorded > b.recorded ||
  (a.recorded === b.recorded && a.position > b.position && a.occurred !== b.occurred);

/** Facts in order; those entered after a fact that occurred with or after them and that may lower help. */
export function lateClaims(facts: readonly Fact[]): Claim[] {
  const claims: Claim[] = [];
  let earliest: Known | null = null;
  for (let i = facts.length - 1; i >= 0; i--) {
    const fact = facts[i]!;
    let late = earliest !== null && knownAfter(fact, earliest);
    for (let j = i - 1; !late && j >= 0 && facts[j]!.occurred === fact.occurred; j--) {
      late = knownAfter(fact, facts[j]!);
    }
    if (late && puttingInMayLowerHelp(fact)) {
      const { id, occurred, recorded, position, author } = fact;
      const known = { occurred, recorded, position };
      claims.push({ event: id, verb: 'late', entry: id, about: occurred, author, ...known });
    }
    if (earliest === null || knownAfter(earliest, fact)) earliest = fact;
  }
  return claims;
}

/** The first of the restrictions that stands against a claim; null when none does. */
export function standsAgainst(claim: Claim, open: readonly Restriction[]): Restriction | null {
  return (
    open.find(
      (r) =>
        r.event !== claim.event &&
        r.event !== claim.entry &&
        r.occurred >= claim.about &&
        (knownAfter(claim, r) || (claim.verb !== 'late' && r.occurred <= claim.occurred)),
    ) ?? null
  );
}

/**
 * The stay as if these entries were by someone who may only make it safer: what they find less
 * stays, what they free does not count.
 */
export function onlySafer(record: StayRecord, entries: ReadonlySet<EventId>): StayRecord {
  return {
    ...record,
    events: record.events.map((event) =>
      entries.has(event.id) ? saidBy(event, { staff: event.author.staff, role: 'records' }) : event,
    ),
  };
}
