/** Rows as walls of each level have them, and the courses of stays, told whole as they were read before. */
import { heldAgainst, telling } from '../../../kernel/told.testkit.ts';
import { toIso } from '../../../kernel/times.ts';
import type { BedId, EventId, StaffId } from '../../../kernel/ids.ts';
import { BOARD_LEVELS } from '../../people/policy/document.ts';
import type { PlannedView } from '../activity-view.ts';
import type { BedView, StayView } from '../view.ts';
import { courseOf } from './course.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { rowFor, rowsFor } from './for-wall.ts';
import {
  calendar,
  check,
  hold,
  hours,
  notDone,
  onOwn,
  recordOf,
  retract,
  session,
  trigger,
  ward,
} from './history.testkit.ts';
import { named, pressures, STAYS, told, type History } from './told-stays.testkit.ts';

const at = (h: number) => toIso(hours(h));
const walks = STAYS['walks']!;
const FULL: History = [
  ...walks,
  named(hold(1, 'walking', 12), 'hold'),
  {
    ...named(hold(1.5, 'out-of-bed', 2), 'hold-2'),
    payload: { ...(hold(1.5, 'out-of-bed', 2).payload as object), hold: 'hold-2' },
  },
  named(trigger('fall', 2), 'fall'),
  named(
    session(2.2, { metres: 12, events: ['dizzy'], left: 'chair', backToBedBy: at(5), endedAt: at(2.5) }),
    'session',
  ),
  ...[2.6, 2.7, 2.8].map((h) => named(notDone(h, 'said-no'), `no-${h}`)),
  told('isolation-set', 2, { on: true }),
  told('leaving-expected', 2, { at: at(40) }),
  told('therapist-line-set', 2, { line: { ref: 'text-2' } }),
  told('visit-taken', 2, { visit: 'visit-1', by: 'staff-aide', from: at(3), until: at(4) }),
  told('early-warning-recorded', 2, { score: 7, anyThree: true, scale: 1 }),
  told('attachment-added', 2, {
    attachment: 'drain',
    kind: 'chest-drain',
    disconnects: 'nobody',
    needsOwnPerson: true,
  }),
  told('walking-measures-switched', 2, { on: true }),
  told('walking-measured', 2.1, { measure: { kind: 'up-and-go', seconds: 14, support: 'frame' } }),
];
const PLANNED: PlannedView = {
  visit: 'visit-9' as PlannedView['visit'],
  kind: 'goal',
  from: hours(5),
  until: hours(5.5),
  crew: ['staff-aide' as StaffId],
  with: ['Lift 1'],
  stopped: { rule: 'planned/hold', facts: ['hold' as EventId], words: 'A hold' },
};
const PEOPLE: Readonly<Record<string, { readonly of: History; readonly also?: Partial<StayView> }>> = {
  'everything there is': {
    of: FULL,
    also: { planned: [PLANNED, { ...PLANNED, from: hours(6), stopped: null }] },
  },
  'walks, on own': {
    of: [...walks, named(onOwn(1), 'own')],
    also: { planned: [{ ...PLANNED, stopped: null }] },
  },
  'says nothing on walls': { of: [...FULL, told('wall-showing-set', 2.9, { showing: 'nothing' })] },
  'comfort plan': { of: [...walks, told('scope-set', 2, { scope: 'comfort', plan: { ref: 'text-1' } })] },
  'clinician’s plan': {
    of: [
      ...walks,
      told('scope-set', 2, { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } }),
    ],
  },
  'off the ward': { of: [...walks, told('went-off-ward', 2, { reason: 'test', dueBack: at(6) })] },
  'only arrived': { of: STAYS['only arrived']! },
};
const rowOf = ({ of, also }: (typeof PEOPLE)[string]): BedView => {
  const stay = { ...evaluateStay(recordOf(of), ward, calendar, hours(3)).view, ...also };
  return {
    bed: 'bed-1' as BedId,
    label: '1',
    bay: 'A',
    ceilingTrack: true,
    state: stay.away ? 'away' : 'occupied',
    carers: { nurse: 'staff-nurse' as StaffId, aide: null },
    stay,
  };
};
const board = {
  beds: [rowOf(PEOPLE['walks, on own']!)],
  dayPlan: { at: hours(1), by: 'staff-nurse' as StaffId, ahead: 1, held: 0, passed: 0, unplaced: null },
};
const empty: BedView = { ...rowOf(PEOPLE['only arrived']!), state: 'empty', stay: null };

const COURSES: Readonly<Record<string, readonly [History, number]>> = {
  'everything there is, to hour 30': [FULL, 30],
  'everything there is, to hour 3': [FULL, 3],
  'before it began': [[{ ...STAYS['only arrived']![0]!, at: 2 }], 1],
  'up and down over three days': [
    [
      ...walks,
      named(session(2), 'up-1'),
      named(hold(3, 'walking', 5), 'hold'),
      told('hold-ended', 8, { hold: 'hold-1', placedBy: 'hold' }, 'ended'),
      named(check('stand', 20, { stand: { outcome: 'not-met' } }), 'less'),
      told('went-off-ward', 22, { reason: 'test' }),
      told('came-back', 24),
      named(trigger('faint', 26), 'faint'),
      named(check('walk', 28, {}, { ...pressures(28), answers: ['faint'] }), 'more'),
      named(notDone(50, 'no-people'), 'no'),
      named(session(51, { outcome: 'stopped', activities: ['chair', 'walk'] }), 'stopped'),
      named(trigger('fall', 52), 'fall'),
      named(retract(53, 'fall'), 'gone'),
    ],
    75,
  ],
  'ended on the second day': [[...walks, told('stay-ended', 30, { bed: 'bed-1', to: 'home' })], 75],
  'ended later than asked': [[...walks, told('stay-ended', 30, { bed: 'bed-1', to: 'home' })], 20],
};

heldAgainst(new URL('told-walls.txt', import.meta.url), [
  ...BOARD_LEVELS.flatMap((level) =>
    Object.entries(PEOPLE).map(
      ([who, of]) =>
        [
          `${level}: ${who}`,
          () => {
            const row = rowFor(rowOf(of), level);
            const { plan, mayStart, ...stay } = row.stay!;
            const tasks = plan && [...plan.day, ...plan.night].map((p) => telling(p).join('; '));
            return level === 'whole'
              ? { same: row.stay === rowFor(row, level).stay }
              : { ...row, stay, mayStart, tasks };
          },
        ] as const,
    ),
  ),
  ...BOARD_LEVELS.map((level) => [`${level}: an empty bed`, () => rowFor(empty, level)] as const),
  ...BOARD_LEVELS.map(
    (level) =>
      [
        `${level}: the plan of the day, on the board and in its changes`,
        () => {
          const rows = rowsFor({ ...board, board: { dayPlan: board.dayPlan } }, level);
          return { plan: rows.dayPlan, changes: rows.board, nothing: rowsFor({ beds: [] }, level) };
        },
      ] as const,
  ),
  ...Object.entries(COURSES).map(
    ([title, [of, now]]) =>
      [`course: ${title}`, () => courseOf(recordOf(of), ward, calendar, hours(now)) ?? 'none'] as const,
  ),
]);
