/** The closed list of what the planning room may refuse: code -> title. */
export const planningRefusals = {
  'person-named-twice': 'Somebody stands twice in the list',
  'not-on-that-day': 'The time on the ward does not begin on that ward day',
  'on-times': 'The times on the ward cannot be right',
  'break-times': 'The times of a break cannot be right',
  'plan-breaks-rule': 'The plan breaks a rule',
  'plan-of-another-day': 'The plan is of another ward day',
} as const;
export type PlanningRefusal = keyof typeof planningRefusals;
