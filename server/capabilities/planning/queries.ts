import { peopleOnAt } from '@footboard/shared/capabilities/planning/rules/people-on';
import { wardDate } from '@footboard/shared/capabilities/planning/values';
import type { Period, WardCalendar, WardState } from '@footboard/shared/capabilities/wards/context';
import { localDate } from '@footboard/shared/capabilities/wards/rules/calendar';
import { rulesOf } from '@footboard/shared/capabilities/wards/rules/ward-state';
import type { EpochMs } from '@footboard/shared/kernel/times';
import type { PeopleOnPage } from '@footboard/shared/wire/planning';
import { Answered, problem } from '../../commanding/problems.ts';
import { wardDayOf } from './ward-day.ts';

/** Who is on, on the ward day that began on `day`, or the one that runs now. */
export function peopleOnPage(
  ward: WardState,
  calendar: WardCalendar,
  asked: { readonly day: string | undefined; readonly now: EpochMs },
): PeopleOnPage {
  const { from, to } =
    asked.day === undefined ? calendar.wardDay(asked.now) : wardDayOf(calendar, dateOf(asked.day));
  const day = localDate(ward.zone, from);
  const people = [...(ward.peopleOn.get(day) ?? [])].map(([staff, time]) => ({
    staff,
    from: time.from,
    to: time.to,
    breaks: [...time.breaks],
  }));
  return {
    ward: ward.ward,
    day,
    from,
    to,
    at: asked.now,
    people,
    shifts: shiftsOf(calendar, { from, to }),
    slots: peopleOnAt(ward, rulesOf(ward), from, to).map((slot) => ({ ...slot, people: [...slot.people] })),
  };
}

function shiftsOf(calendar: WardCalendar, { from, to }: Period): Period[] {
  const shifts: Period[] = [];
  for (let at = from; at < to; at = calendar.shift(at).to) {
    const shift = calendar.shift(at);
    if (shift.from >= from) shifts.push({ from: shift.from, to: shift.to });
  }
  return shifts;
}

function dateOf(day: string): string {
  const read = wardDate.safeParse(day);
  if (read.success) return read.data;
  const detail = 'The day is no date of the calendar.';
  const remedy = 'Write the day like 2026-10-25.';
  throw new Answered(
    problem('invalid-query', detail, remedy, { errors: [{ pointer: '/day', detail, remedy }] }),
  );
}
