/** What the ward as a whole enters each day: who looks after which bed, the huddle with its actions, who is expected. */
import { MINUTE, toIso } from '@footboard/shared/kernel/times';
import type { WardId } from '@footboard/shared/kernel/ids';
import { LARKFIELD, MILLBROOK, PEOPLE, WARDS, type DemoPerson } from './cast.ts';
import { LIVE_DAY, at } from './days.ts';
import type { Entry } from './entry.ts';

const enter = (when: Entry['at'], by: string, command: string, data: object, ward = LARKFIELD): Entry => ({
  at: when,
  ward,
  by,
  command,
  data,
});
const person = (story: DemoPerson['story']): DemoPerson => PEOPLE.find((one) => one.story === story)!;
const inBed = (bed: string): DemoPerson => PEOPLE.find((one) => one.bed === bed)!;

interface Pair {
  readonly nurse: string | null;
  readonly aide: string | null;
}
/** By the letter of a bed. */
const BY_DAY: Readonly<Record<string, Pair>> = {
  A: { nurse: 'nuri', aide: 'tess' },
  B: { nurse: 'pia', aide: 'abel' },
  C: { nurse: 'otto', aide: 'dina' },
  E: { nurse: 'ida', aide: 'tess' },
  F: { nurse: 'cleo', aide: null },
};
const BY_NIGHT: Readonly<Record<string, Pair>> = {
  A: { nurse: 'lena', aide: 'tess' },
  B: { nurse: 'lena', aide: 'tess' },
  C: { nurse: 'mika', aide: 'abel' },
  E: { nurse: 'mika', aide: 'abel' },
  F: { nurse: 'bram', aide: null },
};
const named = (ward: WardId, pairs: Readonly<Record<string, Pair>>) =>
  WARDS.find((one) => one.ward === ward)!.beds.map(({ bed, label }) => ({ bed, ...pairs[label[0]!]! }));

/** Named at the start of each shift, for that shift. */
const carers = (day: number): Entry[] =>
  [LARKFIELD, MILLBROOK].flatMap((ward) => [
    enter(
      at(day, '07:05'),
      'ida',
      'name-carers',
      { until: toIso(at(day, '21:00')), beds: named(ward, BY_DAY) },
      ward,
    ),
    enter(
      at(day, '21:02'),
      'bram',
      'name-carers',
      { until: toIso(at(day + 1, '07:00')), beds: named(ward, BY_NIGHT) },
      ward,
    ),
  ]);

/** By day, and by night with the whole shift: from, until, and when the break begins (half an hour). */
const DAY_ON: readonly (readonly [string, string, string, string])[] = [
  ['ida', '07:00', '15:30', '11:00'],
  ['nuri', '07:00', '15:30', '11:30'],
  ['pia', '07:00', '19:00', '12:45'],
  ['otto', '07:00', '19:00', '13:15'],
  ['cleo', '13:00', '21:00', '17:00'],
  ['tess', '07:00', '15:00', '11:00'],
  ['abel', '07:00', '19:00', '12:45'],
  ['dina', '11:00', '21:00', '15:00'],
  ['rhea', '08:30', '16:30', '12:00'],
  ['jonas', '09:00', '15:00', '12:30'],
];
const NIGHT_ON = ['lena', 'mika', 'bram'];
const HALF = 30 * MINUTE;
const onFrom = (staff: string, from: Entry['at'], until: Entry['at'], pause: Entry['at']) => ({
  staff,
  from: toIso(from),
  until: toIso(until),
  breaks: [{ from: toIso(pause), until: toIso(pause + HALF) }],
});
function on(day: number): Entry[] {
  const byDay = DAY_ON.map(([staff, from, until, pause]) =>
    onFrom(staff, at(day, from), at(day, until), at(day, pause)),
  );
  const byNight = NIGHT_ON.map((staff, n) =>
    onFrom(staff, at(day, '21:00'), at(day + 1, '07:00'), at(day + 1, '01:30') + n * HALF),
  );
  return [enter(at(day, '07:06'), 'ida', 'set-people-on', { people: [...byDay, ...byNight] })];
}

