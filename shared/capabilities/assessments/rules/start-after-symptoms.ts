/**
 * What the last check saw of symptoms, and of a low pressure on standing, for "may we start": it asks
 * first. Each question by itself: a later answer by someone qualified takes the place of an earlier
 * one, anyone's worse one counts (design, rule 2), and a check that did not ask says nothing of it.
 */
import { isQualified } from '../../../kernel/author.ts';
import { toEpoch } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { StartWhy } from './counting.ts';
import type { Assessment } from './judge-stage.ts';
import type { ProtocolLookup } from './protocol.ts';
import type { TierJudgement } from './tier.ts';

interface AfterInput {
  /** Effective facts up to now, in order. */
  readonly facts: readonly Fact[];
  readonly rules: RulesDocument;
  readonly protocols: ProtocolLookup;
  readonly tier: TierJudgement;
}
/** What a check says of one question: a reason, nothing against it, or that it did not ask. */
type Answer = StartWhy | 'well' | 'not asked';

const PRACTICE = 'common practice, no source';
const SINCE = '; Stand not cleared since';

export function afterSymptoms({ facts, rules, protocols, tier }: AfterInput): StartWhy[] {
  const checks = facts.filter((f): f is Fact<Assessment> => f.type === 'assessment-recorded');
  // A check that found the person unwell on rising, or low, takes back a Stand seen before it: whoever has stood since is well.
  const onRising = tier.seen.stages.get('stand')?.outcome === 'met' ? [] : checks;
  return [
    standsOf(checks, (f) => atTheStart(f, protocols)),
    standsOf(onRising, symptomsOnRising),
    standsOf(onRising, (f) => lowOnStanding(f, rules)),
  ].filter((one) => one !== null);
}

/** Of two checks of one time the safer stands. */
function standsOf(
  checks: readonly Fact<Assessment>[],
  ask: (check: Fact<Assessment>) => Answer,
): StartWhy | null {
  let wellAt = -Infinity;
  for (const check of checks.toReversed()) {
    if (check.occurred < wellAt) return null;
    const answer = ask(check);
    if (typeof answer === 'object') return answer;
    if (answer === 'well' && isQualified(check.author)) wellAt = check.occurred;
  }
  return null;
}

const why = (words: string, { id, occurred }: Fact): StartWhy => ({
  word: 'ask-first',
  words,
  limit: null,
  source: PRACTICE,
  takenAt: occurred,
  facts: [id],
});

function atTheStart(check: Fact<Assessment>, protocols: ProtocolLookup): Answer {
  const { protocol, stages } = check.data;
  const clear = protocols(protocol.id, protocol.version)?.stages.find((s) => s.shows === 'clear');
  // Written down twice in one check, each time counts.
  const records = stages.filter((s) => s.stage === clear?.id);
  if (records.some((r) => r.symptom)) return why('A symptom at the start of the last check', check);
  return records.some((r) => r.outcome !== 'not-tested') ? 'well' : 'not asked';
}

function symptomsOnRising(check: Fact<Assessment>): Answer {
  const symptoms = check.data.risingSymptoms;
  if (!symptoms) return 'not asked';
  if (symptoms.length === 0) return 'well';
  const named = symptoms.map((s) => s.replaceAll('-', ' ')).join(', ');
  return why(`symptoms on rising at the last check (${named})${SINCE}`, check);
}

function lowOnStanding(check: Fact<Assessment>, { rising }: RulesDocument): Answer {
  const { value: limit, source } = rising.standingSystolicBelow;
  const standing = check.data.readings.flatMap((r) =>
    r.kind === 'pressure' && r.posture === 'standing' ? [r] : [],
  );
  if (standing.length === 0) return 'not asked';
  const lowest = standing.reduce((low, r) => (r.systolic < low.systolic ? r : low));
  if (lowest.systolic >= limit) return 'well';
  const words = `standing systolic ${lowest.systolic} mmHg at the last check is below ${limit}${SINCE}`;
  return { ...why(words, check), limit, source, takenAt: toEpoch(lowest.at) };
}
