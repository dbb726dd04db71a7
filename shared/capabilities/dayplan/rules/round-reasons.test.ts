/** What each reason says on the round, how much it counts and until when. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { HOUR, MINUTE, toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  session,
  stayOf,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import type { StayView } from '../../board/view.ts';
import { roundOf } from './round.ts';
import { at, boardOf, known, MORNING, rowOf } from './round.testkit.ts';

/** Noon on the ward's clock, nine hours before the night. */
const T = at(4);
const listed = (stay: StayView, t = T) =>
  roundOf({ board: boardOf(stay), t, calendar, asker: null, on: null }).entries[0]!;
/** The reason of that kind of whoever is on the list; undefined where it is not told. */
const reasonOf = (rule: string, stay: StayView, t = T) =>
  listed(stay, t).reasons.find((r) => r.rule === `round/${rule}`);
const walked = (h: number, more: Record<string, unknown> = {}): Told => ({
  ...session(MORNING + h, more),
  id: `walked-${h}`,
});
const only = (t: number, ...told: readonly Told[]): StayView =>
  evaluateStay(stayOf(known[0]!, ...told), ward, calendar, t).view;

describe('not up for long', () => {
  it('given up at 08:00, then four waking hours count ten points and eight count forty', () => {
    expect(reasonOf('awake', rowOf(T, walked(0)))).toEqual({
      rule: 'round/awake',
      facts: ['walked-0'],
      words: 'Not up for 4 h awake',
      points: 10,
      at: at(0),
      until: null,
    });
    expect(reasonOf('awake', rowOf(at(8), walked(0)), at(8))!.points).toBe(40);
  });
  it('given last up the evening before, then the night is not counted as awake', () => {
    // Up at 19:00, night from 21:00 to 07:00, checked in bed at 07:30, now noon.
    const evening = only(T, session(1), check('upright', MORNING - 0.5));
    expect(reasonOf('awake', evening)).toMatchObject({ words: 'Not up for 7 h awake', points: 30.6 });
  });
  it('given no time up recorded, then it counts from the arrival and says so', () => {
    const t = hours(2);
    expect(reasonOf('awake', only(t, check('upright', 1)), t)).toEqual({
      rule: 'round/awake',
      facts: [],
      words: 'No time up recorded since arrival, 2 h awake',
      points: 2.5,
      at: hours(0),
      until: null,
    });
  });
});

describe('overdue in the chair', () => {
  const inChair = (t: number) =>
    rowOf(t, walked(1, { activities: ['chair'], left: 'chair', backToBedBy: toIso(at(2.5)) }));
  it('given back in bed was due, then help back to bed counts most, with since when and by when', () => {
    expect(listed(inChair(T)).reasons[0]).toEqual({
      rule: 'round/back-to-bed',
      facts: ['walked-1'],
      words: 'In the chair since 09:00, was to be back in bed by 10:30',
      points: 40,
      at: at(1),
      until: null,
    });
  });
  it('given the very minute that was said, then it is told', () => {
    expect(reasonOf('back-to-bed', inChair(at(2.5)), at(2.5))!.points).toBe(40);
  });
  it('given up into the chair not long ago, then nothing is said of a rest: the chair is no rest', () => {
    expect(reasonOf('rest', inChair(at(2.75)), at(2.75))).toBeUndefined();
  });
  it('given nobody in a chair, then nothing is said of one', () => {
    expect(reasonOf('back-to-bed', rowOf(T))).toBeUndefined();
  });
});

describe("what today's goal still asks for", () => {
  const goal = (timesUp: number): Told => ({
    type: 'goal-set',
    at: MORNING - 0.5,
    payload: { goal: { activity: 'walk', timesUp } },
  });
  it('given two times up asked for and nothing recorded, then both are missing until the night', () => {
    expect(reasonOf('goal', rowOf(T, goal(2)))).toEqual({
      rule: 'round/goal',
      facts: [],
      words: 'Nothing recorded today, 2 asked for, night 21:00',
      points: 4.4,
      at: null,
      until: null,
    });
  });
  it('given one of two done, then one is missing and counts half', () => {
    expect(reasonOf('goal', rowOf(T, goal(2), walked(1)))).toMatchObject({
      words: '1 of 2 today, night 21:00',
      points: 2.2,
    });
  });
  it('given the goal is met, then it is no reason to go', () => {
    expect(reasonOf('goal', rowOf(T, goal(1), walked(1)))).toBeUndefined();
  });
  it('given no goal, then that is told and counts nothing', () => {
    const row = rowOf(T);
    expect(reasonOf('goal', { ...row, today: { ...row.today, goal: null } })).toMatchObject({
      words: 'No goal for today',
      points: 0,
    });
  });
});

