/**
 * The points of NEWS2 as data: Royal College of Physicians. National Early Warning Score (NEWS) 2.
 * London: RCP, 2017, chart 1. Free to use with acknowledgement. Each row holds from the row before
 * it up to and with `upTo`; `step` is how finely the chart is printed.
 */
export const NEWS2_SOURCE =
  'Royal College of Physicians. National Early Warning Score (NEWS) 2. London: RCP, 2017';

export type Points = 0 | 1 | 2 | 3;
export interface ChartRow {
  /** The highest value of the row; the last row has no end. */
  readonly upTo: number;
  readonly points: Points;
}
export interface ChartScale {
  readonly unit: string;
  readonly step: number;
  readonly rows: readonly ChartRow[];
}

const END = Number.POSITIVE_INFINITY;
const rows = (...all: readonly (readonly [upTo: number, points: Points])[]): ChartRow[] =>
  all.map(([upTo, points]) => ({ upTo, points }));

export const NEWS2_CHART = {
  breathing: { unit: 'a minute', step: 1, rows: rows([8, 3], [11, 1], [20, 0], [24, 2], [END, 3]) },
  saturationScale1: { unit: '%', step: 1, rows: rows([91, 3], [93, 2], [95, 1], [END, 0]) },
  saturationScale2OnAir: { unit: '%', step: 1, rows: rows([83, 3], [85, 2], [87, 1], [END, 0]) },
  saturationScale2OnOxygen: {
    unit: '%',
    step: 1,
    rows: rows([83, 3], [85, 2], [87, 1], [92, 0], [94, 1], [96, 2], [END, 3]),
  },
  systolic: { unit: 'mmHg', step: 1, rows: rows([90, 3], [100, 2], [110, 1], [219, 0], [END, 3]) },
  pulse: { unit: 'a minute', step: 1, rows: rows([40, 3], [50, 1], [90, 0], [110, 1], [130, 2], [END, 3]) },
  temperature: {
    unit: '°C',
    step: 0.1,
    rows: rows([35.0, 3], [36.0, 1], [38.0, 0], [39.0, 1], [END, 2]),
  },
} as const satisfies Record<string, ChartScale>;

export const OXYGEN_POINTS = { air: 0, oxygen: 2 } as const satisfies Record<string, Points>;
/** Anything but alert scores 3: new confusion, answers to voice, to pain, or not at all. */
export const CONSCIOUSNESS_POINTS = {
  alert: 0,
  'new-confusion': 3,
  voice: 3,
  pain: 3,
  unresponsive: 3,
} as const satisfies Record<string, Points>;

/** The highest score there is, and the highest with no parameter at 3 (breathing, oxygen, saturation, systolic, pulse, temperature at 2). */
export const HIGHEST_SCORE = 20;
export const HIGHEST_WITHOUT_THREE = 12;

export interface Band {
  readonly word: 'low' | 'low-medium' | 'medium' | 'high';
  /** What the source asks for, in our words. */
  readonly asks: string;
  readonly source: string;
}
const band = (word: Band['word'], asks: string, source: string = NEWS2_SOURCE): Band => ({
  word,
  asks,
  source,
});
export const BANDS = {
  none: band('low', 'observe at least every 12 hours', `${NEWS2_SOURCE} (the 12 hours from memory)`),
  low: band('low', 'a nurse decides how often to observe, at least every 4 to 6 hours'),
  oneAtThree: band('low-medium', 'a clinician of the ward looks urgently; observe at least every hour'),
  medium: band('medium', 'urgent review by a clinician within 1 hour; observe at least every hour'),
  high: band('high', 'emergency review within 30 minutes; observe all the time'),
} as const;

/** Which total opens which band. */
export const BAND_FROM = { low: 1, medium: 5, high: 7 } as const;

/** Shown wherever the score is worked out; from memory, to be signed by the ward's clinician. */
export const NEWS2_CAUTIONS = [
  'Not for people under 16 or in pregnancy.',
  'Scale 2 only where a competent clinician has written down a target of 88-92 %.',
  'Not a substitute for clinical judgement: whoever is worried asks, whatever the number.',
] as const;
