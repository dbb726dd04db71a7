import { describe, expect, it } from 'vitest';
import { FROM_FLOOR } from './from-floor.ts';
import { IN_CHAIR } from './in-chair.ts';
import { BARIATRIC_LATERAL, IN_BED, LATERAL } from './lying.ts';
import { EDGE, STAND, WALK } from './ours.ts';
import type { Table } from './table.ts';
import { POUND, rowFor } from './table.ts';
import { BARIATRIC_TRANSFER, CHAIR_TO_TROLLEY, TRANSFER } from './transfer.ts';

const bears = ['full', 'partial', 'none'] as const;
const yesNo = [true, false] as const;
const assists = ['fully', 'partly', 'not'] as const;
const weights = ['under-100-lb', '100-to-200-lb', 'from-200-lb'] as const;
const ALL: readonly { source: string; rows: readonly { says: string }[] }[] = [
  TRANSFER,
  BARIATRIC_TRANSFER,
  CHAIR_TO_TROLLEY,
  LATERAL,
  BARIATRIC_LATERAL,
  IN_BED,
  IN_CHAIR,
  FROM_FLOOR,
  EDGE,
  STAND,
  WALK,
];

describe('every table', () => {
  it('has a row for every case, and no row that nothing reaches', () => {
    const reached = new Set<unknown>();
    const ask = <W extends object>(table: Table<W>, facts: W) => reached.add(rowFor(table, facts));
    for (const b of bears)
      for (const cooperative of yesNo)
        for (const arms of yesNo) {
          ask(TRANSFER, { bears: b, cooperative, arms });
          ask(BARIATRIC_TRANSFER, { bears: b, cooperative, arms });
          ask(CHAIR_TO_TROLLEY, { bears: b, cooperative });
        }
    for (const a of assists) {
      ask(BARIATRIC_LATERAL, { assists: a });
      for (const weight of weights) {
        ask(LATERAL, { assists: a, weight });
        ask(IN_BED, { assists: a, weight });
      }
      for (const arms of yesNo)
        for (const reclines of yesNo)
          for (const cooperative of yesNo) ask(IN_CHAIR, { assists: a, arms, reclines, cooperative });
    }
    for (const injury of ['none-or-minor', 'moderate', 'severe'] as const)
      for (const independent of yesNo) ask(FROM_FLOOR, { injury, independent });
    for (const comes of ['alone', 'helped', 'lifted'] as const) ask(EDGE, { comes });
    for (const seen of ['free', 'held', 'not'] as const) ask(STAND, { seen });
    for (const seen of ['free-alone', 'free-with-someone', 'held', 'not'] as const) ask(WALK, { seen });
    expect(ALL.flatMap((t) => t.rows.filter((row) => !reached.has(row)).map((r) => r.says))).toEqual([]);
  });
  it('says its words and its source', () => {
    for (const table of ALL) {
      expect(table.source).not.toBe('');
      for (const row of table.rows) expect(row.says).not.toBe('');
    }
  });
  it('of our own says that it has no published source', () => {
    for (const table of [EDGE, STAND, WALK])
      expect(table.source).toBe('no published source, to be signed by the ward');
  });
  it('that lacks a row is a mistake of the program, said with the case', () => {
    const table: Table<{ a: boolean }> = { rule: 'r', source: 's', rows: [] };
    expect(() => rowFor(table, { a: true })).toThrow('table r has no row for {"a":true}');
  });
});

it('one international pound is 0.45359237 kg, by definition (international yard and pound, 1959)', () => {
  expect(POUND).toBe(0.453_592_37);
});
