import { z } from 'zod';
import { eventType } from '../../kernel/event-type.ts';
import { eventId, textRef } from '../../kernel/ids.ts';
import { goal, session, type AidNotUsedReason } from './values.ts';

const plain = (code: string) => code.replaceAll('-', ' ');

const WHY_NOT_USED: Readonly<Record<AidNotUsedReason, string>> = {
  'not-to-hand': 'not to hand',
  'with-others': 'others had it',
  'not-ready': 'it was not ready',
  'no-part-that-fits': 'no part that fits',
  'no-time': 'no time',
  'one-pair-of-hands': 'one pair of hands',
  'no-room': 'no room',
  'person-did-not-want-it': 'the person did not want it',
  'could-do-more': 'the person could do more',
  other: 'other',
};

export const sessionRecorded = eventType('session-recorded', {
  stream: 'stay',
  version: 3,
  // Version 1 had no readings, version 2 no planned equipment that was not used.
  upcasts: { 1: (old) => old, 2: (old) => old },
  schema: z.strictObject({ session, said: textRef.optional() }),
  words: ({ session: s, said }, n) => {
    const what =
      s.outcome === 'not-done'
        ? `Session not done: ${plain(s.notDone!.group)}${s.notDone!.example ? ` (${plain(s.notDone!.example)})` : ''}`
        : `Session ${s.outcome === 'part' ? 'part done' : s.outcome}: ${s.activities.map(plain).join(', ')}`;
    const amounts = [
      s.metres === undefined ? '' : `${s.metres} m`,
      s.minutesOutOfBed === undefined ? '' : `${s.minutesOutOfBed} min out of bed`,
      s.effort === undefined ? '' : `effort ${s.effort}/10`,
      s.occasion === 'planned' ? '' : `with ${s.occasion}`,
      ...(s.aidNotUsed
        ? [
            `planned ${plain(s.aidNotUsed.planned)} not used${s.aidNotUsed.because ? `, ${WHY_NOT_USED[s.aidNotUsed.because]}` : ''}`,
          ]
        : []),
      ...s.events.map(plain),
    ].filter(Boolean);
    return (
      what + (amounts.length ? ` (${amounts.join('; ')})` : '') + (said ? `. Said: ${n.text(said)}` : '')
    );
  },
});

export const goalSet = eventType('goal-set', {
  stream: 'stay',
  version: 2,
  // Version 1 did not say which sessions an accepted proposal stood on.
  upcasts: { 1: (old) => old },
  schema: z.strictObject({
    goal,
    wish: textRef.optional(),
    /** The sessions that carried the proposal which was accepted. */
    accepts: z.array(eventId).max(20).optional(),
  }),
  words: ({ goal: g, accepts }) =>
    `${accepts?.length ? 'Goal (proposal accepted)' : 'Goal'}: ${g.timesUp} times ${plain(g.activity)}` +
    (g.minutesOutOfBed === undefined ? '' : `, ${g.minutesOutOfBed} min out of bed`) +
    (g.metres === undefined ? '' : `, ${g.metres} m`),
});
export const sessionEvents = [sessionRecorded, goalSet] as const;
