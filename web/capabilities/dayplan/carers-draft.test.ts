import { describe, expect, it } from 'vitest';
import type { StaffId } from '@footboard/shared/kernel/ids';
import { bedRow } from '../../board/rows.testkit.ts';
import { namedBeds, tapped, type Draft } from './carers-draft.ts';

const none: Draft = new Map();
const a1 = bedRow('A1');
const a2 = bedRow('A2', null, { carers: { nurse: 'nan' as StaffId, aide: 'ada' as StaffId } });

describe('naming a person for many beds', () => {
  it('given two beds tapped, names both and keeps the other name of each', () => {
    const draft = tapped(tapped(none, a1, 'nurse', 'ned'), a2, 'nurse', 'ned');
    expect(namedBeds(draft, [a1, a2])).toEqual([
      { bed: 'bed-A1', nurse: 'ned', aide: null },
      { bed: 'bed-A2', nurse: 'ned', aide: 'ada' },
    ]);
  });
  it('given a second tap, the bed is as it was and is not sent', () => {
    const draft = tapped(tapped(none, a2, 'nurse', 'ned'), a2, 'nurse', 'ned');
    expect(namedBeds(draft, [a1, a2])).toEqual([]);
  });
  it('given nurse and aide tapped, sends the bed once with both', () => {
    const draft = tapped(tapped(none, a1, 'nurse', 'ned'), a1, 'aide', 'ada');
    expect(namedBeds(draft, [a1])).toEqual([{ bed: 'bed-A1', nurse: 'ned', aide: 'ada' }]);
    expect(namedBeds(tapped(draft, a1, 'aide', 'ada'), [a1])).toEqual([
      { bed: 'bed-A1', nurse: 'ned', aide: null },
    ]);
  });
  it('given nobody chosen, takes the name back', () => {
    expect(namedBeds(tapped(none, a2, 'aide', null), [a2])).toEqual([
      { bed: 'bed-A2', nurse: 'nan', aide: null },
    ]);
    expect(namedBeds(tapped(none, a1, 'aide', null), [a1])).toEqual([]);
  });
  it('leaves out a bed that was closed meanwhile', () => {
    expect(namedBeds(tapped(none, a1, 'nurse', 'ned'), [a2])).toEqual([]);
  });
});
