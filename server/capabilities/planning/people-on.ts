/** Who is on the ward on a ward day. */
import * as commands from '@footboard/shared/capabilities/planning/commands';
import * as events from '@footboard/shared/capabilities/planning/events';
import { localDate } from '@footboard/shared/capabilities/wards/rules/calendar';
import type { DataOf, Refusal } from '@footboard/shared/kernel/command-type';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import { HOUR, toEpoch } from '@footboard/shared/kernel/times';
import { wardDayOf } from './ward-day.ts';
import { accept, decider, refuse } from '../../commanding/decider.ts';
import type { DecideContext } from '../../commanding/decider.ts';
import { underPolicy } from '../people/policy.ts';
import { sayAt } from '../stays/standing.ts';

/** Nobody is on for longer at a stretch: beyond it a time was mistyped. Common practice, no source. */
const LONGEST = 16 * HOUR;

type Person = DataOf<typeof commands.setPeopleOn>['people'][number];

/** Breaks lie within the time on and do not overlap. */
function wrongBreak(context: DecideContext, person: Person, field: string): Refusal | null {
  const sorted = person.breaks.toSorted((a, b) => toEpoch(a.from) - toEpoch(b.from));
  const wrong = sorted.find(({ from, until }, i) => {
    const before = sorted[i - 1];
    return (
      toEpoch(from) >= toEpoch(until) ||
      toEpoch(from) < toEpoch(person.from) ||
      toEpoch(until) > toEpoch(person.until) ||
      (before !== undefined && toEpoch(from) < toEpoch(before.until))
    );
  });
  if (!wrong) return null;
  return refuse(
    'break-times',
    `a break from ${sayAt(context, toEpoch(wrong.from))} to ${sayAt(context, toEpoch(wrong.until))} does not fit into the time on the ward, or into another break`,
    'Give breaks within the time on the ward, each ending after it begins.',
    field,
  );
}

const setPeopleOn = decider({
  command: commands.setPeopleOn,
  reads: (_data, ward) => [{ ward, stream: streamKey('ward', ward) }],
  decide: ({ day: asked, people }, context) => {
    const ward = context.ward!;
    const calendar = context.calendar!;
    const { from, to } =
      asked === undefined ? calendar.wardDay(context.occurred) : wardDayOf(calendar, asked);
    const day = localDate(ward.zone, from);
    const seen = new Set<string>();
    for (const [i, person] of people.entries()) {
      if (!ward.staff.get(person.staff)?.active) {
        return refuse(
          'staff-unknown',
          'whoever is named as on the ward is not on the staff list, or no longer active',
          'Choose somebody from the staff list.',
          `/people/${i}/staff`,
        );
      }
      if (seen.has(person.staff)) {
        return refuse(
          'person-named-twice',
          'somebody is named twice for the same ward day',
          'Name each person once; a gap in the middle is a break.',
          `/people/${i}/staff`,
        );
      }
      seen.add(person.staff);
      const [begins, ends] = [toEpoch(person.from), toEpoch(person.until)];
      if (ends < begins || ends - begins > LONGEST) {
        return refuse(
          'on-times',
          `from ${sayAt(context, begins)} to ${sayAt(context, ends)} is no time on a ward`,
          'Give an end after the beginning and at most 16 hours later; the same time twice takes the person off.',
          `/people/${i}/until`,
        );
      }
      if (ends > begins && (begins < from || begins >= to)) {
        return refuse(
          'not-on-that-day',
          `${sayAt(context, begins)} is not in the ward day from ${sayAt(context, from)} to ${sayAt(context, to)}`,
          'Choose the ward day in which the time on the ward begins.',
          `/people/${i}/from`,
        );
      }
      const wrong = ends === begins ? null : wrongBreak(context, person, `/people/${i}/breaks`);
      if (wrong) return wrong;
    }
    return accept(newEvent(events.peopleOnSet, streamKey('ward', context.wardId), { day, people }));
  },
});

export const peopleOnDeciders = underPolicy([setPeopleOn]);
