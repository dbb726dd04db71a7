/** How the huddle hears of more, other and less help: the move that a ward speaks of first, then the others. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { check, type Told } from '../../board/rules/history.testkit.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import { task as taskValues, type Task } from '../../handling/values.ts';
import { between, changedFor, lines, ofKind } from './changes.testkit.ts';
import { at, boardOf, rowOf } from './round.testkit.ts';

type Moves = Partial<Record<Task, Partial<TaskPlan>>>;
const row = rowOf(at(0));
/** One person without an aid for every move, but for what is said here. */
const movesOf = (moves: Moves): TaskPlan[] =>
  row.plan!.day.map((plan) => ({ ...plan, hold: false, people: 'one', aid: 'none', ...moves[plan.task] }));
const planned = (day: Moves, night: Moves = day): StayView => ({
  ...row,
  plan: { day: movesOf(day), night: movesOf(night) },
});
const said = (before: StayView, now: StayView): string[] =>
  between(boardOf(before), boardOf(now)).map(({ words }) => words);

describe('the help for the moves of one person', () => {
  it('names the way to the chair first, then each other move once, as a ward speaks of them', () => {
    const two = Object.fromEntries(taskValues.options.map((one) => [one, { people: 'two' }]));
    expect(said(planned({}), planned(two))).toEqual([
      'More help: bed to chair now 2 people, no aid (was 1 person, no aid); also toilet, edge of bed, ' +
        'stand, walk, turn or move up in bed, across to a trolley, up from the floor, move up in the chair',
    ]);
  });
  it('names one move alone, where it is the only one', () => {
    expect(said(planned({}), planned({ walk: { people: 'stand-by' } }))).toEqual([
      'Less help: walk now stand by, no aid (was 1 person, no aid)',
    ]);
  });
  it('names the aid in plain words, or that there is none', () => {
    expect(said(planned({}), planned({ walk: { aid: 'walking-support' } }))).toEqual([
      'More help: walk now 1 person, walking support (was 1 person, no aid)',
    ]);
  });
  it('says of a move that changed by night alone that it is at night', () => {
    expect(said(planned({}), planned({}, { toilet: { people: 'two' } }))).toEqual([
      'More help: toilet at night now 2 people, no aid (was 1 person, no aid)',
    ]);
  });
  it('says what changed by day before what changed by night', () => {
    const now = planned({ walk: { people: 'two' } }, { 'bed-chair': { people: 'three-or-more' } });
    expect(said(planned({}), now)).toEqual([
      'More help: walk now 2 people, no aid (was 1 person, no aid); also bed to chair',
    ]);
  });
  it('is other help where it is fewer people with a bigger aid', () => {
    const before = planned({ 'bed-chair': { people: 'two', aid: 'belt' } });
    expect(said(before, planned({ 'bed-chair': { aid: 'sling-lift' } }))).toEqual([
      'Other help: bed to chair now 1 person, sling lift (was 2 people, belt)',
    ]);
  });
  it('keeps apart what is more, other and less, and says it in this order', () => {
    const before = planned({ 'bed-chair': { people: 'two', aid: 'belt' } });
    const now = planned({
      'bed-chair': { aid: 'sling-lift' },
      walk: { people: 'stand-by' },
      'in-bed': { people: 'two' },
    });
    expect(said(before, now)).toEqual([
      'More help: turn or move up in bed now 2 people, no aid (was 1 person, no aid)',
      'Other help: bed to chair now 1 person, sling lift (was 2 people, belt)',
      'Less help: walk now stand by, no aid (was 1 person, no aid)',
    ]);
  });
});

describe('a move on hold', () => {
  const free = planned({ stand: { aid: 'belt' } });
  const held = planned({ stand: { hold: true, aid: 'belt' } });
  it('is said as HOLD and no more, where it was free', () => {
    expect(said(free, held)).toEqual(['More help: stand now HOLD (was 1 person, belt)']);
  });
  it('is said as what applies now, where the hold is gone', () => {
    expect(said(held, free)).toEqual(['Less help: stand now 1 person, belt (was HOLD)']);
  });
  it('is said with what applies if it cannot wait, where that is what changed', () => {
    expect(said(held, planned({ stand: { hold: true, people: 'two', aid: 'belt' } }))).toEqual([
      'More help: stand now HOLD, if it cannot wait 2 people, belt (was HOLD, if it cannot wait 1 person, belt)',
    ]);
  });
});

describe('a person under a plan that is not the staged check', () => {
  const scope = (to: string, when: number): Told => ({
    type: 'scope-set',
    at: when,
    payload: to === 'clinicians-plan' ? { scope: to, fence: 'traction', plan: { ref: 'p' } } : { scope: to },
  });
  it.each<[string, readonly string[], string]>([
    ['Comfort plan now', ['clinicians-plan'], 'comfort'],
    ["Clinician's plan only now", [], 'clinicians-plan'],
    ["Clinician's plan only now", ['comfort'], 'clinicians-plan'],
    ['The staged check applies again', ['comfort'], 'staged'],
    ['The staged check applies again', ['clinicians-plan'], 'staged'],
  ])('is said: %s (from %j)', (words, from, to) => {
    const changes = changedFor([check('walk', 1), ...from.map((one) => scope(one, 1.5))], [scope(to, 3)]);
    expect(lines(ofKind(changes, 'other-help'))).toEqual([`1 other-help: ${words}`]);
  });
  it.each(['comfort', 'clinicians-plan'])('is no change while it stays so: %s', (plan) => {
    expect(changedFor([check('walk', 1), scope(plan, 1.5)], [])).toEqual([]);
  });
});
