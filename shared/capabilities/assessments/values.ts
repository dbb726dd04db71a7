import { z } from 'zod';
import { isoInstant } from '../../kernel/times.ts';

export const depth = z.enum(['full-with-pressure', 'full', 'confirm']);
export type Depth = z.infer<typeof depth>;

export const side = z.enum(['left', 'right']);
export type Side = z.infer<typeof side>;

/** Walking supports a person may use on their own feet. Using one is still walking. */
export const walkingSupport = z.enum(['none', 'stick', 'two-sticks', 'crutches', 'frame', 'wheeled-frame']);
export type WalkingSupport = z.infer<typeof walkingSupport>;

export const worn = z.enum(['prosthesis', 'brace', 'glasses', 'hearing-aids', 'shoes']);

export const notTestedReason = z.enum([
  'stopped-before',
  'asleep',
  'refused',
  'pain',
  'order',
  'no-second-person',
  'no-equipment',
  'off-ward',
  'other',
]);
export const notApplicableReason = z.enum(['limb-absent', 'cast', 'order', 'lifelong']);

/** One part of a stage, by its id in the protocol document; `side` where the part has sides. */
export const finding = z
  .strictObject({
    part: z.string().min(1).max(60),
    side: side.optional(),
    result: z.enum(['met', 'not-met', 'not-tested', 'not-applicable']),
    reason: z.union([notTestedReason, notApplicableReason]).optional(),
  })
  .refine((f) => (f.result === 'met' || f.result === 'not-met' ? true : f.reason !== undefined), {
    message: 'say why it was not tested or does not apply',
    path: ['reason'],
  });
export type Finding = z.infer<typeof finding>;

export const securedWith = z.enum(['raised-bed', 'sling', 'standing-aid', 'two-people']);

export const stageRecord = z
  .strictObject({
    /** Stage id of the protocol named by the assessment. */
    stage: z.string().min(1).max(40),
    outcome: z.enum(['met', 'not-met', 'not-tested']),
    reason: notTestedReason.optional(),
    /** On one's own, or held safe so that a failure is not a fall. */
    how: z.enum(['free', 'secured']),
    securedWith: securedWith.optional(),
    people: z.number().int().min(0).max(6),
    /** A word of the ward's equipment, like "standing-aid": it stands in the log for good, so no free text. */
    aid: z
      .string()
      .regex(/^[a-z][a-z-]{0,39}$/, 'name the aid by its word, like "standing-aid"')
      .optional(),
    findings: z.array(finding).max(40),
    symptom: z.boolean(),
    /** Set when the stage was met on one leg with both arms pushing, the order allowing it. */
    oneLeg: side.optional(),
    at: isoInstant,
  })
  .refine((s) => s.outcome !== 'not-tested' || s.reason !== undefined, {
    message: 'say why the stage was not tested',
    path: ['reason'],
  })
  .refine((s) => s.how === 'free' || s.securedWith !== undefined, {
    message: 'say what held the person safe',
    path: ['securedWith'],
  });
export type StageRecord = z.infer<typeof stageRecord>;

const bounded = (low: number, high: number, what: string) =>
  z.number().min(low, `${what} is ${low} to ${high}`).max(high, `${what} is ${low} to ${high}`);

/**
 * Readings, kept when taken. Bounds are what an instrument can show on a living adult, so that a
 * slip of the finger is caught; they are not clinical limits. Common practice, no source.
 */
