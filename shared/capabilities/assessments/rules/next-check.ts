/**
 * Where the next staged check begins, and in which depth. A suggestion: a deeper check, or one that
 * begins earlier, is never wrong. Source: design, rows "assessment" and "validity" (common practice).
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import { ifAny, type Because } from '../../board/because.ts';
import type { NextCheckView, TrustView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import { arrivalOf } from '../../stays/rules/standing.ts';
import type { PlanInput } from '../../handling/rules/types.ts';
import { CONFIRM_ANSWERS, isConfirm } from '../../orders/rules/triggers.ts';
import type { TriggerKind } from '../../orders/values.ts';
import type { sessionRecorded } from '../../sessions/events.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Assessment } from './judge-stage.ts';
import type { MayStart } from './may-start-now.ts';
import type { Protocol, ProtocolStage } from './protocol.ts';
import { stageKey } from './stage-standing.ts';
import type { TierJudgement } from './tier.ts';

export interface NextCheckInput {
  /** Effective facts up to `t`, in order. */
  readonly facts: readonly Fact[];
  readonly t: EpochMs;
  readonly rules: RulesDocument;
  /** The protocol in force on the ward: the newest published one, or the default. */
  readonly protocol: Protocol;
  readonly tier: TierJudgement;
  readonly trust: TrustView;
  readonly firstTimeUpPending: PlanInput['firstTimeUpPending'];
  /** Signs that stop a start: with them nobody watches an ordinary move. */
  readonly against: MayStart['signs'];
  readonly note: (at: EpochMs) => void;
}

/** After these, pressure may fall on rising. A new symptom may be dizziness: nobody has to say which. */
const PRESSURE_AFTER: ReadonlySet<TriggerKind> = new Set<TriggerKind>([
  'faint',
  'bleed',
  'transfusion',
  'new-symptom',
  'sedation',
  'return-from-surgery',
  'return-from-dialysis',
]);

const say = (rule: string, facts: readonly EventId[], words: string): Because => ({
  rule: `next-check/${rule}`,
  facts: [...facts],
  words,
});
const named = (stage: ProtocolStage): string => stage.word ?? stage.id;

/** The next check of a stay under the staged check, with its reasons. */
export function nextCheckOf(input: NextCheckInput): NextCheckView | null {
  const { tier, trust, facts, protocol } = input;
  const first = protocol.stages[0]!.id;
  const check = tier.assessment;
  if (!check || trust.state === 'not-known') {
    const words = 'The first check of the stay: with the pressure set';
    const because = [say('first', ifAny(arrivalOf(facts)), words)];
    return { depth: 'full-with-pressure', from: first, because };
  }
  const again = beginAgain(input, check);
  const pressure = withPressure(input, again);
  const reach = again.length > 0 ? null : reachOf(input, check);
  if (!reach) {
    const reasons = again.map(({ because }) => because);
    const because = [...pressure, ...reasons, say('from-first', [check.id], `Begins again at ${first}`)];
    return { depth: pressure.length > 0 ? 'full-with-pressure' : 'full', from: first, because };
  }
  if (pressure.length > 0) {
    const stand = protocol.stages.findIndex((s) => s.shows === 'stand');
    // The pressures begin before standing: a check that has them does not begin beyond that.
    const from = Math.max(stand < 0 ? reach.index : Math.min(reach.index, stand - 1), 0);
    return {
      depth: 'full-with-pressure',
      from: protocol.stages[from]!.id,
      because: [...pressure, reach.index < 0 ? reach.tooOld : beginsAt(input, from)],
    };
  }
  const from = Math.max(reach.index, 0);
  const begins = reach.index < 0 ? reach.tooOld : beginsAt(input, from);
  const watched = facts.findLast((f) => isConfirm(f) && f.occurred > check.occurred);
  const stopped = watched ? undefined : protocol.stages.find((s) => !tier.cleared.has(stageKey(protocol, s)));
  if (stopped) {
    return {
      depth: 'full',
      from: protocol.stages[from]!.id,
      because: [goesOn(input, stopped, check), begins],
    };
  }
  const nothing = 'Nothing changed and nothing open: a nurse watches one ordinary move';
  return {
    depth: 'confirm',
    from: protocol.stages[from]!.id,
    because: [say('nothing-changed', [(watched ?? check).id], nothing), begins],
  };
}

interface Again {
  readonly because: Because;
  readonly asksPressure: boolean;
}