/** Held at half past eight; two actions a day, and every other day one about equipment that stays open overnight. */
function huddle(day: number): Entry[] {
  const id = (n: number) => `action-${day}-${n}`;
  const agree = (n: number, of: object) =>
    enter(at(day, '08:32') + n * MINUTE, 'ida', 'agree-action', { action: id(n), ...of });
  const close = (n: number, when: Entry['at'], by: string, outcome: string) =>
    enter(when, by, 'close-action', { action: id(n), outcome });
  const equipment = day % 2 === 0;
  return [
    enter(at(day, '08:30'), 'ida', 'hold-huddle', {}),
    agree(1, {
      kind: 'get-up-today',
      owner: 'dina',
      by: toIso(at(day, '14:00')),
      stay: person('refuses').stay,
    }),
    close(1, at(day, '15:10'), 'dina', day % 3 === 0 ? 'not-possible' : 'done'),
    agree(2, {
      kind: 'ask-the-therapist',
      owner: 'rhea',
      by: toIso(at(day, '12:00')),
      stay: person('heavy').stay,
    }),
    close(2, at(day + 1, '08:45'), 'rhea', 'done'),
    ...(equipment
      ? [
          agree(3, {
            kind: 'bring-or-mend-equipment',
            owner: 'vera',
            by: toIso(at(day + 1, '10:00')),
            note: 'The battery of the lift in Birch is empty by noon.',
          }),
          close(3, at(day + 1, '10:30'), 'vera', 'done'),
        ]
      : []),
  ];
}

const closeExpected = (when: Entry['at'], id: string, outcome: string) =>
  enter(when, 'ida', 'close-expected-arrival', { expected: id, outcome });
const expectArrival = (when: Entry['at'], id: string, of: object) =>
  enter(when, 'ida', 'expect-arrival', { expected: id, ...of });
/** Said beforehand; closed when they came, or do not. */
function expected(): Entry[] {
  const walks = { moves: 'walks', transfers: 'alone', stairs: 'yes' };
  return [
    expectArrival(at(1, '09:40'), 'expected-c2', {
      at: toIso(at(1, '13:00')),
      from: 'emergency',
      bed: 'lf-c2',
    }),
    closeExpected(at(1, '13:40'), 'expected-c2', 'arrived'),
    expectArrival(at(6, '09:10'), 'expected-c1', {
      at: toIso(at(6, '13:00')),
      from: 'emergency',
      bed: 'lf-c1',
      usual: walks,
    }),
    closeExpected(at(6, '13:40'), 'expected-c1', 'arrived'),
    expectArrival(at(6, '18:20'), 'expected-b6', {
      at: toIso(at(LIVE_DAY, '11:30')),
      from: 'ward',
      bed: 'lf-b6',
      usual: inBed('mb-f2').usual,
      previous: { ward: MILLBROOK, stay: inBed('mb-f2').stay },
    }),
    expectArrival(at(LIVE_DAY, '07:40'), 'expected-c5', {
      at: toIso(at(LIVE_DAY, '14:00')),
      from: 'intensive-care',
      bed: 'lf-c5',
      bariatric: true,
    }),
    // Later on the live day.
    closeExpected(at(LIVE_DAY, '11:50'), 'expected-b6', 'not-coming'),
    closeExpected(at(LIVE_DAY, '16:10'), 'expected-c5', 'not-coming'),
  ];
}

/** From the first day to the last, both included. There is no huddle on the day the ward opens. */
export const wardDays = (last: number): Entry[] => [
  ...Array.from({ length: last + 1 }, (_, day) => [
    ...carers(day),
    ...on(day),
    ...(day > 0 ? huddle(day) : []),
  ]).flat(),
  ...expected(),
];
