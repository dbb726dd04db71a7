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
  it('placed by an aide is reviewed within an hour', () => {
    const byAide = hold(1, 'out-of-bed', 10, { role: 'aide' });
    expect(inForce(1.5, byAide).holds).toMatchObject([{ reviewAt: hours(2), reviewDue: false }]);
  });
  it('placed twice under one id keeps the wider scope', () => {
    const wide = hold(0.5, 'out-of-bed', 10);
    expect(inForce(3, wide, placed).holds).toMatchObject([{ scope: 'out-of-bed' }]);
  });
});
