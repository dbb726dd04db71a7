import { z } from 'zod';
import { commandType } from '../../kernel/command-type.ts';
import { onTheWard, plannedDay, wardDate } from './values.ts';

export const setPeopleOn = commandType(
  'set-people-on',
  'Who is on the ward on a ward day, from when until when, with breaks; somebody named again replaces what was said of them, and from equal to until takes them off.',
  z.strictObject({
    /** Left out: the ward day of the entry. */
    day: wardDate.optional(),
    people: z
      .array(onTheWard.extend({ breaks: onTheWard.shape.breaks.default([]) }))
      .min(1)
      .max(60),
  }),
);

export const acceptDayPlan = commandType(
  'accept-day-plan',
  'The plan of the rest of the ward day, as proposed or changed by hand. Every rule of a plan is checked again.',
  plannedDay,
);

export const planningCommands = [setPeopleOn, acceptDayPlan] as const;
