/** The day's goal: design, goals row (the doses behind it in users-job.md 4a; the rest ours). */
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

const view = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(h)).view;
const set = (at: number, activity: string, extra: object = {}): Told => ({
  type: 'goal-set',
  at,
  payload: { goal: { activity, timesUp: 2, ...extra } },
});
const up = (at: number, metres?: number) => session(at, metres === undefined ? {} : { metres });
const usual = (moves: string, transfers = 'alone'): Told => ({
  type: 'usual-way-recorded',
  at: 0.5,
  payload: { usual: { moves, transfers, stairs: 'no' } },
});

describe('a proposed goal', () => {
  it.each([
    ['clear', 'back-raised'],
    ['upright', 'back-raised'],
    ['edge', 'edge-sit'],
    ['stand', 'stand'],
    ['turn', 'chair'],
    ['walk', 'walk'],
  ] as const)('after a check that cleared up to %s asks for: %s', (last, activity) => {
    const { today } = view(2, check(last as StageId, 1));
    expect(today).toMatchObject({ goal: { activity, timesUp: 3 }, goalProposed: true });
    expect(today.because.map((b) => b.rule)).toContain('goal/proposed');
  });
  it('asks no more than the usual way of moving', () => {
    expect(view(2, usual('wheelchair'), check('walk', 1)).today.goal?.activity).toBe('chair');
    expect(view(2, usual('wheelchair', 'lifted'), check('walk', 1)).today.goal?.activity).toBe('edge-sit');
    expect(view(2, usual('walks'), check('walk', 1)).today.goal?.activity).toBe('walk');
  });
  it('grows from the longest walk done safely, up to the ceiling', () => {
    const safe = session(1.2, { metres: 30 });
    const unsafe = session(1.4, { metres: 90, events: ['pain'] });
    expect(view(2, check('walk', 1), safe, unsafe).today.goal).toEqual({
      activity: 'walk',
      timesUp: 3,
      metres: 90,
    });
    expect(view(2, check('walk', 1), session(1.2, { metres: 400 })).today.goal?.metres).toBe(500);
    expect(view(2, check('walk', 1)).today.goal).toEqual({ activity: 'walk', timesUp: 3 });
  });
  it('GOAL-1 never asks for what a hold or an order stops', () => {
    expect(view(2, check('walk', 1), hold(1.5, 'walking', 9)).today.goal?.activity).toBe('chair');
    expect(view(2, check('walk', 1), hold(1.5, 'out-of-bed', 9)).today.goal?.activity).toBe('back-raised');
    expect(view(2, check('walk', 1), hold(1.5, 'all-including-turning', 9)).today.goal).toBeNull();
    expect(
      view(2, order(0.5, { about: 'activity', most: 'chair' }), check('turn', 1)).today.goal?.activity,
    ).toBe('chair');
  });
});

describe('a goal and the plan', () => {
  it('asks for nothing that the plan holds until a nurse has looked, and says so', () => {
    const { today } = view(3, check('walk', 1), trigger('fall', 2));
    expect(today.goal?.activity).toBe('back-raised');
    expect(today.because.map((b) => b.rule)).toContain('goal/task-held');
  });
});

describe('a goal that was set', () => {
  it('stands as set', () => {
    expect(view(2, check('walk', 1), set(1.5, 'chair')).today).toMatchObject({
      goal: { activity: 'chair', timesUp: 2 },
      goalProposed: false,
    });
  });
  it('gives way to the proposal when its stage is no longer cleared, and says why', () => {
    const { today } = view(
      4,
      check('walk', 1),
      set(1.5, 'walk'),
      check('turn', 3, { turn: { outcome: 'not-met' } }),
    );
    expect(today).toMatchObject({ goal: { activity: 'stand' }, goalProposed: true });
    expect(today.because[0]).toMatchObject({ rule: 'goal/capped' });
  });
});

describe('today', () => {
  const walks = check('walk', 1);
  it('GAP-1 not recorded is a gap, not a zero', () => {
    expect(view(2, walks).today).toMatchObject({
      recorded: false,
      minutesOutOfBed: null,
      metres: null,
      met: null,
    });
  });
  it('counts what was done and, apart, what was offered and not done, by group', () => {
    const { today } = view(
      3,
      walks,
      session(1.2, { metres: 20 }),
      session(1.4, { activities: ['bed-exercise'] }),
      notDone(1.6, 'said-no'),
      notDone(1.8, 'said-no'),
      notDone(2, 'no-kit'),
    );
    expect(today).toMatchObject({
      recorded: true,
      timesUp: 1,
      metres: 20,
      minutesOutOfBed: null,
      notDone: { 'said-no': 2, 'no-kit': 1 },
    });
  });
  it('begins anew when the ward day turns', () => {
    // START is 18:00 on the ward's clock; the ward day turns 14 h later, an hour having been repeated.
    const told = [walks, session(1.2)];
    expect(view(13.9, ...told).today.timesUp).toBe(1);
    expect(view(14, ...told).today).toMatchObject({ recorded: false, timesUp: 0, wardDayFrom: hours(14) });
  });
  it('meets the goal only by what was written down', () => {
    const goal = set(1.1, 'walk', { metres: 40 });
    expect(view(3, walks, goal, up(1.2, 20)).today.met).toBe(false);
    expect(view(3, walks, goal, up(1.2, 20), up(1.4, 20)).today.met).toBe(true);
    expect(view(3, walks, goal, up(1.2, 20), up(1.4)).today.met).toBeNull();
    expect(view(3, walks, goal, up(1.2, 10), up(1.4, 20)).today.met).toBe(false);
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
