/** The course of a stay at its edges: arrival, leaving, the first instant of a ward day; what counts as one step. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/default-protocol.ts';
import type { WardState } from '../../wards/context.ts';
import { toIso } from '../../../kernel/times.ts';
import { courseOf, daysBetween } from './course.ts';
import {
  begun,
  calendar,
  check,
  hold,
  hours,
  recordOf,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';

const course = (now: number, told: readonly Told[], of: WardState = ward) =>
  courseOf(stayOf(...told), of, calendar, hours(now))!;
const left: Told = { type: 'stay-ended', at: 20, payload: { bed: 'bed-1', to: 'home' } };
const startedAt = (h: number) => ({ startedAt: toIso(hours(h)) });

describe('a course begins with the arrival', () => {
  const early: readonly Told[] = [
    { type: 'weight-recorded', at: -2, payload: { weight: { kg: 70, how: 'measured' } } },
    { ...trigger('fall', -1), id: 'before' },
    session(1, startedAt(-1)),
  ];
  it('what came before it is left out, what is of that instant is not', () => {
    const atOnce = [trigger('faint', 0), session(0)];
    const seen = courseOf(recordOf([...early, begun(), ...atOnce]), ward, calendar, hours(5))!;
    expect(seen.from).toBe(hours(0));
    expect(seen.triggers.map((x) => [x.kind, x.at])).toEqual([['faint', hours(0)]]);
    expect(seen.sessions.map((s) => s.at)).toEqual([hours(0)]);
    expect(seen.days.map((d) => d.recorded)).toEqual([true]);
  });
  it('and is there, though empty, at that very instant', () => {
    expect(course(0, [])).toMatchObject({
      from: hours(0),
      to: hours(0),
      standing: [],
      days: [],
      whole: true,
    });
  });
  it('without one there is none', () => {
    expect(courseOf(recordOf(early), ward, calendar, hours(5))).toBeNull();
  });
});

describe('a course ends with leaving, or now', () => {
  it('from that very instant on it has ended', () => {
    expect(course(19.9, [left])).toMatchObject({ ended: false, to: hours(19.9) });
    expect(course(20, [left])).toMatchObject({ ended: true, to: hours(20) });
  });
  it('what happened just then is in it, what is dated later is not', () => {
    const triggers = [trigger('fall', 20), trigger('faint', 21)];
    expect(course(30, [...triggers, left]).triggers.map((x) => x.kind)).toEqual(['fall']);
    expect(course(20, triggers).triggers.map((x) => x.kind)).toEqual(['fall']);
  });
});

describe('the sessions of a course', () => {
  it('stand in the order in which they began, in whatever order they were told', () => {
    const told = [session(6, startedAt(3)), session(7, startedAt(5)), session(8, startedAt(1))];
    expect(course(10, told).sessions.map((s) => s.at)).toEqual([hours(1), hours(3), hours(5)]);
  });
});

it('what begins while the person is off the ward names that going off, no other entry and no later one', () => {
  const off = (id: string, at: number): Told => ({
    type: 'went-off-ward',
    at,
    id,
    payload: { reason: 'test' },
  });
  const told = [
    check('edge', 0.5),
    off('first-time', 2),
    { ...trigger('fall', 2.5), id: 'fall' },
    session(2.9),
    { ...hold(3, 'walking', 30), id: 'held' },
    { type: 'came-back', at: 4, payload: {} },
    off('second-time', 6),
  ];
  const named = (from: number) =>
    course(8, told)
      .standing.find((span) => span.from === hours(from))!
      .facts.filter((f) => /time|held/.test(f));
  expect(named(2)).toEqual(['first-time']);
  expect(named(3)).toEqual(['first-time']);
  expect(named(4)).toEqual([]);
  expect(named(6)).toEqual(['second-time']);
});

describe('the ward days of a course', () => {
  // The first ward day ends 14 h after START, the next 24 h later.
  it('hold what was done at their first instant, and not what was done at the next one’s', () => {
    expect(course(50, [session(14)]).days.map((d) => d.recorded)).toEqual([false, true, false]);
    expect(course(50, [session(38)]).days.map((d) => d.recorded)).toEqual([false, false, true]);
  });
  it('are as many as were begun', () => {
    expect(daysBetween(calendar, hours(0), hours(38))).toEqual([
      { from: hours(0), to: hours(14) },
      { from: hours(14), to: hours(38) },
    ]);
    expect(daysBetween(calendar, hours(14), hours(14))).toEqual([]);
  });
});

describe('a new step is drawn', () => {
  type Stage = (typeof DEFAULT_PROTOCOL)['stages'][number];
  const ownProtocol = (change: (stage: Stage) => Stage): WardState => {
    const document = {
      ...DEFAULT_PROTOCOL,
      id: 'own',
      version: 1,
      stages: DEFAULT_PROTOCOL.stages.map(change),
    };
    return { ...ward, protocols: [{ id: 'own', version: 1, document }] };
  };
  const own = (at: number): Told => {
    const { payload, ...told } = check('edge', at);
    return { ...told, payload: { ...(payload as object), protocol: { id: 'own', version: 1 } } };
  };
  const steps = (of: WardState) =>
    course(10, [check('edge', 2), own(5)], of).standing.map((s) => [s.from, s.tier, s.notch]);
  const before = [hours(0), 'Not known', null];

  it('when the same place has another word', () => {
    const renamed = ownProtocol((s) => (s.id === 'edge' ? { ...s, word: 'Sits' } : s));
    expect(steps(renamed)).toEqual([before, [hours(2), 'Edge', 0.4], [hours(5), 'Sits', 0.4]]);
  });
  it('when the same word stands in another place', () => {
    const fewer = ownProtocol((s) => (s.id === 'upright' ? { ...s, word: null } : s));
    expect(steps(fewer)).toEqual([before, [hours(2), 'Edge', 0.4], [hours(5), 'Edge', 0.25]]);
  });
  it('when a hold comes, and none when the same stands on', () => {
    const { standing, holds } = course(10, [check('edge', 2), hold(5, 'walking', 9)]);
    expect(standing.map((s) => [s.from, s.to])).toEqual([
      [hours(0), hours(2)],
      [hours(2), hours(5)],
      [hours(5), hours(10)],
    ]);
    expect(holds).toMatchObject([{ hold: 'hold-1', from: hours(5), to: null }]);
  });
  it('when a hold stops more: what it stopped before ends there', () => {
    const { holds } = course(10, [hold(2, 'walking', 9), hold(5, 'out-of-bed', 9)]);
    expect(holds.map((h) => [h.scope, h.from, h.to])).toEqual([
      ['walking', hours(2), hours(5)],
      ['out-of-bed', hours(5), null],
    ]);
  });
});

describe('given a stay that changes more often than can be drawn', () => {
  /** A ward whose night is asked about anew every millisecond. */
  const restless = {
    ...calendar,
    wardDay: () => ({ from: hours(0), to: hours(24) }),
    night: (t: number) => ({ is: false, until: t + 1 }),
  };
  it('the course is drawn up to there, and says so', () => {
    const now = hours(0) + 5_000;
    const seen = courseOf(stayOf(), ward, restless, now)!;
    expect(seen).toMatchObject({ whole: false, to: hours(0) + 2_000 });
    expect(seen.standing).toMatchObject([{ from: hours(0), to: hours(0) + 2_000 }]);
    expect(seen.days).toMatchObject([{ from: hours(0), to: hours(0) + 2_000, recorded: false }]);
  });
});
