/** Shapes of the larger and rarer answers, apart from http.ts so that a wall screen need not carry them. */
import { z } from 'zod';
import { stayId, wardId } from '../kernel/ids.ts';
import { goal } from '../capabilities/sessions/values.ts';
import { rulesDocument } from '../capabilities/wards/rules/rules-document.ts';

/** The ward's rules document in force: its own, or the defaults. */
export const rulesInForce = z.strictObject({
  ward: wardId,
  /** False while the ward runs on the defaults. */
  published: z.boolean(),
  document: rulesDocument,
});
export type RulesInForce = z.infer<typeof rulesInForce>;

/** Protocol versions an assessment of this ward may name. Documents are as `publish-protocol` takes them. */
export const protocolsInForce = z.strictObject({
  ward: wardId,
  inForce: z.strictObject({ id: z.string(), version: z.number().int() }),
  documents: z.array(z.json()),
});
export type ProtocolsInForce = z.infer<typeof protocolsInForce>;

/** One stay on one ward day. `recorded: false` is a gap, never a zero. */
export const dayTotal = z.strictObject({
  stay: stayId,
  recorded: z.boolean(),
  sessions: z.strictObject({
    done: z.number().int(),
    part: z.number().int(),
    stopped: z.number().int(),
    notDone: z.record(z.string(), z.number().int()),
  }),
  timesUp: z.number().int(),
  minutesOutOfBed: z.number().nullable(),
  metres: z.number().nullable(),
  goal: goal.nullable(),
  goalMet: z.boolean().nullable(),
  /** Rows of before anybody could say it have none. */
  boardWrong: z.number().int().default(0),
});
export const totalsPage = z.strictObject({
  ward: wardId,
  /** Date on the ward's clock on which the ward day began. */
  day: z.string(),
  from: z.number(),
  to: z.number(),
  stays: z.array(dayTotal),
});
export type TotalsPage = z.infer<typeof totalsPage>;

/** What a check of a ward's whole log found. Empty `faults`: everything holds. */
export const verifyPage = z.strictObject({
  ward: wardId,
  events: z.number().int(),
  head: z.strictObject({ position: z.number().int(), chain: z.string() }),
  faults: z.array(z.strictObject({ position: z.number().int(), fault: z.string() })),
});
export const healthPage = z.strictObject({ status: z.enum(['live', 'ready']) });
