/**
 * What no ward can mean by a limit: a number with a digit too few, in another unit, or such that its rule
 * would never or always speak. Only the door asks; a document in the log is read as it was published.
 * How strict a limit is within these ranges is the ward clinician's to sign. Ranges: common practice, no source.
 */
import type { RulesDocument } from './rules-schema.ts';

export interface RulesFault {
  /** A JSON pointer into the document. */
  readonly place: string;
  readonly reason: string;
}

type Range = readonly [least: number, most: number, unit: string];
type Ranges<Group> = { readonly [K in keyof Group]?: Range };

const DAYS = (most: number): Range => [0.25, most * 24, 'hours'];
const SYSTOLIC: Range = [40, 260, 'mmHg'];
const FALL: Range = [1, 100, 'mmHg'];
const HEART_RATE: Range = [20, 220, 'a minute'];
const SLOW_BREATHS: Range = [3, 20, 'a minute'];
const BREATHS: Range = [10, 60, 'a minute'];
const SATURATION: Range = [60, 100, '%'];
const TEMPERATURE: Range = [35, 42, '°C'];
const GRADE: Range = [1, 10, 'of 10'];
const SEDATION: Range = [-5, 4, 'on the scale from -5 to 4'];
const METRES_A_SECOND: Range = [0.05, 3, 'm/s'];
const COUNT: Range = [1, 20, ''];

type Ranged = 'start' | 'stop' | 'earlyWarning' | 'criticalCare' | 'rising' | 'handling' | 'validity' | 'activity' | 'signs' | 'walking'; // prettier-ignore
const RANGES: { readonly [G in Ranged]: Ranges<RulesDocument[G]> } = {
  start: {
    systolicBelow: SYSTOLIC,
    systolicAbove: SYSTOLIC,
    heartRateBelow: HEART_RATE,
    heartRateAskFrom: HEART_RATE,
    heartRateAbove: HEART_RATE,
    breathingBelow: SLOW_BREATHS,
    breathingAbove: BREATHS,
    saturationBelow: SATURATION,
    temperatureFrom: TEMPERATURE,
    painAskFrom: GRADE,
    painReliefFirstFrom: GRADE,
    readingHours: DAYS(7),
  },
  stop: {
    systolicFallWithEffort: FALL,
    systolicBelow: SYSTOLIC,
    systolicAbove: SYSTOLIC,
    heartRateBelow: HEART_RATE,
    heartRateAbove: HEART_RATE,
    saturationBelow: SATURATION,
    saturationWithSymptomsBelow: SATURATION,
    breathingBelow: SLOW_BREATHS,
    breathingAbove: BREATHS,
    painFrom: GRADE,
    effortFrom: GRADE,
  },
  earlyWarning: { totalFrom: COUNT, emergencyFrom: COUNT, riseBy: COUNT, hours: DAYS(7) },
  criticalCare: {
    saturationBelow: SATURATION,
    oxygenFractionAbove: [0.21, 1, '(a share: 0.6 is 60 %)'],
    breathingBelow: SLOW_BREATHS,
    breathingAbove: BREATHS,
    endExpiratoryAbove: [1, 30, 'cmH2O'],
    meanPressureBelow: [30, 200, 'mmHg'],
    meanPressureAbove: [30, 200, 'mmHg'],
    heartRateBelow: HEART_RATE,
    heartRateAskFrom: HEART_RATE,
    heartRateAbove: HEART_RATE,
    sedationAskBelow: SEDATION,
    sedationBelow: SEDATION,
    sedationAskAbove: SEDATION,
    sedationAbove: SEDATION,
    temperatureFrom: TEMPERATURE,
    vasoactiveChangedHours: DAYS(7),
  },
  rising: {
    systolicFall: FALL,
    diastolicFall: FALL,
    systolicFallWhenLyingHigh: FALL,
    lyingHighFrom: SYSTOLIC,
    initialSystolicFall: FALL,
    initialDiastolicFall: FALL,
    initialWithinSeconds: [1, 60, 'seconds'],
    classicWithinMinutes: [1, 60, 'minutes'],
    seatedSystolicFall: FALL,
    seatedDiastolicFall: FALL,
    standingSystolicBelow: SYSTOLIC,
    heartRateRise: [1, 100, 'a minute'],
    systolicRise: FALL,
    standingHighFrom: SYSTOLIC,
    retrySitMinutes: [0, 60, 'minutes'],
    restingWithinMinutes: [5, 240, 'minutes'],
  },
  handling: {
    bariatricFromKg: [60, 300, 'kg'],
    ordinaryToiletUpToKg: [60, 400, 'kg'],
    manyAttachmentsFrom: COUNT,
    estimatedWeightMargin: [0, 1, '(a share: 0.2 is a fifth)'],
    sedativeNightHours: [0, 24, 'hours'],
    seenWalkingHours: [0, 72, 'hours'],
    bedRestHours: DAYS(14),
    liftLimitKgPerCarer: [1, 25, 'kg'],
    limbHoldKgPerCarer: [1, 25, 'kg'],
  },
  validity: {
    firstCheckHours: DAYS(3),
    unsettledHours: DAYS(7),
    settledHours: DAYS(7),
    settledAfterHours: DAYS(14),
    graceMinutes: [0, 720, 'minutes'],
    aideHoldReviewHours: DAYS(2),
    holdReviewHours: DAYS(7),
    cooperationWindowHours: DAYS(7),
    intoShiftHours: [0, 24, 'hours'],
    afterReturnHours: [0, 24, 'hours'],
    asleepHours: [0, 24, 'hours'],
  },
  activity: {
    spellMinutes: [1, 240, 'minutes'],
    walkCeilingMetres: [1, 10_000, 'm'],
    notUpHours: DAYS(7),
    chairSpellHours: [0.1, 24, 'hours'],
    debtFreeHours: [0, 24, 'hours'],
    wakingHours: [1, 24, 'hours'],
    stepUpSessions: COUNT,
    stepUpEffort: [0, 10, 'of 10'],
    stepBackMisses: COUNT,
  },
  signs: {
    stagesLost: COUNT,
    stagesLostHours: DAYS(7),
    refusalsInRow: COUNT,
    daysBelowBaseline: COUNT,
    readySessions: COUNT,
  },
  walking: {
    upAndGoFrom: [1, 120, 'seconds'],
    fiveRisesAbove: [1, 120, 'seconds'],
    householdBelow: METRES_A_SECOND,
    communityAbove: METRES_A_SECOND,
    higherRiskBelow: METRES_A_SECOND,
    fallsUpTo: METRES_A_SECOND,
    smallChange: METRES_A_SECOND,
    substantialChange: METRES_A_SECOND,
  },
};

