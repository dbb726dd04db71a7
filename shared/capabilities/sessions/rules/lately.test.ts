/** What whoever goes next asks of the sessions so far. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { hours, notDone, session, stayOf, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { sessionsOf } from './activity.ts';
import { latelyOf } from './lately.ts';

const yesterday = { from: hours(-10), to: hours(14) };
const lately = (told: readonly Told[], began = hours(-20)) =>
  latelyOf(sessionsOf(effectiveFacts(stayOf(...told)).facts, hours(30)), yesterday, began);
const named = (id: string, told: Told): Told => ({ ...told, id });
const until = (h: number) => ({ endedAt: toIso(hours(h)) });

describe('the last session', () => {
  it('is told with all that was written down of it', () => {
    const walk = session(15, {
      ...until(15.5),
      outcome: 'stopped',
      occasion: 'toilet',
      activities: ['stand', 'walk'],
      metres: 12,
      minutesOutOfBed: 25,
      help: { people: 2, aid: 'belt' },
      events: ['dizzy', 'pain'],
    });
    expect(lately([named('walk', walk)]).last).toEqual({
      event: 'walk',
      from: hours(15),
      to: hours(15.5),
      outcome: 'stopped',
      notDone: null,
      occasion: 'toilet',
      activities: ['stand', 'walk'],
      metres: 12,
      minutesOutOfBed: 25,
      people: 2,
      aid: 'belt',
      events: ['dizzy', 'pain'],
    });
  });
  it('has gaps, not zeros, where nothing was written down', () => {
    expect(lately([session(15)]).last).toMatchObject({
      metres: null,
      minutesOutOfBed: null,
      people: null,
      aid: null,
    });
    expect(lately([]).last).toBeNull();
  });
  it('is the one that ended last; of two that ended together the later entry', () => {
    const long = named('long', session(15, until(17)));
    expect(lately([long, named('short', session(16))]).last?.event).toBe('long');
    expect(lately([long, named('together', session(16, until(17)))]).last?.event).toBe('together');
  });
});

describe('the last meal', () => {
  it('is one that took place, never one that was offered and not done', () => {
    const meal = named('meal', session(15, { occasion: 'meal', activities: ['chair'] }));
    const refused = session(16, {
      occasion: 'meal',
      outcome: 'not-done',
      activities: [],
      notDone: { group: 'said-no' },
    });
    expect(lately([refused]).meal).toBeNull();
    expect(lately([meal, refused]).meal).toEqual({ at: hours(15), event: 'meal' });
  });
  it('is never a walk that came after it', () => {
    const meal = named('meal', session(15, { occasion: 'meal', activities: ['chair'] }));
    expect(lately([meal, session(16, { occasion: 'planned', activities: ['walk'] })]).meal?.event).toBe(
      'meal',
    );
  });
});

describe('the last no', () => {
  it('is one of the person, not of what the ward could not do', () => {
    const no = named('no', notDone(15, 'said-no'));
    expect(lately([no, notDone(16, 'no-people')]).saidNo).toEqual({ at: hours(15), event: 'no' });
    expect(lately([notDone(16, 'no-people')]).saidNo).toBeNull();
  });
});

describe('the ward day before', () => {
  it.each([
    ['before it began', -20, { recorded: true, timesUp: 1 }],
    ['as it began', -10, { recorded: true, timesUp: 1 }],
    ['after it had begun', -9.9, null],
  ])('given that the person came %s', (_when, began, told) => {
    expect(lately([session(1)], hours(began)).yesterday).toEqual(told);
  });
});
