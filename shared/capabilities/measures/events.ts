import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { measure, readBy } from './values.ts';

/** A therapist turns walking measures on (or off) for this stay. */
export const walkingMeasuresSwitched = eventType('walking-measures-switched', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ on: z.boolean() }),
  words: (p) => `Walking measures turned ${p.on ? 'on' : 'off'}`,
});

export const walkingMeasured = eventType('walking-measured', {
  stream: 'stay',
  version: 1,
  schema: z.strictObject({ measure, readBy: readBy.optional() }),
  words: ({ measure: m }) => {
    switch (m.kind) {
      case 'gait-speed':
        return `Walking speed: ${m.metres} m in ${m.seconds} s (${m.pace} pace)`;
      case 'six-minute-walk':
        return `Six-minute walk: ${m.metres} m`;
      case 'chair-stands':
        return `Chair stands in 30 s: ${m.stands}${m.usedArms ? ', with arms' : ''}`;
      case 'five-rises':
        return `Five rises from a chair: ${m.seconds === null ? 'not managed' : `${m.seconds} s`}`;
      case 'up-and-go':
        return `Up and go over 3 m: ${m.seconds === null ? 'not managed' : `${m.seconds} s`}`;
    }
  },
});
export const measureEvents = [walkingMeasuresSwitched, walkingMeasured] as const;
