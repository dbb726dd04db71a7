import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { OrdersThen } from '../../assessments/rules/orders-then.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { TriggerKind } from '../../orders/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { sessionRecorded } from '../events.ts';
import type { Session } from '../values.ts';
import { beyondStopLimits, type OxygenTarget } from './stop-limits.ts';

/** What a person's own body or a line did; when the equipment fails that says nothing of the person. */
export const isOfThePerson = (event: Session['events'][number]): boolean => event !== 'equipment-fault';

/**
 * The trigger that a session amounts to: lowered to the floor counts as a fall; anything else that went
 * wrong with the person, or a session stopped early, counts as a failed attempt. Null for an ordinary
 * session. Common practice, no source.
 */
export function wentWrong(session: Session): Extract<TriggerKind, 'fall' | 'failed-attempt'> | null {
  if (session.events.includes('lowered-to-floor')) return 'fall';
  return session.outcome === 'stopped' || session.events.some(isOfThePerson) ? 'failed-attempt' : null;
}

/** What went wrong with the person in a session, in words; null when nothing was named. */
export function wrongWords({ events }: Session): string | null {
  const named = [...new Set(events)].filter(isOfThePerson).map((e) => e.replaceAll('-', ' '));
  return named.length > 0 ? `Something went wrong in a session: ${named.join(', ')}` : null;
}

/**
 * Sessions with a reading, an effort or a pain beyond a stop limit of the ward, or a saturation below
 * the person's own target of that time, by their entry with the words: each counts as a failed attempt,
 * whatever its outcome says. Common practice, no source; the limits carry theirs. Facts in order.
 */
export function sessionsBeyondStop(
  facts: readonly Fact[],
  rules: RulesDocument,
): ReadonlyMap<EventId, string> {
  let beyond: Map<EventId, string> | null = null;
  const orders = new OrdersThen(rules.start.saturationBelow.value);
  for (const fact of facts) {
    if (fact.type === 'order-changed') orders.take(fact);
    if (fact.type !== 'session-recorded') continue;
    const { session } = fact.data as PayloadOf<typeof sessionRecorded>;
    const words = beyondWords(session, orders.oxygenTarget, rules);
    if (words !== null) (beyond ??= new Map()).set(fact.id, words);
  }
  return beyond ?? NONE;
}
const NONE: ReadonlyMap<EventId, string> = new Map();

interface Kept {
  readonly rules: RulesDocument;
  readonly low: number | undefined;
  readonly words: string | null;
}
/** Worked out once for each session: a board asks again at every view. */
const kept = new WeakMap<Session, Kept>();
function beyondWords(session: Session, oxygenTarget: OxygenTarget, rules: RulesDocument): string | null {
  const known = kept.get(session);
  if (known && known.rules === rules && known.low === oxygenTarget?.low) return known.words;
  const said = beyondStopLimits(session, { oxygenTarget, rules }).map((r) => r.words);
  const words = said.length > 0 ? `A stop limit was passed: ${[...new Set(said)].join('; ')}` : null;
  kept.set(session, { rules, low: oxygenTarget?.low, words });
  return words;
}
