/**
 * The day's goal: design, goals row. Three times a day: J Hosp Med 2019;14:272 and BMJ Open Qual
 * 2025;14:e003084; spells of 20 min: JAMA Intern Med 2019; about 900 steps (500 m) a day: dose studies
 * in older in-patients. All as restated in the users' research, section 4a; the rest is ours.
 */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hold,
  hours,
  notDone,
  order,
  session,
  stayOf,
  trigger,
  ward,
  type StageId,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { goalToday, type GoalInput } from './goals.ts';

/** START is 18:00 on 24 October; the next ward day, the first whole one, begins 14 h later. */
const view = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(h)).view;
const today = (...told: readonly Told[]) => view(16, ...told).today;
const goalOf = (...told: readonly Told[]) => today(...told).goal;
const set = (at: number, activity: string, extra: object = {}, more: Partial<Told> = {}): Told => ({
  type: 'goal-set',
  at,
  payload: { goal: { activity, timesUp: 2, ...extra } },
  ...more,
});
const usual = (moves: string, transfers = 'alone', extra: object = {}): Told => ({
  type: 'usual-way-recorded',
  at: 0.5,
  payload: { usual: { moves, transfers, stairs: 'no' }, ...extra },
});
const reasons = (of: { because: readonly { rule: string; words: string }[] }) =>
  Object.fromEntries(of.because.map((b) => [b.rule, b.words]));

describe('a proposed goal, stage by stage (design, goals row)', () => {
  it.each([
    [
      'clear',
      'back-raised',
      '3 spells with the back raised as high as tolerated, building up to 20 min; or a chair by lift if a nurse sets it',
    ],
    ['upright', 'back-raised', '3 upright spells of 20 min'],
    ['edge', 'edge-sit', '3 spells at the edge of the bed, or in a chair by lift'],
    ['stand', 'stand', '3 stands with the help of the plan, meals out of bed'],
    ['turn', 'chair', '3 stand-and-turn transfers to the chair, all meals out of bed'],
    ['walk', 'walk', '3 times walk'],
  ] as const)('after a check that cleared up to %s asks for: %s', (last, activity, words) => {
    const now = today(check(last as StageId, 1));
    expect(now).toMatchObject({ goal: { activity, timesUp: 3 }, goalProposed: true });
    expect(reasons(now)['goal/proposed']).toBe(`Proposed from what is cleared: ${words}`);
    const inAChair = ['edge-sit', 'stand', 'chair'].includes(activity);
    expect(reasons(now)['goal/chair-spell']).toBe(
      inAChair ? 'Each chair spell: back to bed after 1 h at the latest' : undefined,
    );
  });
  it('is none before the first check, and names the arrival', () => {
    const now = today();
    expect(now).toMatchObject({ goal: null, met: null });
    expect(now.because[0]).toMatchObject({ rule: 'goal/not-known', facts: ['e00001'] });
  });
  it('asks for no chair by lift, and no meals out of bed, where a hold or an order stops that', () => {
    const inBed = order(0.5, { about: 'activity', most: 'bed' });
    expect(reasons(today(inBed, check('clear', 1)))['goal/proposed']).not.toContain('lift');
    const onEdge = order(0.5, { about: 'activity', most: 'edge-of-bed' });
    expect(reasons(today(onEdge, check('edge', 1)))['goal/proposed']).not.toContain('lift');
  });
  it('asks for the chair by lift only when a nurse or therapist set it', () => {
    expect(goalOf(check('clear', 1), set(1.5, 'lifted-to-chair'))).toEqual({
      activity: 'lifted-to-chair',
      timesUp: 2,
    });
    expect(goalOf(check('clear', 1), set(1.5, 'lifted-to-chair', {}, { role: 'aide' }))).toMatchObject({
      activity: 'back-raised',
    });
  });
});

