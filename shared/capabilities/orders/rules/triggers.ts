/**
 * Triggers: what ended trust early, and which of them are still open. Besides those recorded as
 * such, an arrival, an order, an attachment, a session that went wrong and a correction that may
 * have lowered help each act as one. Common practice, no source, but for the row in the design.
 */
import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { assessmentRecorded } from '../../assessments/events.ts';
import type { ProtocolLookup } from '../../assessments/rules/protocol.ts';
import type { Fact } from '../../corrections/facts.ts';
import { scopesTold, type ScopeKind } from '../../stays/rules/scope.ts';
import type { sessionRecorded } from '../../sessions/events.ts';
import { wentWrong, wrongWords } from '../../sessions/rules/what-went-wrong.ts';
import type { triggerRecorded } from '../events.ts';
import type { TriggerKind } from '../values.ts';
import { orderGoneBeyond } from './beyond-orders.ts';
import { ordersInForce } from './orders.ts';
import { howFar, isReadable } from './reach.ts';

export interface Trigger {
  readonly event: EventId;
  readonly kind: TriggerKind;
  readonly at: EpochMs;
  readonly words: string;
}

export const TRIGGER_WORDS: Readonly<Record<TriggerKind, string>> = {
  arrival: 'Arrived, not checked here yet',
  'return-from-surgery': 'Back from surgery',
  'return-from-dialysis': 'Back from dialysis',
  sedation: 'Sedated',
  'block-on': 'Nerve block on',
  'block-off': 'Nerve block off',
  fall: 'Fall',
  faint: 'Fainted',
  seizure: 'Seizure',
  'low-glucose': 'Low glucose',
  bleed: 'Bleeding',
  transfusion: 'Transfusion',
  'new-symptom': 'New symptom',
  'new-confusion': 'New confusion',
  'order-change': 'Order changed',
  'attachment-change': 'Attachment added or removed',
  'sheath-out': 'Sheath out',
  'suspected-clot': 'Suspected clot',
  'failed-attempt': 'An attempt failed or was stopped',
  'step-down-from-intensive-care': 'Came from intensive care',
  'asked-to-look-again': 'Asked to look again before the next move',
  'board-wrong': 'Somebody says the board is wrong',
  'early-warning-rise': 'Early-warning score risen',
};

/** What was seen before the comfort or the clinician's plan is old news when the staged check applies again. */
const BACK = 'The staged check applies again: look before the next move';

/** Light ones: a nurse's confirm answers them. All others need a staged check. */
export const CONFIRM_ANSWERS: ReadonlySet<TriggerKind> = new Set<TriggerKind>([
  'attachment-change',
  'asked-to-look-again',
  'board-wrong',
]);
/** After these a staged check answers only with its pressure set, unless it names the trigger. */
export const NEEDS_PRESSURE_SET: ReadonlySet<TriggerKind> = new Set<TriggerKind>(['faint', 'bleed']);

/**
 * After these a check answers only when it went as far as what stands cleared, or found a stage not
 * met: a look at the person in bed says nothing of the walk that was cleared before a fall. Naming
 * the trigger does not change that. Common practice, no source.
 */
export const NEEDS_AS_FAR: ReadonlySet<TriggerKind> = new Set<TriggerKind>([
  'fall',
  'faint',
  'seizure',
  'low-glucose',
  'bleed',
  'transfusion',
  'new-symptom',
  'new-confusion',
  'suspected-clot',
  'sheath-out',
  'block-on',
  'block-off',
  'failed-attempt',
  'step-down-from-intensive-care',
  'early-warning-rise',
]);

/** How far the checks so far have cleared the person, and whether one more goes as far. */
class Reach {
  private cleared = -1;
  /** Takes the check in and says whether it tested what stood cleared, or found less. */
  goesAsFar(check: Fact<Assessment>, protocols: ProtocolLookup): boolean {
    const { tested, lost } = howFar(check, protocols);
    const asFar = lost !== null || tested >= this.cleared;
    this.cleared = lost === null ? Math.max(this.cleared, tested) : Math.min(this.cleared, lost - 1);
    return asFar;
  }
}

/** The trigger that a fact amounts to, if any. */
export function triggerOf(fact: Fact): Trigger | null {
  const kind = triggerKindOf(fact);
  return kind && { event: fact.id, kind, at: fact.occurred, words: wordsOf(fact, kind) };
}

/** A failed attempt says what went wrong in it, where that was named. */
function wordsOf(fact: Fact, kind: TriggerKind): string {
  const told = kind === 'failed-attempt' && fact.type === 'session-recorded';
  const named = told ? wrongWords((fact.data as PayloadOf<typeof sessionRecorded>).session) : null;
  return named ?? TRIGGER_WORDS[kind];
}

function triggerKindOf(fact: Fact): TriggerKind | null {
  switch (fact.type) {
    case 'trigger-recorded':
      return (fact.data as PayloadOf<typeof triggerRecorded>).kind;
    case 'stay-begun':
      return 'arrival';
    case 'order-changed':
      return 'order-change';
    case 'attachment-added':
    case 'attachment-removed':
      return 'attachment-change';
    case 'session-recorded':
      return wentWrong((fact.data as PayloadOf<typeof sessionRecorded>).session);
    default:
      return null;
  }
}

