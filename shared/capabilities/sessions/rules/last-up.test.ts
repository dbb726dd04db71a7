/** When somebody was last up. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hours, notDone, session, stayOf, ward } from '../../board/rules/history.testkit.ts';
import { view } from './goals.testkit.ts';

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
