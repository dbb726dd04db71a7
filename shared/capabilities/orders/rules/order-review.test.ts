/** Bed rest is reviewed daily (users-job.md 3a): an order of bed that nobody renewed is told, and frees nobody. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hours, order, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { NOT_REVIEWED } from './order-review.ts';

const bed = (at: number, most = 'bed'): Told => ({ ...order(at, { about: 'activity', most }), id: `o${at}` });
const view = (at: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(at));
const said = (at: number, ...told: readonly Told[]) =>
  view(at, ...told).view.cautions.filter((c) => c.because.some((b) => b.rule === NOT_REVIEWED));

describe('given an order to stay in bed', () => {
  // The ward day begins at 07:00; the tests' hours count from 18:00 the evening before, in the night of 25 hours.
  it('when the next ward day begins, it is said not to be reviewed, with its entry', () => {
    expect(said(13.9, bed(1))).toEqual([]);
    expect(said(14, bed(1))).toMatchObject([
      {
        words: 'Order to stay in bed since 24 Oct 19:00: not reviewed today; ask whether it still applies',
        because: [{ facts: ['o1'] }],
      },
    ]);
    expect(view(13.9, bed(1)).nextChange).toBeLessThanOrEqual(hours(14));
  });
  it('given at the very moment the ward day begins, it is of that day', () => {
    expect(said(14, bed(14))).toEqual([]);
    expect(said(38, bed(14))).toHaveLength(1);
  });
  it('renewed in the ward day, it is said no more until the next', () => {
    expect(said(16, bed(1), bed(15))).toEqual([]);
    expect(said(38, bed(1), bed(15))).toHaveLength(1);
  });
  it('not reviewed, it stops as much as before', () => {
    const stopped = (at: number) =>
      view(at, { ...check('walk', 0.5) }, bed(1))
        .view.plan!.day.filter((p) => p.hold)
        .map((p) => p.task);
    expect(stopped(40)).toEqual(stopped(2));
    expect(stopped(40)).toContain('bed-chair');
  });
  it('replaced by one that lets the person up, or under a comfort plan, nothing is said', () => {
    expect(said(16, bed(1), bed(2, 'chair'))).toEqual([]);
    expect(said(16, bed(1, 'chair'))).toEqual([]);
    expect(said(16, bed(1), { type: 'scope-set', at: 2, payload: { scope: 'comfort' } })).toEqual([]);
  });
});
