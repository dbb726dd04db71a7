/** What the coordinator reads of one piece: why, what closes it, by what date. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { StaffId } from '../../../kernel/ids.ts';
import { HOUR } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { itemDescription } from '../values.ts';
import { mattersOfItem, type ItemMatter } from './coordinator-list.ts';
import { examinationDue } from './examination.ts';
import { NOTHING_SEEN, type ItemState } from './item-state.ts';
import { usableAt } from './usable.ts';

const NOW = Date.UTC(2026, 10, 30, 9);
const TODAY = '2026-11-30';
const LATER = '2027-03-01';
const before = { at: NOW - HOUR, by: 'hana' as StaffId };
const READY: ItemState = {
  ...NOTHING_SEEN,
  place: { ...before, words: 'Store' },
  clean: { ...before, is: true },
  battery: { ...before, band: 'full' },
};
const BROKEN: Partial<ItemState> = { outOfService: { ...before, defect: 'brake-or-wheel' } };
const TAKEN: Partial<ItemState> = { inUse: { ...before, usedBy: null, isolation: false } };

/** A floor lift that is ready but for what is told of it. */
function lines(inspectionDue: string | null, told: Partial<ItemState> = {}): ItemMatter[] {
  const is = itemDescription.parse({
    label: 'Lift 1',
    kind: 'floor-lift',
    model: 'A',
    powered: true,
    safeLoadKg: 200,
    inspectionDue,
    home: 'Store',
  });
  const state = { ...READY, ...told };
  const rules = DEFAULT_RULES;
  const now = usableAt(is, state, NOW, TODAY, rules.aids, () => undefined);
  return mattersOfItem(examinationDue(is, rules.aids), state, now, TODAY, rules);
}

describe('what the coordinator reads of one piece', () => {
  it('reads nothing of a lift that is ready', () => {
    expect(lines(LATER)).toEqual([]);
  });

  it.each<[string, string | null, Partial<ItemState>, ItemMatter]>([
    [
      'broken: what is broken',
      LATER,
      BROKEN,
      {
        matter: 'out-of-service',
        closes: 'look-and-return',
        against: ['out of service (brake or wheel)'],
        due: null,
      },
    ],
    [
      'looked for and not there',
      LATER,
      { missing: before, place: null },
      { matter: 'not-there', closes: 'find-it', against: [], due: null },
    ],
    [
      'past its examination: since what date',
      '2026-11-29',
      {},
      { matter: 'examination-overdue', closes: 'examine', against: [], due: '2026-11-29' },
    ],
    [
      'soon to be examined: by what date',
      '2026-12-10',
      {},
      { matter: 'examination-due', closes: 'examine', against: [], due: '2026-12-10' },
    ],
    [
      'without a date for its examination',
      null,
      {},
      { matter: 'no-examination-date', closes: 'enter-the-date', against: [], due: null },
    ],
    [
      'of which nobody has read the battery',
      LATER,
      { battery: null },
      { matter: 'state-unknown', closes: 'say-how-it-is', against: ['battery not read'], due: null },
    ],
  ])('%s', (_how, due, told, expected) => {
    expect(lines(due, told)).toEqual([expected]);
  });

  it('gives of a broken lift only what is broken, not that it is dirty too', () => {
    const [found, ...more] = lines(LATER, { ...BROKEN, clean: { ...before, is: false } });
    expect(more).toEqual([]);
    expect(found!.against).toEqual(['out of service (brake or wheel)']);
  });

  it('asks nobody to read the battery of a lift that is broken or with a person', () => {
    const unread = { battery: null };
    expect(lines(LATER, { ...BROKEN, ...unread }).map(({ matter }) => matter)).toEqual(['out-of-service']);
    expect(lines(LATER, { ...TAKEN, ...unread })).toEqual([]);
  });
});
