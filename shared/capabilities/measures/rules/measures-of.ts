/** The walking measures of a stay for which a therapist turned them on. */
import { isQualified } from '../../../kernel/author.ts';
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { MeasuresView } from '../../board/activity-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { walkingMeasured, walkingMeasuresSwitched } from '../events.ts';
import { changeSince } from './change-since.ts';
import { judgeMeasure, sources } from './judge-measure.ts';

type Measured = PayloadOf<typeof walkingMeasured>;
export type MeasuredFact = Fact<Measured>;

/**
 * Facts in order; those after the instant asked about do not count. Null while the measures are off.
 * The last of each kind, newest first, each as it reads and with the change since the one before.
 */
export function measuresOf(
  facts: readonly Fact[],
  t: EpochMs,
  rules: Pick<RulesDocument, 'walking'>,
): MeasuresView | null {
  const on = turnedOn(facts, t);
  if (!on) return null;
  const newestFirst = facts
    .filter((f): f is MeasuredFact => f.type === 'walking-measured' && f.occurred <= t)
    .toReversed();
  const last = newestFirst.filter(
    (f, i) => newestFirst.findIndex((g) => g.data.measure.kind === f.data.measure.kind) === i,
  );
  return { event: on.id, last: last.map((fact) => lineOf(fact, newestFirst, rules)) };
}

function lineOf(
  fact: MeasuredFact,
  newestFirst: readonly MeasuredFact[],
  { walking }: Pick<RulesDocument, 'walking'>,
): MeasuresView['last'][number] {
  const { measure, readBy } = fact.data;
  const judged = judgeMeasure(measure, readBy, walking);
  const earlier = newestFirst.slice(newestFirst.indexOf(fact) + 1).map((f) => f.data.measure);
  const change = changeSince(measure, earlier, walking);
  return {
    event: fact.id,
    at: fact.occurred,
    words: judged.words,
    says: change ? `${judged.says} ${change.says}` : judged.says,
    source: change?.source ? sources(judged.source, change.source) : judged.source,
    warnings: [
      ...judged.warnings,
      ...(isQualified(fact.author) ? [] : ['Entered by someone who does not take this measure: repeat it.']),
    ],
  };
}

/**
 * The entry that turned them on. Only a therapist's counts; turning them off counts from anyone, and
 * at one instant off stands. Common practice, no source.
 */
function turnedOn(facts: readonly Fact[], t: EpochMs): Fact | null {
  let on: Fact | null = null;
  let offAt = -Infinity;
  for (const fact of facts) {
    if (fact.type !== 'walking-measures-switched' || fact.occurred > t) continue;
    if (!(fact.data as PayloadOf<typeof walkingMeasuresSwitched>).on) {
      on = null;
      offAt = fact.occurred;
    } else if (fact.author.role === 'therapist' && fact.occurred > offAt) {
      on = fact;
    }
  }
  return on;
}