type Assessment = PayloadOf<typeof assessmentRecorded>;

/** A check that answers: by a qualified author, with something tested. */
export const isCheck = (fact: Fact): fact is Fact<Assessment> =>
  fact.type === 'assessment-recorded' &&
  isQualified(fact.author) &&
  (fact.data as Assessment).stages.some((s) => s.outcome !== 'not-tested');
export const isConfirm = (fact: Fact): boolean => fact.type === 'plan-confirmed' && isQualified(fact.author);

export interface Triggers {
  /** Oldest first. */
  readonly seen: readonly Trigger[];
  readonly open: readonly Trigger[];
}

const NO_WORDS: ReadonlyMap<EventId, string> = new Map();

/** Facts up to the instant asked about, in order. */
export function triggersOf(
  facts: readonly Fact[],
  lookAgain: readonly { readonly event: EventId; readonly at: EpochMs; readonly words: string }[],
  protocols: ProtocolLookup,
  /** Early-warning scores that amount to a trigger, by their entry, with the words. */
  rises: ReadonlyMap<EventId, string> = NO_WORDS,
  /** Sessions beyond a stop limit, by their entry, with the words: failed attempts where nothing worse. */
  beyondStop: ReadonlyMap<EventId, string> = NO_WORDS,
): Triggers {
  const seen: Trigger[] = [];
  let open: Trigger[] = [];
  let named: { readonly at: EpochMs; readonly ids: readonly EventId[]; readonly asFar: boolean } | null =
    null;
  let checkedSince = -Infinity;
  const reach = new Reach();
  const scopes = new Map(scopesTold(facts).counted.map((f) => [f.id, f.data.scope]));
  let scope: ScopeKind = 'staged';
  facts.forEach((fact, i) => {
    const trigger =
      derived(fact, 'early-warning-rise', rises) ??
      withLimits(triggerOf(fact), beyondStop) ??
      derived(fact, 'failed-attempt', beyondStop);
    // A check that nobody can read answers nothing.
    const checks = isCheck(fact) && isReadable(fact, protocols);
    const asFar = checks && reach.goesAsFar(fact, protocols);
    if (trigger) {
      seen.push(trigger);
      const answered =
        named?.at === trigger.at &&
        named.ids.includes(trigger.event) &&
        (named.asFar || !NEEDS_AS_FAR.has(trigger.kind));
      if (!answered) open.push(trigger);
    } else if (open.length > 0 && checks) {
      const { answers, depth } = fact.data;
      const beyond =
        open.some((o) => o.kind === 'order-change') &&
        orderGoneBeyond(fact, ordersInForce(facts.slice(0, i)).forPlan, protocols) !== null;
      open = open.filter(
        (o) =>
          (NEEDS_AS_FAR.has(o.kind) && !asFar) ||
          (!answers.includes(o.event) &&
            (isOfSameInstant(o, fact) ||
              (NEEDS_PRESSURE_SET.has(o.kind) && depth !== 'full-with-pressure') ||
              (o.kind === 'order-change' && beyond))),
      );
    } else if (scopes.has(fact.id)) {
      const before = scope;
      scope = scopes.get(fact.id)!;
      if (scope === 'staged' && before !== 'staged') {
        const back: Trigger = { event: fact.id, kind: 'asked-to-look-again', at: fact.occurred, words: BACK };
        seen.push(back);
        open.push(back);
      }
    } else if (isConfirm(fact)) {
      open = open.filter((o) => !CONFIRM_ANSWERS.has(o.kind) || isOfSameInstant(o, fact));
    }
    if (checks) named = { at: fact.occurred, ids: fact.data.answers, asFar };
    if (checks || isConfirm(fact)) checkedSince = Math.max(checkedSince, fact.occurred);
  });
  for (const { event, at, words } of lookAgain) {
    const trigger: Trigger = { event, kind: 'asked-to-look-again', at, words };
    seen.push(trigger);
    if (checkedSince <= at) open.push(trigger);
  }
  return { seen: seen.toSorted(byTime), open: open.toSorted(byTime) };
}

/** A trigger that only the ward's limits make of an entry. */
function derived(fact: Fact, kind: TriggerKind, byEntry: ReadonlyMap<EventId, string>): Trigger | null {
  const words = byEntry.get(fact.id);
  return words === undefined ? null : { event: fact.id, kind, at: fact.occurred, words };
}

/** A failed attempt in which a limit was passed as well says both. */
function withLimits(trigger: Trigger | null, beyondStop: ReadonlyMap<EventId, string>): Trigger | null {
  const passed = trigger?.kind === 'failed-attempt' ? beyondStop.get(trigger.event) : undefined;
  return trigger && passed !== undefined ? { ...trigger, words: `${trigger.words}. ${passed}` } : trigger;
}

/** A trigger of the very instant of a check is not answered by it, unless the check names it. */
const isOfSameInstant = (trigger: Trigger, check: Fact): boolean =>
  trigger.kind !== 'arrival' && trigger.at === check.occurred;

const byTime = (a: Trigger, b: Trigger): number =>
  a.at - b.at || (a.event < b.event ? -1 : a.event > b.event ? 1 : 0);
