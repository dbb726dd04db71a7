/**
 * The ward's rules as one document: every number with its source, its owner and its review date.
 * Numbers are defaults until the ward's clinician signs them. A ward publishes its own with
 * `publish-rules`; the rules read values only from here.
 */
import { z } from 'zod';

const limit = <T extends z.ZodType>(value: T) =>
  z.strictObject({
    value,
    source: z.string().min(1),
    owner: z.string().min(1),
    reviewBy: z.iso.date(),
  });

export const rulesDocument = z.strictObject({
  version: z.number().int().min(1),
  start: z.strictObject({
    systolicBelow: limit(z.number()),
    systolicAbove: limit(z.number()),
    heartRateBelow: limit(z.number()),
    heartRateAskFrom: limit(z.number()),
    heartRateAbove: limit(z.number()),
    breathingAbove: limit(z.number()),
    saturationBelow: limit(z.number()),
    temperatureFrom: limit(z.number()),
    painAskFrom: limit(z.number()),
    painReliefFirstFrom: limit(z.number()),
  }),
  rising: z.strictObject({
    systolicFall: limit(z.number()),
    diastolicFall: limit(z.number()),
    systolicFallWhenLyingHigh: limit(z.number()),
    lyingHighFrom: limit(z.number()),
    initialSystolicFall: limit(z.number()),
    initialDiastolicFall: limit(z.number()),
    seatedSystolicFall: limit(z.number()),
    seatedDiastolicFall: limit(z.number()),
    standingSystolicBelow: limit(z.number()),
    heartRateRise: limit(z.number()),
    systolicRise: limit(z.number()),
    standingHighFrom: limit(z.number()),
  }),
  handling: z.strictObject({
    bariatricFromKg: limit(z.number()),
    loneCarerWithBelt: limit(z.boolean()),
    manyAttachmentsFrom: limit(z.number().int()),
    estimatedWeightMargin: limit(z.number()),
    sedativeNightHours: limit(z.number()),
    seenWalkingHours: limit(z.number()),
    liftLimitKgPerCarer: limit(z.number()),
  }),
  validity: z.strictObject({
    firstCheckHours: limit(z.number()),
    unsettledHours: limit(z.number()),
    settledHours: limit(z.number()),
    settledAfterHours: limit(z.number()),
    /** Due this long before overdue is said. */
    graceMinutes: limit(z.number()),
    aideHoldReviewHours: limit(z.number()),
    /** Review of a hold whose qualified author named no time. */
    holdReviewHours: limit(z.number()),
    cooperationWindowHours: limit(z.number()),
  }),
  activity: z.strictObject({
    walkCeilingMetres: limit(z.number()),
    notUpHours: limit(z.number()),
    chairSpellHours: limit(z.number()),
  }),
});
export type RulesDocument = z.infer<typeof rulesDocument>;

const by = (value: never, source: string) => ({
  value,
  source,
  owner: 'ward clinician (to sign)',
  reviewBy: '2027-05-31',
});
const practice = <T>(value: T) =>
  by(value as never, 'common practice, no source') as { value: T } & Omit<ReturnType<typeof by>, 'value'>;
const from = <T>(value: T, source: string) =>
  by(value as never, source) as { value: T } & Omit<ReturnType<typeof by>, 'value'>;

const wardRange = 'published ward and intensive-care cut-offs, Crit Care Res Pract 2020 ID 7840743 table 5';
const consensus = 'Hodgson et al., Crit Care 2014;18:658';
const freeman = 'Freeman et al., Auton Neurosci 2011;161:46-48';
const jordan = 'Jordan et al. consensus, Clin Auton Res 2022';
const shaw = 'Shaw et al., J Hypertens 2017;35:1019-25';

export const DEFAULT_RULES: RulesDocument = rulesDocument.parse({
  version: 1,
  start: {
    systolicBelow: from(90, wardRange),
    systolicAbove: from(180, wardRange),
    heartRateBelow: from(40, wardRange),
    heartRateAskFrom: practice(111),
    heartRateAbove: from(130, wardRange),
    breathingAbove: from(30, consensus),
    saturationBelow: from(90, consensus),
    temperatureFrom: from(38.5, wardRange),
    painAskFrom: practice(4),
    painReliefFirstFrom: practice(7),
  },
  rising: {
    systolicFall: from(20, freeman),
    diastolicFall: from(10, freeman),
    systolicFallWhenLyingHigh: from(30, freeman),
    lyingHighFrom: from(160, `${freeman}; the 160 from memory`),
    initialSystolicFall: from(40, freeman),
    initialDiastolicFall: from(20, freeman),
    seatedSystolicFall: from(15, shaw),
    seatedDiastolicFall: from(7, shaw),
    standingSystolicBelow: practice(90),
    heartRateRise: from(30, `${freeman}; shown as a rise, never as a diagnosis`),
    systolicRise: from(20, jordan),
    standingHighFrom: from(140, jordan),
  },
  handling: {
    bariatricFromKg: from(136, 'VA bariatric tables, rev. 2007 (the 300 lb trigger from memory)'),
    loneCarerWithBelt: practice(false),
    manyAttachmentsFrom: practice(2),
    estimatedWeightMargin: practice(0.2),
    sedativeNightHours: practice(4),
    seenWalkingHours: practice(4),
    liftLimitKgPerCarer: from(15.9, 'Waters, Am J Nurs 2007;107(8):53-58'),
  },
  validity: {
    firstCheckHours: practice(4),
    unsettledHours: practice(12),
    settledHours: practice(24),
    settledAfterHours: practice(48),
    graceMinutes: practice(0),
    aideHoldReviewHours: practice(1),
    holdReviewHours: practice(24),
    cooperationWindowHours: practice(24),
  },
  activity: {
    walkCeilingMetres: from(500, 'about 900 steps a day, dose studies in older in-patients'),
    notUpHours: practice(24),
    chairSpellHours: practice(1),
  },
});
