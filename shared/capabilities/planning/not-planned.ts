/** Why nobody of a bed stands in a day plan, or not all that the day asks for. */
export const notPlannedWhy = [
  'clinicians-plan',
  'comfort',
  'three-or-more',
  'no-goal',
  'no-move',
  'talk-first',
  'not-known',
] as const;
