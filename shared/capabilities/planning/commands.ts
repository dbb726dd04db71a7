import { z } from 'zod';
import { commandType } from '../../kernel/command-type.ts';
import { onTheWard, wardDate } from './values.ts';

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

export const planningCommands = [setPeopleOn] as const;
