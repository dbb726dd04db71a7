/**
 * What is left of the accepted plan for one person, at an instant: visits still ahead, and what stands
 * against each by now. The plan is a fact that is shown; no rank, plan of moving, trust or due time reads
 * it. Pure.
 */
import type { EventId } from '../../../kernel/ids.ts';
import { HOUR, MINUTE, type EpochMs } from '../../../kernel/times.ts';
import { NOTHING_SEEN, type ItemState } from '../../aids/rules/item-state.ts';
import { standsAgainst } from '../../aids/rules/stands-against.ts';
import type { ItemId } from '../../aids/values.ts';
import type { PlannedView } from '../../board/activity-view.ts';
import type { Because } from '../../board/because.ts';
import type { StayView } from '../../board/view.ts';
import type { Fact } from '../../corrections/facts.ts';
import { moveOf } from '../../dayplan/rules/round.ts';
import { stopOf, whoStop } from '../../dayplan/rules/round-gates.ts';
import { isCheck, isConfirm } from '../../orders/rules/triggers.ts';
import { isUp } from '../../sessions/rules/activities.ts';
import type { WardState } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { AcceptedPlacement, AcceptedPlan } from './accepted.ts';
import { nthOf } from './visit-ids.ts';
import { LIFTS } from './visits-of-stay.ts';

export interface PlannedOfStay {
  /** Nobody has taken them; the earliest first. */
  readonly visits: readonly PlannedView[];
  /** Still ahead, and somebody has taken the person at that time. */
  readonly taken: number;
  /** Over, and nothing was recorded. */
  readonly passed: number;
}
export const NOTHING_PLANNED: PlannedOfStay = { visits: [], taken: 0, passed: 0 };

export interface PlannedInput {
  readonly t: EpochMs;
  readonly ward: Pick<WardState, 'items' | 'lent' | 'notExpected'>;
  /** How the equipment is; what nobody has spoken of is not in it. */
  readonly items: ReadonlyMap<ItemId, ItemState>;
  /** Date on the ward's clock, like 2026-10-25. */
  readonly today: string;
  readonly rules: RulesDocument['aids'];
  readonly plan: AcceptedPlan;
  readonly say: (at: EpochMs) => string;
}

/** Somebody who comes a quarter of an hour early, or writes it down late, has still done that visit. */
const EARLY = 15 * MINUTE;
const LATE = HOUR;

/** `facts` may reach past `t`; those do not count yet. `note` is told when the answer changes by time alone. */
export function plannedOf(
  stay: StayView,
  facts: readonly Fact[],
  input: PlannedInput,
  note: (at: EpochMs) => void,
): PlannedOfStay {
  const { t, plan } = input;
  // What was planned while the person was expected goes on with the stay that began.
  const own = plan.placements.filter(
    (one) => (input.ward.notExpected.get(one.stay) ?? one.stay) === stay.stay,
  );
  if (own.length === 0) return NOTHING_PLANNED;
  const counted = facts.filter(({ occurred }) => occurred <= t);
  const open = own
    .filter((one) => !isDone(one, stay, counted, plan.at))
    .toSorted((a, b) => a.start - b.start || (a.visit < b.visit ? -1 : 1));
  const visits: PlannedView[] = [];
  let [taken, passed] = [0, 0];
  for (const one of open) {
    const until = untilOf(one);
    if (until <= t) {
      passed++;
      continue;
    }
    note(until);
    if (isTaken(one, stay)) {
      taken++;
      continue;
    }
    visits.push({
      visit: one.visit,
      kind: one.kind,
      from: one.start,
      until,
      crew: [...one.crew],
      with: one.items.map((item) => labelOf(item, input)),
      stopped: stoppedBy(one, stay, input) ?? brokenBy(one, stay.stay, input, note),
    });
  }
  return { visits, taken, passed };
}

const labelOf = (item: ItemId, { ward }: PlannedInput): string =>
  (ward.items.get(item) ?? ward.lent.get(item)?.is)?.label ?? item;
const untilOf = ({ start, minutes }: AcceptedPlacement): EpochMs => start + minutes * MINUTE;

/** A check: one was recorded since. A time up: today counts as many, or somebody was there for it. */
function isDone(
  one: AcceptedPlacement,
  { today }: StayView,
  facts: readonly Fact[],
  acceptedAt: EpochMs,
): boolean {
  if (one.kind === 'check') {
    return facts.some((f) => f.occurred >= acceptedAt && (isCheck(f) || isConfirm(f)));
  }
  const nth = nthOf(one.visit);
  if (today.met === true || (nth !== null && today.timesUp >= nth)) return true;
  return facts.some(
    ({ type, occurred }) =>
      type === 'session-recorded' && occurred >= one.start - EARLY && occurred <= untilOf(one) + LATE,
  );
}

const isTaken = (one: AcceptedPlacement, { visit }: StayView): boolean =>
  visit !== null && visit.from < untilOf(one) && one.start < visit.until;

/** Why it is not to be done as it was planned; null: nothing stands against it. */
function stoppedBy(one: AcceptedPlacement, stay: StayView, { say, ward }: PlannedInput): Because | null {
  const alone = one.crew.length < 2;
  if (one.kind !== 'goal') {
    // A first time up is checked by two.
    return whoStop(stay, { say })?.because ?? (alone && stay.firstTimeUpPending ? twoAsked([]) : null);
  }
  const { goal } = stay.today;
  const inBed = goal !== null && !isUp(goal.activity);
  const stop = stopOf(stay, { say }, inBed);
  if (stop || inBed) return stop && stop.because;
  const { task, people, aid } = moveOf(stay);
  const reasons = stay.plan?.day.find((line) => line.task === task)?.because ?? [];
  const facts = [...new Set(reasons.flatMap((reason) => reason.facts))];
  if (people === 'three-or-more') {
    return because('people', 'The plan asks for three people or more by now', facts);
  }
  if (people === 'two' && alone) return twoAsked(facts);
  return LIFTS.has(aid) && one.items.length === 0 && ward.items.size > 0
    ? because('equipment', 'The plan asks for equipment by now, and none is planned', facts)
    : null;
}

/** Equipment that was fit for it when the plan was accepted, and is not any more. */
function brokenBy(
  { items }: AcceptedPlacement,
  stay: StayView['stay'],
  input: PlannedInput,
  note: (at: EpochMs) => void,
): Because | null {
  const { t, today, ward, items: states, rules, say } = input;
  for (const item of items) {
    const is = ward.items.get(item);
    if (!is) return because('item', goneWords(item, input), []);
    const asked = { stay, t, today, rules, say };
    const words = standsAgainst(is, states.get(item) ?? NOTHING_SEEN, asked, note);
    if (words !== null) return because('item', words, []);
  }
  return null;
}

function goneWords(item: ItemId, { ward, say }: PlannedInput): string {
  const lent = ward.lent.get(item);
  return lent
    ? `${lent.is.label} is lent to ${lent.name} since ${say(lent.at)}`
    : 'Equipment of this visit is not on the ward’s list any more';
}

const twoAsked = (facts: EventId[]): Because =>
  because('people', 'Two people are asked for by now, and one is planned', facts);
const because = (rule: string, words: string, facts: EventId[]): Because => ({
  rule: `planned/${rule}`,
  facts,
  words,
});
