/** Over random histories and random caps: a goal and its steps never ask for what is not cleared, ordered or free of holds. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { STAGE_MEANINGS } from '../../assessments/rules/protocol.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, hours, recordOf, session, ward, type Told } from '../../board/rules/history.testkit.ts';
import { asRecorded, histories } from '../../board/rules/random-history.testkit.ts';
import { holdScope, type Order } from '../../orders/values.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { HoldView } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import { activity as activities, type Activity, type Goal } from '../values.ts';
import { isCleared, isHeld, isOrdered } from './activities.ts';
import { goalToday, type GoalInput } from './goals.ts';
import { stepBack, stepUp } from './goal-steps.ts';

type ActivityOrder = Extract<Order, { about: 'activity' }>['most'];

/** Written out apart from the rules: the last stage that each activity needs. */
const NEEDS: Readonly<Record<Activity, number>> = {
  'bed-exercise': -1,
  'back-raised': -1,
  'lifted-to-chair': -1,
  'edge-sit': 2,
  stand: 3,
  march: 4,
  chair: 4,
  toilet: 4,
  walk: 5,
  stairs: 5,
};
const TASKS: Readonly<Partial<Record<Activity, string>>> = {
  'edge-sit': 'edge-of-bed',
  stand: 'stand',
  march: 'stand',
  chair: 'bed-chair',
  'lifted-to-chair': 'bed-chair',
  toilet: 'toilet',
  walk: 'walk',
  stairs: 'walk',
};

const goals: fc.Arbitrary<Goal> = fc
  .record({
    activity: fc.constantFrom(...activities.options),
    timesUp: fc.integer({ min: 0, max: 12 }),
    minutesOutOfBed: fc.option(fc.integer({ min: 0, max: 900 }), { nil: undefined }),
    metres: fc.option(fc.integer({ min: 0, max: 900 }), { nil: undefined }),
  })
  .map(({ activity, timesUp, minutesOutOfBed, metres }) => ({
    activity,
    timesUp,
    ...(minutesOutOfBed === undefined ? {} : { minutesOutOfBed }),
    ...(metres === undefined ? {} : { metres }),
  }));

const inputs = fc
  .record({
    reached: fc.integer({ min: -1, max: 5 }),
    scopes: fc.array(fc.constantFrom(...holdScope.options), { maxLength: 2 }),
    most: fc.option(
      fc.constantFrom<ActivityOrder>('bed', 'edge-of-bed', 'chair', 'stand', 'walk', 'no-limit'),
      { nil: null },
    ),
    held: fc.subarray(['edge-of-bed', 'stand', 'bed-chair', 'toilet', 'walk'], { maxLength: 2 }),
    moves: fc.option(fc.constantFrom('walks', 'frame', 'wheelchair', 'bed'), { nil: null }),
    transfers: fc.constantFrom('alone', 'helped', 'lifted'),
    set: fc.option(goals, { nil: null }),
    longest: fc.option(fc.integer({ min: 1, max: 600 }), { nil: null }),
    share: fc.double({ min: 0, max: 1, noNaN: true }),
  })
  .map(({ reached, scopes, most, held, moves, transfers, set, longest, share }): GoalInput => ({
    cleared: new Set(STAGE_MEANINGS.slice(0, reached + 1)),
    tierFact: 'check' as never,
    holds: scopes.map((scope, i) => ({ scope, event: `hold-${i}` })) as unknown as HoldView[],
    plan: held.map((task) => ({ task, hold: true, because: [] })) as unknown as GoalInput['plan'],
    activityOrder: most && { value: most, fact: 'order' as never, at: 0 },
    usualWay: moves && { value: { moves, transfers, stairs: 'no' } as never, fact: 'usual' as never },
    wish: null,
    longestWalk: longest === null ? null : { metres: longest, fact: 'walked' as never },
    set: set && ({ id: 'set', data: { goal: set } } as unknown as GoalInput['set']),
    share,
    arrival: 'arrival' as never,
    rules: DEFAULT_RULES,
  }));

function allowed(asked: Activity, input: GoalInput): boolean {
  const reached = input.cleared!.size - 1;
  const held = input.plan.map((p) => p.task as string);
  return (
    NEEDS[asked] <= reached &&
    !input.holds.some((h) => isHeld(asked, h.scope)) &&
    (input.activityOrder === null || isOrdered(asked, input.activityOrder.value)) &&
    !held.includes(TASKS[asked] ?? '')
  );
}

