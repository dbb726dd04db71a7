/**
 * What stands beside the plan and changes none of it: infection steps in the room, when the person is
 * expected to leave, the one line for the bedside. Of each the last one told counts.
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import { toEpoch } from '../../../kernel/times.ts';
import type { StayView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { isolationSet, leavingExpected, therapistLineSet } from '../events.ts';

export type BesidePlan = Pick<StayView, 'isolation' | 'leaving' | 'therapistLine'>;

/** Facts up to the instant asked about, in order. */
export function besidePlan(facts: readonly Fact[]): BesidePlan {
  let isolation = false;
  let leaving: BesidePlan['leaving'] = null;
  let therapistLine: BesidePlan['therapistLine'] = null;
  for (const fact of facts) {
    if (fact.type === 'isolation-set') isolation = (fact.data as PayloadOf<typeof isolationSet>).on;
    if (fact.type === 'leaving-expected') {
      const { at } = fact.data as PayloadOf<typeof leavingExpected>;
      leaving = at === null ? null : { at: toEpoch(at), event: fact.id };
    }
    if (fact.type === 'therapist-line-set') {
      const { line } = fact.data as PayloadOf<typeof therapistLineSet>;
      therapistLine = line ? { line, by: fact.author.staff, at: fact.occurred, event: fact.id } : null;
    }
  }
  return { isolation, leaving, therapistLine };
}
