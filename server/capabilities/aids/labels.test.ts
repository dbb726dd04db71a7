import { describe, expect, it } from 'vitest';
import { itemDescription, type ItemId } from '@footboard/shared/capabilities/aids/values';
import { labelsOf, labelsPdf } from './labels.ts';

const is = (more: object) =>
  itemDescription.parse({ label: 'Lift 1', kind: 'floor-lift', model: 'A', home: 'Store', ...more });
const ward = (more: object, units: object = { weight: 'kg', length: 'm' }, language = 'en') =>
  ({
    ward: 'alder',
    language,
    units,
    items: new Map([['lift/1' as ItemId, is(more)]]),
    borrowed: new Map(),
    lent: new Map(),
  }) as never;
const one = (...of: Parameters<typeof ward>) => labelsOf(ward(...of), 'https://board.example/')[0]!;

describe('a label', () => {
  it('has the name, the kind, and a code that opens the piece', () => {
    expect(one({ safeLoadKg: 200 })).toEqual({
      item: 'lift/1',
      name: 'Lift 1',
      kind: 'lift on wheels, A',
      load: 'bears at most 200 kg',
      address: 'https://board.example/wards/alder/equipment/lift%2F1',
    });
  });
  // "System load = the lowest SWL of lift, bar and sling": users' job 5a.
  it('says what the weakest of mast and bar bears, in the units of the ward, never rounded up', () => {
    expect(one({ safeLoadKg: 320, barLoadKg: 300 }).load).toBe('bears at most 300 kg');
    expect(one({ safeLoadKg: 200 }, { weight: 'lb', length: 'ft' }).load).toBe(
      'bears at most 440 lb (200 kg)',
    );
  });
  it('sends to the plate where no load was entered, and says none of a frame', () => {
    expect(one({}).load).toBe('load: see the maker’s plate');
    expect(one({ kind: 'walking-aid' }).load).toBeNull();
    expect(one({}, undefined, 'de').load).toBe('Traglast: siehe Schild des Herstellers');
  });
  it('stands on as many pages as are needed, twenty-one on each', async () => {
    const pages = async (n: number) => {
      const labels = Array.from({ length: n }, () => one({ safeLoadKg: 200 }));
      const pdf = (await labelsPdf({ ward: 'Alder', language: 'en', labels })).toString('latin1');
      return pdf.match(/\/Type \/Page\b/g)!.length;
    };
    expect([await pages(0), await pages(21), await pages(22)]).toEqual([1, 1, 2]);
  });
});
