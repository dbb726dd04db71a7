/**
 * The facts of a stay that count now. Addenda and amendments only annotate; a correction puts other
 * data in an entry's place (a correction of a correction speaks of the original entry, the last one
 * counts); a retraction takes an entry out, and the retraction of a retraction brings it back. The
 * result depends on the set of events alone, never on the order in which they arrived.
 *
 * Design rule 2: a correction or retraction that may lower help counts only from a qualified author;
 * from anyone else the original stands and the two are shown as a conflict. Either asks for a look.
 * A confirmation is a correction of who said it: the same rule holds for it.
 */
import { isQualified } from '../../../kernel/author.ts';
import { upcast, type LoggedEvent, type PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { TrustView } from '../../board/moving-view.ts';
import { EVENT_TYPES } from '../../registry.ts';
import type { correctionMade } from '../events.ts';
import type { Fact, StayRecord } from '../facts.ts';
import { Beside } from './beside.ts';
import { lateClaims, type Claim } from './claims.ts';
import { puttingInMayLowerHelp, replacingMayLowerHelp, takingOutMayLowerHelp } from './lowers-help.ts';
import { heardAs, isConfirmation, isSignature, signs } from './signatures.ts';

export interface Change {
  readonly verb: 'addendum' | 'amendment' | 'correction' | 'retraction';
  readonly event: EventId;
}
export type Dispute = TrustView['conflicts'][number] & { readonly at: EpochMs };

export interface Effective {
  /** Ordered by occurred, rank, event id. */
  readonly facts: readonly Fact[];
  /** By the entry spoken of, oldest first. */
  readonly changes: ReadonlyMap<EventId, readonly Change[]>;
  /** Entries that no longer count, of whatever type. */
  readonly retracted: ReadonlySet<EventId>;
  /** The confirmation of each entry whose author was not known for sure, where there is one. */
  readonly confirmed: ReadonlyMap<EventId, LoggedEvent>;
  /** The second signature of each entry that waited for one, where there is one. */
  readonly cosigned: ReadonlyMap<EventId, LoggedEvent>;
  /** Corrections and retractions by someone who may not lower help: the original stands. */
  readonly conflicts: readonly Dispute[];
  /** Changes and confirmations that may lower help, counted or not: each asks for a look until the next check. */
  readonly lookAgain: readonly { readonly event: EventId; readonly at: EpochMs; readonly words: string }[];
  /** Entries that count and may lower help although they came late or change what was said. */
  readonly claims: readonly Claim[];
  readonly beside: Beside;
}

type Correction = PayloadOf<typeof correctionMade>;
const VERBS: ReadonlyMap<string, Change['verb']> = new Map([
  ['addendum-made', 'addendum'],
  ['amendment-made', 'amendment'],
  ['correction-made', 'correction'],
  ['retraction-made', 'retraction'],
]);
const targetOf = (event: LoggedEvent): EventId => (event.payload as { target: EventId }).target;

interface Ordered {
  readonly occurred: EpochMs;
  readonly rank: number;
  readonly id: string;
}
/** Occurred, then permission before restriction, then event id: the order in which facts are folded. */
export const inOrder = (a: Ordered, b: Ordered): number =>
  a.occurred - b.occurred || a.rank - b.rank || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
const byTime = (a: LoggedEvent, b: LoggedEvent): number =>
  a.occurred - b.occurred || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

const rankOf = (type: string, data: unknown): -1 | 0 | 1 => EVENT_TYPES.get(type)?.rank(data) ?? 0;

const factOf = (event: LoggedEvent): Fact => ({
  id: event.id,
  type: event.type,
  data: event.payload,
  occurred: event.occurred,
  precision: event.precision,
  recorded: event.recorded,
  position: event.position,
  author: heardAs(event),
  source: event.source,
  rank: rankOf(event.type, event.payload),
  correctedBy: null,
});

const NO_CHANGES: Omit<Effective, 'facts' | 'claims' | 'beside'> = {
  changes: new Map(),
  retracted: new Set(),
  confirmed: new Map(),
  cosigned: new Map(),
  conflicts: [],
  lookAgain: [],
};

export function effectiveFacts(record: StayRecord): Effective {
  const plain: LoggedEvent[] = [];
  const verbs: LoggedEvent[] = [];
  for (const event of record.events) (isVerb(event) ? verbs : plain).push(event);
  if (verbs.length === 0) {
    const facts = plain.map(factOf).toSorted(inOrder);
    return { ...NO_CHANGES, facts, claims: lateClaims(facts), beside: new Beside() };
  }
  return corrected(plain, verbs.toSorted(byTime));
}

function corrected(plain: readonly LoggedEvent[], verbs: readonly LoggedEvent[]): Effective {
  const byId = new Map<EventId, LoggedEvent>();
  for (const event of plain) byId.set(event.id, event);
  for (const event of verbs) byId.set(event.id, event);
  const changes = new Map<EventId, Change[]>();
  const retractions = new Map<EventId, LoggedEvent[]>();
  const corrections = new Map<EventId, LoggedEvent[]>();
  const signatures = new Map<EventId, LoggedEvent[]>();
  for (const verb of verbs) {
    const target = verb.type === 'correction-made' ? rootOf(verb, byId) : targetOf(verb);
    if (isSignature(verb)) {
      const entry = byId.get(target);
      if (entry && signs(verb, entry)) push(signatures, target, verb);
      continue;
    }
    push(changes, target, { verb: VERBS.get(verb.type)!, event: verb.id });
    if (target !== targetOf(verb)) {
      push(changes, targetOf(verb), { verb: VERBS.get(verb.type)!, event: verb.id });
    }
    if (verb.type === 'retraction-made') push(retractions, target, verb);
    if (verb.type === 'correction-made') push(corrections, target, verb);
  }

  const conflicts: Dispute[] = [];
  const lookAgain: Effective['lookAgain'][number][] = [];
  const claims: Claim[] = [];
  const settled = new Map<EventId, boolean>();
  const permitted = (
    verb: LoggedEvent,
    may: boolean,
    target: EventId,
    about: EpochMs,
    words: string,
  ): boolean => {
    if (!may) return true;
    lookAgain.push({ event: verb.id, at: verb.occurred, words: `${words}: look again before moving` });
    const author = heardAs(verb);
    if (isQualified(author)) {
      claims.push({
        event: verb.id,
        verb: isConfirmation(verb) ? 'confirmation' : isCorrection(verb) ? 'correction' : 'retraction',
        entry: rootOf(verb, byId, isVerb),
        about,
        author,
        occurred: verb.occurred,
        recorded: verb.recorded,
        position: verb.position,
      });
      return true;
    }
    conflicts.push({
      question: 'correction',
      safer: target,
      other: verb.id,
      words: `${words} by someone who may not lower help: the original stands`,
      at: verb.occurred,
    });
    return false;
  };
  /** An entry counts when no retraction that itself counts speaks of it. A circle counts. */
  const counts = (id: EventId): boolean => {
    const known = settled.get(id);
    if (known !== undefined) return known;
    settled.set(id, true);
    const target = byId.get(id);
    const answer = !(retractions.get(id) ?? []).some((r) => {
      if (!target || !counts(r.id)) return false;
      return permitted(r, withdrawalMayLower(target, byId), id, aboutOf(r, byId), 'An entry withdrawn');
    });
    settled.set(id, answer);
    return answer;
  };

  const confirmed = new Map<EventId, LoggedEvent>();
  const cosigned = new Map<EventId, LoggedEvent>();
  /** Of those by somebody qualified, the first: whose word the entry is from then on. */
  const vouchedFor = new Map<EventId, LoggedEvent>();
  for (const [id, signed] of signatures) {
    for (const signature of signed.filter(({ id: own }) => counts(own))) {
      const first = isConfirmation(signature) ? confirmed : cosigned;
      if (!first.has(id)) first.set(id, signature);
      if (!isConfirmation(signature) || !isQualified(signature.author)) continue;
      // It asks for a look even where another entry speaks instead of the one it confirms.
      const entry = byId.get(id)!;
      const may = puttingInMayLowerHelp({ type: entry.type, data: entry.payload });
      permitted(signature, may, id, entry.occurred, 'An entry confirmed');
      if (!vouchedFor.has(id)) vouchedFor.set(id, signature);
    }
  }

  const facts: Fact[] = [];
  for (const event of plain.toSorted(byTime)) {
    if (!counts(event.id)) continue;
    let fact = factOf(event);
    const voucher = vouchedFor.get(event.id);
    for (const c of later(corrections.get(event.id), voucher)) {
      if (c === voucher) {
        if (fact.correctedBy === null) fact = { ...fact, author: c.author };
        continue;
      }
      const replaced = counts(c.id) ? replacedBy(event, c) : null;
      if (!replaced) continue;
      const may = replacingMayLowerHelp(fact, replaced);
      const about = Math.min(event.occurred, fact.occurred, replaced.occurred);
      if (permitted(c, may, event.id, about, 'An entry corrected')) fact = replaced;
    }
    facts.push(fact);
  }
  for (const verb of verbs) counts(verb.id);
  const retracted = new Set([...settled].filter(([, counted]) => !counted).map(([id]) => id));
  facts.sort(inOrder);
  claims.push(...lateClaims(facts));
  const beside = new Beside();
  return { facts, changes, retracted, confirmed, cosigned, conflicts, lookAgain, claims, beside };
}

type ById = ReadonlyMap<EventId, LoggedEvent>;
const isCorrection = (event: LoggedEvent): boolean => event.type === 'correction-made';
const isVerb = (event: LoggedEvent): boolean => VERBS.has(event.type) || isSignature(event);
/** What was said of an entry, in order. A confirmation is of what stood before it. */
const later = (corrections: readonly LoggedEvent[] = [], voucher?: LoggedEvent): readonly LoggedEvent[] =>
  voucher ? [...corrections, voucher].toSorted(byTime) : corrections;

/** The entry that a chain of changes began with: by default of corrections only. */
function rootOf(verb: LoggedEvent, byId: ById, through = isCorrection): EventId {
  let target = targetOf(verb);
  for (let steps = 0; steps < 100; steps++) {
    const event = byId.get(target);
    if (!event || !through(event)) return target;
    target = targetOf(event);
  }
  return target;
}

/** When what a retraction speaks of occurred: the entry, and where a correction had moved it. */
function aboutOf(retraction: LoggedEvent, byId: ById): EpochMs {
  const entry = byId.get(rootOf(retraction, byId, isVerb)) ?? retraction;
  const target = byId.get(targetOf(retraction));
  const moved =
    target && isCorrection(target) ? Date.parse((target.payload as Correction).occurred ?? '') : NaN;
  return Number.isNaN(moved) ? entry.occurred : Math.min(entry.occurred, moved);
}

function withdrawalMayLower(target: LoggedEvent, byId: ById): boolean {
  if (target.type === 'correction-made') return true;
  if (target.type === 'retraction-made') {
    const event = byId.get(targetOf(target));
    if (!event) return true;
    const withdrawn = { type: event.type, data: event.payload };
    // A withdrawal that asked for a look goes on asking.
    return puttingInMayLowerHelp(withdrawn) || takingOutMayLowerHelp(withdrawn);
  }
  // Without its author's word the entry is somebody's who may only make it safer.
  if (isConfirmation(target)) return true;
  if (isVerb(target)) return false;
  return takingOutMayLowerHelp({ type: target.type, data: target.payload });
}

/** Null when the correction does not fit the entry (another type or shape, or a payload from a newer program). */
function replacedBy(original: LoggedEvent, correction: LoggedEvent): Fact | null {
  const c = correction.payload as Correction;
  const type = EVENT_TYPES.get(c.type);
  if (!type || c.type !== original.type || c.schemaVersion > type.version) return null;
  // The log admits any JSON here: what is not of the entry's own shape would stop every rule that reads it.
  const read = type.schema.safeParse(upcast(type, c.schemaVersion, c.replacement));
  if (!read.success) return null;
  const data = read.data;
  const occurred = c.occurred === undefined ? Number.NaN : Date.parse(c.occurred);
  return {
    ...factOf(original),
    data,
    occurred: Number.isNaN(occurred) ? original.occurred : occurred,
    author: heardAs(correction),
    rank: rankOf(c.type, data),
    correctedBy: correction.id,
  };
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}