/** The first lies below the second, or is the same where that is said. */
const IN_ORDER: readonly (readonly [group: Ranged, lower: string, higher: string, same?: 'or the same'])[] = [
  ['start', 'systolicBelow', 'systolicAbove'],
  ['start', 'heartRateBelow', 'heartRateAskFrom'],
  ['start', 'heartRateAskFrom', 'heartRateAbove', 'or the same'],
  ['start', 'breathingBelow', 'breathingAbove'],
  ['start', 'painAskFrom', 'painReliefFirstFrom', 'or the same'],
  ['stop', 'systolicBelow', 'systolicAbove'],
  ['stop', 'heartRateBelow', 'heartRateAbove'],
  ['stop', 'breathingBelow', 'breathingAbove'],
  ['stop', 'saturationBelow', 'saturationWithSymptomsBelow', 'or the same'],
  ['earlyWarning', 'totalFrom', 'emergencyFrom', 'or the same'],
  ['criticalCare', 'breathingBelow', 'breathingAbove'],
  ['criticalCare', 'meanPressureBelow', 'meanPressureAbove'],
  ['criticalCare', 'heartRateBelow', 'heartRateAskFrom'],
  ['criticalCare', 'heartRateAskFrom', 'heartRateAbove', 'or the same'],
  ['criticalCare', 'sedationBelow', 'sedationAskBelow', 'or the same'],
  ['criticalCare', 'sedationAskBelow', 'sedationAskAbove', 'or the same'],
  ['criticalCare', 'sedationAskAbove', 'sedationAbove', 'or the same'],
  ['validity', 'unsettledHours', 'settledHours', 'or the same'],
  ['activity', 'timesUp', 'timesUpMost', 'or the same'],
  ['walking', 'householdBelow', 'communityAbove'],
  ['walking', 'smallChange', 'substantialChange', 'or the same'],
];

/** Each limit that cannot be meant, in the order of the ranges, then pairs the wrong way round. */
export function faultsOfRules(document: RulesDocument): readonly RulesFault[] {
  const valueOf = (group: string, name: string): unknown =>
    (document[group as Ranged] as Record<string, { value: unknown }>)[name]?.value;
  const outside = Object.entries(RANGES).flatMap(([group, ranges]) =>
    Object.entries(ranges as Record<string, Range>).flatMap(([name, [least, most, unit]]): RulesFault[] => {
      const value = Number(valueOf(group, name));
      if (value >= least && value <= most) return [];
      const range = `${least} to ${most} ${unit}`.trim();
      return [{ place: pointer(group, name), reason: `${value} cannot be meant: a number from ${range}` }];
    }),
  );
  const turned = IN_ORDER.flatMap(([group, lower, higher, same]): RulesFault[] => {
    const [low, high] = [Number(valueOf(group, lower)), Number(valueOf(group, higher))];
    if (low < high || (same !== undefined && low === high)) return [];
    const must = `must be below ${higher} (${high})${same ? ` ${same}` : ''}`;
    return [{ place: pointer(group, lower), reason: `${low} ${must}` }];
  });
  return [...outside, ...turned];
}

const pointer = (group: string, name: string): string => `/${group}/${name}/value`;
