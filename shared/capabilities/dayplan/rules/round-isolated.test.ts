/** Whoever is in isolation is seen last on the round, and never left out for it. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { check, session, type Told } from '../../board/rules/history.testkit.ts';
import { NOON, roundFor } from './round-asked.testkit.ts';
import { at, MORNING, rowOf } from './round.testkit.ts';

const isolated: Told = { type: 'isolation-set', at: MORNING, payload: { on: true } };
const LAST = 'isolation is seen last on the round';

describe('isolation on the round', () => {
  it('given longer awake than the other, then still last, and it says from when not any more', () => {
    const { entries } = roundFor([rowOf(NOON, isolated), rowOf(NOON, session(MORNING + 2))]);
    expect(entries.map((e) => e.label)).toEqual(['2', '1']);
    expect(entries[1]!.notHigher).toBe(`After bed 2: ${LAST}`);
    expect(entries[1]!.changes).toBe('Not last any more from 15:30 on');
    expect(entries[0]!.changes).toBe('A time up recorded takes them off the list for a while');
  });

  it('given those hours end in the night, then after how many of them awake, and no time', () => {
    const t = at(12.5);
    const evening = rowOf(t, isolated, check('walk', MORNING + 9.5), session(MORNING + 10));
    const justThen = rowOf(at(9), isolated, check('walk', MORNING + 4.5), session(MORNING + 5));
    for (const [row, now] of [
      [evening, t],
      [justThen, at(9)],
    ] as const) {
      expect(roundFor([row], { t: now }).entries.map((e) => e.changes)).toEqual([
        'Not last any more after 8 h awake without getting up',
      ]);
    }
  });

  it('given eight hours awake, then not last from that very time on', () => {
    const order = (t: number) =>
      roundFor([rowOf(t, isolated), rowOf(t, session(MORNING + 6))], { t }).entries.map((e) => e.label);
    expect(order(at(7.5) - 1)).toEqual(['2', '1']);
    expect(order(at(7.5))).toEqual(['1', '2']);
  });

  describe('given the ward day before is known', () => {
    const t = at(4 + 48);
    const checked = check('walk', MORNING + 47.5);
    const wasUp = session(MORNING + 30);
    const other = rowOf(t, wasUp, checked, session(MORNING + 47.9));
    const order = (...yesterday: readonly Told[]) =>
      roundFor([rowOf(t, isolated, ...yesterday, checked), other], { t }).entries.map((e) => e.label);

    it('and they were up on it, then they are seen last', () => {
      expect(order(wasUp)).toEqual(['2', '1']);
    });
    it('and nothing was recorded on it, then they are not', () => {
      expect(order()).toEqual(['1', '2']);
    });
    it('and exercise in bed was all, then they are not', () => {
      expect(order(session(MORNING + 30, { activities: ['bed-exercise'] }))).toEqual(['1', '2']);
    });
  });
});
