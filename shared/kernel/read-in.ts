/**
 * How far a published value was read, kept beside the values so that a clinician can sign them. It
 * decides nothing: no rule looks at it.
 */
export const READ_STATUS = ['confirmed', 'restated', 'from memory', 'practice'] as const;
/**
 * confirmed: read in the source itself, or its publisher's page. restated: read in somebody else's
 * restatement of it. from memory: in no text that could be read. practice: no source, or our own.
 */
export type ReadStatus = (typeof READ_STATUS)[number];

export interface ReadIn {
  readonly status: ReadStatus;
  /** What a reader should know of it, and what to check. */
  readonly note: string;
  readonly owner: string;
  readonly reviewBy: string;
}
export const readIn = (status: ReadStatus, note: string): ReadIn => ({
  status,
  note,
  owner: 'ward clinician (to sign)',
  reviewBy: '2027-05-31',
});
