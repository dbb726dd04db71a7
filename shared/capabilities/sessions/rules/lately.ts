/** What whoever goes next asks of the sessions so far: the last one, the last refusal, the last meal, the ward day before. */
import type { StayView } from '../../board/view.ts';
import type { EpochMs } from '../../../kernel/times.ts';
import type { Period } from '../../wards/context.ts';
import { amountsOf, type SessionFact } from './activity.ts';

type Lately = NonNullable<StayView['lately']>;

/**
 * @param before the ward day before this one
 * @param began when the stay began: a day on which the person was here only in part says nothing
 */
export function latelyOf(sessions: readonly SessionFact[], before: Period, began: EpochMs): Lately {
  return {
    last: lastOf(sessions),
    saidNo: latest(sessions, ({ session }) => session.notDone?.group === 'said-no'),
    meal: latest(sessions, ({ session }) => session.occasion === 'meal' && session.outcome !== 'not-done'),
    yesterday: began > before.from ? null : dayOf(sessions, before),
  };
}

function lastOf(sessions: readonly SessionFact[]): Lately['last'] {
  const last = byEnd(sessions);
  if (!last) return null;
  const { session, fact, from, to } = last;
  return {
    event: fact.id,
    from,
    to,
    outcome: session.outcome,
    notDone: session.notDone?.group ?? null,
    occasion: session.occasion,
    activities: [...session.activities],
    metres: session.metres ?? null,
    minutesOutOfBed: session.minutesOutOfBed ?? null,
    people: session.help?.people ?? null,
    aid: session.help?.aid ?? null,
    events: [...session.events],
  };
}

function latest(sessions: readonly SessionFact[], is: (s: SessionFact) => boolean): Lately['meal'] {
  const last = byEnd(sessions.filter(is));
  return last && { at: last.to, event: last.fact.id };
}

/** The one that ended last; of one instant the later in order. */
function byEnd(sessions: readonly SessionFact[]): SessionFact | null {
  let last: SessionFact | null = null;
  for (const s of sessions) if (!last || s.to >= last.to) last = s;
  return last;
}

function dayOf(sessions: readonly SessionFact[], day: Period): Lately['yesterday'] {
  const { recorded, timesUp } = amountsOf(sessions, day, null);
  return { recorded, timesUp };
}
