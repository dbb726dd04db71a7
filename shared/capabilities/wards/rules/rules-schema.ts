/**
 * The ward's rules as one document: every number with its source, its owner and its review date.
 * Numbers are defaults until the ward's clinician signs them. A ward publishes its own with
 * `publish-rules`; the rules read values only from here.
 */
import { z } from 'zod';
import { itemKind } from '../../aids/values.ts';
import { triggerKind } from '../../orders/values.ts';
import { NOT_DONE_REASONS, type NotDoneGroup } from '../../sessions/values.ts';

const limit = <T extends z.ZodType>(value: T) =>
  z.strictObject({
    value,
    source: z.string().min(1),
    owner: z.string().min(1),
    reviewBy: z.iso.date(),
  });

/** One number for each hour of the wall clock, 00:00 first. */
const byHour = z.array(z.number().int().min(0).max(40)).length(24, 'one number for each of the 24 hours');
const clock = '([01]\\d|2[0-3]):[0-5]\\d';
const windows = z
  .array(z.string().regex(new RegExp(`^${clock}-${clock}$`), 'a stretch like 12:00-12:45'))
  .max(8);

export const rulesDocument = z.strictObject({
  version: z.number().int().min(1),
  start: z.strictObject({
    systolicBelow: limit(z.number()),
    systolicAbove: limit(z.number()),
    heartRateBelow: limit(z.number()),
    heartRateAskFrom: limit(z.number()),
    heartRateAbove: limit(z.number()),
    /** Breaths a minute, this many or fewer: the source asks for more than that. */
    breathingBelow: limit(z.number()),
    breathingAbove: limit(z.number()),
    saturationBelow: limit(z.number()),
    temperatureFrom: limit(z.number()),
    painAskFrom: limit(z.number()),
    painReliefFirstFrom: limit(z.number()),
    /** A reading older than this is asked for again, never taken as of now. */
    readingHours: limit(z.number()),
  }),
  /** Limits at which a session stops. */
  stop: z.strictObject({
    /** Fall of the systolic pressure with effort, from the reading before (mmHg). */
    systolicFallWithEffort: limit(z.number()),
    /** Whatever the posture, and whatever it was before (mmHg). */
    systolicBelow: limit(z.number()),
    systolicAbove: limit(z.number()),
    heartRateBelow: limit(z.number()),
    heartRateAbove: limit(z.number()),
    /** Whatever the symptoms (%). A person's own target from an order comes before both. */
    saturationBelow: limit(z.number()),
    saturationWithSymptomsBelow: limit(z.number()),
    /** Breaths a minute, this many or fewer: the source asks for more than that. */
    breathingBelow: limit(z.number()),
    breathingAbove: limit(z.number()),
    painFrom: limit(z.number()),
    effortFrom: limit(z.number()),
  }),
  /** The early-warning score NEWS2 as a trigger; off until the ward turns it on. */
  earlyWarning: z.strictObject({
    on: limit(z.boolean()),
    totalFrom: limit(z.number().int()),
    /** From here on the source asks for an emergency review: nobody gets up on it. */
    emergencyFrom: limit(z.number().int()),
    /** One parameter at 3 asks for a look, whatever the total. */
    anyThree: limit(z.boolean()),
    riseBy: limit(z.number().int()),
    /** A score older than this says nothing of now (hours). */
    hours: limit(z.number()),
  }),
  /** Limits for people in critical care; off until the ward turns them on. */
  criticalCare: z.strictObject({
    on: limit(z.boolean()),
    saturationBelow: limit(z.number()),
    oxygenFractionAbove: limit(z.number()),
    /** Breaths a minute, this many or fewer: the source asks for more than that. */
    breathingBelow: limit(z.number()),
    breathingAbove: limit(z.number()),
    endExpiratoryAbove: limit(z.number()),
    meanPressureBelow: limit(z.number()),
    meanPressureAbove: limit(z.number()),
    heartRateBelow: limit(z.number()),
    heartRateAskFrom: limit(z.number()),
    heartRateAbove: limit(z.number()),
    /** Sedation grade, from -5 (cannot be woken) to 4 (combative). */
    sedationAskBelow: limit(z.number()),
    sedationBelow: limit(z.number()),
    sedationAskAbove: limit(z.number()),
    sedationAbove: limit(z.number()),
    temperatureFrom: limit(z.number()),
    /** A vasoactive drug started or raised within this long (hours). */
    vasoactiveChangedHours: limit(z.number()),
  }),
  rising: z.strictObject({
    systolicFall: limit(z.number()),
    diastolicFall: limit(z.number()),
    systolicFallWhenLyingHigh: limit(z.number()),
    lyingHighFrom: limit(z.number()),
    initialSystolicFall: limit(z.number()),
    initialDiastolicFall: limit(z.number()),
    /** A reading up to this long after standing up is judged by the initial limits (seconds). */
    initialWithinSeconds: limit(z.number()),
    /** A fall beyond this long standing is said to be later (minutes). */
    classicWithinMinutes: limit(z.number()),
    seatedSystolicFall: limit(z.number()),
    seatedDiastolicFall: limit(z.number()),
    standingSystolicBelow: limit(z.number()),
    heartRateRise: limit(z.number()),
    systolicRise: limit(z.number()),
    standingHighFrom: limit(z.number()),
    /** Seated rest before the one retry after a fall without symptoms (minutes). */
    retrySitMinutes: limit(z.number()),
    /** A reading at rest longer than this before standing makes no set whole (minutes). */
    restingWithinMinutes: limit(z.number()),
  }),
  handling: z.strictObject({
    bariatricFromKg: limit(z.number()),
    /** An ordinary toilet carries so much. */
    ordinaryToiletUpToKg: limit(z.number()),
    loneCarerWithBelt: limit(z.boolean()),
    manyAttachmentsFrom: limit(z.number().int()),
    estimatedWeightMargin: limit(z.number()),
    sedativeNightHours: limit(z.number()),
    seenWalkingHours: limit(z.number()),
    /** In bed by a hold or an order for this long: the next standing counts as a first time up (hours). */
    bedRestHours: limit(z.number()),
    liftLimitKgPerCarer: limit(z.number()),
    /** Holding a limb up with two hands, a carer (kg). */
    limbHoldKgPerCarer: limit(z.number()),
    /** Exactly 200 lb takes the heavier row of the published tables. */
    twoHundredPoundsIsHeavier: limit(z.boolean()),
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
    /** A check belongs to every shift, this far into it at the latest; off unless the ward turns it on. */
    eachShift: limit(z.boolean()),
    intoShiftHours: limit(z.number()),
    /** Back on the ward with a check that ran out meanwhile: due this long after (hours). */
    afterReturnHours: limit(z.number()),
    /** Seen asleep by day: a check waits for the next move this long (hours); by night until the night ends. */
    asleepHours: limit(z.number()),
    /** By trigger: looked at within this long (hours), also when the person does not move; null = before the next move only. */
    triggers: z.record(triggerKind, limit(z.number().min(0).nullable())),
  }),
  roster: z.strictObject({
    /** When the shifts begin on the ward's clock: two for 12 hours, three for 8, more for a split roster. */
    shiftsFrom: limit(
      z
        .array(z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'a time like 07:30'))
        .min(1)
        .max(8),
    ),
  }),
  /** Lifts, slings and other aids: how long what was seen of them counts, and what is kept free of their load. */
  aids: z.strictObject({
    placeHours: limit(z.number().positive()),
    inUseHours: limit(z.number().positive()),
    cleanHours: limit(z.number().positive()),
    batteryHours: limit(z.number().positive()),
    /** Share of the safe working load that is kept free (0.1 = a tenth). */
    loadMargin: limit(z.number().min(0).max(0.5)),
    /** An examination that is due within so many days is told to the coordinator. */
    examinationNoticeDays: limit(z.number().int().min(0).max(365)),
    /** By kind: examined again so many months after the last examination. */
    examinationMonths: z.record(itemKind, limit(z.number().int().min(1).max(120))),
    /** So many people whose plan asks for it share one lift, or one standing aid; slings for each who is lifted. */
    peoplePerLift: limit(z.number().min(1).max(100)),
    peoplePerStandingAid: limit(z.number().min(1).max(100)),
    slingsPerPerson: limit(z.number().min(0).max(20)),
  }),
  activity: z.strictObject({
    /** Times up a day that a proposed goal asks for, and the most that a step up comes to. */
    timesUp: limit(z.number().int().min(1).max(12)),
    timesUpMost: limit(z.number().int().min(1).max(12)),
    /** How long one spell upright is meant to last, or to build up to (minutes). */
    spellMinutes: limit(z.number()),
    walkCeilingMetres: limit(z.number()),
    /** A step up of the distance asks for this share more, a step back for as much less. */
    distanceStep: limit(z.number().min(0.05).max(1)),
    notUpHours: limit(z.number()),
    chairSpellHours: limit(z.number()),
    /** Waking hours since last up that are no debt yet. */
    debtFreeHours: limit(z.number()),
    /** Waking hours of a whole day, for the share of a day on which the person arrives or leaves. */
    wakingHours: limit(z.number()),
    /** A step up is proposed after this many sessions at goal, with at most this effort and no event. */
    stepUpSessions: limit(z.number().int()),
    stepUpEffort: limit(z.number()),
    /** A step back and a review after this many misses, or one event. */
    stepBackMisses: limit(z.number().int()),
  }),
  signs: z.strictObject({
    stagesLost: limit(z.number().int()),
    stagesLostHours: limit(z.number()),
    refusalsInRow: limit(z.number().int()),
    daysBelowBaseline: limit(z.number().int()),
    readySessions: limit(z.number().int()),
  }),
  /** Whom to see next: what counts how much. Points have no unit; only their order says something. */
  round: z.strictObject({
    /** Points at that many waking hours since last up; they grow with the square of the hours. */
    awakePoints: limit(z.number().min(0)),
    awakeHours: limit(z.number().min(0.5)),
    backToBedPoints: limit(z.number().min(0)),
    /** Times up that today's goal still asks for, for each hour until the night; counted up to two. */
    shortfallPoints: limit(z.number().min(0)),
    /** Stages lost, or below the usual way: each. */
    losingPoints: limit(z.number().min(0)),
    leavingHours: limit(z.number().min(0)),
    leavingPoints: limit(z.number().min(0)),
    /** No time up on the ward day before; and so much more in isolation. */
    missedPoints: limit(z.number().min(0)),
    isolationFloorPoints: limit(z.number().min(0)),
    /** Below so many waking hours since last up isolation is seen last. */
    isolationLastHours: limit(z.number().min(0)),
    mealMinutes: limit(z.number().min(0)),
    mealPoints: limit(z.number().min(0)),
    /** Not on the list for so long after a time up; then lower on it for so long. */
    restMinutes: limit(z.number().min(0)),
    restFullMinutes: limit(z.number().min(0)),
    restPoints: limit(z.number().min(0)),
    /** A visit by two: how long it is booked for (minutes), and how far ahead a time is looked for. */
    pairMinutes: limit(z.number().min(5).max(240)),
    pairAheadHours: limit(z.number().min(0).max(12)),
    /** By group of reason: asked again this long after something was not done (minutes). */
    againAfterMinutes: z.record(
      z.enum(Object.keys(NOT_DONE_REASONS) as [NotDoneGroup, ...NotDoneGroup[]]),
      limit(z.number().min(0)),
    ),
  }),
  /** What a day plan and a forecast of lifts and hands start from. */
  planning: z.strictObject({
    /** Usual staffing by the hour of the ward's clock, from 00:00: counts where nobody was named. */
    usualNurses: limit(byHour),
    usualAides: limit(byHour),
    usualTherapists: limit(byHour),
    /** Nobody is got up while meals go round, nor while the ward rests; a check may still be needed. */
    meals: limit(windows),
    rest: limit(windows),
    /** How long a visit takes with getting ready and writing down: in general, with a lift, a staged check. */
    visitMinutes: limit(z.number().int().min(5).max(120)),
    liftMinutes: limit(z.number().int().min(5).max(120)),
    checkMinutes: limit(z.number().int().min(5).max(120)),
    /** Between two people, and after somebody with infection steps. */
    cleaningMinutes: limit(z.number().int().min(0).max(120)),
    cleaningIsolationMinutes: limit(z.number().int().min(0).max(240)),
    /** What a plan is judged by. Points have no unit; the version of the rules is theirs too. */
    goalPoints: limit(z.number().min(0)),
    /** The second and each further time up counts so much less (0.2 = a fifth). */
    laterGoalLess: limit(z.number().min(0).max(1)),
    checkPoints: limit(z.number().min(0)),
    /** For each quarter hour that somebody waits who has been in bed too long; others a quarter of it. */
    debtPoints: limit(z.number().min(0)),
    otherBayPoints: limit(z.number().min(0)),
    seenLastPoints: limit(z.number().min(0)),
    spreadPoints: limit(z.number().min(0)),
    fairnessPoints: limit(z.number().min(0)),
    movedPoints: limit(z.number().min(0)),
    otherCrewPoints: limit(z.number().min(0)),
    /** The search ends after so long with the best plan so far (seconds). */
    searchSeconds: limit(z.number().min(0.2).max(30)),
  }),
  /** Demand for lifts and hands by quarter hour, and when it is worth saying that they run short. */
  forecast: z.strictObject({
    /** Toilet and care moves of one person by day and by night: the flat start, until the ward's own record says more. */
    movesByDay: limit(z.number().min(0).max(40)),
    movesByNight: limit(z.number().min(0).max(40)),
    /** That start counts as much as so many recorded days of one stay. */
    startDays: limit(z.number().positive().max(365)),
    /** Bed to chair in a lift: time at the bed (s). */
    trackSeconds: limit(z.number().positive()),
    floorSeconds: limit(z.number().positive()),
    /** Fetched, wiped and brought back: time around a use (min). */
    aroundMinutes: limit(z.number().min(0)),
    /** At the bed with other listed equipment; two people without any; two people turning somebody (min). */
    otherAidMinutes: limit(z.number().positive()),
    pairMinutes: limit(z.number().positive()),
    turnMinutes: limit(z.number().positive()),
    /** Whoever two people turn in bed is turned this often (h). */
    turnHours: limit(z.number().min(1).max(24)),
    /** From so many uses on, times measured on the ward count instead (taken to back). */
    enoughUses: limit(z.number().int().min(1)),
    /** That a piece which nobody has spoken of lately can be used. */
    unknownUsable: limit(z.number().min(0).max(1)),
    /** Share of the people on who can be spared for a move of somebody else's person. */
    handsShare: limit(z.number().min(0).max(1)),
    lateMinutes: limit(z.number().positive()),
    /** Said from this chance on that a request waits longer than that. */
    sayFrom: limit(z.number().min(0.01).max(1)),
    historyDays: limit(z.number().int().min(1).max(90)),
    /** With fewer days of its own record it is called little more than a guess. */
    fewDays: limit(z.number().int().min(0)),
    /** Simulated days. */
    runs: limit(z.number().int().min(100).max(20_000)),
  }),
  /** Published cut points of the walking measures. The tables by age and sex are data of that room. */
  walking: z.strictObject({
    /** From here on at risk of falling (s). */
    upAndGoFrom: limit(z.number()),
    /** Above it slow (s). */
    fiveRisesAbove: limit(z.number()),
    /** m/s at the usual pace: below the first at home only, above the second free in the community. */
    householdBelow: limit(z.number()),
    communityAbove: limit(z.number()),
    higherRiskBelow: limit(z.number()),
    fallsUpTo: limit(z.number()),
    /** Change between two walks done alike (m/s). */
    smallChange: limit(z.number()),
    substantialChange: limit(z.number()),
  }),
});
export type RulesDocument = z.infer<typeof rulesDocument>;
