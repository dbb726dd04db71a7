/**
 * What is in force or was seen and stands against starting, for "may we start": stages not met,
 * triggers nobody has looked at, holds, orders, attachments, help not waited for. Common practice, no
 * source, but for what the ward's documents say of each.
 */
import { isQualified } from '../../../kernel/author.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR } from '../../../kernel/times.ts';
import type { HoldView } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import { TRIGGER_HELP } from '../../handling/rules/trigger-help.ts';
import type { Capability, PlanInput } from '../../handling/rules/types.ts';
import { leavesBoneInDoubt } from '../../orders/rules/holds.ts';
import type { Triggers } from '../../orders/rules/triggers.ts';
import type { HoldScope } from '../../orders/values.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Cooperation } from '../values.ts';
import { findingsOf, type Assessment } from './judge-stage.ts';
import { judgeCooperation } from './may-start.ts';
import type { ProtocolLookup } from './protocol.ts';
import type { CountingInput, Found, StartWhy } from './counting.ts';
import type { TierJudgement } from './tier.ts';

const PRACTICE = 'common practice, no source';
const plain = (code: string) => code.replaceAll('-', ' ');
const why = (
  word: StartWhy['word'],
  words: string,
  facts: readonly (EventId | undefined)[],
  source = PRACTICE,
  takenAt: StartWhy['takenAt'] = null,
): StartWhy => ({
  word,
  words,
  limit: null,
  source,
  takenAt,
  facts: facts.filter((f) => f !== undefined),
});

/** Parts of the stage "may we start" that were not met at the last check, in the words of its document. */
export function stageReasons({ seen }: TierJudgement, protocols: ProtocolLookup): StartWhy[] {
  const standing = seen.stages.get('clear');
  if (!standing) {
    // Nothing stays cleared after a check that cannot be read and found less: nothing stays answered either.
    return seen.remarks
      .filter((r) => r.rule === 'tier/protocol-not-found')
      .slice(-1)
      .map(({ words, fact }) => why('ask-first', words, [fact.id], PRACTICE, fact.occurred));
  }
  if (standing.outcome !== 'not-met') return [];
  const { fact } = standing;
  const { protocol, stages } = fact.data as Assessment;
  const stage = protocols(protocol.id, protocol.version)?.stages.find((s) => s.shows === 'clear');
  // Written down twice in one check, each time counts.
  const records = stages.filter((s) => s.stage === stage?.id);
  if (!stage) return [];
  const failed = stage.parts.filter(
    (part) =>
      part.gate !== 'informs' &&
      records.some((record) => {
        const found = findingsOf(record, part);
        const oneSideDoes = part.gate === 'one-side' && found.some((f) => f.result === 'met');
        return found.some((f) => f.result === 'not-met') && !oneSideDoes;
      }),
  );
  const say = (words: string, source: string) => why('not-now', words, [fact.id], source, fact.occurred);
  const reasons = failed.map((part) => say(`${part.says}: not met at the last check`, part.source));
  if (records.some((record) => record.symptom) && stage.symptomStops) {
    reasons.push(say('A symptom at the start of the last check', stage.source));
  }
  // Not written down as not met, it is so by a sign, and of those the newest reading speaks.
  if (reasons.length > 0 || records.every((record) => record.outcome !== 'not-met')) return reasons;
  return [say(`${stage.word ?? stage.id}: not met at the last check`, stage.source)];
}

/** A trigger whose row keeps the person in bed is not now; every other one asks first. */
export const triggerReasons = ({ open }: Triggers, rules: RulesDocument): StartWhy[] =>
  open.map((o) =>
    why(
      TRIGGER_HELP[o.kind].holds.includes('edge-of-bed') ? 'not-now' : 'ask-first',
      o.kind === 'arrival' ? o.words : `${o.words}; not looked at since`,
      [o.event],
      o.kind === 'early-warning-rise' ? rules.earlyWarning.totalFrom.source : PRACTICE,
    ),
  );

