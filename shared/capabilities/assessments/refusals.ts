/** The closed list of what the assessments room may refuse: code -> title. */
export const assessmentRefusals = {
  'check-needs-qualified': 'A staged check needs a nurse or therapist',
  'protocol-unknown': 'That protocol version is not known on this ward',
  'no-staged-check': 'The staged check does not apply to this person',
  'answer-not-a-trigger': 'That is not a trigger of this stay',
  'answer-before-trigger': 'A check cannot answer what came after it',
  'stage-time-outside-stay': 'A stage or reading is timed outside the stay',
  'nothing-to-confirm': 'There is no checked plan to confirm',
  'trigger-needs-check': 'Something happened that only a staged check can answer',
  'task-on-hold': 'That move is on hold',
  'seen-walking-too-late': 'The arrival is too long ago',
  'already-checked': 'A staged check is already recorded',
  'seen-walking-with-trigger': 'Something must be looked at first',
  'seen-walking-with-hold': 'A hold is on',
} as const;
export type AssessmentRefusal = keyof typeof assessmentRefusals;
