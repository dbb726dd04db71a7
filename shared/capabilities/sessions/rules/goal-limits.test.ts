/** What stops a goal from asking for an activity, and one step up or back: design, goals and progression rows; ours, practice. */
import { describe, expect, it } from 'vitest';
import type { EventId } from '../../../kernel/ids.ts';
import type { Activity, Goal } from '../values.ts';
import { isWithin, mostByUsualWay, reasonsOf, whatStops } from './goal-limits.ts';
import { stepBack, stepUp } from './goal-steps.ts';
import { goalToday, type GoalInput } from './goals.ts';
import { input } from './goals.testkit.ts';

const id = (value: string) => value as EventId;
const holding = (task: string, facts: readonly string[] = ['f']): GoalInput['plan'] =>
  [
    { task: 'lateral', hold: false, because: [] },
    {
      task,
      hold: true,
      because: [
        { rule: 'x', facts, words: 'x' },
        { rule: 'y', facts, words: 'y' },
      ],
    },
  ] as unknown as GoalInput['plan'];

describe('what stops an activity', () => {
  it('is nothing where all is cleared and nothing stands in the way', () => {
    expect(whatStops('walk', input())).toBeNull();
  });
  it('is a stage not cleared, with the check where there was one', () => {
    const cleared = new Set(['clear', 'upright', 'edge']);
    expect(whatStops('chair', input({ cleared, tierFact: id('c') }))).toEqual({
      rule: 'goal/not-cleared',
      facts: ['c'],
      of: 'chair',
    });
    expect(whatStops('back-raised', input({ cleared: null }))).toEqual({
      rule: 'goal/not-cleared',
      facts: [],
      of: 'back raised',
    });
  });
  it('is an order, with its entry', () => {
    const activityOrder = { value: 'edge-of-bed' as const, fact: id('o'), at: 0 };
    expect(whatStops('stand', input({ activityOrder }))).toEqual({
      rule: 'goal/order',
      facts: ['o'],
      of: 'edge of bed',
    });
  });
  it.each<[Activity, string | null]>([
    ['bed-exercise', null],
    ['back-raised', null],
    ['edge-sit', 'edge-of-bed'],
    ['stand', 'stand'],
    ['chair', 'bed-chair'],
    ['lifted-to-chair', 'bed-chair'],
    ['march', 'stand'],
    ['walk', 'walk'],
    ['stairs', 'walk'],
    ['toilet', 'toilet'],
  ])('of %s is the plan that holds the task %s, and no other', (activity, task) => {
    const tasks = ['in-bed', 'edge-of-bed', 'bed-chair', 'toilet', 'stand', 'walk', 'lateral', 'from-floor'];
    const stopped = tasks.filter((held) => whatStops(activity, input({ plan: holding(held) })) !== null);
    expect(stopped).toEqual(task === null ? [] : [task]);
    if (task === null) return;
    expect(whatStops(activity, input({ plan: holding(task, ['f', 'g']) }))).toEqual({
      rule: 'goal/task-held',
      facts: ['f', 'g'],
      of: task.replaceAll('-', ' '),
    });
  });
  it('is told once a reason, with all that it stops and every entry once', () => {
    const stop = (rule: string, fact: string, of: string) => ({ rule, facts: [id(fact)], of });
    expect(
      reasonsOf([
        stop('goal/hold', 'a', 'walking'),
        stop('goal/order', 'o', 'chair'),
        stop('goal/hold', 'b', 'standing'),
        stop('goal/hold', 'a', 'walking'),
        stop('goal/order', 'p', 'stand'),
        stop('goal/task-held', 't', 'walk'),
        stop('goal/task-held', 't', 'toilet'),
        stop('goal/not-cleared', 'c', 'walk'),
        stop('goal/not-cleared', 'c', 'stand'),
      ]),
    ).toEqual([
      { rule: 'goal/hold', facts: ['a', 'b'], words: 'Hold on walking, standing' },
      { rule: 'goal/order', facts: ['o', 'p'], words: 'Order: activity up to chair, stand' },
      { rule: 'goal/task-held', facts: ['t'], words: 'The plan holds: walk, toilet' },
      { rule: 'goal/not-cleared', facts: ['c'], words: 'Not cleared now: walk, stand' },
    ]);
  });
});

describe('the most by the usual way of moving', () => {
  it.each([
    ['walks', 'alone', null],
    ['frame', 'helped', null],
    ['wheelchair', 'helped', 'chair'],
    ['wheelchair', 'lifted', 'edge-sit'],
    ['bed', 'helped', 'edge-sit'],
    ['walks', 'lifted', 'edge-sit'],
  ] as const)('%s, transfers %s: %s', (moves, transfers, most) => {
    expect(mostByUsualWay({ moves, transfers, stairs: 'no' })).toBe(most);
  });
  it('takes in what asks as much, and everything where there is none', () => {
    expect(isWithin('chair', 'chair')).toBe(true);
    expect(isWithin('walk', 'chair')).toBe(false);
    expect(isWithin('stairs', null)).toBe(true);
  });
});

