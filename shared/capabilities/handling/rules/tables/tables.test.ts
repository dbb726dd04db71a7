import { describe, expect, it } from 'vitest';
import type { AidClass, People } from '../../values.ts';
import { FROM_FLOOR } from './from-floor.ts';
import { BARIATRIC_LATERAL, IN_BED, LATERAL, weightRow } from './lying.ts';
import { EDGE, STAND, WALK } from './ours.ts';
import type { Table } from './table.ts';
import { POUND, rowFor } from './table.ts';
import { BARIATRIC_TRANSFER, CHAIR_TO_TROLLEY, TRANSFER } from './transfer.ts';

type Printed = [people: People, aid: AidClass];
const printed = <W extends object>(table: Table<W>, facts: W): Printed[] =>
  rowFor(table, facts).options.map((o) => [o.people[0], o.aid]);
const highest = <W extends object>(table: Table<W>, facts: W): People[] =>
  rowFor(table, facts).options.map((o) => o.people[1]);

const bears = ['full', 'partial', 'none'] as const;
const yesNo = [true, false] as const;
const assists = ['fully', 'partly', 'not'] as const;
const weights = ['under-100-lb', '100-to-200-lb', 'from-200-lb'] as const;

describe('OSHA 3182 figure 1, all twelve cases (read in two agreeing restatements)', () => {
  const standBy: Printed[] = [['stand-by', 'none']];
  const beltOrStandingAid: Printed[] = [
    ['one', 'belt'],
    ['one', 'standing-aid'],
  ];
  const sling: Printed[] = [['two', 'sling-lift']];
  const seated: Printed[] = [['one', 'seated-transfer-aid']];
  it.each([
    ['full', true, true, standBy],
    ['full', true, false, standBy],
    ['full', false, true, standBy],
    ['full', false, false, standBy],
    ['partial', true, true, beltOrStandingAid],
    ['partial', true, false, beltOrStandingAid],
    ['partial', false, true, sling],
    ['partial', false, false, sling],
    ['none', true, true, seated],
    ['none', true, false, sling],
    ['none', false, true, sling],
    ['none', false, false, sling],
  ] as const)('bears %s, cooperates %s, arms %s', (b, cooperative, arms, expected) => {
    expect(printed(TRANSFER, { bears: b, cooperative, arms })).toEqual(expected);
  });
});

describe('OSHA 3182 figure 2, across to a trolley', () => {
  it.each([
    ['fully', 'under-100-lb', [['stand-by', 'none']]],
    ['fully', '100-to-200-lb', [['stand-by', 'none']]],
    ['fully', 'from-200-lb', [['stand-by', 'none']]],
    ['partly', 'under-100-lb', [['two', 'lateral-transfer-aid']]],
    ['not', 'under-100-lb', [['two', 'lateral-transfer-aid']]],
    [
      'partly',
      '100-to-200-lb',
      [
        ['two', 'lateral-transfer-aid'],
        ['two', 'slide-sheet'],
      ],
    ],
    [
      'not',
      '100-to-200-lb',
      [
        ['two', 'lateral-transfer-aid'],
        ['two', 'slide-sheet'],
      ],
    ],
    [
      'partly',
      'from-200-lb',
      [
        ['three-or-more', 'lateral-transfer-aid'],
        ['two', 'slide-sheet'],
        ['two', 'lateral-transfer-aid'],
      ],
    ],
    // A person of 250 lb not able to assist: the same row.
    [
      'not',
      'from-200-lb',
      [
        ['three-or-more', 'lateral-transfer-aid'],
        ['two', 'slide-sheet'],
        ['two', 'lateral-transfer-aid'],
      ],
    ],
  ] as const)('assists %s, %s', (a, weight, expected) => {
    expect(printed(LATERAL, { assists: a, weight })).toEqual(expected);
  });
  // 100 lb = 45.4 kg, 200 lb = 90.7 kg: arithmetic on the international pound.
  it.each([
    [45.3, 'under-100-lb'],
    [100 * POUND, '100-to-200-lb'],
    [90.7, '100-to-200-lb'],
    [200 * POUND, 'from-200-lb'],
    [250 * POUND, 'from-200-lb'],
    [null, 'from-200-lb'],
  ] as const)('%s kg takes the row %s', (kg, row) => {
    expect(weightRow(kg)).toBe(row);
  });
});

describe('OSHA 3182 figure 3, chair to trolley (from memory)', () => {
  it.each([
    ['full', true, [['stand-by', 'none']]],
    ['full', false, [['stand-by', 'none']]],
    ['partial', true, [['one', 'standing-aid']]],
    ['partial', false, [['two', 'sling-lift']]],
    ['none', true, [['two', 'sling-lift']]],
    ['none', false, [['two', 'sling-lift']]],
  ] as const)('bears %s, cooperates %s', (b, cooperative, expected) => {
    expect(printed(CHAIR_TO_TROLLEY, { bears: b, cooperative })).toEqual(expected);
  });
});

