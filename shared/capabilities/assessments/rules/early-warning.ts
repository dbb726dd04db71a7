/**
 * The early-warning score as a fact of the stay: the last one while it still says something of now,
 * and, on a ward that turned it on, the trigger it amounts to. National Early Warning Score (NEWS) 2,
 * Royal College of Physicians 2017. A score by someone who may not free can only add.
 */
import { isQualified } from '../../../kernel/author.ts';
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { StayView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { EarlyWarning } from '../values.ts';
import { HIGHEST_SCORE, HIGHEST_WITHOUT_THREE } from './news2-chart.ts';

type ScoreFact = Fact<EarlyWarning>;
export const isScore = (fact: Fact): fact is ScoreFact => fact.type === 'early-warning-recorded';

/** A parameter at 3 weighs beside an equal total; the total weighs first. */
const worse = (a: EarlyWarning, b: EarlyWarning): boolean =>
  a.score > b.score || (a.score === b.score && a.anyThree && !b.anyThree);

/**
 * The score that counts at `t`; null when there is none that is recent enough. The last one of a
 * qualified author counts; of two of one instant, and from someone who may not free, the worse.
 * Facts up to `t`, in order. `note` is told each later instant at which a score gets too old.
 */
export function earlyWarningOf(
  facts: readonly Fact[],
  t: EpochMs,
  rules: RulesDocument,
  note: (at: EpochMs) => void,
): StayView['earlyWarning'] {
  const recent = rules.earlyWarning.hours.value * HOUR;
  let last: ScoreFact | null = null;
  for (const fact of facts) {
    if (!isScore(fact) || fact.occurred + recent <= t) continue;
    note(fact.occurred + recent);
    const replaces = isQualified(fact.author) && fact.occurred !== last?.occurred;
    if (last === null || replaces || worse(fact.data, last.data)) last = fact;
  }
  return last && { score: last.data.score, anyThree: last.data.anyThree, at: last.occurred, event: last.id };
}

/**
 * By the entry that amounts to a trigger, its words; empty where the ward has it off. A lower score
 * later closes nothing: a staged check does.
 */
export function earlyWarningRises(
  facts: readonly Fact[],
  { earlyWarning: limits }: RulesDocument,
): ReadonlyMap<EventId, string> {
  if (!limits.on.value) return NONE;
  const rises = new Map<EventId, string>();
  // What the next score is measured against: the last one of a qualified author, or a lower one since.
  let before: number | null = null;
  for (const fact of facts) {
    if (!isScore(fact)) continue;
    const { score, anyThree } = fact.data;
    const words =
      score >= limits.totalFrom.value
        ? `Early-warning score ${score}, ${limits.totalFrom.value} or more`
        : anyThree && limits.anyThree.value
          ? `Early-warning score ${score}, one parameter at 3`
          : before !== null && score - before >= limits.riseBy.value
            ? `Early-warning score risen from ${before} to ${score}`
            : null;
    if (words !== null) rises.set(fact.id, words);
    before = before === null || isQualified(fact.author) ? score : Math.min(before, score);
  }
  return rises;
}
const NONE: ReadonlyMap<EventId, string> = new Map();

/**
 * Why such a score cannot be, or null: a parameter at 3 makes at least 3 in all, and with none at 3
 * the chart reaches 12. Source: Royal College of Physicians 2017, chart 1.
 */
export function impossibleScore({ score, anyThree }: EarlyWarning): string | null {
  if (anyThree && score < 3) return `one parameter at 3 makes a score of at least 3, not ${score}`;
  if (!anyThree && score > HIGHEST_WITHOUT_THREE) {
    return `a score of ${score} cannot be without one parameter at 3: without one it reaches ${HIGHEST_WITHOUT_THREE} of ${HIGHEST_SCORE} at most`;
  }
  return null;
}