const HOLD_SAYS: Readonly<Record<HoldScope, readonly [StartWhy['word'], string]>> = {
  walking: ['ask-first', 'hold on walking'],
  standing: ['ask-first', 'hold on standing: up to the edge of the bed only'],
  'out-of-bed': ['not-now', 'hold on getting out of bed'],
  'raising-the-back': ['not-now', 'hold on raising the back'],
  'all-including-turning': ['not-now', 'hold on all moves, turning too'],
};
const IN_DOUBT = 'spine, pelvis or a bone in doubt: do not move, ask';
export const holdReasons = (holds: readonly HoldView[]): StartWhy[] =>
  holds.map((h) => {
    const [word, says] = HOLD_SAYS[h.scope];
    const reason = plain(h.reason);
    const due = h.reviewDue ? '; HOLD REVIEW DUE' : '';
    const source = 'the hold on this stay';
    if (!leavesBoneInDoubt(h)) return why(word, `${says} (${reason})${due}`, [h.event], source);
    // The plan holds every move then, whatever the scope: nothing is said that goes up to somewhere.
    const on = h.scope === 'standing' ? 'hold on standing' : says;
    return why('not-now', `${on} (${reason}): ${IN_DOUBT}${due}`, [h.event], source);
  });

/** An order that only limits is no reason not to start; it is said where it keeps the person in bed or at its edge. */
export function orderReasons({ activity }: PlanInput['orders']): StartWhy[] {
  const by = 'the order in force';
  if (activity?.value === 'bed') return [why('not-now', 'order: stays in bed', [activity.fact], by)];
  if (activity?.value !== 'edge-of-bed') return [];
  return [why('ask-first', 'order: up to the edge of the bed only', [activity.fact], by)];
}

const WHO: Readonly<Record<string, string>> = {
  nobody: 'nobody disconnects it',
  nurse: 'a nurse disconnects it',
  'anyone-trained': 'anyone trained disconnects it',
};
export const attachmentReasons = (attachments: PlanInput['attachments']): StartWhy[] =>
  attachments
    .filter(
      ({ value }) =>
        value.needsOwnPerson || value.disconnects === 'nobody' || value.kind === 'oxygen-cylinder',
    )
    .map(({ value, fact }) => {
      const own = value.needsOwnPerson ? 'needs a person to itself; ' : '';
      return why('ask-first', `${plain(value.kind)}: ${own}${WHO[value.disconnects]}`, [fact]);
    });

/** The worst of the ward's window decides; what is not known is never taken as "yes". */
export function cooperationReasons(
  { waitsForHelp, followsInstructions }: Capability,
  { seen }: TierJudgement,
): StartWhy[] {
  const reasons: StartWhy[] = [];
  const saidBy = (says: (c: (typeof seen.cooperation)[number]['value']) => boolean) =>
    seen.cooperation.findLast((c) => says(c.value));
  const take = (found: ReturnType<typeof judgeCooperation>, by: ReturnType<typeof saidBy>) => {
    for (const { word, words, source } of found) {
      reasons.push(why(word, words, [by?.fact], source, by?.at ?? null));
    }
  };
  if (waitsForHelp === 'not known') {
    reasons.push(why('ask-first', 'not known whether the person waits for help: never alone', []));
  } else {
    take(
      judgeCooperation({ waitsForHelp, followsInstructions: 'yes' }),
      saidBy((c) => c.waitsForHelp === waitsForHelp),
    );
  }
  if (followsInstructions === 'not known') {
    reasons.push(why('ask-first', 'not known whether the person follows instructions', []));
  } else {
    take(
      judgeCooperation({ waitsForHelp: 'yes', followsInstructions }),
      saidBy((c) => c.followsInstructions === followsInstructions),
    );
  }
  return reasons;
}

const ASKED = [
  ['waitsForHelp', 'waits for help'],
  ['followsInstructions', 'follows instructions'],
] as const satisfies readonly (readonly [keyof Cooperation, string])[];

/**
 * What was seen of it too long ago says nothing of now. A "yes" by someone who may not free makes
 * nothing new (design, rule 2); what was never asked is not known rather than old.
 */
export function cooperationTooOld({ facts, t, rules, note }: CountingInput, found: Found): void {
  const window = rules.validity.cooperationWindowHours;
  const old = new Map<Fact, string[]>();
  for (const [question, name] of ASKED) {
    const last = facts.findLast((f) => {
      const said = f.type === 'assessment-recorded' ? (f.data as Assessment).cooperation : undefined;
      return said !== undefined && (isQualified(f.author) || said[question] !== 'yes');
    });
    if (!last) continue;
    const until = last.occurred + window.value * HOUR;
    if (until > t) note(until);
    else old.set(last, [...(old.get(last) ?? []), name]);
  }
  for (const [fact, names] of old) {
    const what = names.join(', ');
    found.notTaken.push(what);
    found.reasons.push({
      word: 'ask-first',
      words: `${what}: not seen for ${window.value} h or more, ask again`,
      limit: window.value,
      source: window.source,
      takenAt: fact.occurred,
      facts: [fact.id],
    });
  }
}
