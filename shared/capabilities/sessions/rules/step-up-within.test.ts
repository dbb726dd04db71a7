/** How far a step of the goal goes up: never above what is cleared, ordered and free of holds. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hold,
  hours,
  stayOf,
  trigger,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { did, usual } from '../../board/rules/signs.testkit.ts';
import { chair, proposal, set, step, twice, view, walks } from './progression.testkit.ts';

describe('PROGRESS-3 a step up is never above what is cleared, ordered and free of holds', () => {
  it('goes to the next activity only when its stage is cleared; else to one time more', () => {
    expect(step(check('turn', 14.05), chair, ...twice('chair'))).toEqual([
      'up',
      { activity: 'chair', timesUp: 4 },
    ]);
    expect(step(walks, hold(2, 'walking', 9), chair, ...twice('chair'))).toEqual([
      'up',
      { activity: 'chair', timesUp: 4 },
    ]);
    expect(step(usual('wheelchair'), walks, chair, ...twice('chair'))?.[1]).toMatchObject({
      activity: 'chair',
      timesUp: 4,
    });
    expect(step(usual('frame'), walks, chair, ...twice('chair'))?.[1]).toMatchObject({ activity: 'walk' });
  });
  it('goes one activity at a time', () => {
    expect(step(walks, set({ activity: 'back-raised' }), ...twice('edge-sit'))?.[1]).toMatchObject({
      activity: 'edge-sit',
    });
    expect(step(walks, set({ activity: 'lifted-to-chair' }), ...twice('lifted-to-chair'))?.[1]).toMatchObject(
      {
        activity: 'edge-sit',
      },
    );
    expect(step(walks, set({ activity: 'edge-sit' }), ...twice('edge-sit'))?.[1]).toMatchObject({
      activity: 'stand',
    });
    expect(step(walks, set({ activity: 'stand' }), ...twice('stand'))?.[1]).toMatchObject({
      activity: 'chair',
    });
    expect(step(walks, set({ activity: 'march' }), ...twice('march'))?.[1]).toMatchObject({
      activity: 'walk',
    });
  });
  it("never proposes the stairs, and ends at the ward's most times a day", () => {
    const stairs = set({ activity: 'stairs', timesUp: 3 });
    expect(step(walks, stairs, ...twice('stairs'))).toEqual(['up', { activity: 'stairs', timesUp: 4 }]);
    const most = set({ activity: 'walk', timesUp: 4 });
    expect(step(walks, most, ...twice('walk'))).toBeNull();
    expect(step(walks, set({ activity: 'walk', timesUp: 3 }), ...twice('walk'))?.[1]).toEqual({
      activity: 'walk',
      timesUp: 4,
    });
  });
  it('goes a quarter further in distance, at most to the ceiling, then to one time more', () => {
    const grow = (metres: number) =>
      step(walks, set({ activity: 'walk', metres }), ...twice('walk', { metres: 200 }))?.[1];
    expect(grow(90)).toEqual({ activity: 'walk', timesUp: 3, metres: 113 });
    expect(grow(1)).toEqual({ activity: 'walk', timesUp: 3, metres: 2 });
    expect(grow(400)).toEqual({ activity: 'walk', timesUp: 3, metres: 500 });
    expect(grow(499)).toEqual({ activity: 'walk', timesUp: 3, metres: 500 });
    expect(grow(500)).toEqual({ activity: 'walk', timesUp: 4, metres: 500 });
    const told = proposal(walks, set({ activity: 'walk', metres: 90 }), ...twice('walk', { metres: 30 }));
    expect(told?.because[1]?.words).toBe('Next: more distance, 90 m to 113 m a day (at most 500 m)');
    const times = proposal(walks, set({ activity: 'walk' }), ...twice('walk'));
    expect(times?.because[1]?.words).toBe('Next: one time more, 4 times a day');
  });
  it('begins to walk with the distance that was done safely, and keeps the minutes', () => {
    const before = did(2, 'walk', { metres: 25 });
    const told = proposal(
      walks,
      before,
      set({ minutesOutOfBed: 60 }),
      ...twice('chair', { minutesOutOfBed: 20 }),
    );
    expect(told?.goal).toEqual({ activity: 'walk', timesUp: 3, minutesOutOfBed: 60, metres: 75 });
    expect(told?.because[1]?.facts).toEqual([before.id]);
    const long = did(2, 'walk', { metres: 300 });
    expect(proposal(walks, long, chair, ...twice('chair'))?.goal.metres).toBe(500);
  });
  it('is not proposed while the goal that was set may not be asked', () => {
    const held = [walks, set({ activity: 'walk' }, 1.2), hold(2, 'walking', 9)];
    expect(view(...held, ...twice('chair')).today.goal?.activity).toBe('chair');
    expect(proposal(...held, ...twice('chair'))).toBeNull();
  });
  it('is not proposed while a check is waiting, or before the first one', () => {
    expect(proposal(walks, chair, ...twice('chair'), trigger('asked-to-look-again', 20))).toBeNull();
    expect(proposal(chair, ...twice('chair'))).toBeNull();
  });
  it("is not proposed under a comfort or a clinician's plan", () => {
    const scope = (of: object): Told => ({ type: 'scope-set', at: 20, payload: of });
    expect(proposal(walks, chair, ...twice('chair'), scope({ scope: 'comfort' }))).toBeNull();
    const fence = { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'plan-1' } };
    expect(proposal(walks, chair, ...twice('chair'), scope(fence))).toBeNull();
  });
  it("is not cut down on the day of arrival: a step is of a whole day's goal", () => {
    const told = [check('turn', 0.2), set({}, 0.3), did(0.5, 'chair'), did(1, 'chair')];
    const evening = evaluateStay(stayOf(...told), ward, calendar, hours(2)).view;
    expect(evening.today.goal).toEqual({ activity: 'chair', timesUp: 1 });
    expect(evening.proposal?.goal).toEqual({ activity: 'chair', timesUp: 4 });
  });
});
