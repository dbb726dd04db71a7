/** The closed list of what the people room may refuse: code -> title. */
export const peopleRefusals = {
  'not-your-role': 'Your role may not do this',
  'own-role': 'Nobody gives a role to themselves',
  'staff-unknown': 'There is no such person on the staff list',
  'last-to-keep-list': 'Somebody must keep the staff list',
  'staff-known': 'That staff id is already on the list',
} as const;
export type PeopleRefusal = keyof typeof peopleRefusals;
