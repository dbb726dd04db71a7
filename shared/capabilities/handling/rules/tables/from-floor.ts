/** Up from the floor. */
import type { Table } from './table.ts';

export interface FloorCase {
  readonly injury: 'none-or-minor' | 'moderate' | 'severe';
  /** Gets up without another's strength. */
  readonly independent: boolean;
}

/** OSHA 3182 figure 6. */
export const FROM_FLOOR: Table<FloorCase> = {
  rule: 'osha-3182/figure-6',
  source: 'OSHA 3182 (2003, rev. 2009), figure 6',
  rows: [
    {
      when: { injury: 'severe' },
      options: [{ people: ['three-or-more', 'three-or-more'], aid: 'none', item: 'do not lift' }],
      says: 'severe injury: emergency response, do not lift',
    },
    {
      when: { injury: 'moderate' },
      options: [{ people: ['two', 'two'], aid: 'sling-lift' }],
      says: 'moderate injury: medical evaluation first, then sling lift, two or more',
    },
    {
      when: { injury: 'none-or-minor', independent: true },
      options: [{ people: ['stand-by', 'stand-by'], aid: 'none' }],
      says: 'no or minor injury and gets up alone: stand by',
    },
    {
      when: { injury: 'none-or-minor', independent: false },
      options: [{ people: ['two', 'two'], aid: 'sling-lift' }],
      says: 'no or minor injury, does not get up alone: sling lift, two or more',
    },
  ],
};
/** Asked before anyone is lifted from the floor: the rows the plan cannot choose by itself. */
export const FLOOR_CAUTION =
  'Look for injury first. Moderate: medical evaluation before lifting. Severe: emergency response, do not lift.';
