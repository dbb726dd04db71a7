/** The closed list of what the corrections room may refuse: code -> title. */
export const correctionRefusals = {
  'entry-unknown': 'There is no such entry in this stay',
  'entry-is-a-change': 'That entry itself speaks of another one',
  'entry-withdrawn': 'That entry is already withdrawn',
  'placement-stands': 'Where a person was is not corrected',
  'not-your-entry': 'That entry is not yours to change',
  'lowering-needs-qualified': 'Only a qualified person may make it freer',
  'replacement-faulty': 'The replacement does not fit its kind of entry',
  'text-in-replacement': 'Free text is not replaced by a correction',
  'replacement-names-another': 'The replacement speaks of something else',
  'widening-is-new': 'A correction does not widen "on own"',
  'corrected-time-outside-stay': 'The corrected time is outside the stay',
  'nothing-to-confirm': 'That entry needs no confirmation',
  'already-confirmed': 'That entry is already confirmed',
  'nothing-to-cosign': 'That entry needs no second signature',
  'already-cosigned': 'That entry is already co-signed',
  'cosign-by-another': 'The second signature is somebody else’s',
} as const;
export type CorrectionRefusal = keyof typeof correctionRefusals;