describe('over random caps', () => {
  it('GOAL-2 what is asked is always allowed, whoever set it, and never more than was set', () => {
    fc.assert(
      fc.property(inputs, (input) => {
        const { goal, whole, because } = goalToday(input);
        for (const one of [goal, whole]) expect(one === null || allowed(one.activity, input)).toBe(true);
        expect(goal?.timesUp ?? 0).toBeLessThanOrEqual(whole?.timesUp ?? 0);
        expect(goal?.metres ?? 0).toBeLessThanOrEqual(whole?.metres ?? 0);
        const set = input.set?.data.goal;
        expect(whole?.timesUp ?? 0).toBeLessThanOrEqual(set ? set.timesUp : 3);
        expect(because.length).toBeGreaterThan(0);
      }),
      runs(300, 'cases'),
    );
  });
  it("GOAL-3 so is every step up or back, within the ward's ceilings", () => {
    fc.assert(
      fc.property(inputs, fc.constantFrom<'event' | 'misses'>('event', 'misses'), (input, after) => {
        const { whole } = goalToday(input);
        fc.pre(whole !== null);
        const up = stepUp(whole!, input)?.goal;
        const back = stepBack(whole!, after, input)?.goal;
        for (const one of [up, back]) expect(one === undefined || allowed(one.activity, input)).toBe(true);
        const { walkCeilingMetres, timesUpMost } = DEFAULT_RULES.activity;
        expect(up?.metres ?? 0).toBeLessThanOrEqual(Math.max(walkCeilingMetres.value, whole!.metres ?? 0));
        expect(up?.timesUp ?? 0).toBeLessThanOrEqual(Math.max(timesUpMost.value, whole!.timesUp));
        expect(back?.timesUp ?? 0).toBeLessThanOrEqual(whole!.timesUp);
        for (const one of [up, back]) expect(one).not.toEqual(whole);
      }),
      runs(300, 'cases'),
    );
  });
});

describe('over random histories', { timeout: patience }, () => {
  const easy = fc
    .tuple(fc.integer({ min: 0, max: 320 }), fc.constantFrom('edge-sit', 'stand', 'chair', 'walk'))
    .map(([q, what]): Told => session(q / 4, { activities: [what], effort: 2, metres: 30 }));
  const told = fc
    .tuple(histories, fc.array(easy, { maxLength: 12 }), fc.boolean())
    .map(([all, more, late]) => {
      const whole = [...all, ...more.map((one, i) => ({ ...one, id: `easy-${i}` }))];
      return late ? asRecorded(whole) : whole;
    });
  const at = fc.integer({ min: 0, max: 400 }).map((q) => hours(q / 4 + 1 / 60));

  function mayAsk(asked: Activity, view: StayView): string | null {
    const order = view.orders.find((o) => o.order.about === 'activity')?.order;
    const task = view.plan?.day.find((p) => p.task === TASKS[asked]);
    const { notch } = view.tier;
    // The notch says how many of the five worded stages are cleared; "may we start" comes before them.
    const cleared = STAGE_MEANINGS.slice(0, notch === null ? 0 : 1 + Math.round(notch * 5));
    if (view.scope.kind !== 'staged') return 'a goal outside the staged check';
    if (view.trust.state === 'not-known') return 'a goal though nothing is known';
    if (!isCleared(asked, new Set(cleared))) return `${asked} at ${view.tier.word}`;
    if (view.holds.some((h) => isHeld(asked, h.scope))) return `${asked} on hold`;
    if (order?.about === 'activity' && !isOrdered(asked, order.most)) return `${asked} beyond ${order.most}`;
    return task?.hold ? `${asked} though the plan holds it` : null;
  }
  it('GOAL-4 the goal on the board, and the step proposed, ask for nothing that the same row stops', () => {
    fc.assert(
      fc.property(told, at, (all, t) => {
        const { view } = evaluateStay(recordOf(all), ward, calendar, t);
        for (const one of [view.today.goal, view.proposal?.goal]) {
          expect(one ? mayAsk(one.activity, view) : null).toBeNull();
        }
        expect(view.proposal?.step === 'up' ? view.trust.state : 'current').toBe('current');
      }),
      runs(150),
    );
  });
});
