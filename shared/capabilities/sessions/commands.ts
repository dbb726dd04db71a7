import { z } from 'zod';
import { commandType, freeText } from '../../kernel/command-type.ts';
import { eventId, stayId } from '../../kernel/ids.ts';
import { listSeen } from '../dayplan/values.ts';
import { goal, session } from './values.ts';

export const recordSession = commandType(
  'record-session',
  'Record a mobilization session: done, part done, stopped, or not done with its reason.',
  z.strictObject({
    stay: stayId,
    session,
    said: freeText.optional(),
    /** For a session not done that was on the round: the list it stood on. */
    list: listSeen.optional(),
  }),
);
export const setGoal = commandType(
  'set-goal',
  "Set the person's daily activity goal, from their usual way and wish.",
  z.strictObject({
    stay: stayId,
    goal,
    wish: freeText.optional(),
    /** The sessions that carry the proposal being accepted. */
    accepts: z.array(eventId).max(20).optional(),
  }),
);
export const sessionCommands = [recordSession, setGoal] as const;
