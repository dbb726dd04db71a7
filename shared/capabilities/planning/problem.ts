/**
 * What a day plan has to solve: who needs which visit, who is on, which equipment there is, and when
 * nobody may come. Built from the board; no name and no free text in it. Times are slots of 15 minutes
 * counted from `grid.start`; an interval is `[from, until)`, so 4 to 8 is the second hour.
 */
import { z } from 'zod';
import { role } from '../../kernel/author.ts';
import { opaqueId, staffId, stayId } from '../../kernel/ids.ts';
import { itemId } from '../aids/values.ts';
import { aidClass } from '../handling/values.ts';
import { activity } from '../sessions/values.ts';
import { label } from '../wards/values.ts';

/** The most that is planned at once; what is asked for beyond it is listed among what found no place. */
export const MOST_VISITS = 240;
export const MOST_SLOTS = 100;
/** Minutes of one slot. */
export const SLOT_MINUTES = 15;

const slot = z.number().int().min(0).max(MOST_SLOTS);
const cost = z.number().min(0).max(1_000_000);
export const slots = z
  .strictObject({ from: slot, until: slot })
  .refine(({ from, until }) => from < until, 'an interval ends after it begins');
export type Slots = z.infer<typeof slots>;

export const visitId = opaqueId.brand<'PlannedVisitId'>();
export type PlannedVisitId = z.infer<typeof visitId>;

/** Why it is asked for: today's activity goal, a check that is due, or care that happens anyway (toilet, wash, meal). */
export const visitKind = z.enum(['goal', 'check', 'care']);
export type VisitKind = z.infer<typeof visitKind>;

export const neededVisit = z.strictObject({
  visit: visitId,
  stay: stayId,
  bay: label,
  isolation: z.boolean(),
  kind: visitKind,
  activity: activity.nullable(),
  aid: aidClass,
  firstTimeUp: z.boolean(),
  /** How many are needed at once; three or more are not planned here but agreed by people. */
  people: z.union([z.literal(1), z.literal(2)]),
  /** At least one of the crew has one of these roles. */
  lead: z.array(role).min(1),
  /** Everybody of the crew has one of these roles. */
  crew: z.array(role).min(1),
  /** How long it takes, with getting ready and writing down. */
  length: z.number().int().min(1).max(16),
  /** It lies whole in one of these. */
  windows: z.array(slots).min(1).max(20),
  /** Slots of rest before it and after it between two visits of the same stay; the longer of the two counts. */
  restBefore: slot,
  restAfter: slot,
  /** Visits of the same stay that end before it may begin. One of them not placed: it is not placed either. */
  after: z.array(visitId).max(8),
  /**
   * Sets of equipment that can do it, each used together (a lift and its sling), as the fit rules judged.
   * Null: needs none that is listed. An empty list: needs some, and nothing fits.
   */
  sets: z.array(z.array(itemId).min(1).max(4)).max(60).nullable(),
  /** What it is worth to place it: shortfall of the goal, a check running out. */
  weight: cost,
  /** What each slot later than its first possible one costs (movement debt). */
  debt: cost,
  /** The slot at which it would best begin, so that a stay's visits spread through the day; null: as early as may be. */
  around: slot.nullable(),
  /** Better late in the day, after the others (isolation, where nothing presses). */
  seenLast: z.boolean(),
});
export type NeededVisit = z.infer<typeof neededVisit>;

/** When nobody may come for a visit. */
export const blockedWhy = z.enum(['hold', 'meal', 'rest', 'off-ward', 'appointment', 'night']);
export type BlockedWhy = z.infer<typeof blockedWhy>;
export const blocked = z.strictObject({
  stay: stayId,
  at: slots,
  why: blockedWhy,
  /** Null: all visits of the stay; else those that this stops (a hold on walking leaves the others). */
  visits: z.array(visitId).max(MOST_VISITS).nullable(),
});
export type Blocked = z.infer<typeof blocked>;

export const plannedStaff = z.strictObject({
  staff: staffId,
  role,
  on: z.array(slots).max(20),
  breaks: z.array(slots).max(20),
  /** Promised elsewhere: a visit that is theirs already, an errand, a meeting. */
  taken: z.array(slots).max(100),
  /** Bays they look after; empty: the whole ward. */
  bays: z.array(label).max(30),
});
export type PlannedStaff = z.infer<typeof plannedStaff>;

export const plannedItem = z.strictObject({
  item: itemId,
  aid: aidClass,
  /** When it can be had: usable, charged, not promised. */
  free: z.array(slots).max(100),
  /** Slots for cleaning before another person may have it. */
  cleaning: slot,
  /** The same after a person in isolation. */
  cleaningAfterIsolation: slot,
});
export type PlannedItem = z.infer<typeof plannedItem>;

/** What a plan is judged by beside what it places; ward configuration, versioned. A cost each. */
export const planWeights = z.strictObject({
  version: z.number().int().min(1),
  /** Somebody goes outside the bays they look after, for each of the crew. */
  otherBay: cost,
  /** A visit that is better seen late, for each slot before the end of the grid. */
  seenLast: cost,
  /** For each slot away from `around`. */
  spread: cost,
  /** For each slot that whoever does most does more than everybody's mean. */
  fairness: cost,
  /** A visit of the plan before begins at another time, or is not in it any more. */
  moved: cost,
  /** A visit of the plan before keeps its time and gets somebody else, for each who is new. */
  otherCrew: cost,
});
export type PlanWeights = z.infer<typeof planWeights>;

export const placement = z.strictObject({
  visit: visitId,
  start: slot,
  crew: z.array(staffId).min(1).max(2),
  items: z.array(itemId).max(4),
});
export type Placement = z.infer<typeof placement>;

/** The plan before. What is `pinned` (began, or a person insists) stays exactly as it is. */
export const keptPlacement = placement.extend({ pinned: z.boolean() });
export type KeptPlacement = z.infer<typeof keptPlacement>;

export const dayProblem = z.strictObject({
  grid: z.strictObject({
    /** Instant at which slot 0 begins (epoch ms). */
    start: z.number().int(),
    slots: z.number().int().min(1).max(MOST_SLOTS),
  }),
  visits: z.array(neededVisit).max(MOST_VISITS),
  blocked: z.array(blocked).max(2_000),
  staff: z.array(plannedStaff).max(60),
  items: z.array(plannedItem).max(200),
  weights: planWeights,
  previous: z.array(keptPlacement).max(MOST_VISITS),
});
export type DayProblem = z.infer<typeof dayProblem>;

/** The instant at which a slot begins. */
export const instantOf = ({ grid }: Pick<DayProblem, 'grid'>, at: number): number =>
  grid.start + at * SLOT_MINUTES * 60_000;
