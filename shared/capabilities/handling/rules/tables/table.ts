/** A published decision table as data: rows in order, the first whose conditions all hold decides. */
import type { AidClass, People } from '../../values.ts';

export interface Option {
  /** As printed, a range where the source prints one; the plan takes the higher end. */
  readonly people: readonly [lowest: People, highest: People];
  readonly aid: AidClass;
  /** The equipment in the source's own terms, where the class alone does not say it. */
  readonly item?: string;
}

export interface Row<When extends object> {
  readonly when: Readonly<Partial<When>>;
  /** In the order of the source; the first that the person and the ward's rules allow is taken. */
  readonly options: readonly [Option, ...Option[]];
  readonly says: string;
}

export interface Table<When extends object> {
  readonly rule: string;
  readonly source: string;
  readonly rows: readonly Row<When>[];
}

/** The deciding row. Every table of this folder covers every case, which its test proves. */
export function rowFor<When extends object>(table: Table<When>, facts: When): Row<When> {
  const row = table.rows.find((r) =>
    (Object.keys(r.when) as (keyof When)[]).every((key) => r.when[key] === facts[key]),
  );
  if (!row) throw new Error(`table ${table.rule} has no row for ${JSON.stringify(facts)}`);
  return row;
}

/** One pound in kg, exactly. */
export const POUND = 0.453_592_37;
