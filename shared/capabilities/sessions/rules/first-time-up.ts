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

/**
 * First time up since surgery is still ahead: from the return until a check by a qualified author
 * clears standing, or a qualified author records that first time up as done with nothing going
 * wrong. Facts up to the instant asked about, in order. Source: design, "first time up" row.
 */
export function firstTimeUpPending(facts: readonly Fact[], protocols: ProtocolLookup): Stated<true> | null {
  let pending: Stated<true> | null = null;
  for (const fact of facts) {
    if (isFromSurgery(fact)) pending = { value: true, fact: fact.id, at: fact.occurred };
    else if (pending && fact.occurred > pending.at && isDone(fact, protocols)) pending = null;
  }
  return pending;
}

/** Back from surgery, or arrived straight from theatre. */
function isFromSurgery(fact: Fact): boolean {
  if (fact.type === 'stay-begun') return (fact.data as PayloadOf<typeof stayBegun>).from === 'theatre';
  if (fact.type !== 'trigger-recorded') return false;
  return (fact.data as PayloadOf<typeof triggerRecorded>).kind === 'return-from-surgery';
}

function isDone(fact: Fact, protocols: ProtocolLookup): boolean {
  if (isCheck(fact)) {
    const met = meaningsMet(fact.data as PayloadOf<typeof assessmentRecorded>, protocols);
    return met.has('stand') || met.has('turn') || met.has('walk');
  }
  if (fact.type !== 'session-recorded' || !isQualified(fact.author)) return false;
  const { session } = fact.data as PayloadOf<typeof sessionRecorded>;
  return session.firstTimeUp && session.outcome === 'done' && session.events.length === 0;
}
