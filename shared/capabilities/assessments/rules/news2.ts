/**
 * NEWS2 from its parts, on both oxygen scales: Royal College of Physicians. National Early Warning
 * Score (NEWS) 2. London: RCP, 2017. With a part missing there is no score: the missing parts are
 * named, never taken as normal. Not a substitute for clinical judgement.
 */
import type { Band, ChartScale, Points } from './news2-chart.ts';
import {
  BAND_FROM,
  BANDS,
  CONSCIOUSNESS_POINTS,
  NEWS2_CHART,
  NEWS2_SOURCE,
  OXYGEN_POINTS,
} from './news2-chart.ts';

export const CONSCIOUSNESS = ['alert', 'new-confusion', 'voice', 'pain', 'unresponsive'] as const;
export type Consciousness = (typeof CONSCIOUSNESS)[number];

/** What the score is worked out from; leave out, or give null for, what was not taken. */
export interface News2Parts {
  /** Breaths a minute. */
  readonly breathing?: number | null;
  /** Oxygen saturation, %. */
  readonly saturation?: number | null;
  /** 2 only where a competent clinician wrote down a target of 88-92 %. */
  readonly scale?: 1 | 2 | null;
  readonly onOxygen?: boolean | null;
  /** Systolic blood pressure, mmHg. */
  readonly systolic?: number | null;
  /** Beats a minute. */
  readonly pulse?: number | null;
  readonly consciousness?: Consciousness | null;
  /** °C. */
  readonly temperature?: number | null;
}
export type News2Parameter =
  'breathing' | 'saturation' | 'oxygen' | 'systolic' | 'pulse' | 'consciousness' | 'temperature';

export interface News2Line {
  readonly parameter: News2Parameter;
  /** The parameter with its value: "breathing 22 a minute". */
  readonly words: string;
  readonly points: Points;
}
export type News2Result =
  | {
      readonly complete: true;
      readonly score: number;
      /** One parameter scored 3. */
      readonly anyThree: boolean;
      readonly scale: 1 | 2;
      /** In the order of the chart. */
      readonly lines: readonly News2Line[];
      readonly band: Band;
      readonly source: string;
    }
  | {
      readonly complete: false;
      /** What was not taken, in words. */
      readonly missing: readonly string[];
      /** The points of what was taken; no total, for it would be too low. */
      readonly lines: readonly News2Line[];
      readonly source: string;
    };

/** A value between two printed rows takes the one that scores more. */
function pointsOn({ rows, step }: ChartScale, value: number): Points {
  const at = rows.findIndex((row) => value <= row.upTo);
  const row = rows[at]!;
  const before = rows[at - 1];
  // 0.01 of a step below the next printed value still counts as that value: 36.1 is not exact in binary.
  const between = before !== undefined && value < before.upTo + step * 0.99;
  return between && before.points > row.points ? before.points : row.points;
}

const given = (value: number | null | undefined): value is number => Number.isFinite(value);

/** The score of a set of observations, its points by parameter and what the band asks for. */
export function scoreNews2(parts: News2Parts): News2Result {
  const lines: News2Line[] = [];
  const missing: string[] = [];
  const measured = (
    parameter: News2Parameter,
    name: string,
    value: number | null | undefined,
    scale: ChartScale | null,
  ) => {
    if (!given(value)) missing.push(name);
    else if (scale) {
      lines.push({ parameter, words: `${name} ${value} ${scale.unit}`, points: pointsOn(scale, value) });
    }
  };
  const { scale = null, onOxygen = null, consciousness = null } = parts;

  measured('breathing', 'breathing rate', parts.breathing, NEWS2_CHART.breathing);
  measured('saturation', 'oxygen saturation', parts.saturation, saturationScale(scale, onOxygen));
  if (scale === null) missing.push('which oxygen scale');
  if (onOxygen === null) missing.push('on air or on oxygen');
  else {
    const on = onOxygen ? 'oxygen' : 'air';
    lines.push({ parameter: 'oxygen', words: `on ${on}`, points: OXYGEN_POINTS[on] });
  }
  measured('systolic', 'systolic pressure', parts.systolic, NEWS2_CHART.systolic);
  measured('pulse', 'pulse', parts.pulse, NEWS2_CHART.pulse);
  if (consciousness === null) missing.push('consciousness');
  else {
    lines.push({
      parameter: 'consciousness',
      words: CONSCIOUSNESS_WORDS[consciousness],
      points: CONSCIOUSNESS_POINTS[consciousness],
    });
  }
  measured('temperature', 'temperature', parts.temperature, NEWS2_CHART.temperature);

  if (missing.length > 0 || scale === null) {
    return { complete: false, missing, lines, source: NEWS2_SOURCE };
  }
  const score = lines.reduce((sum, line) => sum + line.points, 0);
  const anyThree = lines.some((line) => line.points === 3);
  return {
    complete: true,
    score,
    anyThree,
    scale,
    lines,
    band: bandOf(score, anyThree),
    source: NEWS2_SOURCE,
  };
}

export const CONSCIOUSNESS_WORDS: Readonly<Record<Consciousness, string>> = {
  alert: 'alert',
  'new-confusion': 'new confusion',
  voice: 'answers to voice only',
  pain: 'answers to pain only',
  unresponsive: 'does not answer',
};

/** Null while it is not known which column of the chart applies. */
function saturationScale(scale: 1 | 2 | null, onOxygen: boolean | null): ChartScale | null {
  if (scale === null) return null;
  if (scale === 1) return NEWS2_CHART.saturationScale1;
  if (onOxygen === null) return null;
  return onOxygen ? NEWS2_CHART.saturationScale2OnOxygen : NEWS2_CHART.saturationScale2OnAir;
}

/** What a total, with or without a parameter at 3, asks for by the source. */
export function bandOf(score: number, anyThree: boolean): Band {
  if (score >= BAND_FROM.high) return BANDS.high;
  if (score >= BAND_FROM.medium) return BANDS.medium;
  if (anyThree) return BANDS.oneAtThree;
  return score >= BAND_FROM.low ? BANDS.low : BANDS.none;
}
