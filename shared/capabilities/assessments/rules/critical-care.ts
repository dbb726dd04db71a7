/**
 * Signs of critical care against the published limits, apart from the ward's own and off until the
 * ward turns them on. Where the two published sets differ the stricter is the default: Hodgson et
 * al., Crit Care 2014;18:658, and the cut-offs tabulated in Crit Care Res Pract 2020 ID 7840743, table
 * 5, whose edges (heart rate 40 and 130, mean pressure 60, FiO2 0.6, PEEP 10) do not pass themselves.
 * "Red" there is not now here, "caution" is ask first. Clinicians at the bedside decide.
 */
import { HOUR, type EpochMs } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { CriticalCareSigns, Reading } from '../values.ts';
import type { Taken } from './counting.ts';
import type { StartWord } from './may-start.ts';

type Limits = RulesDocument['criticalCare'];
export interface CareReason {
  readonly word: Exclude<StartWord, 'may-start'>;
  readonly words: string;
  readonly limit: number | null;
  readonly source: string;
}

const CONSENSUS = 'Hodgson et al., Crit Care 2014;18:658';
const words = (code: string) => code.replaceAll('-', ' ');

/** `ago`: how long since the signs were taken (ms); a vasoactive drug just raised is new for a time. */
export function judgeCriticalCare(signs: CriticalCareSigns, limits: Limits, ago: number): CareReason[] {
  const reasons: CareReason[] = [];
  const say = (
    word: CareReason['word'],
    said: string,
    { value, source }: { value: number | null; source: string },
  ) => reasons.push({ word, words: said, limit: value, source });
  const { saturation, oxygenFraction, breathing, endExpiratory, heartRate, sedation, temperature } = signs;

  if (saturation !== undefined && saturation < limits.saturationBelow.value) {
    const low = limits.saturationBelow;
    say('not-now', `critical care: oxygen saturation ${saturation} % is below ${low.value} %`, low);
  }
  if (oxygenFraction !== undefined && oxygenFraction >= limits.oxygenFractionAbove.value) {
    const high = limits.oxygenFractionAbove;
    say('ask-first', `critical care: oxygen fraction ${oxygenFraction} is ${high.value} or more`, high);
  }
  if (breathing !== undefined && breathing <= limits.breathingBelow.value) {
    const low = limits.breathingBelow;
    say('not-now', `critical care: breathing rate ${breathing} is ${low.value} or less`, low);
  }
  if (breathing !== undefined && breathing > limits.breathingAbove.value) {
    const high = limits.breathingAbove;
    say('ask-first', `critical care: breathing rate ${breathing} is above ${high.value}`, high);
  }
  if (endExpiratory !== undefined && endExpiratory >= limits.endExpiratoryAbove.value) {
    const high = limits.endExpiratoryAbove;
    say(
      'ask-first',
      `critical care: end-expiratory pressure ${endExpiratory} cmH2O is ${high.value} or more`,
      high,
    );
  }
  meanPressure(signs, limits, say);
  if (heartRate !== undefined) {
    const { heartRateBelow: low, heartRateAbove: high, heartRateAskFrom: ask } = limits;
    if (heartRate <= low.value) {
      say('not-now', `critical care: heart rate ${heartRate} is ${low.value} or less`, low);
    } else if (heartRate >= high.value) {
      say('not-now', `critical care: heart rate ${heartRate} is ${high.value} or more`, high);
    } else if (heartRate >= ask.value) {
      say('ask-first', `critical care: heart rate ${heartRate} is ${ask.value} or more`, ask);
    }
  }
  if (sedation !== undefined) {
    const grade = `critical care: sedation grade ${sedation}`;
    const { sedationBelow, sedationAskBelow, sedationAbove, sedationAskAbove } = limits;
    if (sedation < sedationBelow.value)
      say('not-now', `${grade} is below ${sedationBelow.value}`, sedationBelow);
    else if (sedation > sedationAbove.value)
      say('not-now', `${grade} is above ${sedationAbove.value}`, sedationAbove);
    else if (sedation < sedationAskBelow.value) {
      say('ask-first', `${grade} is below ${sedationAskBelow.value}`, sedationAskBelow);
    } else if (sedation > sedationAskAbove.value) {
      say('ask-first', `${grade} is above ${sedationAskAbove.value}`, sedationAskAbove);
    }
  }
  if (signs.confusedNotFollowing) {
    say('ask-first', 'critical care: confused and does not follow simple commands', {
      value: null,
      source: CONSENSUS,
    });
  }
  if (temperature !== undefined && temperature >= limits.temperatureFrom.value) {
    const from = limits.temperatureFrom;
    const said = `critical care: temperature ${temperature} °C is ${from.value} or more`;
    if (signs.activeCooling) {
      const source = `${from.source}; with active cooling from memory`;
      say('not-now', `${said}, and is being cooled`, { value: from.value, source });
    } else say('ask-first', said, from);
  }
  vasoactive(signs, limits, ago, say);
  for (const bar of signs.bars) {
    say('not-now', `critical care: ${words(bar)}`, { value: null, source: CONSENSUS });
  }
  return reasons;
}

