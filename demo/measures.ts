/** Numbers that the week brings: early-warning scores, sleep seen at night, and walking measures. */
import { LARKFIELD, PEOPLE, type DemoPerson } from './cast.ts';
import { at } from './days.ts';
import type { Entry } from './entry.ts';

const enter = (when: Entry['at'], by: string, command: string, data: Entry['data']): Entry => ({
  at: when,
  ward: LARKFIELD,
  by,
  command,
  data,
});
const person = (story: DemoPerson['story']): DemoPerson => PEOPLE.find((one) => one.story === story)!;

const speed = (seconds: number) => ({
  kind: 'gait-speed',
  metres: 10,
  seconds,
  pace: 'usual',
  start: 'walking',
  turn: false,
  support: 'frame',
});

/** A therapist follows the person who goes alone in the room: a little faster each time. */
function walking(): Entry[] {
  const { stay } = person('on-own');
  const readBy = { age: 78, sex: 'female' } as const;
  const measure = (day: number, clock: string, of: object): Entry =>
    enter(at(day, clock), 'rhea', 'record-walking-measure', { stay, measure: of, readBy });
  return [
    enter(at(5, '14:15'), 'rhea', 'switch-walking-measures', { stay, on: true }),
    measure(5, '14:30', speed(14.2)),
    measure(5, '14:20', { kind: 'chair-stands', stands: 7, usedArms: false }),
    measure(6, '11:10', speed(12.4)),
    measure(6, '11:20', { kind: 'up-and-go', seconds: 19.5, support: 'frame' }),
  ];
}

const score = (day: number, clock: string, by: string, stay: string, of: object): Entry =>
  enter(at(day, clock), by, 'record-early-warning', { stay, scale: 1, anyThree: false, ...of });

/** Scores as charted on the round of observations; one of them rises on the last night. */
function scores(): Entry[] {
  const confused = person('delirium').stay;
  const heldBack = person('long-hold').stay;
  return [
    score(6, '20:10', 'lena', confused, { score: 3, anyThree: true }),
    score(7, '06:05', 'mika', confused, { score: 4, anyThree: true }),
    score(6, '20:20', 'lena', heldBack, { score: 1 }),
    score(7, '06:10', 'mika', heldBack, { score: 2 }),
  ];
}

const asleep = (): Entry[] =>
  (['dizzy', 'drain', 'refuses'] as const).map((story, n) =>
    enter(at(7, `02:1${n}`), 'tess', 'record-asleep', { stay: person(story).stay }),
  );

export const measures = (): Entry[] => [...walking(), ...scores(), ...asleep()];
