/** What sessions say of where the person is: sitting in the chair, and when the toilet was reached today. */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import { HOUR, toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { StayView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { triggerRecorded } from '../../orders/events.ts';
import type { Period, WardCalendar } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { SessionFact } from './activity.ts';

/**
 * The chair spell that runs, as the last session left it. It ends with whatever moved the person since:
 * a later session (one that was not done moved nobody), leaving the ward for a while, a fall; and when
 * the night begins, because what is told of the day is too old by then. It does not end at its
 * back-to-bed time: nobody has written down yet that they are back. Ours, practice.
 */
export function chairOf(
  sessions: readonly SessionFact[],
  facts: readonly Fact[],
  t: EpochMs,
  calendar: WardCalendar,
  rules: RulesDocument,
  note: (at: EpochMs) => void,
): StayView['chair'] {
  let last: SessionFact | null = null;
  for (const one of sessions) {
    if (one.session.outcome !== 'not-done' && (!last || one.to >= last.to)) last = one;
  }
  if (last?.session.left !== 'chair') return null;
  const { to: since, session, fact } = last;
  const night = nightAfter(since, calendar);
  note(night);
  if (t >= night || facts.some((f) => f.occurred >= since && movesThePerson(f))) return null;
  const backBy = session.backToBedBy
    ? toEpoch(session.backToBedBy)
    : since + rules.activity.chairSpellHours.value * HOUR;
  return { since, backBy, event: fact.id };
}

/** When the next night begins; in the night itself that is the evening after. */
function nightAfter(at: EpochMs, calendar: WardCalendar): EpochMs {
  const { is, until } = calendar.night(at);
  return is ? calendar.night(until).until : until;
}

const movesThePerson = (fact: Fact): boolean =>
  fact.type === 'went-off-ward' ||
  (fact.type === 'trigger-recorded' && (fact.data as PayloadOf<typeof triggerRecorded>).kind === 'fall');

/** When the toilet was reached on this ward day, oldest first. */
export const toiletTimes = (sessions: readonly SessionFact[], day: Period): EpochMs[] =>
  sessions
    .filter(({ session, from }) => from >= day.from && from < day.to && reachedToilet(session))
    .map(({ from }) => from)
    .toSorted((a, b) => a - b);

const reachedToilet = ({ outcome, occasion, activities }: SessionFact['session']): boolean =>
  (outcome === 'done' || outcome === 'part') && (occasion === 'toilet' || activities.includes('toilet'));