describe('a proposed goal', () => {
  it('asks no more than the usual way of moving, and says so', () => {
    expect(goalOf(usual('wheelchair'), check('walk', 1))?.activity).toBe('chair');
    expect(goalOf(usual('wheelchair', 'lifted'), check('walk', 1))?.activity).toBe('edge-sit');
    expect(goalOf(usual('walks', 'lifted'), check('walk', 1))?.activity).toBe('edge-sit');
    expect(goalOf(usual('bed'), check('walk', 1))?.activity).toBe('edge-sit');
    for (const moves of ['walks', 'frame']) {
      expect(goalOf(usual(moves), check('walk', 1))?.activity).toBe('walk');
    }
    const capped = today(usual('wheelchair'), check('walk', 1));
    expect(capped.because).toContainEqual({
      rule: 'goal/usual-way',
      facts: ['e00002'],
      words: 'Usual way of moving: at most chair asked',
    });
    expect(reasons(today(usual('walks'), check('walk', 1)))).not.toHaveProperty('goal/usual-way');
  });
  it('says that the usual way was not asked, and that a wish is recorded', () => {
    expect(today(check('walk', 1)).because).toContainEqual({
      rule: 'goal/usual-way-not-known',
      facts: ['e00001'],
      words: 'Usual way of moving not recorded: ask for it, the goal starts from there',
    });
    const wished = today(usual('walks', 'alone', { wish: { ref: 'wish-1' } }), check('walk', 1));
    expect(reasons(wished)).not.toHaveProperty('goal/usual-way-not-known');
    expect(wished.because).toContainEqual({
      rule: 'goal/wish',
      facts: ['e00002'],
      words: 'A wish is recorded: set the goal from it',
    });
    expect(reasons(today(usual('walks'), check('walk', 1)))).not.toHaveProperty('goal/wish');
  });
  it('grows from the longest walk done safely, up to the ceiling (about 900 steps, 500 m a day)', () => {
    const safe = session(1.2, { metres: 30 });
    const unsafe = session(1.4, { metres: 90, events: ['pain'] });
    const part = session(1.5, { metres: 80, outcome: 'part' });
    const inChair = session(1.6, { metres: 70, activities: ['chair'] });
    const now = today(check('walk', 1), safe, unsafe, part, inChair);
    expect(now.goal).toEqual({ activity: 'walk', timesUp: 3, metres: 90 });
    expect(now.because).toContainEqual({
      rule: 'goal/distance',
      facts: ['e00003'],
      words:
        '3 times the longest walk done safely (30 m), at most 500 m (about 900 steps a day, dose studies in older in-patients)',
    });
    expect(goalOf(check('walk', 1), session(1.2, { metres: 166 }))?.metres).toBe(498);
    expect(goalOf(check('walk', 1), session(1.2, { metres: 167 }))?.metres).toBe(500);
    expect(goalOf(check('walk', 1))).toEqual({ activity: 'walk', timesUp: 3 });
    expect(goalOf(check('turn', 1), safe)).toEqual({ activity: 'chair', timesUp: 3 });
  });
  it('GOAL-1 never asks for what a hold, an order or an uncleared stage stops', () => {
    const walking = today(check('walk', 1), hold(1.5, 'walking', 9));
    expect(walking.goal?.activity).toBe('chair');
    expect(walking.because).toContainEqual({
      rule: 'goal/hold',
      facts: ['e00003'],
      words: 'Hold on walking',
    });
    expect(goalOf(check('walk', 1), hold(1.5, 'standing', 9))?.activity).toBe('edge-sit');
    expect(goalOf(check('walk', 1), hold(1.5, 'out-of-bed', 9))?.activity).toBe('back-raised');
    const none = today(check('walk', 1), hold(1.5, 'all-including-turning', 9));
    expect(none).toMatchObject({ goal: null, goalProposed: false, met: null });
    expect(reasons(none)['goal/hold']).toBe('Hold on all including turning');
    const ordered = today(order(0.5, { about: 'activity', most: 'chair' }), check('turn', 1));
    expect(ordered.goal?.activity).toBe('chair');
  });
  it('gives the reason of each cap, with all that it stops', () => {
    const now = today(check('edge', 1));
    expect(reasons(now)['goal/not-cleared']).toBe('Not cleared now: walk, chair, stand');
    const two = today(check('stand', 1), hold(1.5, 'standing', 9));
    expect(reasons(two)).toMatchObject({
      'goal/not-cleared': 'Not cleared now: walk, chair',
      'goal/hold': 'Hold on standing',
    });
  });
});

