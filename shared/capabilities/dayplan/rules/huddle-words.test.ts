/** What the lines of the huddle say, and whom its totals count: users-job.md 2b; else common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { StaffId, StayId } from '../../../kernel/ids.ts';
import { HOUR, toIso } from '../../../kernel/times.ts';
import { emptyBoard, foldBoard, viewBoard } from '../../board/rules/board.ts';
import {
  begun,
  calendar,
  check,
  hold,
  hours,
  notDone,
  order,
  session,
  setUpWard,
  trigger,
  WARD,
  WardLog,
  type Told,
} from '../../board/rules/history.testkit.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { BoardView, StayView } from '../../board/view.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { huddleOf } from './huddle.ts';

function boardAt(t: number, stays: Readonly<Record<string, readonly Told[]>>): BoardView {
  const log = new WardLog();
  setUpWard(log);
  for (const [bed, told] of Object.entries(stays)) {
    const stay = `stay-${bed}` as StayId;
    log.add(`stay/${stay}`, begun(stay, bed));
    log.add(`bed/${bed}`, { type: 'bed-taken', payload: { bed, stay } });
    for (const one of told) log.add(`stay/${stay}`, one);
  }
  const state = emptyBoard(WARD);
  foldBoard(state, log.events);
  return viewBoard(state, hours(t)).board;
}
const huddle = (t: number, stays: Readonly<Record<string, readonly Told[]>>, rules = DEFAULT_RULES) =>
  huddleOf(boardAt(t, stays), hours(t), calendar, rules);
const words = (lines: readonly { words: string }[]) => lines.map((l) => l.words);
const weighed: Told = { type: 'weight-recorded', at: 0.5, payload: { weight: { kg: 70, how: 'measured' } } };
const comfort: Told = { type: 'scope-set', at: 1, payload: { scope: 'comfort' } };
const fenced: Told = {
  type: 'scope-set',
  at: 1,
  payload: { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 't' } },
};

describe('who arrived', () => {
  it.each<[string, readonly Told[]]>([
    ['not checked here yet', []],
    ['checked, current', [check('walk', 1)]],
    ['checked, re-check', [check('walk', 1), trigger('sedation', 2)]],
    ['comfort plan', [comfort]],
    ["clinician's plan only", [fenced]],
  ])('is said to be: %s', (state, told) => {
    const { arrived } = huddle(3, { 'bed-1': told });
    expect(arrived).toMatchObject([
      { bed: 'bed-1', label: '1', words: `Arrived 24 Oct 18:00: ${state}`, because: [] },
    ]);
  });
  it('is said for 24 h of real time, and not before', () => {
    const board = boardAt(3, { 'bed-1': [] });
    const arrived = (at: number) => huddleOf(board, at, calendar).arrived.length;
    expect(arrived(hours(0) - 1)).toBe(0);
    expect(arrived(hours(0))).toBe(1);
    expect(arrived(hours(24) - 1)).toBe(1);
    expect(arrived(hours(24))).toBe(0);
  });
});

describe('holds', () => {
  const held = (id: string, review: number, scope = 'walking'): Told => {
    const { payload, ...rest } = hold(1, scope, review, { id });
    return { ...rest, payload: { ...(payload as object), hold: id } };
  };
  it('of one person come by their review, each with when it was placed and by which entry', () => {
    const told = [held('a', 12, 'all-including-turning'), held('b', 6)];
    for (const either of [told, told.toReversed()]) {
      expect(huddle(3, { 'bed-1': either }).holds).toMatchObject([
        {
          bed: 'bed-1',
          label: '1',
          words: 'Hold on walking (waiting for review), review 25 Oct 00:00',
          because: [{ rule: 'huddle/hold', facts: ['b'], words: 'Placed 24 Oct 19:00' }],
        },
        {
          bed: 'bed-1',
          label: '1',
          words: 'Hold on all including turning (waiting for review), review 25 Oct 05:00',
          because: [{ rule: 'huddle/hold', facts: ['a'], words: 'Placed 24 Oct 19:00' }],
        },
      ]);
    }
  });
});

describe('who was not up', () => {
  const chair = { ...session(2, { activities: ['lifted-to-chair'] }), id: 'up' };
  it('is said with the entry it stands on, from the very hour that the ward named', () => {
    const rules = structuredClone(DEFAULT_RULES);
    rules.activity.notUpHours.value = 5;
    expect(huddle(7, { 'bed-1': [chair] }, rules).notUp).toMatchObject([
      {
        bed: 'bed-1',
        label: '1',
        words: 'Not up since 24 Oct 20:00 (lifted to chair)',
        because: [{ rule: 'huddle/not-up', facts: ['up'], words: 'Not up for 5 h and no hold that says so' }],
      },
    ]);
    expect(huddle(7 - 1 / HOUR, { 'bed-1': [chair] }, rules).notUp).toEqual([]);
    expect(huddle(5, { 'bed-1': [] }, rules).notUp).toMatchObject([{ because: [{ facts: [] }] }]);
    expect(huddle(4.99, { 'bed-1': [] }, rules).notUp).toEqual([]);
  });
  it.each([
    ['out-of-bed', 0],
    ['raising-the-back', 0],
    ['all-including-turning', 0],
    ['standing', 1],
    ['walking', 1],
  ] as const)('is left out where a hold says so: %s, %i told', (scope, told) => {
    expect(huddle(30, { 'bed-1': [hold(1, scope, 40)] }).notUp).toHaveLength(told);
  });
  it('is not asked of a comfort plan', () => {
    expect(huddle(30, { 'bed-1': [comfort] }).notUp).toEqual([]);
  });
});

describe('who needs a lift or two people', () => {
  it('is nobody whose moves ask for neither', () => {
    const free = [weighed, check('walk', 1)];
    const { needLift, twoPeople } = huddle(2, { 'bed-1': free });
    expect(needLift).toEqual([]);
    expect(words(twoPeople).join()).not.toContain('out of bed');
  });
  it('is told each demand once, with the moves by their names, and why', () => {
    const bed = [weighed, check('upright', 1)];
    const board = boardAt(2, { 'bed-1': bed });
    const view = board.beds[0]!.stay!;
    const asks: Pick<TaskPlan, 'people' | 'hold' | 'aid' | 'because'> = {
      people: 'two',
      hold: false,
      aid: 'sling-lift',
      because: [],
    };
    const alone = { people: 'one', hold: false, aid: 'none' } as const;
    const rows: BoardView = {
      ...board,
      beds: board.beds.map((b) => {
        if (!b.stay) return b;
        const day = view.plan!.day.map((p) => ({
          ...p,
          ...(p.task === 'bed-chair' || p.task === 'toilet' ? asks : alone),
          ...(p.task === 'in-bed' ? { people: 'three-or-more' as const } : {}),
        }));
        const stay: StayView = { ...view, plan: { ...view.plan!, day } };
        return { ...b, stay };
      }),
    };
    const { needLift, twoPeople } = huddleOf(rows, hours(2), calendar);
    expect(needLift).toMatchObject([
      { bed: 'bed-1', label: '1', words: 'sling lift for bed to chair, toilet', because: [] },
    ]);
    expect(words(twoPeople)).toEqual([
      'two people for bed to chair, toilet; three people or more for turn or move up in bed',
    ]);
  });
  it('is nobody without a plan', () => {
    expect(huddle(3, { 'bed-1': [fenced] })).toMatchObject({ needLift: [], twoPeople: [] });
  });
});

describe('the totals', () => {
  it('count sessions, refusals, goals met and who has nothing recorded', () => {
    const goal: Told = {
      type: 'goal-set',
      at: 13.5,
      payload: { goal: { activity: 'walk', timesUp: 1 } },
    };
    const { totals } = huddle(20, {
      'bed-1': [check('walk', 1), goal, session(15), session(16)],
      'bed-2': [check('edge', 1), notDone(15, 'said-no'), notDone(16, 'said-no'), notDone(17, 'no-people')],
      'bed-3': [comfort],
      'bed-4': [goal, trigger('board-wrong', 15), trigger('board-wrong', 13)],
    });
    expect(totals).toEqual({
      occupied: 4,
      away: 0,
      empty: 0,
      // Nobody asks for a check under a comfort plan.
      notKnown: 1,
      sessionsDone: 2,
      sessionsNotDone: 3,
      notRecorded: 1,
      goalsMet: 1,
      // Since the ward day began, 14 h after the start.
      boardWrong: 1,
    });
  });
  it('count the goals that are met, not those that are not', () => {
    const twice: Told = { type: 'goal-set', at: 13.5, payload: { goal: { activity: 'walk', timesUp: 2 } } };
    const walked = [check('walk', 1), twice, session(15), session(16)];
    const once = [check('walk', 1), twice, session(15)];
    const { totals } = huddle(20, { 'bed-1': walked, 'bed-2': walked, 'bed-3': once });
    expect(totals.goalsMet).toBe(2);
  });
  it('lists under the checks to do why each is due and what trust says', () => {
    const bed = order(2, { about: 'activity', most: 'bed' });
    const { overdue } = huddle(14, { 'bed-1': [check('edge', 1), bed] });
    expect(overdue[0]!.because.length).toBeGreaterThan(2);
    expect(overdue[0]!.because[0]!.words).toBe(overdue[0]!.words);
  });
});

describe('who has it in hand', () => {
  it('is the nurse named for the bed; of a hold, its owner', () => {
    const board = boardAt(3, { 'bed-1': [hold(1, 'out-of-bed', 6), trigger('sedation', 2)] });
    const carers = { nurse: 'nan' as StaffId, aide: null };
    const named = { ...board, beds: board.beds.map((bed) => ({ ...bed, carers })) };
    const { overdue, holds } = huddleOf(named, hours(3), calendar);
    expect(overdue).toMatchObject([{ stay: 'stay-bed-1', owner: 'nan' }]);
    expect(holds).toMatchObject([{ stay: 'stay-bed-1', owner: 'staff-nurse' }]);
    expect(huddleOf(board, hours(3), calendar).overdue).toMatchObject([{ owner: null }]);
  });
});

describe('holds of today', () => {
  it('are those whose review comes before the ward day is over, or has passed', () => {
    // The ward day of 24 Oct ends at 07:00 on the 25th, 14 h after START on the night the clocks go back.
    const holdsToday = (reviewAt: number) =>
      words(huddle(3, { 'bed-1': [hold(1, 'out-of-bed', reviewAt)] }).holdsToday);
    expect(holdsToday(2)).toEqual([expect.stringContaining('HOLD REVIEW DUE since')]);
    expect(holdsToday(13.9)).toHaveLength(1);
    expect(holdsToday(14)).toEqual([]);
  });
});

describe('who leaves and is short of the goal', () => {
  const leaves = (at: number): Told => ({
    type: 'leaving-expected',
    at: 1,
    payload: { at: toIso(hours(at)) },
  });
  it('within 48 h is said with what was done, the soonest first; who is not short is counted', () => {
    const page = huddle(3, {
      'bed-1': [check('walk', 1), leaves(47)],
      'bed-2': [check('walk', 1), leaves(20)],
      'bed-3': [check('walk', 1), leaves(20), session(2)],
      'bed-4': [check('walk', 1), leaves(60)],
    });
    expect(words(page.leavingShort)).toEqual([
      'Leaves 25 Oct 13:00: nothing recorded today',
      'Leaves 26 Oct 16:00: nothing recorded today',
    ]);
    expect(page.leavingOthers).toBe(1);
    expect(page.leavingShort[0]!.because.flatMap((b) => b.facts)).not.toEqual([]);
  });
});
