/** The closed list of what the sessions room may refuse: code -> title. */
export const sessionRefusals = {
  'time-in-future': 'That time is still ahead',
  'session-before-stay': 'The session began before the stay',
  'session-after-stay': 'The session began after the stay ended',
  'reading-time-outside-stay': 'A reading is timed outside the stay',
  'back-to-bed-before-start': 'The time to be back in bed is not after the start',
  'proposal-gone': 'That proposal no longer stands',
  'goal-above-cleared': 'The goal asks for more than is cleared',
} as const;
export type SessionRefusal = keyof typeof sessionRefusals;