describe('what caps a goal, one by one', () => {
  const walks = new Set(['clear', 'upright', 'edge', 'stand', 'turn', 'walk']);
  const input = (over: Partial<GoalInput> = {}): GoalInput => ({
    cleared: walks,
    tierFact: null,
    holds: [],
    plan: [],
    activityOrder: null,
    usualWay: null,
    wish: null,
    longestWalk: null,
    set: null,
    share: 1,
    arrival: null,
    rules: DEFAULT_RULES,
    ...over,
  });
  it.each([
    ['bed', 'back-raised'],
    ['edge-of-bed', 'edge-sit'],
    ['chair', 'chair'],
    ['stand', 'chair'],
    ['walk', 'walk'],
    ['no-limit', 'walk'],
  ] as const)('an order for activity up to %s leaves: %s', (most, activity) => {
    const activityOrder = { value: most, fact: 'o' as never, at: 0 };
    const now = goalToday(input({ activityOrder }));
    expect(now.goal?.activity).toBe(activity);
    expect(now.because.find((b) => b.rule === 'goal/order')?.words).toBe(
      activity === 'walk' ? undefined : `Order: activity up to ${most.replaceAll('-', ' ')}`,
    );
  });
  it.each([
    ['walk', 'chair'],
    ['stand', 'walk'],
    ['bed-chair', 'walk'],
    ['edge-of-bed', 'walk'],
  ] as const)('a plan that holds the task %s leaves: %s', (task, activity) => {
    const because = [{ rule: 'x', facts: ['f' as never], words: 'x' }];
    const plan = [
      { task, hold: true, because },
      { task: 'lateral', hold: true, because: [] },
    ] as unknown as GoalInput['plan'];
    const now = goalToday(input({ plan }));
    expect(now.goal?.activity).toBe(activity);
    const told = {
      rule: 'goal/task-held',
      facts: ['f'],
      words: `The plan holds: ${task.replaceAll('-', ' ')}`,
    };
    expect(now.because.filter((b) => b.rule === 'goal/task-held')).toEqual(activity === 'walk' ? [] : [told]);
  });
});

describe('a goal and the plan', () => {
  it('asks for nothing that the plan holds until a nurse has looked, and says so', () => {
    const now = today(check('walk', 1), trigger('fall', 2));
    expect(now.goal?.activity).toBe('back-raised');
    expect(now.because.map((b) => b.rule)).toContain('goal/task-held');
  });
});

describe('a goal that was set', () => {
  it('stands as set', () => {
    const now = today(check('walk', 1), set(1.5, 'chair', { minutesOutOfBed: 90 }));
    expect(now).toMatchObject({
      goal: { activity: 'chair', timesUp: 2, minutesOutOfBed: 90 },
      goalProposed: false,
    });
    expect(now.because[0]).toEqual({
      rule: 'goal/set',
      facts: ['e00003'],
      words: 'Set by a nurse or therapist',
    });
  });
  it('stands although the usual way of moving would have asked for less', () => {
    expect(goalOf(usual('wheelchair'), check('walk', 1), set(1.5, 'walk'))?.activity).toBe('walk');
  });
  it('is the last one that a qualified person set', () => {
    const told = [check('walk', 1), set(1.5, 'chair'), set(2, 'walk', {}, { role: 'aide' })];
    expect(goalOf(...told)).toEqual({ activity: 'chair', timesUp: 2 });
    expect(goalOf(...told, set(3, 'walk', {}, { role: 'therapist' }))?.activity).toBe('walk');
  });
  it('gives way to the proposal when its stage is no longer cleared, and says why', () => {
    const now = today(
      check('walk', 1),
      set(1.5, 'walk', { metres: 100 }),
      check('turn', 3, { turn: { outcome: 'not-met' } }),
    );
    expect(now).toMatchObject({ goal: { activity: 'stand', timesUp: 2 }, goalProposed: true });
    expect(now.goal).not.toHaveProperty('metres');
    expect(now.because[0]).toEqual({
      rule: 'goal/capped',
      facts: ['e00003', 'e00004'],
      words: 'The goal that was set asks for walk: Not cleared now: walk',
    });
  });
  it('gives way to no more than was set', () => {
    // The chair by lift is held out of bed; what is left is in bed, not the edge that is cleared.
    const onEdge = order(2, { about: 'activity', most: 'edge-of-bed' });
    expect(goalOf(check('walk', 1), set(1.5, 'lifted-to-chair'), onEdge)).toEqual({
      activity: 'back-raised',
      timesUp: 2,
    });
    const many = goalOf(check('walk', 1), set(1.5, 'walk', { timesUp: 6 }), hold(2, 'walking', 9));
    expect(many).toEqual({ activity: 'chair', timesUp: 3 });
  });
});

