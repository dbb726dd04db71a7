/**
 * May we start? From readings and cooperation against the ward's limits: not now, ask first, or may
 * start, each reason with its limit, its source and when the reading was taken (a screen counts the
 * age). A reading that was not taken is listed, never taken as normal. Orders, local policy and the
 * clinician at the bedside come first.
 */
import type { EpochMs } from '../../../kernel/times.ts';
import { toEpoch } from '../../../kernel/times.ts';
import type { RulesDocument } from '../../wards/rules/rules-document.ts';
import type { Cooperation, Reading } from '../values.ts';
import { weightOf } from './counting.ts';

export type StartWord = 'not-now' | 'ask-first' | 'may-start';
/** What a reading tells of; a pressure may carry a heart rate as well. */
export type StartSign =
  | 'blood pressure'
  | 'heart rate'
  | 'oxygen saturation'
  | 'breathing rate'
  | 'temperature'
  | 'pain'
  | 'waits for help, follows instructions';

export interface StartReason {
  readonly word: 'not-now' | 'ask-first';
  readonly words: string;
  readonly limit: number | null;
  readonly source: string;
  /** When the reading was taken; null for what is not a reading. */
  readonly takenAt: EpochMs | null;
  readonly sign: StartSign;
}
export interface StartVerdict {
  readonly word: StartWord;
  readonly reasons: readonly StartReason[];
  /** What was looked at, so that "may start" shows what it stands on. */
  readonly lookedAt: readonly { words: string; takenAt: EpochMs }[];
  readonly notTaken: readonly StartSign[];
}

export interface StartLimits {
  /** The person's own oxygen target (%), from an order; the ward's limit applies without one. */
  readonly oxygenTarget: { readonly low: number; readonly high: number } | null;
  readonly rules: RulesDocument['start'];
}
export interface StartInput extends StartLimits {
  readonly readings: readonly Reading[];
  readonly cooperation: Cooperation | undefined;
  readonly oxygenFlowBefore: OxygenFlowBefore;
}

/**
 * Oxygen flow at the checks before (litres per minute). `not-recorded`: a saturation was taken, and nobody
 * wrote down with how much oxygen; null: none was taken.
 */
export type OxygenFlowBefore = number | 'not-recorded' | null;

type OfKind<K extends Reading['kind']> = Extract<Reading, { kind: K }>;
type HeartRate = OfKind<'heart-rate'>;

/**
 * The readings taken before the person rises: per kind those of the last instant up to `clearAt`, or
 * of the first instant if none is that early. A standing pressure belongs to rising, not to starting.
 */
export function readingsAtStart(readings: readonly Reading[], clearAt: EpochMs): Reading[] {
  const byKind = new Map<Reading['kind'], Reading[]>();
  const inOrder = ratesApart(
    readings.filter((r) => r.kind !== 'pressure' || r.posture !== 'standing'),
  ).toSorted((a, b) => toEpoch(a.at) - toEpoch(b.at));
  for (const r of inOrder) {
    const before = byKind.get(r.kind);
    if (before && toEpoch(before[0]!.at) === toEpoch(r.at)) before.push(r);
    else if (!before || toEpoch(r.at) <= clearAt) byKind.set(r.kind, [r]);
  }
  return [...byKind.values()].flat();
}

/** Oxygen flow at a check, litres per minute: the last that was written down; null when none was. */
export function lastOxygenFlow(readings: readonly Reading[]): number | null {
  let last: { at: EpochMs; flow: number } | null = null;
  for (const r of readings) {
    if (r.kind !== 'oxygen' || r.litresPerMinute === undefined) continue;
    const at = toEpoch(r.at);
    if (!last || at >= last.at) last = { at, flow: r.litresPerMinute };
  }
  return last && last.flow;
}

/** What is known of the flow after a check: the last one written down stands, also where a later check is silent. */
export function oxygenFlowAfter(readings: readonly Reading[], before: OxygenFlowBefore): OxygenFlowBefore {
  const flow = lastOxygenFlow(readings);
  return flow ?? before ?? (readings.some((r) => r.kind === 'oxygen') ? 'not-recorded' : null);
}

