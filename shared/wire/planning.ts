/** Who is on the ward, the plan of the day and what would change it, as a screen asks for them. */
import { z } from 'zod';
import { itemId } from '../capabilities/aids/values.ts';
import {
  MOST_VISITS,
  neededVisit,
  placement,
  plannedStaff,
  visitId,
} from '../capabilities/planning/problem.ts';
import { breach, dayProposal } from '../capabilities/planning/proposal.ts';
import { notPlannedWhy } from '../capabilities/planning/not-planned.ts';
import { plannedDay, plannedPlacement } from '../capabilities/planning/values.ts';
import { staffId, stayId, wardId } from '../kernel/ids.ts';
import { isoInstant } from '../kernel/times.ts';

const stretch = { from: z.number(), to: z.number() };

export const peopleOnPage = z.strictObject({
  ward: wardId,
  /** The date the ward day began on; [from, to) as instants. */
  day: z.iso.date(),
  ...stretch,
  at: z.number(),
  /** As named for this ward day. Empty: nobody was named. */
  people: z.array(z.strictObject({ staff: staffId, ...stretch, breaks: z.array(z.strictObject(stretch)) })),
  /** The shifts of the ward's roster that begin in this ward day. */
  shifts: z.array(z.strictObject(stretch)),
  /** By quarter hours: who is there, or the usual staffing where nobody was named. */
  slots: z.array(
    z.strictObject({
      ...stretch,
      said: z.enum(['named', 'usual']),
      people: z.array(staffId),
      nurses: z.number().int(),
      aides: z.number().int(),
      therapists: z.number().int(),
    }),
  ),
});
export type PeopleOnPage = z.infer<typeof peopleOnPage>;

const acceptedPlan = plannedDay.omit({ placements: true }).extend({
  at: z.number(),
  by: staffId,
  placements: z.array(plannedPlacement.extend({ start: z.number() })),
});

/** The rest of the ward day: what it asks for, with whom and what; and the plan that was accepted. */
export const dayPlanPage = z.strictObject({
  ward: wardId,
  day: z.iso.date(),
  position: z.number().int(),
  at: z.number(),
  /** Slot 0 begins here; slots are 15 minutes. */
  start: z.number(),
  slots: z.number().int(),
  visits: z.array(
    neededVisit
      .pick({
        visit: true,
        stay: true,
        bay: true,
        isolation: true,
        kind: true,
        activity: true,
        aid: true,
        people: true,
        length: true,
        firstTimeUp: true,
        sets: true,
      })
      .extend({
        /** Of the bed; empty where there is none yet. */
        label: z.string(),
        /** Which time up of the day it is; null for a check. */
        nth: z.number().int().nullable(),
        expected: z.boolean(),
      }),
  ),
  staff: z.array(plannedStaff.pick({ staff: true, role: true, on: true, breaks: true, taken: true })),
  items: z.array(z.strictObject({ item: itemId, label: z.string() })),
  notPlanned: z.array(z.strictObject({ stay: stayId, label: z.string(), why: z.enum(notPlannedWhy) })),
  accepted: acceptedPlan.nullable(),
});
export type DayPlanPage = z.infer<typeof dayPlanPage>;

export const proposedDay = dayPlanPage.extend({
  proposal: dayProposal,
  /** SHA-256 of what was to be solved and of what is proposed. */
  hash: z.string(),
});
export type ProposedDay = z.infer<typeof proposedDay>;

/** Nothing to say: a plan is made from the ward as it is. */
export const proposeDay = z.strictObject({});

export const whatIfAsked = z.strictObject({
  change: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('person-away'), staff: staffId, from: isoInstant }),
    /** Without a time: at once. */
    z.strictObject({ kind: z.literal('item-lost'), item: itemId, from: isoInstant.optional() }),
    z.strictObject({ kind: z.literal('one-more-arrival'), at: isoInstant }),
  ]),
  /** The plan to compare with, counted from `start`. */
  start: z.number().int(),
  base: z.array(placement).max(MOST_VISITS),
});
export type WhatIfAsked = z.infer<typeof whatIfAsked>;

export const whatIfPage = z.strictObject({
  /** In the plan to compare with, and not possible any more. */
  without: z.array(visitId),
  proposal: dayProposal,
});
export type WhatIfPage = z.infer<typeof whatIfPage>;

/** A plan as somebody is changing it by hand, counted from `start`. */
export const planToCheck = z.strictObject({
  start: z.number().int(),
  placements: z.array(placement).max(MOST_VISITS),
});
export type PlanToCheck = z.infer<typeof planToCheck>;

/** Every rule it breaks by now, each in words. Empty: none. */
export const planChecked = z.strictObject({
  breaches: z.array(breach.extend({ words: z.string() })),
});
export type PlanChecked = z.infer<typeof planChecked>;
