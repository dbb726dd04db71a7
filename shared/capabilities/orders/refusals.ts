/** The closed list of what the orders room may refuse: code -> title. */
export const orderRefusals = {
  'hold-known': 'That hold id is already used',
  'hold-unknown': 'There is no such hold on this stay',
  'hold-already-ended': 'The hold has already ended',
  'hold-not-yet-placed': 'The hold was placed after that time',
  'hold-renewed-since': 'The hold was kept since',
  'review-in-past': 'The review time is not in the future',
  'range-reversed': 'The low end of the range is above its high end',
  'limit-contradicts': 'The limit contradicts the weight bearing',
} as const;
export type OrderRefusal = keyof typeof orderRefusals;
