/** Which pieces are asked where they are, and when they are examined. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { StaffId, StayId } from '../../../kernel/ids.ts';
import { HOUR } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { itemDescription, type ItemDescription } from '../values.ts';
import { NOTHING_SEEN, type ItemState } from './item-state.ts';
import { NO_DATE, usableAt } from './usable.ts';

const NOW = Date.UTC(2026, 2, 3, 9);
const before = { at: NOW - HOUR, by: 'aide' as StaffId };
const LIFT = itemDescription.parse({
  label: 'Lift 1',
  kind: 'floor-lift',
  model: 'A',
  powered: true,
  safeLoadKg: 200,
  inspectionDue: '2026-09-01',
  home: 'Store',
});
/** Clean and charged; nobody has said where it is. */
const asked = (is: ItemDescription, told: Partial<ItemState> = {}) =>
  usableAt(
    is,
    { ...NOTHING_SEEN, clean: { ...before, is: true }, battery: { ...before, band: 'full' }, ...told },
    NOW,
    '2026-03-03',
    DEFAULT_RULES.aids,
    () => undefined,
  );

describe('where a piece is', () => {
  it('is asked of a lift on wheels that nobody has seen', () => {
    const against = ['nobody has said where it is'];
    expect(asked(LIFT)).toEqual({ word: 'unknown', against, unknown: against });
  });

  it('is not asked of a lift on a track: it hangs where it is', () => {
    const track: ItemDescription = { ...LIFT, kind: 'ceiling-lift', covers: ['Bay 1'] };
    expect(asked(track)).toEqual({ word: 'usable', against: [], unknown: [] });
  });

  it('is not asked of one that somebody has: it is with them', () => {
    const inUse = { ...before, usedBy: 'anna' as StayId, isolation: false };
    expect(asked(LIFT, { inUse })).toEqual({ word: 'in-use', against: ['somebody has it'], unknown: [] });
  });

  it('is not asked again of one that was looked for: it is not there', () => {
    expect(asked(LIFT, { missing: before })).toEqual({
      word: 'not-usable',
      against: ['not there when looked for'],
      unknown: [],
    });
  });
});

describe('the date of the next examination', () => {
  const FRAME = itemDescription.parse({ label: 'Frame 1', kind: 'walking-aid', model: 'F', home: 'Gym' });
  const place = { ...before, words: 'Gym' };

  it('is not asked of a walking frame that has no load to bear', () => {
    expect(asked(FRAME, { place })).toEqual({ word: 'usable', against: [], unknown: [] });
  });

  it('is asked of whatever has a safe working load', () => {
    expect(asked({ ...FRAME, safeLoadKg: 150 }, { place })).toEqual({
      word: 'unknown',
      against: [NO_DATE],
      unknown: [NO_DATE],
    });
  });
});
