/** Which of several things taken of one sign counts, asked by itself. Source: design, rule 2. */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { assessment, hours, upTo } from './assessment.testkit.ts';
import { countingOf, type Taken } from './counting.ts';

interface Weighed extends Taken {
  readonly id: string;
  readonly weight: number;
}
const WELL = 0;
const ASKS = 1;
const STOPS = 2;
const taken = (role: Role) => (id: string, h: number, weight: number) => (): Weighed => ({
  id,
  weight,
  at: hours(h),
  fact: assessment(upTo('clear'), { at: h, role, id }),
});
const nurse = taken('nurse');
const aide = taken('aide');

describe('of several readings of one sign', () => {
  it.each<[string, readonly (() => Weighed)[], string]>([
    [
      'of two by nurses of one instant and as strict, the first written down',
      [nurse('one', 1, ASKS), nurse('two', 1, ASKS)],
      'one',
    ],
    [
      'of two by nurses of one instant, the stricter',
      [nurse('asks', 1, ASKS), nurse('stops', 1, STOPS), nurse('well', 1, WELL)],
      'stops',
    ],
    [
      'of two as strict by aides, the newer, though it was written down first',
      [nurse('well', 1, WELL), aide('newer', 3, STOPS), aide('older', 2, STOPS)],
      'newer',
    ],
    [
      'of two as strict by aides and of one instant, the first written down',
      [nurse('well', 1, WELL), aide('one', 2, STOPS), aide('two', 2, STOPS)],
      'one',
    ],
    [
      "of a nurse's and an aide's of one instant and as strict, the nurse's",
      [aide('aide', 1, STOPS), nurse('nurse', 1, STOPS)],
      'nurse',
    ],
  ])('%s counts', (_, all, expected) => {
    const told = all.map((one) => one());
    expect(countingOf(told, (one) => one.weight)?.id).toBe(expected);
  });
});
