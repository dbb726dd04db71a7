import { describe, expect, it } from 'vitest';
import { countBoard } from './counts.ts';
import { NOON, bedRow, holdRow, planFor, stayRow } from './rows.testkit.ts';

const withPlan = (over: object) => stayRow({ plan: { day: [planFor('bed-chair', over)], night: [] } });

describe('the counts of the wall’s head', () => {
  it('counts two people, and one person with a sling lift, once each', () => {
    const beds = [
      bedRow('1', withPlan({ people: 'two', aid: 'sling-lift' })),
      bedRow('2', withPlan({ people: 'one', aid: 'sling-lift' })),
      bedRow('3', withPlan({ people: 'one', aid: 'belt' })),
      bedRow('4', null),
    ];
    expect(countBoard(beds, false)).toMatchObject({ twoOrLift: 2, occupied: 3, empty: 1 });
  });

  it('counts a held bed as held and not as work for two', () => {
    const held = { ...withPlan({ people: 'two', hold: true }), holds: [holdRow()] };
    expect(countBoard([bedRow('1', held)], false)).toMatchObject({ twoOrLift: 0, onHold: 1 });
  });

  it('takes the night plan at night', () => {
    const stay = stayRow({
      plan: { day: [planFor('bed-chair')], night: [planFor('toilet', { people: 'two' })] },
    });
    expect(countBoard([bedRow('1', stay)], false).twoOrLift).toBe(0);
    expect(countBoard([bedRow('1', stay)], true).twoOrLift).toBe(1);
  });

  it('counts re-check, not known and overdue apart', () => {
    const trust = stayRow().trust;
    const beds = [
      bedRow('1', stayRow({ trust: { ...trust, state: 're-check' } })),
      bedRow('2', stayRow({ trust: { ...trust, state: 'not-known' } })),
      bedRow('3', stayRow({ due: { state: 'overdue', at: NOON, because: [] } })),
    ];
    expect(countBoard(beds, false)).toMatchObject({ reCheck: 1, notKnown: 1, overdue: 1 });
  });

  it('does not count a row that says nothing as if it had said "not known"', () => {
    const trust = { ...stayRow().trust, state: 'not-known' as const };
    const beds = [bedRow('1', stayRow({ trust, shown: 'ask-at-the-bedside', plan: null }))];
    expect(countBoard(beds, false)).toMatchObject({ notKnown: 0, occupied: 1 });
  });
});