describe('OSHA 3182 figure 4, in bed', () => {
  it.each([
    ['fully', 'under-100-lb', [['stand-by', 'none']], ['stand-by']],
    ['fully', 'from-200-lb', [['stand-by', 'none']], ['stand-by']],
    ['partly', '100-to-200-lb', [['two', 'slide-sheet']], ['three-or-more']],
    ['partly', 'from-200-lb', [['three-or-more', 'slide-sheet']], ['three-or-more']],
    [
      'not',
      'under-100-lb',
      [
        ['two', 'slide-sheet'],
        ['two', 'sling-lift'],
      ],
      ['three-or-more', 'three-or-more'],
    ],
    [
      'not',
      'from-200-lb',
      [
        ['two', 'slide-sheet'],
        ['two', 'sling-lift'],
      ],
      ['three-or-more', 'three-or-more'],
    ],
  ] as const)('assists %s, %s', (a, weight, lowest, high) => {
    expect(printed(IN_BED, { assists: a, weight })).toEqual(lowest);
    expect(highest(IN_BED, { assists: a, weight })).toEqual(high);
  });
});

describe('OSHA 3182 figure 6, up from the floor', () => {
  it.each([
    ['none-or-minor', true, [['stand-by', 'none']], 'stand by'],
    ['none-or-minor', false, [['two', 'sling-lift']], 'two or more'],
    ['moderate', true, [['two', 'sling-lift']], 'medical evaluation first'],
    ['moderate', false, [['two', 'sling-lift']], 'medical evaluation first'],
    ['severe', true, [['three-or-more', 'none']], 'emergency response, do not lift'],
    ['severe', false, [['three-or-more', 'none']], 'emergency response, do not lift'],
  ] as const)('injury %s, independent %s', (injury, independent, expected, words) => {
    expect(printed(FROM_FLOOR, { injury, independent })).toEqual(expected);
    expect(rowFor(FROM_FLOOR, { injury, independent }).says).toContain(words);
  });
});

describe('VA bariatric tables (rev. 2007), as restated', () => {
  it.each([
    ['full', true, true, [['stand-by', 'none']]],
    ['partial', false, true, [['three-or-more', 'bariatric-lift']]],
    ['none', false, false, [['three-or-more', 'bariatric-lift']]],
    [
      'partial',
      true,
      false,
      [
        ['two', 'standing-aid'],
        ['two', 'bariatric-lift'],
      ],
    ],
    [
      'none',
      true,
      false,
      [
        ['two', 'standing-aid'],
        ['two', 'bariatric-lift'],
      ],
    ],
    ['partial', true, true, [['two', 'seated-transfer-aid']]],
    ['none', true, true, [['two', 'seated-transfer-aid']]],
  ] as const)('transfer: bears %s, cooperates %s, arms %s', (b, cooperative, arms, expected) => {
    expect(printed(BARIATRIC_TRANSFER, { bears: b, cooperative, arms })).toEqual(expected);
  });
  it('a lift that is hard to sling takes three', () => {
    expect(highest(BARIATRIC_TRANSFER, { bears: 'none', cooperative: true, arms: false })).toEqual([
      'two',
      'three-or-more',
    ]);
  });
  it.each([
    ['fully', [['two', 'none']]],
    ['partly', [['three-or-more', 'lateral-transfer-aid']]],
    ['not', [['three-or-more', 'lateral-transfer-aid']]],
  ] as const)('lateral: assists %s', (a, expected) => {
    expect(printed(BARIATRIC_LATERAL, { assists: a })).toEqual(expected);
  });
});

describe('every table', () => {
  it('has a row for every case', () => {
    for (const b of bears)
      for (const cooperative of yesNo)
        for (const arms of yesNo) {
          expect(rowFor(TRANSFER, { bears: b, cooperative, arms })).toBeDefined();
          expect(rowFor(BARIATRIC_TRANSFER, { bears: b, cooperative, arms })).toBeDefined();
          expect(rowFor(CHAIR_TO_TROLLEY, { bears: b, cooperative })).toBeDefined();
        }
    for (const a of assists) {
      expect(rowFor(BARIATRIC_LATERAL, { assists: a })).toBeDefined();
      for (const weight of weights) {
        expect(rowFor(LATERAL, { assists: a, weight })).toBeDefined();
        expect(rowFor(IN_BED, { assists: a, weight })).toBeDefined();
      }
    }
    for (const comes of ['alone', 'helped', 'lifted'] as const) expect(rowFor(EDGE, { comes })).toBeDefined();
    for (const seen of ['free', 'held', 'not'] as const) expect(rowFor(STAND, { seen })).toBeDefined();
    for (const seen of ['free-alone', 'free-with-someone', 'held', 'not'] as const) {
      expect(rowFor(WALK, { seen })).toBeDefined();
    }
  });
  it('of our own says that it has no published source', () => {
    for (const table of [EDGE, STAND, WALK])
      expect(table.source).toBe('no published source, to be signed by the ward');
  });
});
