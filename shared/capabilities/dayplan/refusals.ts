/** The closed list of what the dayplan room may refuse: code -> title. */
export const dayplanRefusals = {
  'visit-taken': 'Somebody else has this visit',
  'visit-known': 'That visit id is already used',
  'visit-unknown': 'There is no such visit, or nobody has it any more',
  'visit-times': 'The times of the visit cannot be right',
  'second-is-first': 'The second person is the one who takes the visit',
  'second-other': 'Somebody else goes along already',
  'second-none': 'Nobody goes along',
  'booked-then': 'Somebody is booked elsewhere at that time',
  'action-unknown': 'There is no such agreed action',
  'action-closed': 'The agreed action is closed',
  'time-not-ahead': 'The time is not ahead',
  'bed-named-twice': 'A bed stands twice in the list',
  'carer-no-nurse': 'Whoever is named as the nurse is no nurse',
  'expected-known': 'That expected arrival is already entered',
  'expected-unknown': 'There is no such expected arrival, or it is closed',
} as const;
export type DayplanRefusal = keyof typeof dayplanRefusals;
