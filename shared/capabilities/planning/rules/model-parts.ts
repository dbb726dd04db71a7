/** What the model is put together from. */
/** One inequality: `low <= sum of values x columns <= high`. */
export interface Row {
  readonly low: number;
  readonly high: number;
  readonly columns: number[];
  readonly values: number[];
  /** Implied by whole numbers: only there to make the relaxation tighter. */
  readonly tightens?: true;
}

export type At = { readonly c: number; readonly at: number };
/** The columns of one visit, for the rows. */
export interface OfVisit {
  readonly ys: (At & { readonly set: number | null })[];
  readonly xs: (At & { readonly s: number })[];
}

export const row = (low: number, high: number): Row => ({ low, high, columns: [], values: [] });
export const put = (to: Row, c: number, value: number): void => {
  to.columns.push(c);
  to.values.push(value);
};
