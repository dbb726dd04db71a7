/** The goal of two looks that differ in a doubtful entry: design, rule 2 (the safer stands). */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from './evaluate-stay.ts';
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
  type Told,
} from './history.testkit.ts';
import { withLesserGoal } from './lesser-goal.ts';
import type { StayView } from '../view.ts';

const look = (...told: readonly Told[]) => evaluateStay(stayOf(...told), ward, calendar, hours(25)).view;
const walks = check('walk', 14.1);
const chairs = check('turn', 14.1);
const chair: Told = { type: 'goal-set', at: 14.2, payload: { goal: { activity: 'chair', timesUp: 3 } } };
const easy = [15, 17].map((at) => ({ ...session(at, { activities: ['chair'], effort: 2 }), id: `s-${at}` }));
const noes = [15, 17].map((at) => ({ ...notDone(at, 'said-no'), id: `no-${at}` }));
const held = hold(16, 'walking', 60);
/** As the board joins them: whatever restricts in either. */
const joined = (a: StayView, b: StayView, over: Partial<StayView> = {}) =>
  withLesserGoal(
    { ...a, holds: [...a.holds, ...b.holds], orders: [...a.orders, ...b.orders], ...over },
    a,
    b,
  );

describe('the goal of two looks', () => {
  it('is the one that asks for less, whichever look it is of', () => {
    const [more, less] = [look(walks), look(chairs)];
    expect(joined(more, less).today).toBe(less.today);
    expect(joined(less, more).today).toBe(less.today);
    expect(joined(more, look()).today.goal).toBeNull();
    expect(joined(look(), more).today.goal).toBeNull();
  });
  it('is none where one look has none, however little the other asks', () => {
    const [inBed, none] = [look(check('upright', 14.1)), look()];
    const exercise: Told = {
      type: 'goal-set',
      at: 14.2,
      payload: { goal: { activity: 'bed-exercise', timesUp: 3 } },
    };
    const least = look(check('upright', 14.1), exercise);
    expect([inBed, least].map(({ today }) => today.goal?.activity)).toEqual(['back-raised', 'bed-exercise']);
    for (const one of [inBed, least]) {
      expect(joined(one, none).today).toBe(none.today);
      expect(joined(none, one).today).toBe(none.today);
    }
  });
  it('stands beside orders that limit something else than activity', () => {
    const braced = look(
      walks,
      order(15, { about: 'brace', on: true }),
      order(15, { about: 'precaution', precaution: 'hip', on: true }),
    );
    expect(braced.orders.map(({ order: one }) => one.about).toSorted()).toEqual(['brace', 'precaution']);
    expect(braced.today.goal).not.toBeNull();
    expect(joined(braced, braced, { plan: look(walks).plan }).today).toBe(braced.today);
    expect(joined(braced, braced, { plan: null }).today).toBe(braced.today);
  });
  it('of the same activity is that of the safer look', () => {
    const [a, b] = [look(walks), look(walks, session(15, { metres: 20 }))];
    expect(joined(a, b).today).toBe(a.today);
    expect(joined(b, a).today).toBe(b.today);
  });
  it('is none where the two together stop it, with what stops it', () => {
    const [one, other] = [look(chairs), look(chairs, hold(16, 'standing', 60))];
    // The other look asks for less already; without that goal the hold of the other still counts.
    const now = joined(one, { ...other, today: one.today }).today;
    expect(now).toMatchObject({ goal: null, goalProposed: false, met: null });
    expect(now.because).toEqual([
      { rule: 'goal/hold', facts: [other.holds[0]!.event], words: 'Hold on standing' },
    ]);
    const ordered = look(chairs, order(16, { about: 'activity', most: 'bed' }));
    expect(joined(one, { ...ordered, today: one.today }).today.because[0]?.rule).toBe('goal/order');
    const plan = look(walks, trigger('fall', 16)).plan!;
    expect(joined(one, one, { plan }).today.because[0]?.rule).toBe('goal/task-held');
    expect(joined(one, one).today).toBe(one.today);
  });
});

describe('the step of two looks', () => {
  const up = look(walks, chair, ...easy);
  const back = look(walks, chair, ...noes);

  it('up stands only when both carry the same, and nothing stops it', () => {
    expect(up.proposal?.step).toBe('up');
    expect(joined(up, up).proposal).toBe(up.proposal);
    expect(joined(up, look(walks, chair)).proposal).toBeNull();
    expect(joined(look(walks, chair), up).proposal).toBeNull();
    expect(joined(up, up, { trust: { ...up.trust, state: 're-check' } }).proposal).toBeNull();
    expect(joined(up, { ...up, holds: look(walks, held).holds }).proposal).toBeNull();
  });
  it('back stands when either carries it, unless it is stopped', () => {
    expect(back.proposal).toMatchObject({ step: 'back', goal: { activity: 'stand' } });
    expect(joined(up, back).proposal).toBe(back.proposal);
    expect(joined(back, up).proposal).toBe(back.proposal);
    const standing = look(walks, hold(16, 'standing', 60)).holds;
    expect(
      joined(up, { ...back, today: look(check('edge', 14.1)).today, holds: standing }).proposal,
    ).toBeNull();
  });
  it('is none without a goal, and none where neither look has one', () => {
    expect(joined(up, { ...up, today: look().today }).proposal).toBeNull();
    expect(joined(look(walks), look(walks)).proposal).toBeNull();
  });
});

it('nobody goes up on the board while an entry told late stands against another', () => {
  const late = { ...check('walk', 16.5), recorded: 24 };
  const told = [chairs, chair, ...easy, hold(16.6, 'walking', 60), late];
  const view = look(...told.map((one) => ({ recorded: 20, ...one })));
  expect(view.trust.conflicts.map((c) => c.question)).toContain('late entry');
  expect(view.proposal?.step).not.toBe('up');
  expect(look(chairs, chair, ...easy).proposal?.step).toBe('up');
});
