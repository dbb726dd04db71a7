/** Whoever signs the tables is told of each how far it was read: nothing is signed unsaid. */
import { describe, expect, it } from 'vitest';
import { FROM_FLOOR } from './from-floor.ts';
import { IN_CHAIR } from './in-chair.ts';
import { BARIATRIC_LATERAL, IN_BED, LATERAL } from './lying.ts';
import { EDGE, STAND, WALK } from './ours.ts';
import { SEGMENTS_READ, TABLES_READ } from './read-in.ts';
import { SEGMENT_TABLES } from './segments.ts';
import { BARIATRIC_TRANSFER, CHAIR_TO_TROLLEY, TRANSFER } from './transfer.ts';

const PUBLISHED = [
  TRANSFER,
  BARIATRIC_TRANSFER,
  CHAIR_TO_TROLLEY,
  LATERAL,
  BARIATRIC_LATERAL,
  IN_BED,
  IN_CHAIR,
  FROM_FLOOR,
];

describe('how far a table was read', () => {
  it.each(PUBLISHED)('is said of the published $rule, and no table passes for our own', ({ rule }) => {
    expect(['confirmed', 'restated', 'from memory']).toContain(TABLES_READ[rule]?.status);
  });
  it.each([EDGE, STAND, WALK])('is said of our own $rule: practice', ({ rule }) => {
    expect(TABLES_READ[rule]?.status).toBe('practice');
  });
  it('is said of each table of the parts of the body, as its source says', () => {
    expect(Object.keys(SEGMENTS_READ)).toEqual(Object.keys(SEGMENT_TABLES));
    for (const [name, { status }] of Object.entries(SEGMENTS_READ)) {
      const { source } = SEGMENT_TABLES[name as keyof typeof SEGMENT_TABLES];
      expect([name, status === 'from memory']).toEqual([name, source.endsWith('from memory')]);
    }
  });
});
