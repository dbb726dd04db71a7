import type { DayTotal, StayTotals } from './store-port.ts';

export interface TotalsTold {
  /** Stays of which the rows are all there are: other stored days go. */
  readonly replaced: readonly string[];
  readonly rows: readonly (DayTotal & { readonly stay: string })[];
}

/** What is to be stored when a stay or a day was told more than once: the last word counts. */
export function latestTotals(totals: readonly StayTotals[]): TotalsTold {
  const latest = new Map<string, Map<number, string>>();
  const replaced = new Set<string>();
  for (const { stay, replace, rows } of totals) {
    if (replace) replaced.add(stay);
    const days = (replace ? undefined : latest.get(stay)) ?? new Map<number, string>();
    for (const { day, row } of rows) days.set(day, row);
    latest.set(stay, days);
  }
  return {
    replaced: [...replaced],
    rows: [...latest].flatMap(([stay, days]) => [...days].map(([day, row]) => ({ stay, day, row }))),
  };
}
