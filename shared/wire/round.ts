/** The round as a screen asks for it. */
import { z } from 'zod';
import { visitView } from '../capabilities/board/activity-view.ts';
import { because } from '../capabilities/board/because.ts';
import { taskPlan } from '../capabilities/board/moving-view.ts';
import { insteadReason, listAct, listSeen } from '../capabilities/dayplan/values.ts';
import { bedId, eventId, staffId, stayId, wardId } from '../kernel/ids.ts';

const placed = {
  bed: bedId,
  label: z.string(),
  bay: z.string(),
  stay: stayId,
  visit: visitView.nullable(),
  yours: z.boolean(),
};
export const roundPage = z.strictObject({
  ward: wardId,
  position: z.number().int(),
  at: z.number(),
  /** In the order in which to go. */
  entries: z.array(
    z.strictObject({
      ...placed,
      reasons: z.array(
        because.extend({
          points: z.number(),
          at: z.number().nullable(),
          until: z.number().nullable(),
        }),
      ),
      points: z.number(),
      move: taskPlan.pick({ task: true, people: true, aid: true }),
      who: z.string(),
      notHigher: z.string().nullable(),
      changes: z.string(),
      askFirst: z.array(z.string()),
      /** For a visit by two without a second person: when, and with whom. */
      pairs: z.array(z.strictObject({ second: staffId, from: z.number(), until: z.number() })),
    }),
  ),
  /** Everybody else in a bed, each once, with why. */
  notListed: z.array(z.strictObject({ ...placed, kind: z.string(), because, until: z.string() })),
  /** Beds with nobody in them. */
  empty: z.array(z.strictObject({ bed: bedId, label: z.string() })),
  /** What a command about somebody on this list says of it. */
  seen: listSeen,
});
export type RoundPage = z.infer<typeof roundPage>;

const act = {
  /** Id of the entry "list acted on". */
  event: eventId,
  /** The instant of the list. */
  at: z.number(),
  /** The bed then; null when the list did not name the person. */
  label: z.string().nullable(),
  act: listAct,
  /** From 1; null when the person was not on the list. */
  place: z.number().int().nullable(),
  listed: z.number().int(),
  /** The bed that stood first. */
  first: z.string().nullable(),
  instead: insteadReason.nullable(),
};
/** What was done by the list in the last seven days. Whoever did it is left out. */
export const roundActs = z.strictObject({
  ward: wardId,
  from: z.number(),
  to: z.number(),
  acts: z.array(z.strictObject(act)),
});
export type RoundActs = z.infer<typeof roundActs>;

const then = { bed: bedId, label: z.string(), stay: stayId };
/** The list as it was when somebody acted on it. */
export const roundThen = z.strictObject({
  ward: wardId,
  ...act,
  position: z.number().int(),
  weights: listSeen.shape.weights,
  /** What was made again from the log is what the screen had. */
  asShown: z.boolean(),
  /** Made once more now, by the program that runs, it is the same to the byte. */
  sameAgain: z.boolean(),
  entries: z.array(
    z.strictObject({
      ...then,
      points: z.number(),
      reasons: z.array(z.strictObject({ words: z.string(), points: z.number() })),
      notHigher: z.string().nullable(),
      changes: z.string(),
      who: z.string(),
    }),
  ),
  notListed: z.array(z.strictObject({ ...then, why: z.string(), until: z.string() })),
  empty: z.array(z.strictObject({ bed: bedId, label: z.string() })),
});
export type RoundThen = z.infer<typeof roundThen>;
