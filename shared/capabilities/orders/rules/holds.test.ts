/** Holds: design, section 1 (hold) and rule 2. Review within 1 h of an aide's hold: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { hold, hours, stayOf, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { holdsInForce } from './holds.ts';

const placed = { ...hold(1, 'walking', 10), id: 'p' };
const ended = (at: number, role: Told['role'] = 'nurse', placedBy = 'p'): Told => ({
  type: 'hold-ended',
  at,
  role,
  payload: { hold: 'hold-1', placedBy },
});
const renewed = (at: number, review: number, role: Told['role'] = 'nurse'): Told => ({
  type: 'hold-renewed',
  at,
  role,
  payload: { hold: 'hold-1', reviewAt: toIso(hours(review)) },
});
function inForce(at: number, ...told: readonly Told[]) {
  const changes: number[] = [];
  const { facts } = effectiveFacts(stayOf(...told));
  const upTo = facts.filter((f) => f.occurred <= hours(at));
  return { holds: holdsInForce(upTo, hours(at), DEFAULT_RULES, (when) => changes.push(when)), changes };
}

describe('a hold', () => {
  it('HOLD-1 whose review time has passed frees nobody: it reads review due', () => {
    expect(inForce(9, placed).holds).toMatchObject([{ scope: 'walking', reviewDue: false }]);
    const due = inForce(10, placed);
    expect(due.holds).toMatchObject([{ scope: 'walking', reviewDue: true, reviewAt: hours(10) }]);
    expect(inForce(9, placed).changes).toEqual([hours(10)]);
  });
  it('is ended by a qualified person', () => {
    expect(inForce(3, placed, ended(2)).holds).toEqual([]);
  });
  it('HOLD-1 is not ended by an aide, nor by an end that names another placing, nor by one from before', () => {
    expect(inForce(3, placed, ended(2, 'aide')).holds).toHaveLength(1);
    expect(inForce(3, placed, ended(2, 'nurse', 'other')).holds).toHaveLength(1);
    expect(inForce(3, placed, ended(0.5)).holds).toHaveLength(1);
  });
  it('goes on when a renewal occurred at or after its end', () => {
    expect(inForce(3, placed, ended(2), renewed(2, 12)).holds).toMatchObject([{ reviewAt: hours(12) }]);
  });
  it('is renewed by a qualified person only; anyone else leaves the review time as it was', () => {
    expect(inForce(3, placed, renewed(2, 30)).holds).toMatchObject([{ reviewAt: hours(30) }]);
    expect(inForce(3, placed, renewed(2, 30, 'aide')).holds).toMatchObject([{ reviewAt: hours(10) }]);
  });
  it.each([
    ['out-of-bed', 25],
    ['raising-the-back', 25],
    ['all-including-turning', 25],
    ['walking', 7 * 24],
    ['standing', 7 * 24],
  ])('on %s for a week: keeping somebody in bed it is reviewed within the ward’s hours', (scope, at) => {
    // Bed rest is reviewed daily: users-job.md 3a. The ward's own hours for a review, 24 unless it set others.
    const week = hold(1, scope, 7 * 24);
    expect(inForce(2, week).holds).toMatchObject([{ reviewAt: hours(at), reviewDue: false }]);
    expect(inForce(30, week).holds[0]!.reviewDue).toBe(at < 30);
    const again = inForce(30, week, renewed(20, 7 * 24)).holds[0]!;
    expect(again).toMatchObject({ reviewAt: hours(at === 25 ? 44 : 7 * 24), reviewDue: false });
  });
  it('placed by an aide is reviewed within an hour', () => {
    const byAide = hold(1, 'out-of-bed', 10, { role: 'aide' });
    expect(inForce(1.5, byAide).holds).toMatchObject([{ reviewAt: hours(2), reviewDue: false }]);
  });
  it('placed twice under one id keeps the wider scope', () => {
    const wide = hold(0.5, 'out-of-bed', 10);
    expect(inForce(3, wide, placed).holds).toMatchObject([{ scope: 'out-of-bed' }]);
  });
  it('placed by an aide keeps an earlier review that the aide asked for, and one by a nurse the time asked', () => {
    expect(inForce(1.2, hold(1, 'walking', 1.25, { role: 'aide' })).holds).toMatchObject([
      { reviewAt: hours(1.25) },
    ]);
    expect(inForce(1.5, hold(1, 'walking', 30)).holds).toMatchObject([{ reviewAt: hours(30) }]);
  });
  it('reads review due from the very instant, and stands all the same', () => {
    const ms = 1 / 3_600_000;
    expect(inForce(10 - ms, placed).holds).toMatchObject([{ scope: 'walking', reviewDue: false }]);
    expect(inForce(10, placed).holds).toMatchObject([{ scope: 'walking', reviewDue: true }]);
    expect(inForce(500, placed).holds).toMatchObject([{ scope: 'walking', reviewDue: true }]);
  });
  it('placed anew after its end has the new scope alone', () => {
    const wide = { ...hold(0.5, 'out-of-bed', 10), id: 'wide' };
    const again = hold(3, 'walking', 10);
    expect(inForce(4, wide, ended(2, 'nurse', 'wide'), again).holds).toMatchObject([{ scope: 'walking' }]);
    expect(inForce(4, placed, hold(3, 'out-of-bed', 20)).holds).toMatchObject([
      { scope: 'out-of-bed', reviewAt: hours(20), placedAt: hours(3) },
    ]);
  });
  it('goes on when anyone renews it after its end, and a renewal of nothing is nothing', () => {
    expect(inForce(4, placed, ended(2), renewed(3, 30, 'aide')).holds).toMatchObject([
      { reviewAt: hours(10) },
    ]);
    expect(inForce(4, renewed(3, 30)).holds).toEqual([]);
    expect(inForce(4, ended(3)).holds).toEqual([]);
  });
  it('says who owns it, when and by which entry it was placed, and its note', () => {
    const { payload, ...rest } = placed;
    const noted = { ...rest, payload: { ...(payload as object), note: { ref: 'text-1' } } };
    expect(inForce(3, noted).holds).toEqual([
      {
        hold: 'hold-1',
        scope: 'walking',
        reason: 'waiting-for-review',
        owner: 'staff-nurse',
        placedAt: hours(1),
        reviewAt: hours(10),
        reviewDue: false,
        event: 'p',
        note: { ref: 'text-1' },
      },
    ]);
    expect(inForce(3, placed).holds[0]!.note).toBeNull();
  });
  it('of several are told the widest first, of equals by their id', () => {
    const other = (id: string, scope: string): Told => {
      const { payload, ...rest } = hold(1, scope, 10);
      return { ...rest, payload: { ...(payload as object), hold: id } };
    };
    const told = [
      other('b', 'walking'),
      other('a', 'walking'),
      other('c', 'out-of-bed'),
      other('d', 'standing'),
    ];
    expect(inForce(3, ...told).holds.map((h) => h.hold)).toEqual(['c', 'd', 'a', 'b']);
    expect(inForce(3, ...told.toReversed()).holds.map((h) => h.hold)).toEqual(['c', 'd', 'a', 'b']);
    expect(inForce(3, ...told).changes).toEqual(Array.from({ length: 4 }, () => hours(10)));
  });
});
