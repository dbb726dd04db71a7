/** The rules a ward starts with. Numbers are defaults until the ward's clinician signs them. */
import { rulesDocument, type RulesDocument } from './rules-schema.ts';

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
const exercise = 'exercise stop indications as restated in published guidance (a weak copy); to be signed';
const news2 = 'Royal College of Physicians, National Early Warning Score (NEWS) 2, 2017';
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
    readingHours: practice(12),
  },
  stop: {
    systolicFallWithEffort: from(10, exercise),
    systolicAbove: from(210, exercise),
    heartRateBelow: from(40, wardRange),
    heartRateAbove: from(130, wardRange),
    saturationBelow: from(85, exercise),
    saturationWithSymptomsBelow: from(90, exercise),
    breathingAbove: from(30, consensus),
    painFrom: practice(7),
    effortFrom: practice(8),
  },
  earlyWarning: {
    on: practice(false),
    totalFrom: from(5, news2),
    anyThree: from(true, news2),
    riseBy: practice(2),
    hours: practice(12),
  },
  criticalCare: {
    on: practice(false),
    saturationBelow: from(90, consensus),
    oxygenFractionAbove: from(0.6, consensus),
    breathingAbove: from(30, consensus),
    endExpiratoryAbove: from(10, consensus),
    meanPressureBelow: from(60, wardRange),
    meanPressureAbove: from(100, 'Japanese consensus of 2023 as tabulated in J-ReCIP 2023 table 1'),
    heartRateBelow: from(40, wardRange),
    heartRateAskFrom: from(120, `${consensus}; the 120 from memory`),
    heartRateAbove: from(130, `${wardRange}; stricter than the 150 of the other source`),
    sedationAskBelow: from(-1, consensus),
    sedationBelow: from(-2, consensus),
    sedationAskAbove: from(1, consensus),
    sedationAbove: from(2, consensus),
    temperatureFrom: from(38.5, wardRange),
    vasoactiveChangedHours: from(2, wardRange),
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
    retrySitMinutes: practice(2),
  },
  handling: {
    bariatricFromKg: from(136, 'VA bariatric tables, rev. 2007 (the 300 lb trigger from memory)'),
    loneCarerWithBelt: practice(false),
    manyAttachmentsFrom: practice(2),
    estimatedWeightMargin: practice(0.2),
    sedativeNightHours: practice(4),
    seenWalkingHours: practice(4),
    liftLimitKgPerCarer: from(15.9, 'Waters, Am J Nurs 2007;107(8):53-58'),
    limbHoldKgPerCarer: from(
      10,
      'peri-operative nursing ergonomic guidance (2022 edition, tool 2): about 22 lb',
    ),
    twoHundredPoundsIsHeavier: practice(true),
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
    eachShift: practice(false),
    intoShiftHours: practice(4),
    afterReturnHours: practice(1),
    triggers: {
      arrival: practice(4),
      'return-from-surgery': practice(null),
      'return-from-dialysis': practice(null),
      sedation: practice(null),
      'block-on': practice(null),
      'block-off': practice(null),
      fall: practice(1),
      faint: practice(1),
      seizure: practice(1),
      'low-glucose': practice(1),
      bleed: practice(1),
      transfusion: practice(1),
      'new-symptom': practice(1),
      'new-confusion': practice(1),
      'order-change': practice(null),
      'attachment-change': practice(null),
      'sheath-out': practice(1),
      'suspected-clot': practice(1),
      'failed-attempt': practice(12),
      'step-down-from-intensive-care': practice(4),
      'asked-to-look-again': practice(null),
      'early-warning-rise': practice(1),
    },
  },
  roster: { shiftsFrom: practice(['07:00', '19:00']) },
  activity: {
    walkCeilingMetres: from(500, 'about 900 steps a day, dose studies in older in-patients'),
    notUpHours: practice(24),
    chairSpellHours: practice(1),
    debtFreeHours: practice(4),
    wakingHours: practice(14),
    stepUpSessions: practice(2),
    stepUpEffort: practice(4),
    stepBackMisses: practice(2),
  },
  signs: {
    stagesLost: practice(2),
    stagesLostHours: practice(24),
    refusalsInRow: practice(3),
    daysBelowBaseline: practice(3),
    readySessions: practice(2),
  },
});