/** The heart rate that was taken with a pressure. */
export const heartRateWith = (pressure: OfKind<'pressure'>): HeartRate | undefined =>
  pressure.heartRate === undefined
    ? undefined
    : { kind: 'heart-rate', perMinute: pressure.heartRate, at: pressure.at };

/** Each heart rate by itself, so that it is the last of its kind or is not. */
const ratesApart = (readings: readonly Reading[]): Reading[] =>
  readings.flatMap((r): Reading[] => {
    if (r.kind !== 'pressure') return [r];
    const rate = heartRateWith(r);
    return rate ? [{ ...r, heartRate: undefined }, rate] : [r];
  });

/** What the reading of each kind tells of, in the order in which they are said. */
export const SIGN_OF = {
  pressure: 'blood pressure',
  'heart-rate': 'heart rate',
  oxygen: 'oxygen saturation',
  breathing: 'breathing rate',
  temperature: 'temperature',
  pain: 'pain',
} as const satisfies Record<Reading['kind'], StartSign>;

interface Limit {
  readonly value: number;
  readonly source: string;
}
const PRACTICE = 'common practice, no source';

/** One reading by itself against the limits; a heart rate that came with a pressure is not looked at. */
export function judgeReading(
  reading: Reading,
  { rules, oxygenTarget }: StartLimits,
): { readonly looked: string; readonly reasons: readonly StartReason[] } {
  const takenAt = toEpoch(reading.at);
  const sign = SIGN_OF[reading.kind];
  const reason = (word: StartReason['word'], words: string, { value, source }: Limit): StartReason[] => [
    { word, words, limit: value, source, takenAt, sign },
  ];
  const found = (looked: string, reasons: StartReason[] = []) => ({ looked, reasons });
  switch (reading.kind) {
    case 'pressure': {
      const { systolic, diastolic, posture } = reading;
      const { systolicBelow: low, systolicAbove: high } = rules;
      return found(
        `${posture} pressure ${systolic}/${diastolic} mmHg`,
        systolic < low.value
          ? reason('not-now', `systolic ${systolic} mmHg is below ${low.value}`, low)
          : systolic > high.value
            ? reason('ask-first', `systolic ${systolic} mmHg is above ${high.value}`, high)
            : [],
      );
    }
    case 'heart-rate': {
      const rate = reading.perMinute;
      const { heartRateBelow: low, heartRateAbove: high, heartRateAskFrom: ask } = rules;
      return found(
        `heart rate ${rate} a minute`,
        rate < low.value
          ? reason('not-now', `heart rate ${rate} is below ${low.value}`, low)
          : rate > high.value
            ? reason('not-now', `heart rate ${rate} is above ${high.value}`, high)
            : rate >= ask.value
              ? reason('ask-first', `heart rate ${rate} is ${ask.value} or more`, ask)
              : [],
      );
    }
    case 'oxygen': {
      const { saturation } = reading;
      const low = oxygenTarget
        ? { value: oxygenTarget.low, source: "the person's own target, by order" }
        : rules.saturationBelow;
      const own = oxygenTarget ? 'the own target of ' : '';
      return found(
        `oxygen saturation ${saturation} %`,
        saturation < low.value
          ? reason('not-now', `oxygen saturation ${saturation} % is below ${own}${low.value} %`, low)
          : [],
      );
    }
    case 'breathing': {
      const { breathingBelow: low, breathingAbove: high } = rules;
      const rate = reading.perMinute;
      return found(
        `breathing rate ${rate} a minute`,
        rate <= low.value
          ? reason('not-now', `breathing rate ${rate} is ${low.value} or less`, low)
          : rate > high.value
            ? reason('not-now', `breathing rate ${rate} is above ${high.value}`, high)
            : [],
      );
    }
    case 'temperature': {
      const { celsius } = reading;
      const from = rules.temperatureFrom;
      return found(
        `temperature ${celsius} °C`,
        celsius >= from.value
          ? reason('ask-first', `temperature ${celsius} °C is ${from.value} or more`, from)
          : [],
      );
    }
    case 'pain': {
      const pain = reading.outOfTen;
      const { painReliefFirstFrom: first, painAskFrom: ask } = rules;
      return found(
        `pain ${pain} of 10`,
        pain >= first.value
          ? reason('ask-first', `pain ${pain} of 10: relief first`, first)
          : pain >= ask.value
            ? reason('ask-first', `pain ${pain} of 10: offer relief, come back when it works`, ask)
            : [],
      );
    }
  }
}

