import { describe, expect, it } from 'vitest';
import { opaqueId } from '@footboard/shared/kernel/ids';
import { planBeds, repeatedLabels } from './beds-plan.ts';

describe('laying out beds', () => {
  it('4 bays of 6 by letter are A1 to D6', () => {
    const beds = planBeds(4, 6, 'bay-letter');
    expect(beds).toHaveLength(24);
    expect([beds[0], beds[6], beds[23]].map((b) => [b?.label, b?.bay])).toEqual([
      ['A1', 'Bay A'],
      ['B1', 'Bay B'],
      ['D6', 'Bay D'],
    ]);
  });
  it('2 bays of 3 by number are 1 to 6', () => {
    expect(planBeds(2, 3, 'run').map((b) => b.label)).toEqual(['1', '2', '3', '4', '5', '6']);
  });
  it('goes on after Z', () => {
    expect(planBeds(28, 1, 'bay-letter').at(-1)?.label).toBe('AB1');
  });
  it('gives every bed an id of its own that the log accepts', () => {
    const ids = planBeds(4, 6, 'run').map((b) => b.bed);
    expect(new Set(ids).size).toBe(24);
    expect(ids.every((id) => opaqueId.safeParse(id).success)).toBe(true);
  });
  it('finds a label on two beds', () => {
    expect(repeatedLabels([{ label: 'A1' }, { label: ' A1' }, { label: 'A2' }])).toEqual(['A1']);
  });
});
