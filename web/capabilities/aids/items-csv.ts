/**
 * The equipment list as a table for a spreadsheet, and back, row by row with what is wrong in words.
 * Our own columns. Several values in one cell stand apart by "|". Pure.
 */
import { parse } from 'csv-parse/browser/esm/sync';
import { stringify } from 'csv-stringify/browser/esm/sync';
import {
  itemDescription,
  type ItemDescription,
  type ItemId,
} from '@footboard/shared/capabilities/aids/values';

export interface Listed {
  readonly item: ItemId;
  readonly is: ItemDescription;
}
interface Place {
  /** Line in the file, from 1; the names of the columns are line 1. */
  readonly line: number;
  readonly label: string;
}
export type RowRead =
  | (Place & { readonly does: 'add'; readonly is: ItemDescription })
  | (Place & { readonly does: 'change'; readonly item: ItemId; readonly is: ItemDescription })
  | (Place & { readonly does: 'same' })
  | (Place & { readonly does: 'wrong'; readonly wrong: readonly Wrong[] });
export interface Wrong {
  /** Column, or empty where it is about the whole row or file. */
  readonly column: string;
  readonly detail: string;
}
export type FileRead = { readonly rows: readonly RowRead[] } | { readonly wrong: readonly Wrong[] };

type Field = keyof ItemDescription;
interface Column {
  readonly name: string;
  readonly field: Field;
  readonly read: (cell: string) => unknown;
  readonly write: (is: ItemDescription) => string;
}
const NOT_A_NUMBER = Symbol('not a number');

const text = (name: string, field: Field): Column => ({
  name,
  field,
  read: (cell) => cell,
  write: (is) => String(is[field] ?? ''),
});
const orNull = (name: string, field: Field): Column => ({
  ...text(name, field),
  read: (cell) => (cell === '' ? null : cell),
});
const kilograms = (name: string, field: Field): Column => ({
  ...text(name, field),
  read(cell) {
    if (cell === '') return null;
    // A decimal comma is one; "1.200" or "1,200 kg" is not guessed at.
    const number = Number(cell.replace(',', '.'));
    return Number.isFinite(number) ? number : NOT_A_NUMBER;
  },
});
const many = (name: string, field: 'covers' | 'worksWithModels' | 'worksWithItems'): Column => ({
  name,
  field,
  read: (cell) =>
    cell
      .split('|')
      .map((one) => one.trim())
      .filter((one) => one !== ''),
  write: (is) => is[field].join(' | '),
});
const YES = /^(yes|y|true|1|ja|j)$/i;
const NO = /^(no|n|false|0|nein|)$/i;

export const COLUMNS: readonly Column[] = [
  text('name', 'label'),
  text('kind', 'kind'),
  text('model', 'model'),
  {
    name: 'motor',
    field: 'powered',
    read: (cell) => (YES.test(cell) ? true : NO.test(cell) ? false : cell),
    write: (is) => (is.powered ? 'yes' : 'no'),
  },
  kilograms('safe load kg', 'safeLoadKg'),
  kilograms('bar load kg', 'barLoadKg'),
  orNull('hangs by', 'attachment'),
  many('track reaches', 'covers'),
  orNull('made for', 'style'),
  kilograms('body weight from kg', 'fitsFromKg'),
  kilograms('body weight to kg', 'fitsToKg'),
  many('works with models', 'worksWithModels'),
  many('works with items', 'worksWithItems'),
  orNull('next examination', 'inspectionDue'),
  orNull('last examination', 'lastExamined'),
  text('home', 'home'),
];

/** A table that a spreadsheet opens; a cell that would be taken for a formula is written as text. */
export const writeItems = (items: readonly Listed[]): string =>
  stringify(
    items.map(({ is }) => COLUMNS.map((column) => column.write(is))),
    { header: true, columns: COLUMNS.map(({ name }) => name), bom: true, escape_formulas: true },
  );

/** Spreadsheets write ";" where a comma stands in numbers: what stands most often between the names of the columns. */
function separatorOf(file: string): string {
  const [head = ''] = file.split('\n', 1);
  const times = (sign: string) => head.split(sign).length;
  return [',', ';', '\t'].toSorted((a, b) => times(b) - times(a))[0]!;
}

const folded = (words: string): string => words.trim().toLocaleLowerCase('en');

/** What the file would do to the list; nothing is done yet. */
export function readItems(file: string, listed: readonly Listed[]): FileRead {
  let records: string[][];
  try {
    records = parse(file, {
      bom: true,
      trim: true,
      skip_empty_lines: true,
      relax_column_count: true,
      delimiter: separatorOf(file),
    }) as string[][];
  } catch (error) {
    return { wrong: [{ column: '', detail: `This is not a table: ${(error as Error).message}` }] };
  }
  const [head, ...rows] = records;
  if (!head) return { wrong: [{ column: '', detail: 'The file is empty.' }] };
  const names = head.map(folded);
  const known = names.map((name) => COLUMNS.find((column) => column.name === name) ?? null);
  const wrong: Wrong[] = [
    ...names
      .filter((name, i) => name !== '' && known[i] === null)
      .map((name) => ({
        column: name,
        detail: 'No such column: export the list to see how they are called.',
      })),
    ...['name', 'kind', 'model', 'home']
      .filter((name) => !names.includes(name))
      .map((name) => ({ column: name, detail: 'This column is missing.' })),
  ];
  if (wrong.length > 0) return { wrong };
  const seen = new Map<string, number>();
  return {
    rows: rows.map((cells, i) => {
      const line = i + 2;
      const row = readRow(cells, known, listed, line);
      const name = folded(row.label);
      const before = seen.get(name);
      if (before === undefined) seen.set(name, line);
      else
        return {
          line,
          label: row.label,
          does: 'wrong',
          wrong: [{ column: 'name', detail: `Line ${before} has this name too.` }],
        };
      return row;
    }),
  };
}

function readRow(
  cells: readonly string[],
  known: readonly (Column | null)[],
  listed: readonly Listed[],
  line: number,
): RowRead {
  const given: Partial<Record<Field, unknown>> = {};
  const wrong: Wrong[] = [];
  known.forEach((column, i) => {
    if (!column) return;
    const value = column.read((cells[i] ?? '').trim());
    if (value === NOT_A_NUMBER)
      wrong.push({ column: column.name, detail: `"${cells[i]}" is not a number of kilograms.` });
    else given[column.field] = value;
  });
  const label = String(given.label ?? '');
  const read = itemDescription.safeParse(given);
  if (!read.success) {
    wrong.push(
      ...read.error.issues.map(({ path, message }) => ({
        column: COLUMNS.find(({ field }) => field === path[0])?.name ?? '',
        detail: message,
      })),
    );
  }
  if (wrong.length > 0 || !read.success) return { line, label, does: 'wrong', wrong };
  const is = read.data;
  const same = listed.find((one) => folded(one.is.label) === folded(is.label));
  if (!same) return { line, label, does: 'add', is };
  const unchanged = COLUMNS.every((column) => column.write(same.is) === column.write(is));
  return unchanged ? { line, label, does: 'same' } : { line, label, does: 'change', item: same.item, is };
}