/**
 * More oxygen than before asks first, and so does oxygen where a reading before said nothing of it: it may
 * be more. The first reading of all is held against nothing. Litres per minute.
 */
export function moreOxygen(before: OxygenFlowBefore, now: number, takenAt: EpochMs): StartReason[] {
  const ask = (words: string): StartReason[] => [
    { word: 'ask-first', words, limit: null, source: PRACTICE, takenAt, sign: 'oxygen saturation' },
  ];
  if (before === null) return [];
  if (before === 'not-recorded') {
    return now > 0 ? ask(`on ${now} litres of oxygen a minute; the flow before is not known`) : [];
  }
  return now > before ? ask(`more oxygen than at the last check (${before} to ${now} litres a minute)`) : [];
}

const alone = (words: string): StartReason => ({
  word: 'ask-first',
  words,
  limit: null,
  source: PRACTICE,
  takenAt: null,
  sign: 'waits for help, follows instructions',
});
/** Who does not wait for help or follow instructions is never alone. */
export function judgeCooperation({ waitsForHelp, followsInstructions }: Cooperation): StartReason[] {
  const reasons: StartReason[] = [];
  if (waitsForHelp === 'no') reasons.push(alone('does not wait for help: never alone'));
  if (waitsForHelp === 'varies') reasons.push(alone('waits for help only sometimes: never alone'));
  if (followsInstructions === 'no') {
    reasons.push(alone('does not follow instructions: ask who should be there and how to ask'));
  }
  return reasons;
}

/** The strictest word of some reasons. */
export const wordOf = (reasons: readonly { readonly word: StartReason['word'] }[]): StartWord =>
  reasons.some((r) => r.word === 'not-now') ? 'not-now' : reasons.length > 0 ? 'ask-first' : 'may-start';

export function judgeStart(input: StartInput): StartVerdict {
  const readings = ratesApart(input.readings);
  const weigh = (one: Reading): number => weightOf(judgeReading(one, input).reasons);
  /** The last of a kind; of one instant the stricter. */
  const find = <K extends Reading['kind']>(kind: K): OfKind<K> | undefined => {
    let last: OfKind<K> | undefined;
    for (const one of readings.filter((r): r is OfKind<K> => r.kind === kind)) {
      const later = last ? toEpoch(one.at) - toEpoch(last.at) : 1;
      if (!last || later > 0 || (later === 0 && weigh(one) >= weigh(last))) last = one;
    }
    return last;
  };
  const oxygen = find('oxygen');
  const lookedAt: { words: string; takenAt: EpochMs }[] = [];
  const reasons: StartReason[] = [];
  const notTaken: StartSign[] = [];
  const found: readonly (readonly [StartSign, Reading | undefined])[] = [
    [SIGN_OF.pressure, find('pressure')],
    [SIGN_OF['heart-rate'], find('heart-rate')],
    [SIGN_OF.oxygen, oxygen],
    [SIGN_OF.breathing, find('breathing')],
    [SIGN_OF.temperature, find('temperature')],
    [SIGN_OF.pain, find('pain')],
  ];
  for (const [sign, reading] of found) {
    if (!reading) {
      notTaken.push(sign);
      continue;
    }
    const judged = judgeReading(reading, input);
    lookedAt.push({ words: judged.looked, takenAt: toEpoch(reading.at) });
    reasons.push(...judged.reasons);
    if (reading === oxygen && oxygen.litresPerMinute !== undefined) {
      reasons.push(...moreOxygen(input.oxygenFlowBefore, oxygen.litresPerMinute, toEpoch(oxygen.at)));
    }
  }
  if (input.cooperation) reasons.push(...judgeCooperation(input.cooperation));
  else notTaken.push('waits for help, follows instructions');
  return { word: wordOf(reasons), reasons, lookedAt, notTaken };
}
