/**
 * Who goes to see the person next. A visit is somebody's from the moment they take it until its end,
 * a session recorded after it began, somebody gives it back, another visit is taken, or the person
 * leaves. It says who goes, nothing of how to move anybody: no plan, trust or due time reads it.
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { StaffId } from '../../../kernel/ids.ts';
import { toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { VisitView } from '../../board/activity-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { visitGivenBack, visitHandedOver, visitTaken } from '../events.ts';
import type { secondGaveBack, secondNamed } from '../round-events.ts';

type Taken = PayloadOf<typeof visitTaken>;
type HandedOver = PayloadOf<typeof visitHandedOver>;
type GivenBack = PayloadOf<typeof visitGivenBack>;
type SecondNamed = PayloadOf<typeof secondNamed>;
type SecondGaveBack = PayloadOf<typeof secondGaveBack>;

export interface Visit extends VisitView {
  /** When it was taken, or handed to whoever has it now. */
  readonly since: EpochMs;
}

/** `facts` up to `t`, in order. `note` is told when the visit ends by itself. */
export function visitAt(
  facts: readonly Fact[],
  t: EpochMs,
  note: (at: EpochMs) => void = () => undefined,
): Visit | null {
  let visit: Visit | null = null;
  for (const fact of facts) {
    if (fact.occurred > t) break;
    visit = after(visit, fact);
  }
  if (!visit || visit.until <= t) return null;
  note(visit.until);
  return visit;
}

function after(visit: Visit | null, fact: Fact): Visit | null {
  const since = fact.occurred;
  switch (fact.type) {
    case 'visit-taken': {
      const { visit: id, by, second = null, from, until } = fact.data as Taken;
      return { visit: id, by, second, from: toEpoch(from), until: toEpoch(until), event: fact.id, since };
    }
    case 'visit-handed-over': {
      const { visit: id, to } = fact.data as HandedOver;
      if (!isThat(visit, id, since)) return visit;
      return { ...visit, by: to, second: visit.second === to ? null : visit.second, event: fact.id, since };
    }
    case 'visit-given-back':
      return isThat(visit, (fact.data as GivenBack).visit, since) ? null : visit;
    case 'second-named': {
      const { visit: id, second } = fact.data as SecondNamed;
      // Whoever has it does not go along with themselves.
      return isThat(visit, id, since) && visit.by !== second ? { ...visit, second, event: fact.id } : visit;
    }
    case 'second-gave-back': {
      const { visit: id, second } = fact.data as SecondGaveBack;
      return isThat(visit, id, since) && visit.second === second
        ? { ...visit, second: null, event: fact.id }
        : visit;
    }
    case 'session-recorded':
      return visit && endsIt(visit, fact) ? null : visit;
    case 'stay-ended':
      return null;
    default:
      return visit;
  }
}

/** One that had run out by then is nobody's to hand over. */
const isThat = (visit: Visit | null, id: string, at: EpochMs): visit is Visit =>
  visit !== null && visit.visit === id && visit.until > at;

/** Somebody else's care before it began leaves it standing; who took it may be early. */
const endsIt = (visit: Visit, { occurred, author }: Fact): boolean =>
  occurred >= visit.from || goes(visit, author.staff);

/** Whether this is one of the two who go. */
export const goes = (visit: Pick<VisitView, 'by' | 'second'>, staff: StaffId | null): boolean =>
  staff !== null && (visit.by === staff || visit.second === staff);

/** As the board shows it. */
export function visitOf(
  facts: readonly Fact[],
  t: EpochMs,
  note: (at: EpochMs) => void = () => undefined,
): VisitView | null {
  const visit = visitAt(facts, t, note);
  if (!visit) return null;
  const { since: _since, ...view } = visit;
  return view;
}
