/**
 * When a session stops: the ward's limits as plain lines to read before starting, and the judgement
 * of what was taken or seen meanwhile. What was not taken is listed, never taken as normal. Anyone
 * may stop at any time; orders, local policy and the clinician at the bedside come first.
 */
import { toEpoch } from '../../../kernel/times.ts';
import type { Reading } from '../../assessments/values.ts';
import type { Session } from '../values.ts';
import { fallsOf } from './stop-falls.ts';
import type { StopLine, StopReason, StopRules } from './stop-lines.ts';

export type { StopLine, StopReason, StopRules } from './stop-lines.ts';

export type StopEvent = Session['events'][number];
export type OxygenTarget = { readonly low: number; readonly high: number } | null;
export interface StopVerdict {
  /** `go-on`: nothing that was taken or seen is beyond a limit. */
  readonly word: 'stop' | 'go-on';
  readonly reasons: readonly StopReason[];
  /** Signs with a stop limit that were not taken. */
  readonly notTaken: readonly string[];
}

const PRACTICE = 'common practice, no source';
const EXERCISE =
  'exercise stop indications as restated in published guidance (a weak copy), and common practice';
const OWN_TARGET = "the person's own target, by order";

interface Limit {
  readonly value: number;
  readonly source: string;
}
const line = (words: string, { value, source }: Limit): StopLine => ({ words, limit: value, source });

/** What an aide reads before starting. An own target from an order takes the place of both saturation limits. */
export function stopLimitsFor({
  oxygenTarget,
  rules,
}: {
  readonly oxygenTarget: OxygenTarget;
  readonly rules: StopRules;
}): StopLine[] {
  const { stop, rising } = rules;
  const saturation = oxygenTarget
    ? [
        line(`Oxygen saturation below ${oxygenTarget.low} %, the own target`, {
          value: oxygenTarget.low,
          source: OWN_TARGET,
        }),
      ]
    : [
        line(`Oxygen saturation below ${stop.saturationBelow.value} %`, stop.saturationBelow),
        line(
          `Oxygen saturation below ${stop.saturationWithSymptomsBelow.value} % with any symptom`,
          stop.saturationWithSymptomsBelow,
        ),
      ];
  return [
    {
      words: 'Chest pain, dizzy or faint, new confusion, pale or sweating, unsteady, or the person says stop',
      limit: null,
      source: EXERCISE,
    },
    line(`Pain ${stop.painFrom.value} of 10 or more`, stop.painFrom),
    line(`Effort ${stop.effortFrom.value} of 10 or more`, stop.effortFrom),
    line(`Heart rate below ${stop.heartRateBelow.value} a minute`, stop.heartRateBelow),
    line(`Heart rate above ${stop.heartRateAbove.value} a minute`, stop.heartRateAbove),
    ...saturation,
    line(`Breathing rate ${stop.breathingBelow.value} a minute or less`, stop.breathingBelow),
    line(`Breathing rate above ${stop.breathingAbove.value} a minute`, stop.breathingAbove),
    line(`Systolic pressure below ${stop.systolicBelow.value} mmHg`, stop.systolicBelow),
    line(`Systolic pressure above ${stop.systolicAbove.value} mmHg`, stop.systolicAbove),
    line(
      `Systolic pressure more than ${stop.systolicFallWithEffort.value} mmHg down with effort`,
      stop.systolicFallWithEffort,
    ),
    line(
      `Systolic pressure ${rising.systolicFall.value} mmHg or more down after standing up`,
      rising.systolicFall,
    ),
  ];
}

export interface StopInput {
  /** Taken since the session began, in any order. */
  readonly readings: readonly Reading[];
  /** Taken before it began: what the pressure is compared with. */
  readonly before: readonly Reading[];
  /** What went wrong meanwhile; each is a reason to stop. */
  readonly events: readonly StopEvent[];
  /** Any symptom that is not among the events. */
  readonly symptoms?: boolean;
  /** 0 to 10. */
  readonly effort?: number | undefined;
  /** 0 to 10. */
  readonly pain?: number | undefined;
  readonly oxygenTarget: OxygenTarget;
  readonly rules: StopRules;
}

const EVENT_WORDS: Readonly<Record<StopEvent, string>> = {
  dizzy: 'dizzy: sit or lie down now',
  'near-fall': 'a near-fall: sit down now',
  'lowered-to-floor': 'lowered to the floor: do not lift by hand, a nurse looks first',
  'line-pulled': 'a line was pulled: see to it first',
  'low-oxygen': 'low oxygen: rest and call the nurse',
  pain: 'new or worse pain: rest and call the nurse',
  distress: 'distress: rest and call the nurse',
  'equipment-fault': 'the equipment failed: make safe without it',
};
/** Events of the person, beside which a low saturation counts sooner; the others are of things. */
const SYMPTOMS: ReadonlySet<StopEvent> = new Set<StopEvent>([
  'dizzy',
  'near-fall',
  'lowered-to-floor',
  'low-oxygen',
  'pain',
  'distress',
]);

