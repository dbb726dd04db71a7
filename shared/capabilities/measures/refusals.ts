/** The closed list of what the measures room may refuse: code -> title. */
export const measureRefusals = {
  'walking-measures-off': 'Walking measures are off for this stay',
  'walk-not-cleared': 'Walking is not cleared',
  'stand-not-cleared': 'Standing is not cleared',
} as const;
export type MeasureRefusal = keyof typeof measureRefusals;