describe('a step', () => {
  const goal = (over: Partial<Goal> = {}): Goal => ({ activity: 'walk', timesUp: 3, ...over });
  const longestWalk = { metres: 30, fact: id('w') };

  it('of distance is for a walk alone, and stands on no entry of its own', () => {
    expect(stepUp(goal({ metres: 100 }), input())).toEqual({
      goal: goal({ metres: 125 }),
      words: 'more distance, 100 m to 125 m a day (at most 500 m)',
      facts: [],
    });
    expect(stepUp(goal({ activity: 'chair', metres: 100 }), input({ longestWalk }))).toEqual({
      goal: goal({ metres: 90 }),
      words: 'walk, 3 times a day',
      facts: ['w'],
    });
    expect(stepUp(goal(), input())).toEqual({
      goal: goal({ timesUp: 4 }),
      words: 'one time more, 4 times a day',
      facts: [],
    });
  });
  it('to another activity keeps the minutes where that one is up, and takes a distance for a walk alone', () => {
    const spells = goal({ activity: 'back-raised', minutesOutOfBed: 30 });
    expect(stepUp(spells, input({ longestWalk }))).toEqual({
      goal: { activity: 'edge-sit', timesUp: 3, minutesOutOfBed: 30 },
      words: 'edge sit, 3 times a day',
      facts: [],
    });
    const { goal: without } = stepUp(goal({ activity: 'back-raised' }), input())!;
    expect(Object.keys(without)).toEqual(['activity', 'timesUp']);
    const down = stepBack(goal({ activity: 'edge-sit', minutesOutOfBed: 30 }), 'event', input());
    expect(down).toEqual({
      goal: { activity: 'back-raised', timesUp: 3 },
      words: 'back raised, 3 times a day',
      facts: [],
    });
    expect(Object.keys(down!.goal)).toEqual(['activity', 'timesUp']);
  });
  it('back after misses is of distance, then of times, then of activity', () => {
    expect(stepBack(goal({ metres: 100 }), 'misses', input())).toEqual({
      goal: goal({ metres: 80 }),
      words: 'less distance, 100 m to 80 m a day',
      facts: [],
    });
    expect(stepBack(goal({ timesUp: 4 }), 'misses', input())).toEqual({
      goal: goal({ timesUp: 3 }),
      words: 'one time less, 3 a day',
      facts: [],
    });
    expect(stepBack(goal(), 'misses', input())?.goal).toEqual({ activity: 'chair', timesUp: 3 });
  });
});

describe('a goal that cannot be said', () => {
  it('is none before the first check, and says so', () => {
    expect(goalToday(input({ cleared: null }))).toEqual({
      goal: null,
      whole: null,
      proposed: false,
      capped: false,
      because: [{ rule: 'goal/not-known', facts: [], words: 'No goal before the first check' }],
    });
    expect(goalToday(input({ cleared: null, arrival: id('a') })).because[0]!.facts).toEqual(['a']);
  });
  it('is none for part of a day either, where nothing may be asked', () => {
    const held = [{ scope: 'all-including-turning', event: id('h') }] as unknown as GoalInput['holds'];
    const none = goalToday(input({ holds: held, share: 0.5 }));
    expect(none).toMatchObject({ goal: null, whole: null });
    expect(none.because.map((b) => b.rule)).toEqual(['goal/hold']);
  });
  it('stands on the check where there was one, and on the arrival where that is known', () => {
    const facts = (over: Partial<GoalInput>) =>
      Object.fromEntries(goalToday(input({ share: 0.5, ...over })).because.map((b) => [b.rule, b.facts]));
    expect(facts({ tierFact: id('c'), arrival: id('a') })).toEqual({
      'goal/proposed': ['c'],
      'goal/usual-way-not-known': ['a'],
      'goal/part-of-day': ['a'],
    });
    expect(facts({})).toEqual({
      'goal/proposed': [],
      'goal/usual-way-not-known': [],
      'goal/part-of-day': [],
    });
  });
  it('that was set and may not be asked says what it asked for, in plain words', () => {
    const set = {
      id: id('s'),
      data: { goal: { activity: 'edge-sit', timesUp: 2 } },
    } as unknown as GoalInput['set'];
    expect(goalToday(input({ set, cleared: new Set(['upright']) })).because[0]).toEqual({
      rule: 'goal/capped',
      facts: ['s'],
      words: 'The goal that was set asks for edge sit: Not cleared now: edge sit',
    });
  });
  it('of a bed with the back raised promises no lift where a hold stops it', () => {
    const words = (over: Partial<GoalInput>) =>
      goalToday(input(over)).because.find((b) => b.rule === 'goal/proposed')!.words;
    const held = [{ scope: 'out-of-bed', event: id('h') }] as unknown as GoalInput['holds'];
    const lying = new Set(['clear']);
    expect(words({ cleared: lying })).toMatch(/; or a chair by lift if a nurse sets it$/);
    expect(words({ cleared: lying, holds: held })).toMatch(/building up to \d+ min$/);
    // A plan that holds the chair stops the lift into it as well.
    const plan = holding('bed-chair');
    expect(words({ cleared: new Set(['edge']), plan })).toMatch(/spells at the edge of the bed$/);
    expect(words({ cleared: new Set(['edge']) })).toMatch(/edge of the bed, or in a chair by lift$/);
    expect(words({ cleared: new Set(['edge', 'stand']), plan })).toMatch(/with the help of the plan$/);
  });
});
