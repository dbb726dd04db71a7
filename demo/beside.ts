/** What stands beside the plans: infection steps, expected leaving, lines of the therapists, "the board is wrong", visits. */
import { MINUTE, toIso } from '@footboard/shared/kernel/times';
import { LARKFIELD, PEOPLE, type DemoPerson } from './cast.ts';
import { LIVE_DAY, at } from './days.ts';
import type { Entry } from './entry.ts';

const enter = (when: Entry['at'], by: string, command: string, data: object): Entry => ({
  at: when,
  ward: LARKFIELD,
  by,
  command,
  data,
});
const person = (story: DemoPerson['story']): DemoPerson => PEOPLE.find((one) => one.story === story)!;
const inBed = (bed: string): DemoPerson => PEOPLE.find((one) => one.bed === bed)!;

const setIsolation = (when: Entry['at'], by: string, bed: string, on: boolean) =>
  enter(when, by, 'set-isolation', { stay: inBed(bed).stay, on });
function isolation(): Entry[] {
  return [
    setIsolation(at(1, '12:10'), 'nuri', 'lf-a2', true),
    setIsolation(at(4, '09:20'), 'nuri', 'lf-a2', false),
    setIsolation(at(3, '10:15'), 'otto', 'lf-c6', true),
    setIsolation(at(6, '16:05'), 'pia', 'lf-b5', true),
  ];
}

const expectLeaving = (when: Entry['at'], by: string, bed: string, to: Entry['at'] | null) =>
  enter(when, by, 'expect-leaving', { stay: inBed(bed).stay, at: to === null ? null : toIso(to) });
function leaving(): Entry[] {
  return [
    expectLeaving(at(3, '09:10'), 'ida', 'lf-c1', at(5, '16:00')),
    expectLeaving(at(4, '11:00'), 'pia', 'lf-b3', at(6, '11:00')),
    // She is not ready yet: taken back, with no new time.
    expectLeaving(at(5, '17:00'), 'pia', 'lf-b3', null),
    expectLeaving(at(6, '11:30'), 'ida', 'lf-a6', at(LIVE_DAY + 1, '11:00')),
    expectLeaving(at(6, '11:35'), 'rhea', 'lf-a3', at(LIVE_DAY + 2, '11:00')),
    expectLeaving(at(6, '15:05'), 'hugo', 'lf-e1', at(LIVE_DAY, '16:00')),
    // Put off again, each day of the live ones a little.
    ...[0, 1, 2, 3, 4, 5, 6].flatMap((n) => [
      expectLeaving(at(LIVE_DAY + n, '15:20'), 'ida', 'lf-e1', at(LIVE_DAY + n + 1, '16:00')),
      expectLeaving(at(LIVE_DAY + n, '15:25'), 'ida', 'lf-a6', at(LIVE_DAY + n + 2, '11:00')),
    ]),
  ];
}

const writeLine = (when: Entry['at'], by: string, stay: string, line: string | null) =>
  enter(when, by, 'set-therapist-line', { stay, line });
function lines(): Entry[] {
  return [
    writeLine(
      at(2, '10:12'),
      'rhea',
      person('one-leg').stay,
      'Right leg only; the frame is set before he rises',
    ),
    writeLine(at(2, '08:30'), 'jonas', person('delirium').stay, 'Say one step, then wait until she begins'),
    writeLine(at(3, '11:30'), 'rhea', person('dizzy').stay, 'Two minutes at the edge before he stands'),
    writeLine(at(4, '10:20'), 'rhea', person('theatre').stay, 'Pillow between the knees before she turns'),
    writeLine(
      at(5, '14:40'),
      'rhea',
      person('on-own').stay,
      'Rests at the chair by the window on the way back',
    ),
    // Out of date once she turns by herself.
    writeLine(at(6, '09:50'), 'jonas', person('theatre').stay, null),
  ];
}

const sayWrong = (when: Entry['at'], by: string, bed: string, note?: string) =>
  enter(when, by, 'record-trigger', {
    stay: inBed(bed).stay,
    kind: 'board-wrong',
    ...(note === undefined ? {} : { note }),
  });
function boardWrong(): Entry[] {
  return [
    sayWrong(at(2, '17:50'), 'dina', 'lf-e1', 'Says one person; he went with nobody all day.'),
    sayWrong(at(4, '14:20'), 'tess', 'lf-a2'),
    sayWrong(at(LIVE_DAY, '07:58'), 'abel', 'lf-b3', 'Her frame is not here any more, she has two sticks.'),
    sayWrong(at(LIVE_DAY + 1, '10:40'), 'dina', 'lf-c6'),
  ];
}

const takeVisit = (id: string, when: Entry['at'], by: string, stay: string, second?: string) =>
  enter(when, by, 'take-visit', {
    stay,
    visit: id,
    ...(second === undefined ? {} : { second }),
    from: toIso(when),
    until: toIso(when + 25 * MINUTE),
  });
/** Two visits taken each day; now and then one changes hands, or is given back. */
function visits(last: number): Entry[] {
  const daily = Array.from({ length: last + 1 }, (_, day) => day)
    .filter((day) => day > 0)
    .flatMap((day) => [
      takeVisit(`visit-${day}-1`, at(day, '10:04'), 'abel', person('heavy').stay, 'dina'),
      takeVisit(`visit-${day}-2`, at(day, '15:02'), 'dina', person('refuses').stay),
      ...(day % 3 === 0
        ? [
            enter(at(day, '15:06'), 'dina', 'hand-over-visit', {
              stay: person('refuses').stay,
              visit: `visit-${day}-2`,
              to: 'tess',
            }),
          ]
        : []),
      ...(day % 4 === 1
        ? [
            enter(at(day, '10:09'), 'abel', 'give-back-visit', {
              stay: person('heavy').stay,
              visit: `visit-${day}-1`,
              reason: 'needs-a-second-person',
            }),
          ]
        : []),
    ]);
  return [
    ...daily,
    // On the way when the demo goes live.
    takeVisit('visit-live-1', at(LIVE_DAY, '08:12'), 'tess', person('delirium').stay, 'abel'),
    takeVisit('visit-live-2', at(LIVE_DAY, '08:16'), 'dina', inBed('lf-c6').stay),
  ];
}

export const besidePlans = (last: number): Entry[] => [
  ...isolation(),
  ...leaving(),
  ...lines(),
  ...boardWrong(),
  ...visits(last),
];