describe('leaving soon', () => {
  const leavingIn = (ms: number) =>
    reasonOf(
      'leaving',
      rowOf(T, {
        type: 'leaving-expected',
        at: MORNING,
        id: 'leaves',
        payload: { at: toIso(T + ms) },
      }),
    );
  it('given leaving in just 48 h, then it counts, with the entry that says so', () => {
    expect(leavingIn(48 * HOUR)).toEqual({
      rule: 'round/leaving',
      facts: ['leaves'],
      words: 'Leaving 12:00',
      points: 15,
      at: T + 48 * HOUR,
      until: null,
    });
  });
  it('given leaving any later, then it is no reason yet', () => {
    expect(leavingIn(48 * HOUR + MINUTE)).toBeUndefined();
  });
});

describe('not up on the ward day before', () => {
  const missed = (recorded: boolean, timesUp: number, isolation = false) => {
    const row = rowOf(T);
    const lately = { ...row.lately!, yesterday: { recorded, timesUp } };
    return reasonOf('missed', { ...row, lately, isolation });
  };
  it('given sessions but no time up, then it counts as a day missed', () => {
    expect(missed(true, 0)).toEqual({
      rule: 'round/missed',
      facts: [],
      words: 'Not up yesterday',
      points: 15,
      at: null,
      until: null,
    });
  });
  it('given nothing recorded, then it counts as much and is not called a day without', () => {
    expect(missed(false, 0)).toMatchObject({ words: 'No time up recorded yesterday', points: 15 });
  });
  it('given isolation, then it counts for more', () => {
    expect(missed(true, 0, true)).toMatchObject({ words: 'Not up yesterday, in isolation', points: 25 });
  });
  it('given a time up, then it is no reason', () => {
    expect(missed(true, 1)).toBeUndefined();
  });
});

describe('reasons to wait', () => {
  const ate = (ago: number) => {
    const row = rowOf(T);
    return reasonOf('ate', {
      ...row,
      lately: { ...row.lately!, meal: { at: T - ago, event: 'meal' as never } },
    });
  };
  it('given a meal half an hour ago, then they wait until an hour after it', () => {
    expect(ate(30 * MINUTE)).toEqual({
      rule: 'round/ate',
      facts: ['meal'],
      words: 'Ate 11:30',
      points: -10,
      at: at(3.5),
      until: at(4.5),
    });
  });
  it('given a meal a whole hour ago, then it is no reason to wait', () => {
    expect(ate(HOUR)).toBeUndefined();
    expect(ate(HOUR - 1)).toBeDefined();
  });
  it('given last up an hour and a half ago, then they rest until two hours after it', () => {
    expect(reasonOf('rest', rowOf(T, walked(2.5)))).toEqual({
      rule: 'round/rest',
      facts: ['walked-2.5'],
      words: 'Last up 10:30, not long ago',
      points: -10,
      at: at(2.5),
      until: at(4.5),
    });
  });
  it('given last up two whole hours ago, then nothing is said of a rest', () => {
    expect(reasonOf('rest', rowOf(T, walked(2)))).toBeUndefined();
  });
  it('given no time up recorded, then there is nothing to rest from', () => {
    const t = hours(2);
    expect(reasonOf('rest', only(t, check('upright', 1)), t)).toBeUndefined();
  });
});

it('given several reasons, then the strongest is told first and a reason to wait last', () => {
  const row = rowOf(T, walked(2.5));
  const lately = {
    ...row.lately!,
    meal: { at: T - MINUTE, event: 'meal' as never },
    yesterday: { recorded: true, timesUp: 0 },
  };
  const leaving = { at: T + HOUR, event: 'leaves' as never };
  const goal = { activity: 'walk' as const, timesUp: 9 };
  const today = { ...row.today, goal };
  const told = listed({ ...row, lately, leaving, today }).reasons.map(({ rule, points }) => [rule, points]);
  expect(told).toEqual([
    ['round/goal', 17.8],
    ['round/leaving', 15],
    ['round/missed', 15],
    ['round/awake', 1.4],
    ['round/ate', -10],
    ['round/rest', -10],
  ]);
});
