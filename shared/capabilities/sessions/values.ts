import { z } from 'zod';
import { isoInstant } from '../../kernel/times.ts';
import { reading } from '../assessments/values.ts';
import { aidClass } from '../handling/values.ts';

export const activity = z.enum([
  'bed-exercise',
  'back-raised',
  'edge-sit',
  'stand',
  'chair',
  'lifted-to-chair',
  'march',
  'walk',
  'stairs',
  'toilet',
]);
export type Activity = z.infer<typeof activity>;

/** Group first (the tap), then the example. Only `said-no` is a refusal. */
export const NOT_DONE_REASONS = {
  'said-no': [
    'pain',
    'tired',
    'frightened',
    'nauseated',
    'not-now',
    'wants-family',
    'no-shoes-or-clothes',
    'language',
    'no-reason-given',
  ],
  'clinically-held': [
    'order',
    'unstable',
    'new-symptom',
    'awaiting-clearance',
    'low-haemoglobin',
    'transfusion',
  ],
  'not-here': ['test', 'theatre', 'dialysis', 'home'],
  'bad-moment': ['meal', 'visitor', 'sleep', 'personal-care', 'round'],
  'no-people': ['one-of-two', 'called-away', 'aide-absent'],
  'no-kit': ['lift', 'sling', 'walking-aid', 'chair', 'portable-oxygen'],
  'infection-steps': ['gown', 'cleaning', 'room-limits'],
  comfort: ['comfort'],
} as const;
export type NotDoneGroup = keyof typeof NOT_DONE_REASONS;

export const notDone = z
  .strictObject({
    group: z.enum(Object.keys(NOT_DONE_REASONS) as [NotDoneGroup, ...NotDoneGroup[]]),
    example: z.string().max(40).optional(),
  })
  .refine(
    (r) => r.example === undefined || (NOT_DONE_REASONS[r.group] as readonly string[]).includes(r.example),
    { message: 'that reason does not belong to its group', path: ['example'] },
  );

/**
 * Why the equipment of the plan was not used. Our own list, from why lifts go unused (users' job 5b, a review
 * counting studies: S79) and common practice, no source.
 */
export const aidNotUsedReason = z.enum([
  'not-to-hand',
  'with-others',
  'not-ready',
  'no-part-that-fits',
  'no-time',
  'one-pair-of-hands',
  'no-room',
  'person-did-not-want-it',
  'could-do-more',
  'other',
]);
export type AidNotUsedReason = z.infer<typeof aidNotUsedReason>;

export const sessionEventKind = z.enum([
  'dizzy',
  'near-fall',
  'lowered-to-floor',
  'line-pulled',
  'low-oxygen',
  'pain',
  'distress',
  'equipment-fault',
]);

const zeroToTen = (what: string) =>
  z.number().int().min(0, `${what} is 0 to 10`).max(10, `${what} is 0 to 10`);

/**
 * One mobilization session. The ordinary one needs only outcome, activities and when; everything
 * else is kept when given. A missing amount is a gap, never a zero.
 */
export const session = z
  .strictObject({
    outcome: z.enum(['done', 'part', 'stopped', 'not-done']),
    notDone: notDone.optional(),
    occasion: z.enum(['planned', 'toilet', 'wash', 'meal']),
    activities: z.array(activity).max(10),
    startedAt: isoInstant,
    endedAt: isoInstant.optional(),
    minutesOutOfBed: z
      .number()
      .int()
      .min(0)
      .max(24 * 60, 'minutes out of bed are at most a day')
      .optional(),
    metres: z.number().min(0).max(5_000, 'distance (metres) is at most 5000').optional(),
    help: z.strictObject({ people: z.number().int().min(0).max(6), aid: aidClass }).optional(),
    /** The equipment of the plan was not used; without `because` nobody said why. */
    aidNotUsed: z.strictObject({ planned: aidClass, because: aidNotUsedReason.optional() }).optional(),
    effort: zeroToTen('effort').optional(),
    breathless: zeroToTen('breathlessness').optional(),
    painBefore: zeroToTen('pain').optional(),
    painAfter: zeroToTen('pain').optional(),
    events: z.array(sessionEventKind).max(8),
    /** Readings taken before, during or after, when they were. */
    readings: z.array(reading).max(20).optional(),
    left: z.enum(['bed', 'chair', 'toilet-with-staff']).optional(),
    /** A chair spell ends back in bed by this time. */
    backToBedBy: isoInstant.optional(),
    /** First time up since surgery or bed rest. */
    firstTimeUp: z.boolean().default(false),
  })
  .refine((s) => (s.outcome === 'not-done') === (s.notDone !== undefined), {
    message: 'a session that was not done needs its reason, and only that one has a reason',
    path: ['notDone'],
  })
  .refine((s) => s.outcome === 'not-done' || s.activities.length > 0, {
    message: 'say what was done',
    path: ['activities'],
  })
  .refine((s) => !s.endedAt || Date.parse(s.endedAt) >= Date.parse(s.startedAt), {
    message: 'the end is before the start',
    path: ['endedAt'],
  });
export type Session = z.infer<typeof session>;

/** The day's activity goal. `activity` names the most demanding thing asked; never above what is cleared. */
export const goal = z.strictObject({
  activity,
  timesUp: z.number().int().min(0).max(12),
  minutesOutOfBed: z
    .number()
    .int()
    .min(0)
    .max(16 * 60)
    .optional(),
  metres: z.number().min(0).max(5_000).optional(),
});
export type Goal = z.infer<typeof goal>;
