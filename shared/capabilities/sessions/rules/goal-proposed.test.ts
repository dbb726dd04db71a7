/**
 * The goal that is proposed for the day: design, goals row. Three times a day: J Hosp Med 2019;14:272 and BMJ Open
 * Qual 2025;14:e003084; spells of 20 min: JAMA Intern Med 2019; about 900 steps (500 m) a day: dose studies
 * in older in-patients. All as restated in the users' research, section 4a; the rest is ours.
 */
import { describe, expect, it } from 'vitest';
import { check, hold, order, session, trigger, type StageId } from '../../board/rules/history.testkit.ts';
import { goalOf, input, set, today, usual, view } from './goals.testkit.ts';
import { goalToday } from './goals.ts';

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
    // Against a check that went further than the limit lets one go, and against holds of either kind.
    for (const told of [
      [order(0.5, { about: 'activity', most: 'stand' }), check('stand', 1)],
      [check('stand', 1)],
    ]) {
      expect(reasons(today(...told))['goal/proposed']).toContain('meals out of bed');
    }
    for (const stop of [inBed, onEdge, hold(1.5, 'out-of-bed', 9)]) {
      for (const last of ['clear', 'edge', 'stand', 'turn', 'walk'] as const) {
        const words = reasons(today(stop, check(last, 1)))['goal/proposed'];
        expect(words).toMatch(/^Proposed from what is cleared: 3 /);
        expect(words).not.toMatch(/lift|chair|meals/);
      }
    }
  });
  it('asks to stand without meals out of bed where the plan holds the way to the chair', () => {
    const stands = { cleared: new Set(['clear', 'upright', 'edge', 'stand']) };
    const held = view(16, check('stand', 1)).plan!.day.map((p) => ({ ...p, hold: p.task === 'bed-chair' }));
    const asked = (over: object) => goalToday(input({ ...stands, ...over })).because[0]!.words;
    expect(asked({})).toMatch(/: 3 stands with the help of the plan, meals out of bed$/);
    expect(asked({ plan: held })).toMatch(/: 3 stands with the help of the plan$/);
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

describe('a goal and the plan', () => {
  it('asks for nothing that the plan holds until a nurse has looked, and says so', () => {
    const now = today(check('walk', 1), trigger('fall', 2));
    expect(now.goal?.activity).toBe('back-raised');
    expect(now.because.map((b) => b.rule)).toContain('goal/task-held');
  });
});
