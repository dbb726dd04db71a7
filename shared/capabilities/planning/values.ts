import { z } from 'zod';
import { itemId } from '../aids/values.ts';
import { staffId, stayId } from '../../kernel/ids.ts';
import { isoInstant } from '../../kernel/times.ts';
import { MOST_VISITS, visitId, visitKind } from './problem.ts';
import { bound } from './proposal.ts';

/** The date a ward day began on, on the ward's clock. */
export const wardDate = z.iso.date();

/** One visit of an accepted plan: who goes to whom when, for how long and with what. */
export const plannedPlacement = z.strictObject({
  visit: visitId,
  stay: stayId,
  kind: visitKind,
  start: isoInstant,
  minutes: z.number().int().min(1).max(240),
  crew: z.array(staffId).min(1).max(2),
  items: z.array(itemId).max(4),
});
/** What was asked for and is not in the plan that was accepted, with what kept it out. */
export const leftUnplaced = z.strictObject({
  visit: visitId,
  stay: stayId,
  kind: visitKind,
  /** `left-out`: a person took it out of the proposal. */
  why: z.enum([...bound.options, 'left-out']),
});
/** A plan as it is accepted, with what it was proposed from. */
export const plannedDay = z.strictObject({
  day: wardDate,
  placements: z.array(plannedPlacement).max(MOST_VISITS),
  /** SHA-256 of the proposal it goes back to. */
  hash: z.string().regex(/^[0-9a-f]{64}$/, 'a hash has 64 hexadecimal digits'),
  weightsVersion: z.number().int().min(1),
  how: z.enum(['solver', 'greedy']),
  gap: z.number().min(0).nullable(),
  /** A person changed it before accepting. */
  edited: z.boolean(),
  /** What found no place in it. Left out: not said. */
  unplaced: z.array(leftUnplaced).max(2_000).optional(),
});

/** One person on the ward: [from, until), and the breaks within it. */
export const onTheWard = z.strictObject({
  staff: staffId,
  from: isoInstant,
  until: isoInstant,
  breaks: z.array(z.strictObject({ from: isoInstant, until: isoInstant })).max(6),
});
