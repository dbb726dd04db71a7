/** The goal that a nurse or therapist set, and when it gives way: design, goals row; ours, practice. */
import { describe, expect, it } from 'vitest';
import { check, hold, order } from '../../board/rules/history.testkit.ts';
import { goalOf, set, today, usual } from './goals.testkit.ts';

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
