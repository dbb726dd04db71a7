/** What counts as done today, apart from what was not done and not recorded: design, goals row and rule 4. */
import { describe, expect, it } from 'vitest';
import { check, hours, notDone, session, type Told } from '../../board/rules/history.testkit.ts';
import { set, today, view } from './goals.testkit.ts';

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
