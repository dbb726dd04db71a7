import type { Goal } from '@footboard/shared/capabilities/sessions/values';
import { amountOf } from '../../units/ward-units.ts';
import { sayInside } from '../words.ts';
import { saySession } from './session-words.ts';

/** "3 times walk, 40 m". */
export const goalWords = (goal: Goal): string =>
  [
    saySession('goal-times', { n: goal.timesUp, what: sayInside(goal.activity) }),
    ...(goal.minutesOutOfBed === undefined ? [] : [saySession('goal-minutes', { n: goal.minutesOutOfBed })]),
    ...(goal.metres === undefined ? [] : [amountOf(goal.metres, 'length')]),
  ].join(', ');
