/**
 * A day plan as it is proposed: who goes to whom when, with whom and what; what could not be placed and
 * why; how far from the best possible it may be. A proposal decides nothing: a person accepts or edits
 * it. Reasons are codes with what they speak of; the screens have the words.
 */
import { z } from 'zod';
import { staffId } from '../../kernel/ids.ts';
import { itemId } from '../aids/values.ts';
import { blockedWhy, placement, slots, visitId } from './problem.ts';

/** What made the plan put it there. */
export const placedWhy = z.enum([
  'pinned',
  'as-before',
  'first-possible',
  'spread',
  'seen-last',
  'own-bay',
  /** Later than its first possible slot because people or equipment are with somebody else until then. */
  'waits-for-people',
  'waits-for-item',
]);
export type PlacedWhy = z.infer<typeof placedWhy>;
export const placed = placement.extend({ why: z.array(placedWhy).max(4) });
export type Placed = z.infer<typeof placed>;

/** The rules a plan keeps. The checker names a breach with the same codes. */
export const planRule = z.enum([
  /** Not whole in a window of its own, or of the grid. */
  'window',
  'hold',
  'meal',
  'rest',
  'off-ward',
  'appointment',
  'night',
  /** Too soon before or after another visit of the same stay. */
  'rest-interval',
  /** Two visits of one stay at once. */
  'one-visit-at-once',
  /** Before a visit it has to follow, or without it. */
  'after',
  'number-of-people',
  'role',
  /** Somebody not on, on a break, or promised elsewhere. */
  'not-on',
  'break',
  'taken',
  /** Somebody in two places at once. */
  'one-place-at-once',
  'item-fit',
  'item-free',
  'item-cleaning',
  'item-at-once',
  'pinned',
  /** Something the problem does not know, or the same visit twice. */
  'unknown',
  'twice',
]);
export type PlanRule = z.infer<typeof planRule>;

/** A rule that a plan breaks: by which visit, and with what it collides. */
export const breach = z.strictObject({
  rule: planRule,
  visit: visitId,
  other: visitId.optional(),
  staff: staffId.optional(),
  item: itemId.optional(),
});
export type Breach = z.infer<typeof breach>;

/** What keeps a visit out of the plan; found by taking away one at a time. */
export const bound = z.enum([
  /** Its windows and the blocked times leave no start. */
  'no-time',
  /** Nobody who may do it is on long enough at once in those times. */
  'nobody-on',
  'no-item-fits',
  /** Fitting equipment is not free at those times at all. */
  'item-not-free',
  /** What must come first is not placed. */
  'waits-for-another',
  /** There is room, but other visits of the same stay and their rest fill it. */
  'own-visits',
  /** There would be people or equipment, but others that weigh more have them. */
  'people-with-others',
  'item-with-others',
  /** Possible, and it would cost more than it is worth (moves of the plan before, other bays). */
  'not-worth',
  /** The search ended before it was tried; there may be room. */
  'not-tried',
  /** More is asked for than a plan may hold: it was not planned at all. */
  'beyond-most',
]);
export type BoundBy = z.infer<typeof bound>;

/** What would place it, one at a time: the smallest first. */
export const frees = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('one-more-person'), at: slots }),
  z.strictObject({ by: z.literal('one-more-item'), at: slots }),
  z.strictObject({ by: z.literal('window'), at: slots }),
  z.strictObject({ by: z.literal('blocked'), why: blockedWhy, at: slots }),
  z.strictObject({ by: z.literal('instead-of'), visit: visitId }),
]);
export type Frees = z.infer<typeof frees>;

export const unplaced = z.strictObject({ visit: visitId, bound, frees: z.array(frees).max(6) });
export type Unplaced = z.infer<typeof unplaced>;

/** What a plan comes to, part by part: `value` is placed less what each soft rule costs. */
export const objective = z.strictObject({
  value: z.number(),
  placed: z.number(),
  debt: z.number(),
  spread: z.number(),
  seenLast: z.number(),
  otherBay: z.number(),
  fairness: z.number(),
  moved: z.number(),
});
export type Objective = z.infer<typeof objective>;

/** Against the plan before; null where it is not in one of the two. */
export const move = z.strictObject({
  visit: visitId,
  kind: z.enum(['new', 'gone', 'time', 'crew', 'items']),
  before: placement.nullable(),
  after: placement.nullable(),
});
export type Move = z.infer<typeof move>;

export const dayProposal = z.strictObject({
  placed: z.array(placed),
  unplaced: z.array(unplaced),
  objective,
  /** No plan can be worth more; null when nothing says so (greedy alone). */
  bound: z.number().nullable(),
  /** Share of the bound that this plan may be short of: 0.02 is "within 2 % of the best possible". Null with no bound. */
  gap: z.number().min(0).nullable(),
  how: z.enum(['solver', 'greedy']),
  /** Why it is greedy: the solver failed, or gave nothing in its time. Null for the solver's own. */
  fallback: z.enum(['solver-failed', 'out-of-time', 'too-large']).nullable(),
  moves: z.array(move),
  /** What it was searched with, so that it can be repeated. */
  seed: z.number().int(),
  nodes: z.number().int().nullable(),
  weightsVersion: z.number().int(),
});
export type DayProposal = z.infer<typeof dayProposal>;
