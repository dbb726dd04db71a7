/** Design rule 1: no restriction, by whomever and of whatever time, lowers the help of any task. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { holdScope, precaution, recordedTriggerKind } from '../../orders/values.ts';
import { attachmentKind } from '../../stays/values.ts';
import type { StayView } from '../view.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { check, hold, hours, order, recordOf, session, trigger, type Told } from './history.testkit.ts';
import { clearsMore, lesserAid, lessHelp, lessWatched } from './less-help.testkit.ts';
import { asRecorded, calm, histories } from './random-history.testkit.ts';
import { anyWard, type RandomWard } from './random-ward.testkit.ts';

const told = fc.oneof(histories, histories.map(asRecorded), calm, calm.map(asRecorded));
const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));
const when = fc.integer({ min: 0, max: 320 }).map((q) => q / 4);
const anyone = fc.constantFrom<Role>('aide', 'nurse', 'therapist', 'charge-nurse', 'records');
const helper = fc.constantFrom<Role>('aide', 'records', 'handling-coordinator');
const by = (entry: Told, role: Role): Told => ({ ...entry, role, id: 'added' });
const view = (all: readonly Told[], t: number, w: RandomWard) =>
  evaluateStay(recordOf(all), w.ward, w.calendar, t).view;

/** An arrival is never withdrawn or moved (refusal placement-stands): without one there is nothing to count from. */
const arrivalStands = (all: readonly Told[]): boolean =>
  all.every((x) => (x.payload as { target?: string }).target !== all[0]!.id);
/** After these the check belongs to the next move by the ward's own row, however late it was: rules/due.ts. */
const WAITS = ['return-from-surgery', 'return-from-dialysis', 'sedation', 'block-on', 'block-off'];
const waits = ({ payload }: Told): boolean => WAITS.includes((payload as { kind?: string }).kind ?? '');

/**
 * A check after the entry reaches as far as what the entry leaves cleared or allows, and so may renew
 * where without it the same check did not go far enough: rules/validity.ts.
 */
const checkedSince = (all: readonly Told[], extra: Told): boolean =>
  all.some((x) => {
    const { type } = x.payload as { type?: string };
    return (
      type === 'assessment-recorded' || (x.type === 'assessment-recorded' && (x.at ?? 0) >= (extra.at ?? 0))
    );
  });

/** Tier, may-start, trust and due: none of them freer, surer or later than without the entry. */
function lessCareful(all: readonly Told[], extra: Told, before: StayView, after: StayView): string[] {
  const out = clearsMore(before, after);
  if (!arrivalStands(all) || checkedSince(all, extra)) return out;
  return [...out, ...lessWatched(before, after).filter((less) => !(waits(extra) && less.startsWith('due')))];
}

const stages = ['upright', 'edge', 'stand', 'turn', 'walk'] as const;

/** Each asks for something of a person who is moved as before. */
const restrictions: Readonly<Record<string, fc.Arbitrary<Told>>> = {
  'a hold': fc
    .tuple(fc.constantFrom(...holdScope.options), when, anyone)
    .map(([scope, a, role]) =>
      by(
        { ...hold(a, scope, 200), payload: { ...(hold(a, scope, 200).payload as object), hold: 'hold-2' } },
        role,
      ),
    ),
  'a trigger': fc
    .tuple(fc.constantFrom(...recordedTriggerKind.options), when, anyone)
    .map(([kind, a, role]) => by(trigger(kind, a), role)),
  'the strictest order on activity': fc
    .tuple(when, anyone)
    .map(([a, role]) => by(order(a, { about: 'activity', most: 'bed' }), role)),
  'a precaution': fc
    .tuple(fc.constantFrom(...precaution.options), when, anyone)
    .map(([which, a, role]) => by(order(a, { about: 'precaution', precaution: which, on: true }), role)),
  'an attachment': fc
    .tuple(fc.constantFrom(...attachmentKind.options), fc.boolean(), when, anyone)
    .map(([kind, needsOwnPerson, a, role]) =>
      by(
        {
          type: 'attachment-added',
          at: a,
          payload: { attachment: 'added', kind, disconnects: 'nurse', needsOwnPerson },
        },
        role,
      ),
    ),
  'on own taken back': fc
    .tuple(when, anyone)
    .map(([a, role]) => by({ type: 'on-own-removed', at: a, payload: {} }, role)),
  'a session that went wrong': fc
    .tuple(fc.constantFrom('lowered-to-floor', 'near-fall', 'dizzy'), when, helper)
    .map(([event, a, role]) => by(session(a, { outcome: 'stopped', events: [event] }), role)),
};

/** Each changes how the person is moved, so that the aids may be of another kind: never fewer people, never a lesser aid. */
const losses: Readonly<Record<string, fc.Arbitrary<Told>>> = {
  'a leg that may not bear': fc
    .tuple(fc.constantFrom('left-leg', 'right-leg'), when, anyone)
    .map(([limb, a, role]) => by(order(a, { about: 'weight-bearing', limb, bears: 'none' }), role)),
  'a stage that somebody who may not free found not met': fc
    .tuple(fc.constantFrom(...stages), when, helper)
    .map(([stage, a, role]) => by(check(stage, a, { [stage]: { outcome: 'not-met' } }), role)),
  'help not waited for, seen by somebody who may not free': fc
    .tuple(fc.constantFrom('no', 'varies'), when, helper)
    .map(([waitsForHelp, a, role]) =>
      by(check('clear', a, {}, { cooperation: { waitsForHelp, followsInstructions: 'yes' } }), role),
    ),
};

describe('one more restriction', { timeout: patience }, () => {
  it.each(Object.entries(restrictions))('BOARD-4 %s never lowers the help of any task', (_, added) => {
    fc.assert(
      fc.property(told, added, at, anyWard, (all, extra, t, w) => {
        const [before, after] = [view(all, t, w), view([...all, extra], t, w)];
        expect([...lessHelp(before, after), ...lessCareful(all, extra, before, after)]).toEqual([]);
      }),
      runs(40),
    );
  });

  it.each(Object.entries(losses))('BOARD-4 %s never lowers the help of any task', (_, added) => {
    fc.assert(
      fc.property(told, added, at, anyWard, (all, extra, t, w) => {
        const [before, after] = [view(all, t, w), view([...all, extra], t, w)];
        expect([...lessHelp(before, after, lesserAid), ...lessCareful(all, extra, before, after)]).toEqual(
          [],
        );
      }),
      runs(40),
    );
  });

  it('BOARD-4 the stricter of two orders on one question never asks for less', () => {
    const activity = ['no-limit', 'walk', 'stand', 'chair', 'edge-of-bed', 'bed'];
    fc.assert(
      fc.property(
        told,
        fc.tuple(fc.constantFrom(...activity), fc.constantFrom(...activity), when, anyone),
        at,
        anyWard,
        (all, [a, b, since, role], t, w) => {
          const said = (most: string) => [...all, by(order(since, { about: 'activity', most }), role)];
          const [freer, stricter] = activity.indexOf(a) <= activity.indexOf(b) ? [a, b] : [b, a];
          expect(lessHelp(view(said(freer), t, w), view(said(stricter), t, w))).toEqual([]);
        },
      ),
      runs(60),
    );
  });
});
