/**
 * Who is on the ward, by quarter hours: as named, or the ward's usual staffing where nobody was named.
 * Pure; shared by the day plan, the forecast and the matching of two people.
 */
import type { PayloadOf } from '../../../kernel/event-type.ts';
import type { Role } from '../../../kernel/author.ts';
import type { StaffId } from '../../../kernel/ids.ts';
import { MINUTE, toEpoch, type EpochMs } from '../../../kernel/times.ts';
import type { PeopleOn, Period, TimeOn, WardState } from '../../wards/context.ts';
import { wallAt } from '../../wards/rules/zone.ts';
import type { RulesDocument } from '../../wards/rules/rules-schema.ts';
import type { peopleOnSet } from '../events.ts';

export const SLOT = 15 * MINUTE;
/** Days that are kept, newest first: memory follows the days, not the length of the log. */
const DAYS_KEPT = 42;

export const NOBODY_NAMED: PeopleOn = new Map();

export function withPeopleOn(on: PeopleOn, { day, people }: PayloadOf<typeof peopleOnSet>): PeopleOn {
  const ofDay = new Map(on.get(day));
  for (const { staff, from, until, breaks } of people) {
    if (from === until) ofDay.delete(staff);
    else {
      ofDay.set(staff, {
        from: toEpoch(from),
        to: toEpoch(until),
        breaks: breaks.map((one) => ({ from: toEpoch(one.from), to: toEpoch(one.until) })),
      });
    }
  }
  const days = new Map(on).set(day, ofDay);
  for (const old of [...days.keys()].toSorted().slice(0, -DAYS_KEPT)) days.delete(old);
  return days;
}

/** How many of each; somebody who is none of the three (a manager) is named, and counts for no one's hands. */
export interface Hands {
  readonly nurses: number;
  readonly aides: number;
  readonly therapists: number;
}
export interface OnSlot extends Period, Hands {
  /** `usual`: nobody is named for this quarter hour, so the ward's usual staffing stands in. */
  readonly said: 'named' | 'usual';
  /** On the whole slot and not on a break in it; empty where nobody was named. */
  readonly people: readonly StaffId[];
}

type Ward = Pick<WardState, 'zone' | 'staff' | 'peopleOn'>;

/** Everybody named and still on the staff list, with every time they are on that touches [from, to). */
export function timesOn(ward: Ward, { from, to }: Period): ReadonlyMap<StaffId, readonly TimeOn[]> {
  const times = new Map<StaffId, TimeOn[]>();
  for (const day of [...ward.peopleOn.keys()].toSorted()) {
    for (const [who, time] of ward.peopleOn.get(day)!) {
      if (time.to <= from || time.from >= to || !ward.staff.get(who)?.active) continue;
      times.set(who, [...(times.get(who) ?? []), time]);
    }
  }
  return times;
}

const overlap = (a: Period, b: Period): boolean => a.from < b.to && b.from < a.to;
/** On for all of `slot` and on no break in it. */
export const isFree = (times: readonly TimeOn[], slot: Period): boolean =>
  times.some(
    (time) =>
      time.from <= slot.from && slot.to <= time.to && time.breaks.every((pause) => !overlap(pause, slot)),
  );

const COUNTS: Partial<Record<Role, keyof Hands>> = {
  nurse: 'nurses',
  'charge-nurse': 'nurses',
  aide: 'aides',
  therapist: 'therapists',
};

/**
 * [from, to) in slots of 15 minutes from `from` on. A slot in which nobody is named at all (not even on
 * a break) has the usual staffing of its hour on the ward's clock: a gap is not a zero.
 */
export function peopleOnAt(
  ward: Ward,
  rules: Pick<RulesDocument, 'planning'>,
  from: EpochMs,
  to: EpochMs,
): readonly OnSlot[] {
  const times = timesOn(ward, { from, to });
  const slots: OnSlot[] = [];
  for (let at = from; at < to; at += SLOT) {
    const slot = { from: at, to: Math.min(at + SLOT, to) };
    const named = [...times].filter(([, on]) => on.some((time) => overlap(time, slot)));
    if (named.length === 0) {
      slots.push({ ...slot, said: 'usual', people: [], ...usualAt(ward.zone, rules, at) });
      continue;
    }
    const people = named.flatMap(([who, on]) => (isFree(on, slot) ? [who] : [])).toSorted();
    const hands = { nurses: 0, aides: 0, therapists: 0 };
    for (const who of people) {
      const as = COUNTS[ward.staff.get(who)!.role];
      if (as) hands[as]++;
    }
    slots.push({ ...slot, said: 'named', people, ...hands });
  }
  return slots;
}

/** By the hour on the ward's wall clock; a repeated hour has the same staffing twice. */
function usualAt(zone: string, { planning }: Pick<RulesDocument, 'planning'>, at: EpochMs): Hands {
  const hour = new Date(wallAt(zone, at)).getUTCHours();
  const { usualNurses, usualAides, usualTherapists } = planning;
  return {
    nurses: usualNurses.value[hour]!,
    aides: usualAides.value[hour]!,
    therapists: usualTherapists.value[hour]!,
  };
}