export function judgeStop(input: StopInput): StopVerdict {
  const { readings, rules, events, effort, pain } = input;
  const { stop } = rules;
  const reasons: StopReason[] = [...new Set(events)].map((event) => ({
    words: EVENT_WORDS[event],
    limit: null,
    source: PRACTICE,
    takenAt: null,
  }));
  if (input.symptoms) {
    reasons.push({
      words: 'a symptom: rest and call the nurse',
      limit: null,
      source: EXERCISE,
      takenAt: null,
    });
  }
  const symptoms = input.symptoms === true || events.some((e) => SYMPTOMS.has(e));
  reasons.push(...scored(effort, pain, stop));
  for (const reading of readings) reasons.push(...beyond(reading, symptoms, input));
  reasons.push(...fallsOf(input));

  const has = (kind: Reading['kind']) => readings.some((r) => r.kind === kind);
  const notTaken: string[] = [];
  if (!has('heart-rate') && !readings.some((r) => r.kind === 'pressure' && r.heartRate !== undefined)) {
    notTaken.push('heart rate');
  }
  if (!has('oxygen')) notTaken.push('oxygen saturation');
  if (!has('breathing')) notTaken.push('breathing rate');
  if (!has('pressure')) notTaken.push('blood pressure');
  if (effort === undefined) notTaken.push('effort');
  if (pain === undefined && !has('pain')) notTaken.push('pain');
  return { word: reasons.length > 0 ? 'stop' : 'go-on', reasons, notTaken };
}

/** Numbers out of ten at the ward's limits; pain is the one meanwhile or after, never the one before. */
function scored(effort: number | undefined, pain: number | undefined, stop: StopRules['stop']): StopReason[] {
  return [...scoreFrom('effort', effort, stop.effortFrom), ...scoreFrom('pain', pain, stop.painFrom)];
}
function scoreFrom(what: string, score: number | undefined, { value, source }: Limit): StopReason[] {
  if (score === undefined || score < value) return [];
  return [{ words: `${what} ${score} of 10 is ${value} or more`, limit: value, source, takenAt: null }];
}

type Limited = Pick<StopInput, 'rules' | 'oxygenTarget'>;

/** The stop limits that one reading by itself is beyond. */
function beyond(reading: Reading, symptoms: boolean, { rules, oxygenTarget }: Limited): StopReason[] {
  const { stop } = rules;
  const takenAt = toEpoch(reading.at);
  const reasons: StopReason[] = [];
  const say = (words: string, { value, source }: Limit) =>
    reasons.push({ words: `${words} ${value}`, limit: value, source, takenAt });
  const rate = (perMinute: number) => {
    if (perMinute < stop.heartRateBelow.value) say(`heart rate ${perMinute} is below`, stop.heartRateBelow);
    if (perMinute > stop.heartRateAbove.value) say(`heart rate ${perMinute} is above`, stop.heartRateAbove);
  };
  switch (reading.kind) {
    case 'pressure':
      if (reading.systolic < stop.systolicBelow.value) {
        say(`systolic ${reading.systolic} mmHg is below`, stop.systolicBelow);
      }
      if (reading.systolic > stop.systolicAbove.value) {
        say(`systolic ${reading.systolic} mmHg is above`, stop.systolicAbove);
      }
      if (reading.heartRate !== undefined) rate(reading.heartRate);
      break;
    case 'heart-rate':
      rate(reading.perMinute);
      break;
    case 'oxygen': {
      const { saturation } = reading;
      const says = `oxygen saturation ${saturation} % is below`;
      if (oxygenTarget) {
        if (saturation < oxygenTarget.low) {
          say(`${says} the own target of`, { value: oxygenTarget.low, source: OWN_TARGET });
        }
      } else if (saturation < stop.saturationBelow.value) say(says, stop.saturationBelow);
      else if (symptoms && saturation < stop.saturationWithSymptomsBelow.value) {
        say(`with a symptom, ${says}`, stop.saturationWithSymptomsBelow);
      }
      break;
    }
    case 'breathing':
      if (reading.perMinute <= stop.breathingBelow.value) {
        const { value, source } = stop.breathingBelow;
        const words = `breathing rate ${reading.perMinute} is ${value} or less`;
        reasons.push({ words, limit: value, source, takenAt });
      }
      if (reading.perMinute > stop.breathingAbove.value) {
        say(`breathing rate ${reading.perMinute} is above`, stop.breathingAbove);
      }
      break;
    case 'pain':
      if (reading.outOfTen >= stop.painFrom.value) {
        reasons.push({
          words: `pain ${reading.outOfTen} of 10 is ${stop.painFrom.value} or more`,
          limit: stop.painFrom.value,
          source: stop.painFrom.source,
          takenAt,
        });
      }
      break;
    case 'temperature':
      break;
  }
  return reasons;
}

/**
 * What in a recorded session is beyond a stop limit, by its readings since it began, its effort and the
 * pain after it; readings taken before are only what the pressure is compared with (they belong to "may
 * we start"). A session that was not done has nothing to stop.
 */
export function beyondStopLimits(
  session: Session,
  { oxygenTarget, rules }: { readonly oxygenTarget: OxygenTarget; readonly rules: StopRules },
): readonly StopReason[] {
  const { readings = [], outcome, events, effort, painAfter } = session;
  if (outcome === 'not-done') return [];
  const start = toEpoch(session.startedAt);
  const since = readings.filter((r) => toEpoch(r.at) >= start);
  const before = readings.filter((r) => toEpoch(r.at) < start);
  const symptoms = events.some((e) => SYMPTOMS.has(e));
  return [
    ...scored(effort, painAfter, rules.stop),
    ...since.flatMap((r) => beyond(r, symptoms, { rules, oxygenTarget })),
    ...fallsOf({ before, readings: since, rules }),
  ];
}