/** Why the check begins again at the first stage; empty when it may go on from the last one cleared. */
function beginAgain(input: NextCheckInput, check: Fact): Again[] {
  const { trust, tier, protocol, facts, firstTimeUpPending } = input;
  const out: Again[] = [];
  const add = (asksPressure: boolean, because: Because) => out.push({ asksPressure, because });
  if (firstTimeUpPending) {
    const words =
      firstTimeUpPending.value === true
        ? 'The first time up since surgery or bed rest is still ahead'
        : 'The first time up since surgery or bed rest is to be repeated, held safe';
    add(true, say('first-time-up', [firstTimeUpPending.fact], words));
  }
  for (const open of trust.openTriggers) {
    const light = CONFIRM_ANSWERS.has(open.kind) ? ' (watching one ordinary move answers it too)' : '';
    const dizzy = wasDizzy(facts.find((f) => f.id === open.event));
    const untold = dizzy && !open.words.includes('dizzy');
    const words = `${open.words}${untold ? ', dizzy' : ''}${light}`;
    add(dizzy || PRESSURE_AFTER.has(open.kind), say('trigger', [open.event], words));
  }
  for (const c of trust.conflicts) add(false, say('conflict', [c.safer, c.other], c.words));
  for (const fact of facts) {
    if (fact.occurred < check.occurred || !hadSymptom(fact)) continue;
    add(true, say('symptom', [fact.id], 'A symptom at the last check'));
  }
  const used = tier.seen.protocol;
  if (used && (used.id !== protocol.id || used.version !== protocol.version)) {
    const words = 'The ward works by another protocol since the last check';
    add(false, say('protocol-changed', [check.id], words));
  }
  if (out.length === 0 && trust.state === 're-check') {
    for (const { facts: of, words } of trust.because) add(false, say('ran-out', of, words));
  }
  for (const { facts: of, words } of input.against) add(false, say('not-now', of, `Not now: ${words}`));
  return out;
}

function hadSymptom(fact: Fact): boolean {
  if (fact.type !== 'assessment-recorded') return false;
  const { stages, risingSymptoms } = fact.data as Assessment;
  return Boolean(risingSymptoms?.length) || stages.some((s) => s.symptom);
}

function wasDizzy(fact: Fact | undefined): boolean {
  if (fact?.type !== 'session-recorded') return false;
  return (fact.data as PayloadOf<typeof sessionRecorded>).session.events.includes('dizzy');
}

/** Why the pressures are measured; empty when a check without them will do. */
function withPressure({ tier }: NextCheckInput, again: readonly Again[]): Because[] {
  const out = again
    .filter((a) => a.asksPressure)
    .map(({ because }) => say('with-pressure', because.facts, `With the pressure set: ${because.words}`));
  if (tier.pressureDrop) {
    const words =
      'With the pressure set: pressure fell on rising, and no whole set since shows that it is over';
    out.push(say('pressure-drop', [tier.pressureDrop.fact], words));
  }
  const stand = tier.seen.stages.get('stand');
  if (stand && tier.cleared.has('stand') && !tier.seen.rising.everWhole) {
    const words = 'With the pressure set: stood here, and no whole set was ever measured in this stay';
    out.push(say('no-set-yet', [stand.fact.id], words));
  }
  return out;
}

interface Reach {
  /** Place in the protocol of the last stage that counts, with all before it; -1 when none does. */
  readonly index: number;
  readonly tooOld: Because;
}

/** How far what was cleared still counts: the shorter validity applies, whatever the tier's own is. */
function reachOf({ t, rules, protocol, tier, note }: NextCheckInput, check: Fact): Reach {
  const hours = rules.validity.unsettledHours;
  let index = -1;
  let old: EventId[] = [];
  for (const stage of protocol.stages) {
    const key = stageKey(protocol, stage);
    const standing = tier.cleared.has(key) ? tier.seen.stages.get(key) : undefined;
    if (!standing) break;
    const until = standing.at + hours.value * HOUR;
    if (t >= until) {
      old = [standing.fact.id];
      break;
    }
    note(until);
    index += 1;
  }
  const words = old.length
    ? `What was cleared is ${hours.value} h old or more: begins again at ${protocol.stages[0]!.id}`
    : `No stage is cleared: begins at ${protocol.stages[0]!.id}`;
  return { index, tooOld: say('from-first', old.length ? old : [check.id], words) };
}

function beginsAt({ protocol, tier, rules }: NextCheckInput, index: number): Because {
  const stage = protocol.stages[index]!;
  const standing = tier.seen.stages.get(stageKey(protocol, stage));
  const hours = rules.validity.unsettledHours.value;
  const words = `Begins at ${named(stage)}: cleared with all before it, each less than ${hours} h ago`;
  return say('from-last-cleared', ifAny(standing?.fact.id), words);
}

/** The last check stopped, or was not finished: the next one goes on. */
function goesOn({ tier, protocol }: NextCheckInput, stopped: ProtocolStage, check: Fact): Because {
  const standing = tier.seen.stages.get(stageKey(protocol, stopped));
  return standing
    ? say(
        'stopped',
        [standing.fact.id],
        `${named(stopped)} ${standing.outcome.replace('-', ' ')} at the last check`,
      )
    : say('not-finished', [check.id], `${named(stopped)} was not tested yet: the check goes on`);
}
