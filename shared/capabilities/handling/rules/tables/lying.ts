/** Moves while lying: across to a trolley, and turning or moving up in bed. */
import type { Table } from './table.ts';
import { POUND } from './table.ts';

export interface LyingCase {
  readonly assists: 'fully' | 'partly' | 'not';
  readonly weight: 'under-100-lb' | '100-to-200-lb' | 'from-200-lb';
}

/** 200 lb as a scale in tenths of a kilogram shows it: what reads 90.7 kg is not under 200 lb. */
const HEAVY_KG = 90.7;

/**
 * The weight's row. Sources differ at exactly 200 lb: a restatement of figure 2 puts it in the
 * heavier row, the printed words are "over 200" from memory; which one stands is the ward's setting.
 * A weight nobody knows takes the heavier row.
 */
export function weightRow(kg: number | null, twoHundredPoundsIsHeavier: boolean): LyingCase['weight'] {
  if (kg === null || (twoHundredPoundsIsHeavier ? kg >= HEAVY_KG : kg > 200 * POUND)) return 'from-200-lb';
  return kg < 100 * POUND ? 'under-100-lb' : '100-to-200-lb';
}

/** OSHA 3182 figure 2. */
export const LATERAL: Table<LyingCase> = {
  rule: 'osha-3182/figure-2',
  source: 'OSHA 3182 (2003, rev. 2009), figure 2',
  rows: [
    {
      when: { assists: 'fully' },
      options: [{ people: ['stand-by', 'stand-by'], aid: 'none' }],
      says: 'assists fully: stand by',
    },
    {
      when: { weight: 'under-100-lb' },
      options: [{ people: ['two', 'two'], aid: 'lateral-transfer-aid', item: 'lateral sliding aid' }],
      says: 'under 100 lb (45.4 kg): lateral sliding aid, two',
    },
    {
      when: { weight: '100-to-200-lb' },
      options: [
        { people: ['two', 'two'], aid: 'lateral-transfer-aid', item: 'lateral sliding aid' },
        { people: ['two', 'two'], aid: 'slide-sheet', item: 'friction-reducing sheet' },
      ],
      says: '100 to 200 lb (45.4 to 90.7 kg): lateral sliding aid or friction-reducing sheet, two',
    },
    {
      when: { weight: 'from-200-lb' },
      options: [
        {
          people: ['three-or-more', 'three-or-more'],
          aid: 'lateral-transfer-aid',
          item: 'lateral sliding aid',
        },
        { people: ['two', 'two'], aid: 'slide-sheet', item: 'friction-reducing sheet' },
        { people: ['two', 'two'], aid: 'lateral-transfer-aid', item: 'mechanical lateral device' },
      ],
      says: 'from 200 lb (90.7 kg): lateral sliding aid with three, or a friction-reducing sheet or mechanical device with two',
    },
  ],
};

/** VA bariatric tables (rev. 2007), lateral. */
export const BARIATRIC_LATERAL: Table<Pick<LyingCase, 'assists'>> = {
  rule: 'va-bariatric/lateral',
  source: 'VA bariatric tables (rev. 2007), restated',
  rows: [
    {
      when: { assists: 'fully' },
      options: [{ people: ['two', 'two'], aid: 'none' }],
      says: 'assists fully: stand by with at least two',
    },
    {
      when: {},
      options: [
        {
          people: ['three-or-more', 'three-or-more'],
          aid: 'lateral-transfer-aid',
          item: 'mechanical or air-assisted lateral device, or ceiling lift with a lying sling',
        },
      ],
      says: 'partly or not able: mechanical or air-assisted lateral device or ceiling lift, at least three',
    },
  ],
};

/**
 * OSHA 3182 figure 4. "Two or more" for those not able to assist is read as an open range, so that
 * nobody less able gets fewer people; later VA guidance asks for three or more over 200 lb or when
 * the person does not cooperate. Of the two that the source offers side by side ("or") for those not
 * able to assist the sheet stands first here, since it is at every bed; the lift is said beside it.
 */
export const IN_BED: Table<LyingCase> = {
  rule: 'osha-3182/figure-4',
  source: 'OSHA 3182 (2003, rev. 2009), figure 4',
  rows: [
    {
      when: { assists: 'fully' },
      options: [{ people: ['stand-by', 'stand-by'], aid: 'none', item: 'positioning aid if it helps' }],
      says: 'assists fully: no help needed, a positioning aid may be used',
    },
    {
      when: { assists: 'partly', weight: 'from-200-lb' },
      options: [{ people: ['three-or-more', 'three-or-more'], aid: 'slide-sheet' }],
      says: 'assists partly, from 200 lb (90.7 kg): friction-reducing sheet, at least three',
    },
    {
      when: { assists: 'partly' },
      options: [{ people: ['two', 'three-or-more'], aid: 'slide-sheet' }],
      says: 'assists partly, under 200 lb (90.7 kg): friction-reducing sheet, two to three; encourage to help',
    },
    {
      when: { assists: 'not' },
      options: [
        { people: ['two', 'three-or-more'], aid: 'slide-sheet' },
        { people: ['two', 'three-or-more'], aid: 'sling-lift' },
      ],
      says: 'not able to assist: friction-reducing sheet or sling lift, two or more',
    },
  ],
};
