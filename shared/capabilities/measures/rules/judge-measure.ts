/**
 * How one walking measure reads against published tables and cut points. It is never a diagnosis and
 * changes no plan; outside a table there is "no norm", never a stretched one. Sources stand in the
 * tables of this room and in the ward's rules document.
 */
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import { walkingMeasured } from '../events.ts';
import type { Measure, ReadBy } from '../values.ts';
import { CHAIR_STANDS } from './tables/chair-stands.ts';
import { agesOf, bandFor, people } from './tables/published.ts';
import { SIX_MINUTE_WALK, sixMinuteReference } from './tables/six-minute-walk.ts';
import { WALKING_SPEED } from './tables/walking-speed.ts';

export interface MeasureJudgement {
  /** What was done, as the entry says it. */
  readonly words: string;
  /** How it reads, or "no norm" with the reason. */
  readonly says: string;
  readonly source: string;
  readonly warnings: readonly string[];
}
export type WalkingLimits = RulesDocument['walking'];
type Kind = Measure['kind'];
type Of<K extends Kind> = Extract<Measure, { kind: K }>;
type Reading = Omit<MeasureJudgement, 'words'>;

const AGE_AND_SEX = 'age and sex not given';
/** Stands beside every reading, on every screen that shows one. */
export const MEASURES_STANDING_LINE =
  'Not a diagnosis. The published numbers are mostly of people who were not ill in hospital. To be on the good side of a cut point frees nothing and changes no plan: orders, the plan and the clinician at the bedside come first.';

/** @param readBy what published tables are read by; without it there is no norm by age and sex */
export function judgeMeasure(
  measure: Measure,
  readBy: ReadBy | undefined,
  limits: WalkingLimits,
): MeasureJudgement {
  return { words: wordsOf(measure), ...readingOf(measure, readBy, limits) };
}

function readingOf(measure: Measure, readBy: ReadBy | undefined, limits: WalkingLimits): Reading {
  switch (measure.kind) {
    case 'gait-speed':
      return speedReading(measure, readBy, limits);
    case 'six-minute-walk':
      return sixMinuteReading(measure, readBy);
    case 'chair-stands':
      return chairStandsReading(measure, readBy);
    case 'five-rises':
      return fiveRisesReading(measure, limits);
    case 'up-and-go':
      return upAndGoReading(measure, limits);
  }
}

const nobody = () => '';
const wordsOf = (measure: Measure): string =>
  walkingMeasured.words({ measure }, { bed: nobody, staff: nobody, text: nobody, time: nobody });

/** m/s, cut to two decimals and not rounded up, so that what is shown is what is judged, on the careful side. */
export const speedOf = ({ metres, seconds }: Of<'gait-speed'>): number =>
  Math.floor((metres / seconds) * 100 + 1e-9) / 100;

function speedReading(measure: Of<'gait-speed'>, readBy: ReadBy | undefined, limits: WalkingLimits): Reading {
  const speed = speedOf(measure);
  const warnings = [
    ...(measure.turn ? ['With a turn the speed reads lower than straight ahead.'] : []),
    ...(measure.start === 'from-standing'
      ? ['Timed from standing the speed reads lower than already walking.']
      : []),
    ...(measure.support === 'none' ? [] : [withSupport(measure.support)]),
  ];
  const shown = `${speed.toFixed(2)} m/s`;
  if (measure.pace === 'fast') {
    return {
      says: `${shown}. No norm: the table and the cut points are for the usual pace.`,
      source: WALKING_SPEED.source,
      warnings,
    };
  }
  const { householdBelow, communityAbove, higherRiskBelow, fallsUpTo } = limits;
  const bands = `${householdBelow.value} to ${communityAbove.value} m/s`;
  const says = [
    `${shown}: ${
      speed < householdBelow.value
        ? `walking at home only (under ${householdBelow.value} m/s)`
        : speed > communityAbove.value
          ? `walking in the community (over ${communityAbove.value} m/s)`
          : `limited walking in the community (${bands})`
    }.`,
    speed < higherRiskBelow.value
      ? `Under ${higherRiskBelow.value} m/s: reads as higher risk in older people.`
      : `Not under ${higherRiskBelow.value} m/s.`,
    ...(speed <= fallsUpTo.value
      ? [`Not over ${fallsUpTo.value} m/s: reads as more falls in older people.`]
      : []),
    againstMean(measure, speed, readBy),
  ];
  return {
    says: says.join(' '),
    source: sources(
      householdBelow.source,
      communityAbove.source,
      higherRiskBelow.source,
      fallsUpTo.source,
      WALKING_SPEED.source,
    ),
    warnings: [
      ...warnings,
      'The authors of the table: not valid over a short course from a word to go, or with a turn.',
      `The bands ${bands} were set with people after a stroke (from memory).`,
    ],
  };
}

