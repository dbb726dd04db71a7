import { describe, it, expect } from 'vitest';
import * as commands from '@footboard/shared/capabilities/sessions/commands';
import { goalSet, sessionRecorded } from '@footboard/shared/capabilities/sessions/events';
import type { Activity, Session } from '@footboard/shared/capabilities/sessions/values';
import {
  AIDE,
  arrived,
  checked,
  fact,
  given,
  hours,
  iso,
  left,
  STAFF,
  upToFailed,
} from '../given.testkit.ts';

const anna = arrived('anna', 'b1');
const walk = {
  outcome: 'done',
  occasion: 'planned',
  activities: ['walk' as Activity],
  startedAt: iso(2),
  events: [],
} satisfies Partial<Session>;
const recorded = (more: object = {}) =>
  ['session-recorded', 'stay/anna', { session: { ...walk, firstTimeUp: false, ...more } }] as const;

describe('a session', () => {
  it('is recorded by all who work at the bedside, by nobody else', () => {
    for (const who of ['aide', 'nurse', 'therapist', 'charge-nurse', 'handling-coordinator'] as const) {
      given(anna)
        .when(commands.recordSession, { stay: 'anna', session: walk }, { by: STAFF[who] })
        .appends(recorded());
    }
    for (const who of ['manager', 'records', 'administrator'] as const) {
      given(anna)
        .when(commands.recordSession, { stay: 'anna', session: walk }, { by: STAFF[who] })
        .refuses('not-your-role');
    }
  });
  it('that went beyond what is cleared is still recorded: a fact is a fact', () => {
    given(anna, checked('anna', 'edge', { at: hours(1) }))
      .when(
        commands.recordSession,
        { stay: 'anna', session: { ...walk, activities: ['walk', 'stairs'] } },
        { by: AIDE },
      )
      .accepts();
  });
  it('has readings timed within the stay and not ahead', () => {
    const rated = (at: string) => ({
      stay: 'anna',
      session: { ...walk, readings: [{ kind: 'heart-rate' as const, perMinute: 80, at }] },
    });
    const field = '/session/readings/0/at';
    const wrong = 'reading-time-outside-stay';
    given(anna)
      .when(commands.recordSession, rated(iso(2.2)))
      .accepts();
    given(anna)
      .when(commands.recordSession, rated(iso(0)))
      .accepts();
    given(anna)
      .when(commands.recordSession, rated(iso(-0.1)))
      .refuses(wrong, field);
    given(anna)
      .when(commands.recordSession, rated(iso(3 + 2 / 60)))
      .accepts();
    given(anna)
      .when(commands.recordSession, rated(iso(3 + 3 / 60)))
      .refuses(wrong, field);
    given(anna, left('anna', 'b1', { at: hours(2.5) }))
      .when(commands.recordSession, rated(iso(2.5)), { at: hours(2), now: hours(3) })
      .refuses(wrong, field);
  });
  it('keeps what the person said apart', () => {
    const entered = given(anna).when(commands.recordSession, {
      stay: 'anna',
      session: {
        ...walk,
        outcome: 'not-done',
        notDone: { group: 'said-no', example: 'tired' },
        activities: [],
      },
      said: 'not before tea',
    });
    entered.appends([
      'session-recorded',
      'stay/anna',
      {
        session: {
          ...walk,
          outcome: 'not-done',
          notDone: { group: 'said-no', example: 'tired' },
          activities: [],
          firstTimeUp: false,
        },
        said: { ref: expect.any(String) },
      },
    ]);
    entered.keeps(['stay/anna', 'not before tea']);
  });
  const givenWalk = (more: object, closed = false) =>
    given(anna, ...(closed ? [left('anna', 'b1', { at: hours(2) })] : [])).when(
      commands.recordSession,
      { stay: 'anna', session: { ...walk, ...more } },
      closed ? { at: hours(1.9), now: hours(3) } : {},
    );
  it('lies within the stay and not ahead of the clock', () => {
    givenWalk({ startedAt: iso(-0.5) }).refuses('session-before-stay', '/session/startedAt');
    givenWalk({ startedAt: iso(3.5) }).refuses('time-in-future', '/session/startedAt');
    givenWalk({ endedAt: iso(3.5) }).refuses('time-in-future', '/session/endedAt');
    givenWalk({ startedAt: iso(2) }, true).refuses('session-after-stay', '/session/startedAt');
    givenWalk({ startedAt: iso(1.5) }, true).accepts();
  });
  it('takes a clock that runs up to two minutes ahead', () => {
    givenWalk({ startedAt: iso(3 + 2 / 60) }).accepts();
    givenWalk({ startedAt: iso(3 + 2.1 / 60) }).refuses('time-in-future');
  });
  it('has its back-to-bed time after its start', () => {
    givenWalk({ backToBedBy: iso(2) }).refuses('back-to-bed-before-start', '/session/backToBedBy');
    givenWalk({ backToBedBy: iso(3) }).accepts();
  });
});

