/** Random entries for property tests, each of which speaks of no other. */
import * as fc from 'fast-check';
import { toIso } from '../../../kernel/times.ts';
import { recordedTriggerKind } from '../../orders/values.ts';
import { hold, hours, notDone, onOwn, order, session, trigger, type Told } from './history.testkit.ts';
import { checks, when } from './random-checks.testkit.ts';

const sessions = fc.oneof(
  fc
    .record({
      outcome: fc.constantFrom('done', 'part', 'stopped'),
      activity: fc.constantFrom('back-raised', 'edge-sit', 'chair', 'walk', 'toilet'),
      metres: fc.option(fc.integer({ min: 1, max: 60 }), { nil: undefined }),
      events: fc.subarray(['dizzy', 'lowered-to-floor', 'pain'], { maxLength: 1 }),
      firstTimeUp: fc.boolean(),
      minutes: fc.integer({ min: 0, max: 40 }),
      left: fc.constantFrom(undefined, 'bed', 'chair', 'toilet-with-staff'),
      backToBed: fc.option(when, { nil: undefined }),
      saturation: fc.option(fc.constantFrom(80, 96), { nil: undefined }),
      at: when,
    })
    .map(({ activity, at, minutes, metres, left, backToBed, saturation, ...rest }) =>
      session(at, {
        ...rest,
        ...(left ? { left } : {}),
        ...(backToBed === undefined ? {} : { backToBedBy: toIso(hours(backToBed)) }),
        activities: [activity],
        endedAt: toIso(hours(at + minutes / 60)),
        ...(metres === undefined ? {} : { metres }),
        ...(saturation === undefined
          ? {}
          : { readings: [{ kind: 'oxygen', saturation, at: toIso(hours(at)) }] }),
      }),
    ),
  when.map((at) => notDone(at, 'said-no')),
);

const orders = fc
  .record({
    at: when,
    about: fc.constantFrom(
      { about: 'activity', most: 'bed' },
      { about: 'activity', most: 'chair' },
      { about: 'activity', most: 'no-limit' },
      { about: 'weight-bearing', limb: 'left-leg', bears: 'none' },
      { about: 'weight-bearing', limb: 'left-leg', bears: 'unrestricted' },
      { about: 'precaution', precaution: 'hip', on: true },
      { about: 'precaution', precaution: 'hip', on: false },
      { about: 'precaution', precaution: 'spine', on: true },
      { about: 'oxygen-target', low: 88, high: 92 },
    ),
  })
  .map(({ at, about }) => order(at, about));

const visit = fc.constantFrom('visit-1', 'visit-2');
const visits = fc.oneof(
  fc.tuple(visit, when, fc.integer({ min: 1, max: 8 })).map(([id, from, quarters]) => ({
    type: 'visit-taken',
    payload: {
      visit: id,
      by: 'staff-aide',
      from: toIso(hours(from)),
      until: toIso(hours(from + quarters / 4)),
    },
  })),
  visit.map((id) => ({ type: 'visit-handed-over', payload: { visit: id, to: 'staff-nurse' } })),
  visit.map((id) => ({ type: 'visit-given-back', payload: { visit: id, reason: 'called-away' } })),
);
/** What stands beside the plan and changes none of it. */
export const besideThePlan: fc.Arbitrary<Told> = fc
  .tuple(
    fc.oneof(
      fc.boolean().map((on) => ({ type: 'isolation-set', payload: { on } })),
      fc.option(when).map((h) => ({
        type: 'leaving-expected',
        payload: { at: h === null ? null : toIso(hours(h)) },
      })),
      fc
        .constantFrom({}, { line: { ref: 'text-2' } })
        .map((payload) => ({ type: 'therapist-line-set', payload })),
      visits,
    ),
    when,
  )
  .map(([one, at]): Told => ({ ...one, at }));

/** One entry that speaks of no other. */
export const anyEntry: fc.Arbitrary<Told> = fc.oneof(
  { weight: 4, arbitrary: checks },
  { weight: 3, arbitrary: sessions },
  { weight: 2, arbitrary: orders },
  {
    weight: 3,
    arbitrary: fc
      .tuple(
        fc.oneof(
          fc.constantFrom('fall', 'sedation', 'return-from-surgery', 'faint', 'asked-to-look-again'),
          fc.constantFrom(...recordedTriggerKind.options),
        ),
        when,
      )
      .map(([kind, at]) => trigger(kind, at)),
  },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom('walking', 'out-of-bed', 'all-including-turning'), when, when)
      .map(([scope, at, review]) => hold(at, scope, review)),
  },
  when.map((at) => ({
    type: 'hold-renewed',
    at,
    payload: { hold: 'hold-1', reviewAt: toIso(hours(at + 6)) },
  })),
  when.map((at) => onOwn(at)),
  when.map((at) => ({ type: 'on-own-removed', at, payload: {} })),
  when.map((at) => ({ type: 'seen-walking', at, payload: { walkingSupport: 'frame' } })),
  when.map((at) => ({
    type: 'attachment-added',
    at,
    payload: { attachment: 'drain', kind: 'chest-drain', disconnects: 'nurse', needsOwnPerson: true },
  })),
  when.map((at) => ({
    type: 'attachment-removed',
    at,
    payload: { attachment: 'drain', kind: 'chest-drain' },
  })),
  fc
    .tuple(when, fc.integer({ min: 40, max: 180 }), fc.constantFrom('measured', 'estimated'))
    .map(([at, kg, how]): Told => ({ type: 'weight-recorded', at, payload: { weight: { kg, how } } })),
  fc.tuple(when, fc.constantFrom('walks', 'wheelchair', 'bed')).map(([at, moves]): Told => ({
    type: 'usual-way-recorded',
    at,
    payload: { usual: { moves, transfers: 'alone', stairs: 'no' } },
  })),
  when.map((at) => ({ type: 'went-off-ward', at, payload: { reason: 'test' } })),
  when.map((at) => ({ type: 'came-back', at, payload: {} })),
  when.map((at) => ({ type: 'asleep-seen', at, payload: {} })),
  fc
    .tuple(when, fc.constantFrom('staged', 'comfort'))
    .map(([at, scope]): Told => ({ type: 'scope-set', at, payload: { scope } })),
  when.map((at) => ({ type: 'goal-set', at, payload: { goal: { activity: 'chair', timesUp: 2 } } })),
  fc.tuple(when, fc.integer({ min: 0, max: 20 }), fc.boolean()).map(([at, score, anyThree]): Told => ({
    type: 'early-warning-recorded',
    at,
    payload: { score, anyThree, scale: 1 },
  })),
  fc
    .tuple(when, fc.constantFrom(85, 95), fc.constantFrom(-3, 0, 3))
    .map(([at, saturation, sedation]): Told => ({
      type: 'critical-care-signs-recorded',
      at,
      payload: { saturation, sedation, bars: [] },
    })),
  fc
    .tuple(when, fc.boolean())
    .map(([at, on]): Told => ({ type: 'walking-measures-switched', at, payload: { on } })),
  when.map((at) => ({
    type: 'walking-measured',
    at,
    payload: { measure: { kind: 'up-and-go', seconds: 14, support: 'frame' } },
  })),
  besideThePlan,
);