describe('today', () => {
  const walks = check('walk', 1);
  it('GAP-1 not recorded is a gap, not a zero', () => {
    const now = today(walks);
    expect(now).toMatchObject({ recorded: false, minutesOutOfBed: null, metres: null, met: null });
    expect(now.because.at(-1)?.rule).toBe('today/not-recorded');
  });
  it('not done is not "not recorded": it was offered, and the goal is not met', () => {
    const now = today(walks, notDone(15, 'said-no'));
    expect(now).toMatchObject({ recorded: true, timesUp: 0, met: false, notDone: { 'said-no': 1 } });
    expect(now.because.map((b) => b.rule)).not.toContain('today/not-recorded');
  });
  it('counts what was done and, apart, what was offered and not done, by group', () => {
    const now = today(
      walks,
      session(14.2, { metres: 20, minutesOutOfBed: 10 }),
      session(14.4, { activities: ['bed-exercise'] }),
      session(14.5, { activities: ['back-raised'] }),
      notDone(14.6, 'said-no'),
      notDone(14.8, 'said-no'),
      notDone(15, 'no-kit'),
    );
    expect(now).toMatchObject({
      recorded: true,
      timesUp: 1,
      metres: 20,
      minutesOutOfBed: 10,
      notDone: { 'said-no': 2, 'no-kit': 1 },
    });
  });
  it('credits the toilet, the wash and the meal as times up when the person was up for them', () => {
    const care = [
      session(14.1, { occasion: 'toilet', activities: ['toilet'] }),
      session(14.3, { occasion: 'wash', activities: ['edge-sit'] }),
      session(14.5, { occasion: 'meal', activities: ['lifted-to-chair'], outcome: 'part' }),
    ];
    expect(today(walks, ...care)).toMatchObject({ timesUp: 3, met: true });
    const inBed = ['toilet', 'wash', 'meal'].map((occasion, i) =>
      session(14.1 + i / 5, { occasion, activities: ['back-raised'] }),
    );
    expect(today(walks, ...inBed)).toMatchObject({ timesUp: 0, met: false });
  });
  it('counts spells with the back raised only where the goal asks for them', () => {
    const spells = [14.2, 14.6, 15].map((at) => session(at, { activities: ['back-raised'] }));
    expect(today(check('upright', 1), ...spells)).toMatchObject({ timesUp: 3, met: true });
    const other = session(15.2, { activities: ['bed-exercise'] });
    expect(today(check('upright', 1), ...spells.slice(1), other)).toMatchObject({ timesUp: 2, met: false });
  });
  it('begins anew when the ward day turns', () => {
    const told = [walks, session(1.2)];
    expect(view(13.9, ...told).today.timesUp).toBe(1);
    expect(view(14, ...told).today).toMatchObject({ recorded: false, timesUp: 0, wardDayFrom: hours(14) });
  });
  it('meets the goal only by what was written down', () => {
    const goal = set(1.1, 'walk', { metres: 40 });
    const met = (...told: readonly Told[]) => today(walks, goal, ...told).met;
    const up = (at: number, metres?: number) => session(at, metres === undefined ? {} : { metres });
    expect(met(up(14.2, 20))).toBe(false);
    expect(met(up(14.2, 20), up(14.4, 20))).toBe(true);
    expect(met(up(14.2, 20), up(14.4, 19.9))).toBe(false);
    expect(met(up(14.2, 20), up(14.4))).toBeNull();
    expect(met(up(14.2), up(14.4))).toBeNull();
    expect(met(up(14.2, 40), up(14.4))).toBe(true);
    const minutes = set(1.1, 'chair', { minutesOutOfBed: 60 });
    const sat = (at: number, minutesOutOfBed?: number) =>
      session(at, { activities: ['chair'], ...(minutesOutOfBed === undefined ? {} : { minutesOutOfBed }) });
    expect(today(walks, minutes, sat(14.2, 30), sat(15, 30)).met).toBe(true);
    expect(today(walks, minutes, sat(14.2, 30), sat(15, 29)).met).toBe(false);
    expect(today(walks, minutes, sat(14.2, 30), sat(15)).met).toBeNull();
  });
});

describe('last up', () => {
  it('is the end of the last session out of bed or at its edge', () => {
    const chair = session(1, { activities: ['chair'], endedAt: new Date(hours(2)).toISOString() });
    const inBed = session(3, { activities: ['bed-exercise'] });
    expect(view(4, chair, inBed, notDone(3.5, 'said-no')).lastUp).toMatchObject({
      at: hours(2),
      activity: 'chair',
    });
  });
  it('is the start of a session that still runs, until it ends', () => {
    const chair = session(1, { activities: ['chair'], endedAt: new Date(hours(2)).toISOString() });
    const running = evaluateStay(stayOf(chair), ward, calendar, hours(1.5));
    expect(running.view.lastUp).toMatchObject({ at: hours(1) });
    expect(running.nextChange).toBe(hours(2));
  });
  it('is a staged check too when it reached the edge of the bed', () => {
    expect(view(2, check('upright', 1)).lastUp).toBeNull();
    expect(view(2, check('edge', 1)).lastUp).toMatchObject({ at: hours(1), activity: 'edge-sit' });
  });
});
