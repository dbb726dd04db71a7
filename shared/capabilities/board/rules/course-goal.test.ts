/** The goal over a stay, ward day by ward day, and the entries behind what is drawn. Design, rules 4 and 10; goals: ours, practice. */
import { describe, expect, it } from 'vitest';
import { courseOf } from './course.ts';
import {
  calendar,
  check,
  hold,
  hours,
  notDone,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';

// START is 18:00 in Berlin; ward days begin at 14 h and 38 h (07:00; the clocks go back in between).
const stands = (at: number, id = 'stands'): Told => ({ ...check('stand', at), id });
const goal = (at: number, timesUp: number, id = 'goal'): Told => ({
  type: 'goal-set',
  at,
  role: 'nurse',
  id,
  payload: { goal: { activity: 'stand', timesUp } },
});
const stood = (at: number, id: string, more: object = {}): Told => ({
  ...session(at, { activities: ['stand'], ...more }),
  id,
});
const course = (now: number, ...told: readonly Told[]) =>
  courseOf(stayOf(...told), ward, calendar, hours(now))!;
const goals = (now: number, ...told: readonly Told[]) => course(now, ...told).days.map((d) => d.goal?.met);

describe('the goal over a stay', () => {
  const set = [stands(1), goal(2, 1)];

  it('GAP-1 given a day with it met, one with it not met and one with nothing recorded, then each is told apart', () => {
    const told = [...set, stood(3, 'a'), stands(13), goal(13.5, 2), stood(20, 'b'), stands(30), stands(45)];
    expect(goals(60, ...told)).toEqual([true, false, null]);
    expect(course(60, ...told).days.map((d) => d.recorded)).toEqual([true, true, false]);
  });
  it('given an amount that nobody wrote down, then it is not said to be missed', () => {
    const metres: Told = { ...goal(2, 1), payload: { goal: { activity: 'stand', timesUp: 1, metres: 20 } } };
    expect(goals(10, stands(1), metres, stood(3, 'a', { activities: ['walk', 'stand'] }))).toEqual([null]);
  });
  it('given something that was not done alone, then it is recorded and not met', () => {
    expect(goals(10, ...set, notDone(3, 'said-no'))).toEqual([false]);
  });
  it('given each day, then the goal that stood at its end counts, and what was changed later does not', () => {
    const told = [...set, stood(3, 'a'), stands(13), goal(15, 3, 'more'), stood(20, 'b'), stood(21, 'c')];
    expect(goals(30, ...told)).toEqual([true, false]);
  });
  it('given no goal applies, then there is none: before the first check, and outside the staged check', () => {
    expect(course(10, stood(3, 'a')).days).toMatchObject([{ recorded: true, goal: null }]);
    const comfort: Told = { type: 'scope-set', at: 4, payload: { scope: 'comfort' } };
    expect(course(10, ...set, stood(3, 'a'), comfort).days[0]!.goal).toBeNull();
  });
  it('given a goal that only the rules propose, then it says so', () => {
    expect(course(10, stands(1), stood(3, 'a')).days[0]!.goal).toEqual({ met: true, proposed: true });
    expect(course(10, ...set, stood(3, 'a')).days[0]!.goal).toEqual({ met: true, proposed: false });
  });
  it('given a day, then it carries its goal and its sessions, and no session of another day', () => {
    const told = [...set, stood(3, 'a'), notDoneOf(4, 'no'), stands(15, 'again'), stood(20, 'b')];
    const [first, second] = course(30, ...told).days;
    expect(first!.facts).toEqual(expect.arrayContaining(['goal', 'a', 'no']));
    expect(first!.facts).not.toContain('b');
    expect(second!.facts).toEqual(expect.arrayContaining(['goal', 'b']));
    expect(second!.facts).not.toContain('a');
  });
  it('given the person left, then the last day is judged as it stood then', () => {
    const left: Told = { type: 'stay-ended', at: 21, id: 'left', payload: { bed: 'bed-1', to: 'home' } };
    const told = [stands(13), goal(13.5, 2), stood(20, 'b'), left];
    const days = course(60, ...told).days;
    expect(days.at(-1)).toMatchObject({ to: hours(21), goal: { met: true } });
    expect(days.at(-1)!.facts).toContain('left');
  });
  it('given a stay that lasts to the first instant of a ward day, then no day is judged by the next one', () => {
    expect(goals(14, ...set, stood(3, 'a'))).toEqual([true]);
  });
});
const notDoneOf = (at: number, id: string): Told => ({ ...notDone(at, 'said-no'), id });

describe('the entries behind a span', () => {
  it('given a check and a trigger, then each span carries what the board stood on when it began', () => {
    const { standing } = course(6, stands(1), { ...trigger('fall', 3), id: 'fall' });
    const at = (h: number) => standing.find((s) => s.from === hours(h))!;
    expect(at(1).facts).toEqual(['stands']);
    expect(at(3).facts).toEqual(expect.arrayContaining(['stands', 'fall']));
  });
  it('given a check that ran out by time alone, then the span carries that check', () => {
    const { standing } = course(20, stands(1));
    const ranOut = standing.find((s) => s.trust === 're-check')!;
    expect(ranOut.facts).toContain('stands');
  });
  it('given the person went off the ward, then that entry is among them', () => {
    const away: Told = { type: 'went-off-ward', at: 3, id: 'away', payload: { reason: 'test' } };
    const { standing } = course(6, stands(1), away);
    expect(standing.find((s) => s.away)!.facts).toContain('away');
  });
  it('given a hold, then it carries the entry that placed it', () => {
    expect(course(6, stands(1), { ...hold(3, 'walking', 5), id: 'h' }).holds[0]!.facts).toEqual(['h']);
  });
});
