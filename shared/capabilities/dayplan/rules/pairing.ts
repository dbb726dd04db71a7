/**
 * When two people are free together. Free is who is on, in no visit of either part, and in none of the
 * accepted day plan; what is not known of somebody is never taken as free. Proposes the earliest time with each; booking is a
 * person's own word. Ours, practice: no published rule of pairing is known to us.
 */
import { bedsideRoles } from '../../people/policy/bedside.ts';
import type { StaffId, StayId } from '../../../kernel/ids.ts';
import { HOUR, MINUTE, type EpochMs } from '../../../kernel/times.ts';
import type { VisitView } from '../../board/activity-view.ts';
import type { BoardView } from '../../board/view.ts';
import type { Period, WardState } from '../../wards/context.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import { timesOn } from '../../planning/rules/people-on.ts';
import { goes } from './visits.ts';

/** Who is on, and when: [from, to) each. Null where nobody is named. */
export type Hands = ReadonlyMap<StaffId, readonly Period[]>;

/** A time that both have. */
export interface Pairing {
  readonly second: StaffId;
  readonly from: EpochMs;
  readonly until: EpochMs;
}

/** Times begin at a full five minutes, so that two phones say the same. */
const STEP = 5 * MINUTE;

/** How far ahead is asked who is on. */
const AHEAD = 24 * HOUR;

/**
 * Who was said to be on, less their breaks; and who is named for a bed, until the end that was said. Only
 * roles that go to the bedside.
 */
export function handsOf(ward: WardState, t: EpochMs): Hands | null {
  const hands = new Map<StaffId, Period[]>();
  const on = timesOn(ward, { from: t, to: t + AHEAD });
  for (const [staff, times] of on) {
    if (!bedsideRoles.has(ward.staff.get(staff)!.role)) continue;
    hands.set(
      staff,
      times.flatMap(({ from, to, breaks }) => without({ from, to }, breaks)),
    );
  }
  for (const { until, who } of ward.carers.values()) {
    if (until <= t) continue;
    for (const staff of [who.nurse, who.aide]) {
      const member = staff && ward.staff.get(staff);
      if (!member?.active || !bedsideRoles.has(member.role) || on.has(staff!)) continue;
      // Named for several beds: until the latest of what was said.
      const before = hands.get(staff!)?.[0]?.to ?? t;
      hands.set(staff!, [{ from: t, to: Math.max(before, until) }]);
    }
  }
  return hands.size === 0 ? null : hands;
}

/** What is left of a time on: up to each break, and after the last. */
function without(time: Period, breaks: readonly Period[]): Period[] {
  const left: Period[] = [];
  let { from } = time;
  for (const one of breaks.toSorted((a, b) => a.from - b.from)) {
    if (one.from > from) left.push({ from, to: Math.min(one.from, time.to) });
    from = Math.max(from, one.to);
  }
  if (from < time.to) left.push({ from, to: time.to });
  return left;
}

/** Every visit that stands on the board. */
export const visitsOn = (board: BoardView): readonly VisitView[] =>
  board.beds.flatMap(({ stay }) => (stay?.visit ? [stay.visit] : []));

/** A time that the accepted plan has given to somebody. */
export interface PlannedTime {
  /** Whom it is for. */
  readonly stay: StayId;
  readonly crew: readonly StaffId[];
  readonly from: EpochMs;
  readonly until: EpochMs;
}

/** Every visit of the accepted plan that is ahead; one that is held is not to be done, and binds nobody. */
export const plannedOn = ({ beds, dayPlan }: Pick<BoardView, 'beds' | 'dayPlan'>): readonly PlannedTime[] => [
  ...beds.flatMap(({ stay }) =>
    (stay?.planned ?? [])
      .filter(({ stopped }) => stopped === null)
      .map(({ crew, from, until }) => ({ stay: stay!.stay, crew, from, until })),
  ),
  ...(dayPlan?.arrivals ?? []).map(({ expected, ...one }) => ({ ...one, stay: expected as StayId })),
];

interface Asked {
  readonly t: EpochMs;
  readonly hands: Hands;
  readonly visits: readonly VisitView[];
  readonly planned: readonly PlannedTime[];
  /** Whom the two are looked for: what is planned for this person is that very visit. */
  readonly stay: StayId;
  readonly rules: RulesDocument;
  /** Who goes first; null: not said, and only the second person's time is asked. */
  readonly first: StaffId | null;
  /** The visit that is looked for a second person for; null: a new one. */
  readonly own: VisitView | null;
}

/** The earliest time with each who could go along, the earliest first; of equal ones by their id. */
export function pairingsOf(asked: Asked): Pairing[] {
  const { hands, first, own } = asked;
  return [...hands.keys()]
    .filter((staff) => staff !== first && staff !== own?.by)
    .flatMap((second) => earliest(second, asked) ?? [])
    .toSorted((a, b) => a.from - b.from || (a.second < b.second ? -1 : 1));
}

function earliest(second: StaffId, asked: Asked): Pairing | null {
  const { t, rules, own, first } = asked;
  if (own) {
    const whole = { from: Math.max(t, own.from), until: own.until };
    return isFree(second, whole, asked) ? { second, from: own.from, until: own.until } : null;
  }
  const long = rules.round.pairMinutes.value * MINUTE;
  const last = t + rules.round.pairAheadHours.value * HOUR;
  for (let from = Math.ceil(t / STEP) * STEP; from <= last; from += STEP) {
    const time = { from, until: from + long };
    if (isFree(second, time, asked) && (first === null || isFree(first, time, asked))) {
      return { second, ...time };
    }
  }
  return null;
}

function isFree(
  staff: StaffId,
  { from, until }: { from: EpochMs; until: EpochMs },
  { hands, visits, planned, stay, own }: Asked,
): boolean {
  const on = hands.get(staff);
  // Whoever asks is on: they hold the phone. Of anybody else it must be known.
  if (on && !on.some((one) => one.from <= from && until <= one.to)) return false;
  const meets = (one: { from: EpochMs; until: EpochMs }): boolean => one.from < until && from < one.until;
  return (
    !visits.some((v) => v !== own && goes(v, staff) && meets(v)) &&
    !planned.some((one) => one.stay !== stay && one.crew.includes(staff) && meets(one))
  );
}
