import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { staffId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
import { onTheWard, plannedDay, wardDate } from './values.ts';

/**
 * Who is on the ward on one ward day, from when until when, with breaks. Somebody named again for the
 * same day replaces what was said of them; `from` equal to `until` takes them off that day.
 */
export const peopleOnSet = eventType('people-on-set', {
  stream: 'ward',
  version: 1,
  schema: z.strictObject({
    /** The date the ward day began on. */
    day: wardDate,
    people: z
      .array(onTheWard.extend({ staff: staffId, from: isoInstant, until: isoInstant }))
      .min(1)
      .max(60),
  }),
  words: (p, n) =>
    `On the ward on ${p.day}: ${p.people
      .map(({ staff, from, until, breaks }) =>
        from === until
          ? `${n.staff(staff)} not`
          : `${n.staff(staff)} ${n.time(from)} to ${n.time(until)}${
              breaks.length > 0
                ? `, break ${breaks.map((b) => `${n.time(b.from)} to ${n.time(b.until)}`).join(' and ')}`
                : ''
            }`,
      )
      .join('; ')}`,
});

/** The plan of the rest of a ward day, as a person accepted it. The last one of a day counts. */
export const dayPlanAccepted = eventType('day-plan-accepted', {
  stream: 'ward',
  version: 1,
  schema: plannedDay,
  words: (p) =>
    `Day plan of ${p.day} accepted: ${p.placements.length} visits${p.edited ? ', changed by hand' : ''}${p.how === 'greedy' ? ', made without the solver' : ''}`,
});

export const planningEvents = [peopleOnSet, dayPlanAccepted] as const;