type Say = (
  word: CareReason['word'],
  said: string,
  limit: { value: number | null; source: string },
) => unknown;

/** The lower target of the person, by order, takes the place of the ward's own lower limit. */
function meanPressure(
  { meanPressure: mean, meanPressureTarget }: CriticalCareSigns,
  limits: Limits,
  say: Say,
) {
  if (mean === undefined) return;
  const low =
    meanPressureTarget === undefined
      ? limits.meanPressureBelow
      : { value: meanPressureTarget, source: "the person's own target, by order" };
  const high = limits.meanPressureAbove;
  // The published range begins above its edge; a target that was ordered is itself enough.
  if (meanPressureTarget === undefined && mean <= low.value) {
    say('not-now', `critical care: mean pressure ${mean} mmHg is ${low.value} or less`, low);
  } else if (mean < low.value) {
    say('not-now', `critical care: mean pressure ${mean} mmHg is below the own target of ${low.value}`, low);
  } else if (mean > high.value) {
    say('ask-first', `critical care: mean pressure ${mean} mmHg is above ${high.value}`, high);
  }
}

/** The one item on which the experts found no number: a running drug always asks. */
function vasoactive({ vasoactive: drug }: CriticalCareSigns, limits: Limits, ago: number, say: Say) {
  const changed = limits.vasoactiveChangedHours;
  if (drug === 'new-or-raised' && ago < changed.value * HOUR) {
    say('not-now', `critical care: vasoactive drug new or raised within ${changed.value} h`, changed);
  } else if (drug === 'steady' || drug === 'new-or-raised') {
    say('ask-first', 'critical care: vasoactive drug running, ask by local policy', {
      value: null,
      source: `${CONSENSUS}: no dose was agreed, local policy decides`,
    });
  }
}

/** The signs by name, each with what belongs to it. The last four are the ward's own signs as well. */
const SIGNS = {
  'oxygen fraction': ['oxygenFraction'],
  'mean pressure': ['meanPressure', 'meanPressureTarget'],
  'sedation grade': ['sedation'],
  'vasoactive drugs': ['vasoactive'],
  'end-expiratory pressure': ['endExpiratory'],
  'follows simple commands': ['confusedNotFollowing'],
  'oxygen saturation': ['saturation'],
  'breathing rate': ['breathing'],
  'heart rate': ['heartRate'],
  temperature: ['temperature', 'activeCooling'],
} as const satisfies Record<string, readonly (keyof CriticalCareSigns)[]>;
export type CareSign = keyof typeof SIGNS;
export const CARE_SIGNS = Object.keys(SIGNS) as CareSign[];
/** Asked for wherever the set is on; the ward's own signs are asked for anyway. */
export const CARE_SIGNS_ASKED: readonly CareSign[] = [
  'oxygen fraction',
  'mean pressure',
  'sedation grade',
  'vasoactive drugs',
];
const WHOLE_SET: readonly CareSign[] = [
  ...CARE_SIGNS_ASKED,
  'oxygen saturation',
  'breathing rate',
  'heart rate',
  'temperature',
];

export interface TakenCare extends Taken {
  readonly signs: CriticalCareSigns;
}
type CareFact = Fact<CriticalCareSigns>;

/** One sign of an entry by itself; null when that entry does not have it. */
export function careSignOf(fact: CareFact, sign: CareSign): TakenCare | null {
  const [first, ...others] = SIGNS[sign];
  if (fact.data[first] === undefined) return null;
  const signs: CriticalCareSigns = { bars: [], [first]: fact.data[first] };
  for (const other of others) Object.assign(signs, { [other]: fact.data[other] });
  return { at: fact.occurred, fact, signs };
}

/** An entry that has the whole set says of the bars it does not name that they are not there. */
export const isWholeSet = (fact: CareFact): boolean =>
  WHOLE_SET.every((sign) => fact.data[SIGNS[sign][0]] !== undefined);

/** The signs of an entry that the ward's own limits judge as well, as readings of its time. */
export function asReadings({ data }: CareFact, at: string): Reading[] {
  const readings: Reading[] = [];
  if (data.saturation !== undefined) readings.push({ kind: 'oxygen', saturation: data.saturation, at });
  if (data.breathing !== undefined) readings.push({ kind: 'breathing', perMinute: data.breathing, at });
  if (data.heartRate !== undefined) readings.push({ kind: 'heart-rate', perMinute: data.heartRate, at });
  if (data.temperature !== undefined) readings.push({ kind: 'temperature', celsius: data.temperature, at });
  return readings;
}

/** When a drug that was new or raised at `at` is so no longer. */
export const vasoactiveSettles = (at: EpochMs, limits: Limits): EpochMs =>
  at + limits.vasoactiveChangedHours.value * HOUR;
