/** The closed list of what the aids room may refuse: code -> title. */
export const aidRefusals = {
  'item-known': 'That id is already used for a piece of equipment',
  'item-unknown': 'There is no such piece of equipment on this ward',
  'item-label-used': 'Another piece of equipment has that name',
  'item-in-use': 'Somebody has it',
  'item-out-of-service': 'It is out of service',
  'item-not-out-of-service': 'It is not out of service',
  'not-a-sling': 'Only a sling is kept for one person',
  'kept-for-one': 'It is kept for one person',
  'item-lent': 'It is lent to another ward',
  'item-borrowed': 'It belongs to another ward',
  'item-not-lent': 'It is not lent',
  'item-fixed': 'A ceiling track cannot be lent',
  'item-there-already': 'It is on that ward already',
  'loan-until-past': 'The time it is lent until is not ahead',
  'kept-for-another': 'It is kept for another person',
} as const;
export type AidRefusal = keyof typeof aidRefusals;