/** The mean by age and sex, for a walk done as the table's were: usual pace, already walking, no turn. */
function againstMean(measure: Of<'gait-speed'>, speed: number, readBy: ReadBy | undefined): string {
  if (measure.turn) return noNorm('walked with a turn');
  if (measure.start === 'from-standing') return noNorm('timed from standing');
  if (!readBy) return noNorm(AGE_AND_SEX);
  const band = bandFor(WALKING_SPEED, readBy.age);
  if (!band) return noNorm(`the table is for ${agesOf(WALKING_SPEED)}`);
  const mean = band[readBy.sex].toFixed(2);
  return `${speed < Number(mean) ? 'Slower than' : 'Not slower than'} the mean of healthy ${people(readBy, band)} (${mean} m/s).`;
}

function sixMinuteReading(measure: Of<'six-minute-walk'>, readBy: ReadBy | undefined): Reading {
  const { metres, heightCm, weightKg, support } = measure;
  const common = {
    source: SIX_MINUTE_WALK.source,
    warnings: [
      ...(support === 'none' ? [] : [withSupport(support)]),
      'Only for six full minutes: a shorter walk is not multiplied up.',
    ],
  };
  const missing = [
    ...(readBy ? [] : ['age and sex']),
    ...(heightCm === undefined ? ['height'] : []),
    ...(weightKg === undefined ? ['weight'] : []),
  ];
  if (!readBy || heightCm === undefined || weightKg === undefined) {
    return { ...common, says: noNorm(`${listed(missing)} not given`) };
  }
  const found = sixMinuteReference(readBy, heightCm, weightKg);
  if (!found) {
    const [from, to] = SIX_MINUTE_WALK.ages;
    return { ...common, says: noNorm(`the equation is for ages ${from} to ${to}`) };
  }
  // Whole metres, the limit rounded up: what is shown is what is judged, on the careful side.
  const reference = Math.round(found.reference);
  const lower = Math.ceil(found.lower);
  if (lower <= 0) return { ...common, says: noNorm('the equation does not fit this height and weight') };
  const verdict =
    metres < lower
      ? 'Below the lower limit of normal'
      : metres < reference
        ? 'Below the reference, not below the lower limit of normal'
        : 'Not below the reference';
  return {
    ...common,
    says: `${verdict}: reference ${reference} m, lower limit ${lower} m for this age, sex, height and weight.`,
  };
}

function chairStandsReading(measure: Of<'chair-stands'>, readBy: ReadBy | undefined): Reading {
  // The published rule: with arms the count is nought. What was counted stays in the words.
  const score = measure.usedArms ? 0 : measure.stands;
  const arms = measure.usedArms ? 'Arms were used, so it counts as 0 by the published rule. ' : '';
  const common = {
    source: CHAIR_STANDS.source,
    warnings: [
      'From a chair about 43 cm high without arms; more than half-way up at 30 s counts as a stand.',
    ],
  };
  if (!readBy) return { ...common, says: arms + noNorm(AGE_AND_SEX) };
  const band = bandFor(CHAIR_STANDS, readBy.age);
  if (!band) return { ...common, says: arms + noNorm(`the table is for ${agesOf(CHAIR_STANDS)}`) };
  const cut = band[readBy.sex];
  return {
    ...common,
    says:
      arms +
      (score < cut
        ? `Below average for ${people(readBy, band)} (fewer than ${cut}).`
        : `Not below average for ${people(readBy, band)} (${cut} or more).`),
  };
}

function fiveRisesReading(measure: Of<'five-rises'>, { fiveRisesAbove }: WalkingLimits): Reading {
  return {
    says: fiveRisesSay(measure, fiveRisesAbove.value),
    source: fiveRisesAbove.source,
    warnings: ['The cut point is for rising without arms, from a chair without arms.'],
  };
}

/** With arms it is easier: slow stays slow, but quick says nothing. */
function fiveRisesSay({ seconds, usedArms }: Of<'five-rises'>, cut: number): string {
  if (seconds === null) return `Not managed: reads as slow (over ${cut} s).`;
  if (seconds > cut) return `Slow${usedArms ? ' even with arms' : ''}: over ${cut} s.`;
  return usedArms ? noNorm('arms were used') : `Not slow: not over ${cut} s.`;
}

function upAndGoReading(measure: Of<'up-and-go'>, { upAndGoFrom }: WalkingLimits): Reading {
  const cut = upAndGoFrom.value;
  return {
    says:
      measure.seconds === null
        ? `Not managed: reads as at risk of falling (${cut} s or more).`
        : measure.seconds >= cut
          ? `At risk of falling: ${cut} s or more.`
          : `Under the cut point for risk of falling (${cut} s).`,
    source: upAndGoFrom.source,
    warnings: measure.support === 'none' ? [] : [withSupport(measure.support)],
  };
}

const noNorm = (why: string): string => `No norm: ${why}.`;
const withSupport = (support: string): string =>
  `Walked with ${support === 'crutches' || support === 'two-sticks' ? '' : 'a '}${support.replaceAll('-', ' ')}: compare it only with a walk with the same.`;
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
export const sources = (...all: readonly string[]): string => [...new Set(all)].join('; ');
