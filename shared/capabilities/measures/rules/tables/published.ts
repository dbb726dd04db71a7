/** A published table as data: where it is from, who signs it here, and by when it is read again. */
import type { ReadBy } from '../../values.ts';

export interface Published {
  /** As shown beside a result. */
  readonly source: string;
  readonly owner: string;
  readonly reviewBy: string;
}
/** One row of a table by age and sex; ages in whole years, both ends belong to the row. */
export interface AgeBand {
  readonly from: number;
  readonly to: number;
  readonly male: number;
  readonly female: number;
}
export interface AgeTable extends Published {
  readonly bands: readonly AgeBand[];
}

export const TO_SIGN = { owner: 'ward clinician (to sign)', reviewBy: '2027-05-31' } as const;

/** The row for that age; null outside the table, which is never stretched. */
export const bandFor = (table: AgeTable, age: number): AgeBand | null =>
  table.bands.find((band) => age >= band.from && age <= band.to) ?? null;

/** "ages 60 to 94", for a person outside it. */
export const agesOf = (table: AgeTable): string =>
  `ages ${Math.min(...table.bands.map((b) => b.from))} to ${Math.max(...table.bands.map((b) => b.to))}`;

export const people = (by: ReadBy, band: AgeBand): string =>
  `${by.sex === 'male' ? 'men' : 'women'} of ${band.from} to ${band.to}`;