export const reading = z.discriminatedUnion('kind', [
  z
    .strictObject({
      kind: z.literal('pressure'),
      posture: z.enum(['lying', 'seated', 'standing']),
      /** Minutes in that posture when taken; 0.25 is the reading at 15 s. */
      minute: bounded(0, 30, 'minutes in the posture').optional(),
      systolic: bounded(40, 300, 'systolic pressure (mmHg)'),
      diastolic: bounded(20, 200, 'diastolic pressure (mmHg)'),
      heartRate: bounded(20, 250, 'heart rate (per minute)').optional(),
      at: isoInstant,
    })
    .refine((r) => r.systolic > r.diastolic, {
      message: 'systolic pressure (mmHg) is above diastolic: check that they are not exchanged',
      path: ['systolic'],
    }),
  z.strictObject({
    kind: z.literal('heart-rate'),
    perMinute: bounded(20, 250, 'heart rate (per minute)'),
    at: isoInstant,
  }),
  z.strictObject({
    kind: z.literal('oxygen'),
    saturation: bounded(40, 100, 'oxygen saturation (%)'),
    litresPerMinute: bounded(0, 60, 'oxygen flow (litres per minute)').optional(),
    at: isoInstant,
  }),
  z.strictObject({
    kind: z.literal('breathing'),
    perMinute: bounded(4, 70, 'breathing rate (per minute)'),
    at: isoInstant,
  }),
  z.strictObject({
    kind: z.literal('temperature'),
    celsius: bounded(30, 43, 'temperature (°C)'),
    at: isoInstant,
  }),
  z.strictObject({ kind: z.literal('pain'), outOfTen: bounded(0, 10, 'pain (0 to 10)'), at: isoInstant }),
]);
export type Reading = z.infer<typeof reading>;

export const cooperation = z.strictObject({
  waitsForHelp: z.enum(['yes', 'no', 'varies']),
  followsInstructions: z.enum(['yes', 'no']),
});
export type Cooperation = z.infer<typeof cooperation>;

/**
 * An early-warning score as it was charted: the number, whether any one parameter scored 3, and the
 * oxygen scale it was scored on. National Early Warning Score (NEWS) 2, Royal College of Physicians 2017.
 */
export const earlyWarning = z.strictObject({
  score: z.number().int().min(0, 'the score is 0 to 20').max(20, 'the score is 0 to 20'),
  anyThree: z.boolean(),
  scale: z.union([z.literal(1), z.literal(2)]),
});
export type EarlyWarning = z.infer<typeof earlyWarning>;

export const vasoactive = z.enum(['none', 'steady', 'new-or-raised']);
/** What stands against moving anyone in critical care, by the published consensus. */
export const criticalCareBar = z.enum([
  'raised-intracranial-pressure',
  'open-lumbar-drain',
  'lying-prone',
  'ongoing-cardiac-ischaemia',
  'uncontrolled-seizures',
  'drugs-for-hypertensive-emergency',
  'uncontrolled-bleeding',
  'femoral-sheath',
  'dependent-pacing',
  'slow-rhythm-needing-drug-or-pacemaker',
  'unstable-fracture',
  'large-open-wound',
]);
/** Signs kept for the critical-care limits; each only when taken. Bounds catch slips of the finger. */
export const criticalCareSigns = z.strictObject({
  saturation: bounded(40, 100, 'oxygen saturation (%)').optional(),
  /** Fraction of inspired oxygen, 0.21 to 1. */
  oxygenFraction: bounded(0.21, 1, 'oxygen fraction').optional(),
  breathing: bounded(4, 70, 'breathing rate (per minute)').optional(),
  /** cmH2O. */
  endExpiratory: bounded(0, 30, 'end-expiratory pressure (cmH2O)').optional(),
  meanPressure: bounded(20, 200, 'mean arterial pressure (mmHg)').optional(),
  /** The lower target for this person, by order (mmHg). */
  meanPressureTarget: bounded(40, 120, 'target of the mean pressure (mmHg)').optional(),
  heartRate: bounded(20, 250, 'heart rate (per minute)').optional(),
  /** From -5 (cannot be woken) to 4 (combative). */
  sedation: z.number().int().min(-5).max(4).optional(),
  /** Confused and does not follow simple commands. */
  confusedNotFollowing: z.boolean().optional(),
  temperature: bounded(30, 43, 'temperature (°C)').optional(),
  activeCooling: z.boolean().optional(),
  vasoactive: vasoactive.optional(),
  bars: z.array(criticalCareBar).max(12).default([]),
});
export type CriticalCareSigns = z.infer<typeof criticalCareSigns>;

/** Symptoms while lying, sitting or standing up. */
export const risingSymptom = z.enum(['dizzy', 'faint', 'blurred-sight', 'nausea', 'other']);
