/**
 * A stay looked at again when time has passed and nothing was entered: what had been worked out at the
 * first look is not shown beyond its time. Source: design, rule 7.
 */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import type { StayView } from '../view.ts';
import { evaluateFacts } from './evaluate-stay.ts';
import { calendar, check, hold, hours, session, stayOf, ward, type Told } from './history.testkit.ts';

const says = (waitsForHelp: string) => ({ cooperation: { waitsForHelp, followsInstructions: 'yes' } });
const saidNo = (at: number, startedAt = at): Told =>
  session(at, {
    outcome: 'not-done',
    activities: [],
    notDone: { group: 'said-no' },
    startedAt: toIso(hours(startedAt)),
  });
const inTheChair = session(15, {
  activities: ['chair'],
  startedAt: toIso(hours(15)),
  endedAt: toIso(hours(16)),
  left: 'chair',
});
/** Its beginning is written down half an hour later than the time of the entry: until then it has not begun. */
const toToilet = session(15, {
  activities: ['toilet'],
  occasion: 'toilet',
  startedAt: toIso(hours(15.5)),
});
const easyWalk = (at: number) => session(at, { metres: 20, effort: 2 });
const goal: Told = {
  type: 'goal-set',
  at: 14.6,
  payload: { goal: { activity: 'walk', timesUp: 3, metres: 60 } },
};
/** Sits, and was not seen standing: the transfer is a seated one. */
const sitting = [
  check('edge', 1),
  { type: 'weight-recorded', at: 1, payload: { weight: { kg: 70, how: 'measured' } } },
];

const bedToChair = ({ plan }: StayView) => plan!.day.find(({ task }) => task === 'bed-chair')!.aid;
const reviewDue = (words: readonly { readonly words: string }[]) =>
  words.some((one) => one.words.includes('HOLD REVIEW DUE'));
const wait = (all: readonly { readonly words: string }[]) =>
  all.some(({ words }) => /waits? for help/i.test(words));

type Case = readonly [
  what: string,
  told: readonly Told[],
  looks: readonly [number, number],
  shown: (view: StayView) => unknown,
  expected: readonly [unknown, unknown],
];
/** START is 18:00: the night is from 3 h to 14 h after it, the next ward day begins with its end; a shift 26 h after it. */
const CASES: readonly Case[] = [
  [
    'a hold whose review time passes: the plan says HOLD REVIEW DUE',
    [check('walk', 1), hold(1.2, 'walking', 2.5)],
    [2, 2.6],
    ({ plan }) => reviewDue(plan!.day.find(({ task }) => task === 'walk')!.because),
    [false, true],
  ],
  [
    'sitting balance that was seen on the ward day before: no seated transfer any more',
    sitting,
    [13.9, 14.1],
    bedToChair,
    ['seated-transfer-aid', 'sling-lift'],
  ],
  [
    'an answer older than the window: the person is no longer said not to wait for help',
    [check('walk', 1, {}, says('no')), check('walk', 2, {}, says('yes'))],
    [24.9, 25.1],
    ({ cautions }) => wait(cautions),
    [true, false],
  ],
  [
    'the same before the next session starts',
    [check('walk', 1, {}, says('no')), check('walk', 2, {}, says('yes'))],
    [24.9, 25.1],
    ({ mayStart }) => wait(mayStart!.reasons),
    [true, false],
  ],
  [
    'the end of a session: last up',
    [inTheChair],
    [15.5, 16.5],
    ({ lastUp }) => lastUp!.at,
    [hours(15), hours(16)],
  ],
  [
    'the end of a session: waking time',
    [inTheChair],
    [15.5, 16.5],
    ({ debt }) => debt!.since,
    [hours(15), hours(16)],
  ],
  [
    'the end of a session: in the chair',
    [inTheChair],
    [15.5, 16.5],
    ({ chair }) => chair!.since,
    [hours(15), hours(16)],
  ],
  [
    'the end of a session: lately',
    [inTheChair],
    [15.5, 16.5],
    ({ lately }) => lately!.last!.to,
    [hours(15), hours(16)],
  ],
  [
    'the beginning of a session: the toilet',
    [toToilet],
    [15.2, 15.7],
    ({ toilet }) => toilet,
    [[], [hours(15.5)]],
  ],
  ['the beginning of a session: today', [toToilet], [15.2, 15.7], ({ today }) => today.timesUp, [0, 1]],
  [
    'the beginning of a session: the third no',
    [saidNo(14.5), saidNo(14.7), saidNo(15, 15.5)],
    [15.2, 15.7],
    ({ signs }) => signs.map(({ kind }) => kind),
    [[], ['refusals']],
  ],
  [
    'a check before the first move of each shift: the next check says why',
    [check('walk', 14.5, {}, says('varies'))],
    [25.9, 26.1],
    ({ nextCheck }) => nextCheck!.because.some(({ rule }) => rule === 'next-check/ran-out'),
    [false, true],
  ],
  [
    'validity that ran out: nobody is proposed to go up',
    [check('walk', 14.5), goal, easyWalk(15), easyWalk(16)],
    [26.4, 26.6],
    ({ proposal }) => proposal?.step ?? null,
    ['up', null],
  ],
];

describe('a stay looked at again', () => {
  it.each(CASES)('shows %s', (_what, told, looks, shown, expected) => {
    const record = stayOf(...told);
    const effective = effectiveFacts(record);
    const seen = looks.map((t) => shown(evaluateFacts(record, effective, ward, calendar, hours(t)).view));
    expect(seen).toEqual(expected);
  });
});
