import { isQualified } from '../../../kernel/author.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import { HOUR } from '../../../kernel/times.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { assessmentRecorded } from '../../assessments/events.ts';
import { meaningsMet } from '../../assessments/rules/meanings-met.ts';
import type { ProtocolLookup } from '../../assessments/rules/protocol.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Stated } from '../../handling/rules/types.ts';
import type { holdEnded, holdPlaced, orderChanged, triggerRecorded } from '../../orders/events.ts';
import { isCheck } from '../../orders/rules/triggers.ts';
import type { stayBegun } from '../../stays/events.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { sessionRecorded } from '../events.ts';

/** `to-be-repeated`: stood or stepped free where the protocol asks to be held safe the first time. */
export type FirstTimeUp = Stated<true | 'to-be-repeated'>;

export interface UpSoFar {
  /** What the facts say by themselves. */
  readonly pending: FirstTimeUp | null;
  /** The bed rest that goes on, from its first hold or order. */
  readonly resting: Stated<true> | null;
}

/**
 * What is ahead at `t`: a rest that goes on counts from the hour in which it is long, so that ending
 * it asks for no more help than going on with it did. `note` is told that instant.
 */
export function firstTimeUpAt(
  { pending, resting }: UpSoFar,
  t: EpochMs,
  rules: RulesDocument,
  note: (at: EpochMs) => void,
): FirstTimeUp | null {
  if (!resting) return pending;
  const long = resting.at + rules.handling.bedRestHours.value * HOUR;
  note(long);
  return t >= long ? { ...resting, at: long } : pending;
}

/**
 * First time up since surgery or bed rest is still ahead: from the return, or the end of the rest, until a check by a qualified author
 * clears standing, or a qualified author records that first time up as done with nothing going
 * wrong. A stage that the protocol wants held safe the first time and that was done free is to be
 * repeated first. Facts up to the instant asked about, in order. Source: design, "first time up"
 * row and "free, secured".
 */
export function firstTimeUpPending(
  facts: readonly Fact[],
  protocols: ProtocolLookup,
  rules: RulesDocument,
): UpSoFar {
  const rest = new BedRest(rules.handling.bedRestHours.value * HOUR);
  let pending: FirstTimeUp | null = null;
  let doneOnce = new Set<string>();
  for (const fact of facts) {
    if (rest.endsLong(fact) || isFromSurgery(fact)) {
      pending = { value: true, fact: fact.id, at: fact.occurred };
      doneOnce = new Set();
    } else if (pending && fact.occurred > pending.at) {
      if (isDoneInSession(fact)) pending = null;
      else if (isCheck(fact)) {
        const first = stagesOf(fact, protocols);
        if (!first.up) continue;
        const again = first.freeThoughFirst.some((stage) => !doneOnce.has(stage));
        pending = again ? { value: 'to-be-repeated', fact: fact.id, at: fact.occurred } : null;
        for (const stage of first.freeThoughFirst) doneOnce.add(stage);
      }
    }
  }
  return { pending, resting: rest.goesOn };
}

/**
 * In bed by holds or an order. It lasts from the first of them until the last is gone; only a
 * qualified person ends one.
 */
class BedRest {
  private since: Stated<true> | null = null;
  private readonly holds = new Map<string, Fact>();
  private ordered = false;

  constructor(private readonly long: number) {}

  get goesOn(): Stated<true> | null {
    return this.since;
  }

  /** Takes the next fact, in order; true when it ends a rest that was long. */
  endsLong(fact: Fact): boolean {
    if (fact.type === 'hold-placed') {
      const { hold, scope } = fact.data as PayloadOf<typeof holdPlaced>;
      if (!IN_BED.has(scope)) return false;
      this.holds.set(hold, this.holds.get(hold) ?? fact);
    } else if (fact.type === 'hold-ended') {
      const { hold, placedBy } = fact.data as PayloadOf<typeof holdEnded>;
      if (!isQualified(fact.author) || this.holds.get(hold)?.id !== placedBy) return false;
      this.holds.delete(hold);
    } else if (fact.type === 'order-changed') {
      const { order } = fact.data as PayloadOf<typeof orderChanged>;
      if (order.about !== 'activity') return false;
      this.ordered = order.most === 'bed' || (this.ordered && !isQualified(fact.author));
    } else return false;
    if (this.ordered || this.holds.size > 0) {
      this.since ??= { value: true, fact: fact.id, at: fact.occurred };
      return false;
    }
    const since = this.since;
    this.since = null;
    return since !== null && fact.occurred - since.at >= this.long;
  }
}
const IN_BED: ReadonlySet<string> = new Set(['out-of-bed', 'raising-the-back', 'all-including-turning']);

/** Back from surgery, or arrived straight from theatre. */
function isFromSurgery(fact: Fact): boolean {
  if (fact.type === 'stay-begun') return (fact.data as PayloadOf<typeof stayBegun>).from === 'theatre';
  if (fact.type !== 'trigger-recorded') return false;
  return (fact.data as PayloadOf<typeof triggerRecorded>).kind === 'return-from-surgery';
}

function stagesOf(fact: Fact<PayloadOf<typeof assessmentRecorded>>, protocols: ProtocolLookup) {
  const met = meaningsMet(fact.data, protocols);
  const { id, version } = fact.data.protocol;
  const stages = protocols(id, version)?.stages ?? [];
  const free = fact.data.stages.filter((s) => s.outcome === 'met' && s.how === 'free').map((s) => s.stage);
  return {
    up: met.has('stand') || met.has('turn') || met.has('walk'),
    freeThoughFirst: free.filter((s) => stages.find(({ id: stage }) => stage === s)?.firstTimeSecured),
  };
}

function isDoneInSession(fact: Fact): boolean {
  if (fact.type !== 'session-recorded' || !isQualified(fact.author)) return false;
  const { session } = fact.data as PayloadOf<typeof sessionRecorded>;
  return session.firstTimeUp && session.outcome === 'done' && session.events.length === 0;
}
