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

export type StartWord = 'not-now' | 'ask-first' | 'may-start';

export interface StartReason {
  readonly word: 'not-now' | 'ask-first';
  readonly words: string;
  readonly limit: number | null;
  readonly source: string;
  /** When the reading was taken; null for what is not a reading. */
  readonly takenAt: EpochMs | null;
}
export interface StartVerdict {
  readonly word: StartWord;
  readonly reasons: readonly StartReason[];
  /** What was looked at, so that "may start" shows what it stands on. */
  readonly lookedAt: readonly { words: string; takenAt: EpochMs }[];
  readonly notTaken: readonly string[];
}

export interface StartInput {
  readonly readings: readonly Reading[];
  readonly cooperation: Cooperation | undefined;
  /** The person's own oxygen target (%), from an order; the ward's limit applies without one. */
  readonly oxygenTarget: { readonly low: number; readonly high: number } | null;
  /** Oxygen flow at the check before this one (litres per minute); null when not recorded. */
  readonly oxygenFlowBefore: number | null;
  readonly rules: RulesDocument['start'];
}

type OfKind<K extends Reading['kind']> = Extract<Reading, { kind: K }>;

/**
 * The readings taken before the person rises: per kind the last one up to `clearAt`, or the first
 * one if none is that early. A standing pressure belongs to rising, not to starting.
 */
export function readingsAtStart(readings: readonly Reading[], clearAt: EpochMs): Reading[] {
  const byKind = new Map<Reading['kind'], Reading>();
  const inOrder = readings
    .filter((r) => r.kind !== 'pressure' || r.posture !== 'standing')
    .toSorted((a, b) => toEpoch(a.at) - toEpoch(b.at));
  for (const r of inOrder) {
    if (!byKind.has(r.kind) || toEpoch(r.at) <= clearAt) byKind.set(r.kind, r);
  }
  return [...byKind.values()];
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

export function judgeStart(input: StartInput): StartVerdict {
  const { rules } = input;
  const reasons: StartReason[] = [];
  const lookedAt: { words: string; takenAt: EpochMs }[] = [];
  const find = <K extends Reading['kind']>(kind: K): OfKind<K> | undefined =>
    input.readings.findLast((r): r is OfKind<K> => r.kind === kind);
  const say = (
    word: StartReason['word'],
    words: string,
    limit: { value: number; source: string } | null,
    takenAt: EpochMs | null,
    source = limit?.source ?? 'common practice, no source',
  ) => reasons.push({ word, words, limit: limit?.value ?? null, source, takenAt });
  const looked = (words: string, takenAt: EpochMs) => lookedAt.push({ words, takenAt });

  const pressure = find('pressure');
  if (pressure) {
    const taken = toEpoch(pressure.at);
    looked(`${pressure.posture} pressure ${pressure.systolic}/${pressure.diastolic} mmHg`, taken);
    if (pressure.systolic < rules.systolicBelow.value) {
      say(
        'not-now',
        `systolic ${pressure.systolic} mmHg is below ${rules.systolicBelow.value}`,
        rules.systolicBelow,
        taken,
      );
    } else if (pressure.systolic > rules.systolicAbove.value) {
      say(
        'ask-first',
        `systolic ${pressure.systolic} mmHg is above ${rules.systolicAbove.value}`,
        rules.systolicAbove,
        taken,
      );
    }
  }
  const alone = find('heart-rate');
  const rate = alone
    ? { value: alone.perMinute, taken: toEpoch(alone.at) }
    : pressure?.heartRate === undefined
      ? null
      : { value: pressure.heartRate, taken: toEpoch(pressure.at) };
  if (rate) {
    looked(`heart rate ${rate.value} a minute`, rate.taken);
    if (rate.value < rules.heartRateBelow.value) {
      say(
        'not-now',
        `heart rate ${rate.value} is below ${rules.heartRateBelow.value}`,
        rules.heartRateBelow,
        rate.taken,
      );
    } else if (rate.value > rules.heartRateAbove.value) {
      say(
        'not-now',
        `heart rate ${rate.value} is above ${rules.heartRateAbove.value}`,
        rules.heartRateAbove,
        rate.taken,
      );
    } else if (rate.value >= rules.heartRateAskFrom.value) {
      say(
        'ask-first',
        `heart rate ${rate.value} is ${rules.heartRateAskFrom.value} or more`,
        rules.heartRateAskFrom,
        rate.taken,
      );
    }
  }
  const oxygen = find('oxygen');
  if (oxygen) {
    const taken = toEpoch(oxygen.at);
    const low = input.oxygenTarget
      ? { value: input.oxygenTarget.low, source: "the person's own target, by order" }
      : rules.saturationBelow;
    looked(`oxygen saturation ${oxygen.saturation} %`, taken);
    if (oxygen.saturation < low.value) {
      say(
        'not-now',
        `oxygen saturation ${oxygen.saturation} % is below ${input.oxygenTarget ? 'the own target of ' : ''}${low.value} %`,
        low,
        taken,
      );
    }
    const flow = oxygen.litresPerMinute;
    if (flow !== undefined && input.oxygenFlowBefore !== null && flow > input.oxygenFlowBefore) {
      say(
        'ask-first',
        `more oxygen than at the last check (${input.oxygenFlowBefore} to ${flow} litres a minute)`,
        null,
        taken,
      );
    }
  }
  const breathing = find('breathing');
  if (breathing) {
    const taken = toEpoch(breathing.at);
    looked(`breathing rate ${breathing.perMinute} a minute`, taken);
    if (breathing.perMinute > rules.breathingAbove.value) {
      say(
        'not-now',
        `breathing rate ${breathing.perMinute} is above ${rules.breathingAbove.value}`,
        rules.breathingAbove,
        taken,
      );
    }
  }
  const temperature = find('temperature');
  if (temperature) {
    const taken = toEpoch(temperature.at);
    looked(`temperature ${temperature.celsius} °C`, taken);
    if (temperature.celsius >= rules.temperatureFrom.value) {
      say(
        'ask-first',
        `temperature ${temperature.celsius} °C is ${rules.temperatureFrom.value} or more`,
        rules.temperatureFrom,
        taken,
      );
    }
  }
  const pain = find('pain');
  if (pain) {
    const taken = toEpoch(pain.at);
    looked(`pain ${pain.outOfTen} of 10`, taken);
    if (pain.outOfTen >= rules.painReliefFirstFrom.value) {
      say('ask-first', `pain ${pain.outOfTen} of 10: relief first`, rules.painReliefFirstFrom, taken);
    } else if (pain.outOfTen >= rules.painAskFrom.value) {
      say(
        'ask-first',
        `pain ${pain.outOfTen} of 10: offer relief, come back when it works`,
        rules.painAskFrom,
        taken,
      );
    }
  }
  if (input.cooperation?.followsInstructions === 'no') {
    say('ask-first', 'does not follow instructions: ask who should be there and how to ask', null, null);
  }

  const notTaken: string[] = [];
  if (!pressure) notTaken.push('blood pressure');
  if (!rate) notTaken.push('heart rate');
  if (!oxygen) notTaken.push('oxygen saturation');
  if (!breathing) notTaken.push('breathing rate');
  if (!temperature) notTaken.push('temperature');
  if (!pain) notTaken.push('pain');
  if (!input.cooperation) notTaken.push('waits for help, follows instructions');

  const word = reasons.some((r) => r.word === 'not-now')
    ? 'not-now'
    : reasons.length > 0
      ? 'ask-first'
      : 'may-start';
  return { word, reasons, lookedAt, notTaken };
}
