/** The round over random wards: everybody once, the same order for the same facts, and no hold ever lists anybody. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { hold, hours, recordOf, type Told } from '../../board/rules/history.testkit.ts';
import { asRecorded, calm, histories } from '../../board/rules/random-history.testkit.ts';
import { anyWard, type RandomWard } from '../../board/rules/random-ward.testkit.ts';
import { gateOf } from './round-gates.ts';
import { roundOf } from './round.ts';
import { boardOf, known } from './round.testkit.ts';
import { rulesOf } from '../../wards/rules/ward-state.ts';

const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));
const wellKnown = calm.map((all): readonly Told[] => [all[0]!, ...known, ...all.slice(1)]);
const stays = fc.array(fc.oneof(histories.map(asRecorded), calm, wellKnown), { minLength: 1, maxLength: 6 });
const roundAt = (all: readonly (readonly Told[])[], t: number, { ward, calendar }: RandomWard) => {
  const board = boardOf(...all.map((told) => evaluateStay(recordOf(told), ward, calendar, t).view));
  return { board, calendar, rules: rulesOf(ward), t };
};

describe('the round of any ward', { timeout: patience }, () => {
  it('has everybody in a bed once, on the list or beside it, in the same order for the same facts', () => {
    let listed = 0;
    fc.assert(
      fc.property(stays, at, anyWard, (all, t, w) => {
        const asked = { ...roundAt(all, t, w), asker: null, on: null };
        const { entries, notListed, empty } = roundOf(asked);
        listed += entries.length;
        const labels = [...entries, ...notListed].map((e) => e.label).toSorted();
        expect(labels).toEqual(all.map((_, i) => String(i + 1)).toSorted());
        expect(empty).toEqual([]);
        expect(roundOf(asked)).toEqual({ entries, notListed, empty });
        for (const { reasons, points } of entries) {
          expect(reasons.length).toBeGreaterThan(0);
          expect(points).toBeCloseTo(
            reasons.reduce((sum, r) => sum + r.points, 0),
            5,
          );
        }
      }),
      runs(60),
    );
    expect(listed).toBeGreaterThan(0);
  });

  it('lists nobody who meets a gate, whatever the weights', () => {
    fc.assert(
      fc.property(stays, at, anyWard, fc.integer({ min: 0, max: 1_000 }), (all, t, w, weight) => {
        const asked = roundAt(all, t, w);
        const { round: own } = asked.rules;
        const rules = {
          ...asked.rules,
          round: { ...own, awakePoints: { ...own.awakePoints, value: weight } },
        };
        const { entries } = roundOf({ ...asked, rules, asker: null, on: null });
        const night = asked.calendar.night(t);
        for (const { label } of entries) {
          const { stay } = asked.board.beds.find((b) => b.label === label)!;
          expect(gateOf(stay!, { t, night, rules, say: String })).toBeNull();
        }
      }),
      runs(60),
    );
  });

  it('never lists somebody because of one more hold', () => {
    const scope = fc.constantFrom('walking', 'standing', 'out-of-bed', 'all-including-turning');
    fc.assert(
      fc.property(fc.oneof(wellKnown, histories), scope, at, anyWard, (told, of, t, w) => {
        const extra: Told = {
          ...hold(0, of, 200),
          at: (t - hours(0)) / 3_600_000 - 0.01,
          id: 'added',
          payload: { ...(hold(0, of, 200).payload as object), hold: 'hold-added' },
        };
        const listed = (all: readonly Told[]) =>
          roundOf({ ...roundAt([all], t, w), asker: null, on: null }).entries.length;
        expect(listed([...told, extra])).toBeLessThanOrEqual(listed(told));
      }),
      runs(100),
    );
  });
});