describe('a goal', () => {
  const goal = (activity: string) =>
    ({ stay: 'anna', goal: { activity: activity as 'walk', timesUp: 3 } }) as const;

  it('within what is cleared is set by a qualified person', () => {
    const entered = given(anna, checked('anna', 'walk', { at: hours(1) })).when(commands.setGoal, {
      ...goal('walk'),
      wish: 'to the garden',
    });
    entered.appends([
      'goal-set',
      'stay/anna',
      { goal: { activity: 'walk', timesUp: 3 }, wish: { ref: expect.any(String) } },
    ]);
    entered.keeps(['stay/anna', 'to the garden']);
  });
  it('above what is cleared is refused', () => {
    const atEdge = given(anna, checked('anna', 'edge', { at: hours(1) }));
    atEdge.when(commands.setGoal, goal('edge-sit')).accepts();
    for (const more of ['stand', 'chair', 'toilet', 'march', 'walk', 'stairs']) {
      atEdge.when(commands.setGoal, goal(more)).refuses('goal-above-cleared', '/goal/activity');
    }
  });
  it('without any check asks for no more than the bed or a lifted chair', () => {
    for (const least of ['bed-exercise', 'back-raised', 'lifted-to-chair']) {
      given(anna).when(commands.setGoal, goal(least)).accepts();
    }
    given(anna).when(commands.setGoal, goal('edge-sit')).refuses('goal-above-cleared');
  });
  it('from before a check that found less is judged by the lesser', () => {
    given(
      anna,
      checked('anna', 'walk', { at: hours(1) }),
      checked('anna', 'stand', { at: hours(3) }, { stages: upToFailed('stand', hours(3)) }),
    )
      .when(commands.setGoal, goal('walk'), { at: hours(2), now: hours(4) })
      .refuses('goal-above-cleared');
  });
  it('is not set by an aide', () => {
    given(anna, checked('anna', 'walk', { at: hours(1) }))
      .when(commands.setGoal, goal('walk'), { by: AIDE })
      .refuses('not-your-role');
  });
});

describe('a proposal', () => {
  const bram = arrived('bram', 'b2', { at: hours(-24) });
  const chair = fact(goalSet, 'bram', { goal: { activity: 'chair', timesUp: 3 } }, { at: hours(0.5) });
  const easy = (id: string, at: number) =>
    fact(
      sessionRecorded,
      'bram',
      {
        session: {
          ...walk,
          activities: ['chair'],
          effort: 2,
          startedAt: iso(at),
          firstTimeUp: false,
        } as Session,
      },
      { id, at: hours(at), by: AIDE },
    );
  const steady = [bram, checked('bram', 'walk', { at: hours(0) }), chair, easy('one', 1), easy('two', 2)];
  const accepted = (goal: object = {}, accepts: readonly string[] = ['one', 'two']) => ({
    stay: 'bram',
    goal: { activity: 'walk' as const, timesUp: 3, ...goal },
    accepts: [...accepts],
  });

  it('PROGRESS-4 that stands is accepted by a qualified person, on the sessions of an aide', () => {
    given(...steady)
      .when(commands.setGoal, accepted())
      .appends([
        'goal-set',
        'stay/bram',
        { goal: { activity: 'walk', timesUp: 3 }, accepts: ['one', 'two'] },
      ]);
    given(...steady)
      .when(commands.setGoal, accepted({}, ['two', 'one']))
      .accepts();
    given(...steady)
      .when(commands.setGoal, accepted(), { by: AIDE })
      .refuses('not-your-role');
  });
  it('is refused when it asks for something else, or stands on other sessions', () => {
    for (const goal of [
      { timesUp: 4 },
      { metres: 40 },
      { minutesOutOfBed: 20 },
      { activity: 'chair' as const },
    ]) {
      given(...steady)
        .when(commands.setGoal, accepted(goal))
        .refuses('proposal-gone', '/accepts');
    }
    for (const sessions of [['one'], ['one', 'three'], ['one', 'two', 'three']]) {
      given(...steady)
        .when(commands.setGoal, accepted({}, sessions))
        .refuses('proposal-gone', '/accepts');
    }
  });
  it('is refused once it is gone: by a goal set since, or by what happened since', () => {
    const setSince = fact(goalSet, 'bram', { goal: { activity: 'chair', timesUp: 3 } }, { at: hours(2.5) });
    given(...steady, setSince)
      .when(commands.setGoal, accepted())
      .refuses('proposal-gone');
    given(...steady, easy('three', 2.5))
      .when(commands.setGoal, accepted())
      .refuses('proposal-gone');
    given(...steady, easy('three', 2.5))
      .when(commands.setGoal, accepted({}, ['two', 'three']))
      .accepts();
  });
  it('accepted a while ago must still stand now, and must have stood then', () => {
    given(...steady, easy('three', 3.5))
      .when(commands.setGoal, accepted(), { at: hours(3), now: hours(4) })
      .refuses('proposal-gone');
    given(...steady)
      .when(commands.setGoal, accepted(), { at: hours(3), now: hours(4) })
      .accepts();
    given(...steady)
      .when(commands.setGoal, accepted(), { at: hours(1.5), now: hours(4) })
      .refuses('proposal-gone');
  });
  it('that asks for more than is cleared is refused for that first', () => {
    given(...steady, checked('bram', 'turn', { at: hours(2.5) }, { stages: upToFailed('turn', hours(2.5)) }))
      .when(commands.setGoal, accepted())
      .refuses('goal-above-cleared');
  });
  it('a goal set without it needs no proposal', () => {
    given(bram, checked('bram', 'walk', { at: hours(0) }))
      .when(commands.setGoal, accepted({}, []))
      .appends(['goal-set', 'stay/bram', { goal: { activity: 'walk', timesUp: 3 } }]);
  });
});
