/** What must be cleared before a measure is taken: it must never be the reason for an unsafe walk or rise. */
import type { Measure } from '../values.ts';

export const measureNeeds = (kind: Measure['kind']): 'walk' | 'stand' =>
  kind === 'chair-stands' || kind === 'five-rises' ? 'stand' : 'walk';
