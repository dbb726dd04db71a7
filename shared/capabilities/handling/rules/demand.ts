/** One rule's demand on one task: the help it asks for, why, and what to mind. Demands only join. */
import type { Because } from '../../board/because.ts';
import type { AidClass, People } from '../values.ts';
import type { Help } from './help.ts';
import { help, NO_HELP } from './help.ts';
import type { Row, Table } from './tables/table.ts';
import type { Capability } from './types.ts';

export interface Demand {
  readonly help: Help;
  /** People more than the joined help asks for. */
  readonly more: number;
  /** Equipment words beside the aid class. */
  readonly with: readonly string[];
  readonly cautions: readonly string[];
  readonly because: Because;
  /** Asks for nothing by itself, and is still worth reading under "why". */
  readonly tells: boolean;
}

type Facts = readonly (string | null | undefined)[];
const because = (rule: string, words: string, facts: Facts): Because => {
  const named: string[] = [];
  for (const f of facts) if (f !== null && f !== undefined && !named.includes(f)) named.push(f);
  return { rule, words, facts: named as Because['facts'] };
};

interface Extra {
  readonly with?: readonly (string | undefined)[];
  readonly cautions?: readonly string[];
}
const NOTHING: readonly string[] = [];
const make = (h: Help, more: number, why: Because, extra: Extra): Demand => ({
  help: h,
  more,
  with: extra.with?.filter((w) => w !== undefined) ?? NOTHING,
  cautions: extra.cautions ?? NOTHING,
  because: why,
  tells: false,
});

export const demand = (
  rule: string,
  words: string,
  facts: Facts,
  people: People,
  aid: AidClass = 'none',
  extra: Extra = {},
): Demand => make(help(people, aid), 0, because(rule, words, facts), extra);

/** Not to be done; ask. Of itself it asks for no people or aid. */
export const stop = (rule: string, words: string, facts: Facts, extra: Extra = {}): Demand =>
  make({ ...NO_HELP, hold: true }, 0, because(rule, words, facts), extra);

export const onePersonMore = (rule: string, words: string, facts: Facts, more = 1): Demand =>
  make(NO_HELP, more, because(rule, words, facts), {});

export const note = (rule: string, words: string, facts: Facts): Demand => ({
  ...make(NO_HELP, 0, because(rule, words, facts), {}),
  tells: true,
});

export const caution = (rule: string, words: string, facts: Facts): Demand =>
  make(NO_HELP, 0, because(rule, words, facts), { cautions: [words] });

/** What a table's row asks for, by the option at `index`; the higher end of a printed range. */
export function fromRow<When extends object>(
  table: Table<When>,
  row: Row<When>,
  facts: Facts,
  index = 0,
): Demand {
  const option = row.options[index] ?? row.options[0];
  return demand(table.rule, `${row.says} (${table.source})`, facts, option.people[1], option.aid, {
    with: [option.item],
  });
}

/** The facts that some answers of the capability stand on. */
export const factsOf = (c: Capability, ...rules: readonly string[]): Because['facts'] =>
  c.because.filter((b) => rules.includes(b.rule)).flatMap((b) => b.facts);

/** Those answers themselves, to be read under "why". */
export const told = (c: Capability, ...rules: readonly string[]): Demand[] =>
  c.because.filter((b) => rules.includes(b.rule)).map((b) => note(b.rule, b.words, b.facts));
