/** Signs of decline and of readiness in the round: a reason with its facts, never an alarm. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, notDone, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { did, fails, usual } from '../../board/rules/signs.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { roundOf } from './round.ts';
import { at, boardOf, MORNING } from './round.testkit.ts';

const LOSING = DEFAULT_RULES.round.losingPoints.value;
const weighed: Told = { type: 'weight-recorded', at: 0, payload: { weight: { kg: 70, how: 'measured' } } };
const roundAt = (h: number, ...told: readonly Told[]) => {
  const t = at(h);
  const { view } = evaluateStay(stayOf(weighed, ...told), ward, calendar, t);
  return roundOf({ board: boardOf(view), t, calendar, asker: null, on: null });
};
const reasonOf = (rule: string, h: number, ...told: readonly Told[]) =>
  roundAt(h, ...told).entries[0]?.reasons.find((r) => r.rule === `round/${rule}`);

describe('a sign in the round', () => {
  it('given two stages lost within a day, then that is a reason with both checks, and it counts', () => {
    const walked: Told = { ...check('walk', MORNING + 1), id: 'walked' };
    const lost = reasonOf('stages-lost', 4, walked, fails('turn', MORNING + 3, { id: 'lost' }))!;
    expect(lost.facts).toEqual(['walked', 'lost']);
    expect(lost.words).toMatch(/^2 stages less within 24 h/);
    expect(lost.points).toBe(LOSING);
  });

  it('given the third day below the usual way, then that is a reason, and it counts', () => {
    const days = [0, 1, 2, 3].map((d): Told => ({ ...check('edge', MORNING + 1 + d * 24), id: `day-${d}` }));
    const below = reasonOf('below-baseline', 4 + 3 * 24, usual('walks'), ...days)!;
    expect(below.facts.length).toBeGreaterThan(0);
    expect(below.points).toBe(LOSING);
  });

  it('given easy sessions and nothing open, then ready for more is told and moves nobody up', () => {
    const turned: Told = { ...check('turn', MORNING + 1), id: 'turned' };
    const ready = reasonOf('ready', 4, turned, did(MORNING + 1.5, 'chair'), did(MORNING + 2, 'chair'))!;
    expect(ready.words).toContain('ready to check the next stage, Walk');
    expect(ready.facts).toContain('turned');
    expect(ready.points).toBe(0);
  });

  it('given three refusals in a row, then somebody talks with them first', () => {
    const noes = [1, 1.5, 2].map((h): Told => ({ ...notDone(MORNING + h, 'said-no'), id: `no-${h}` }));
    const { entries, notListed } = roundAt(6, check('walk', MORNING), ...noes);
    expect(entries).toEqual([]);
    expect(notListed[0]).toMatchObject({
      kind: 'talk-first',
      because: { facts: ['no-1', 'no-1.5', 'no-2'] },
    });
  });
});
