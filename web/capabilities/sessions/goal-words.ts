import type { Goal } from '@footboard/shared/capabilities/sessions/values';
import { amountOf } from '../../units/ward-units.ts';
import { say } from '../words.ts';

/** "3 times walk, 40 m". */
export const goalWords = (goal: Goal): string =>
  [
    `${goal.timesUp} times ${say(goal.activity).toLowerCase()}`,
    ...(goal.minutesOutOfBed === undefined ? [] : [`${goal.minutesOutOfBed} min out of bed`]),
    ...(goal.metres === undefined ? [] : [amountOf(goal.metres, 'length')]),
  ].join(', ');
