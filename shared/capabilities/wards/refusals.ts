/** The closed list of what the wards room may refuse: code -> title. */
export const wardRefusals = {
  'ward-not-set-up': 'This ward is not set up yet',
  'ward-exists': 'This ward is already set up',
  'nothing-to-change': 'Nothing would change',
  'bed-unknown': 'There is no such bed on this ward',
  'bed-known': 'That bed id is already used on this ward',
  'bed-label-used': 'Another bed already has that label',
  'bed-occupied': 'Someone is in that bed',
  'protocol-faulty': 'The protocol document has faults',
  'rules-faulty': 'The rules document has faults',
  'version-not-next': 'The version is not the next one',
} as const;
export type WardRefusal = keyof typeof wardRefusals;
