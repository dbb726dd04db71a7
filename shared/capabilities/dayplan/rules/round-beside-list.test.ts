/** What stands beside the list of the round: whose visit it is, free beds, whom to ask first and who could go along. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../kernel/times.ts';
import { checked } from '../../assessments/rules/may-start-now.testkit.ts';
import { calendar, type Told } from '../../board/rules/history.testkit.ts';
import type { Hands } from './pairing.ts';
import { goalSet, NOON, roundFor, visitTaken } from './round-asked.testkit.ts';
import { roundOn } from './round.ts';
import { at, boardOf, MORNING, rowOf, staff } from './round.testkit.ts';

const on = (...names: readonly string[]): Hands =>
  new Map(names.map((name) => [staff(name), [{ from: at(0), to: at(9) }]]));
/** Helped to the edge of the bed, which the plan asks two for. */
const needsTwo = rowOf(NOON, goalSet('edge-sit'));

describe('a visit that is taken', () => {
  it('given somebody else goes, then it is beside the list with the entry that says so', () => {
    const { entries, notListed } = roundFor([rowOf(NOON, visitTaken('ben', 3.9, 4.5))], { asker: 'ana' });
    expect(entries).toEqual([]);
    expect(notListed[0]).toMatchObject({
      kind: 'taken',
      because: { rule: 'round/taken', facts: ['taken-by-ben'], words: 'Somebody goes: 11:54 to 12:30' },
      until: 'Once it is given back or over',
    });
  });

  it('given a booking of the asker for later, then it is beside the list until its time', () => {
    const { entries, notListed } = roundFor([rowOf(NOON, visitTaken('ana', 4.5, 5))], { asker: 'ana' });
    expect(entries).toEqual([]);
    expect(notListed[0]).toMatchObject({
      kind: 'booked',
      because: { rule: 'round/booked', facts: ['taken-by-ana'], words: 'Booked by you: 12:30 to 13:00' },
      until: 'From 12:30 on',
    });
  });

  it('given it begins in ten minutes, then it is the next thing to do', () => {
    const listed = (t: number) =>
      roundFor([rowOf(t, visitTaken('ana', 4.5, 5))], { t, asker: 'ana' }).entries.length;
    expect(listed(at(4.5) - 10 * MINUTE - 1)).toBe(0);
    expect(listed(at(4.5) - 10 * MINUTE)).toBe(1);
  });
});

describe('a bed with nobody in it', () => {
  it('is named beside the list, and no other bed is', () => {
    expect(roundFor([rowOf(NOON), null]).empty).toEqual([{ bed: 'bed-2', label: '2' }]);
    expect(roundFor([rowOf(NOON)]).empty).toEqual([]);
  });
});

describe('whom to ask before starting', () => {
  const askFirst = (...told: readonly Told[]) => roundFor([rowOf(NOON, ...told)]).entries[0]!.askFirst;

  it('given no reading was taken, then a nurse is asked and it says what to take', () => {
    expect(askFirst()).toEqual([
      'to take first: blood pressure, heart rate, oxygen saturation, breathing rate, temperature, pain',
    ]);
  });

  it('given every sign was taken and is well, then nobody has to be asked', () => {
    expect(askFirst(checked(MORNING + 1))).toEqual([]);
  });
});

describe('who could go along', () => {
  it('given two are needed and many are on, then four are offered and no more', () => {
    const hands = on('ana', 'ben', 'cas', 'dan', 'eve', 'fay');
    const [line] = roundFor([needsTwo], { asker: 'ana', hands }).entries;
    expect(line!.move.people).toBe('two');
    expect(line!.pairs.map(({ second }) => second)).toEqual(['ben', 'cas', 'dan', 'eve']);
  });

  it('given two are needed and nobody knows who is on, then nobody is offered', () => {
    expect(roundFor([needsTwo], { asker: 'ana' }).entries[0]!.pairs).toEqual([]);
  });
});

describe('the list as it is looked at again later', () => {
  const again = (hands: Hands | null) =>
    roundOn({ board: boardOf(needsTwo), t: NOON, calendar, asker: staff('ana'), hands });

  it('given who is on, then it is the same list as for those people', () => {
    const hands = on('ana', 'ben');
    expect(again(hands)).toEqual(roundFor([needsTwo], { asker: 'ana', hands, on: new Set(hands.keys()) }));
    expect(again(hands).entries[0]!.who).toBe('Two people');
    expect(again(on('ana')).entries[0]!.who).toBe('Two people; only 1 named for this shift');
  });

  it('given nobody is named, then who is on is not recorded', () => {
    expect(again(null).entries[0]!.who).toBe('Two people; who is on is not recorded');
  });
});
