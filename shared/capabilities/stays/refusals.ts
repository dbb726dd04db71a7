/** The closed list of what the stays room may refuse: code -> title. */
export const stayRefusals = {
  'stay-unknown': 'There is no such stay on this ward',
  'stay-known': 'That stay id is already used',
  'stay-ended': 'The stay has ended',
  'before-stay': 'That was before the person arrived on the ward',
  'not-in-that-bed': 'The person is not in that bed',
  'same-bed': 'The person is already in that bed',
  'same-stay': 'Both sides of the swap are the same person',
  'same-ward': 'The person is already on that ward',
  'other-ward-unknown': 'There is no such ward on this board',
  'placement-out-of-order': 'The person was placed elsewhere after that time',
  'bed-taken-then': 'Someone was in that bed at that time',
  'already-off-ward': 'The person is already off the ward',
  'not-off-ward': 'The person is not off the ward',
  'due-back-in-past': 'The time due back is not after the time of leaving',
  'estimate-needs-qualified': 'A weight estimate needs a nurse or therapist',
  'attachment-known': 'That attachment is already recorded',
  'attachment-unknown': 'That attachment is not on the person',
  'leaving-in-past': 'The time of leaving is not ahead',
} as const;
export type StayRefusal = keyof typeof stayRefusals;
