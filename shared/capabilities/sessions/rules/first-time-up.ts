import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { assessmentRecorded } from '../../assessments/events.ts';
import { meaningsMet } from '../../assessments/rules/meanings-met.ts';
import type { ProtocolLookup } from '../../assessments/rules/protocol.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Stated } from '../../handling/rules/types.ts';
import type { triggerRecorded } from '../../orders/events.ts';
import { isCheck } from '../../orders/rules/triggers.ts';
import type { stayBegun } from '../../stays/events.ts';
import type { sessionRecorded } from '../events.ts';

/** `to-be-repeated`: stood or stepped free where the protocol asks to be held safe the first time. */
export type FirstTimeUp = Stated<true | 'to-be-repeated'>;

/**
 * First time up since surgery is still ahead: from the return until a check by a qualified author
 * clears standing, or a qualified author records that first time up as done with nothing going
 * wrong. A stage that the protocol wants held safe the first time and that was done free is to be
 * repeated first. Facts up to the instant asked about, in order. Source: design, "first time up"
 * row and "free, secured".
 */
export function firstTimeUpPending(facts: readonly Fact[], protocols: ProtocolLookup): FirstTimeUp | null {
  let pending: FirstTimeUp | null = null;
  let doneOnce = new Set<string>();
  for (const fact of facts) {
    if (isFromSurgery(fact)) {
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
  return pending;
}

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
