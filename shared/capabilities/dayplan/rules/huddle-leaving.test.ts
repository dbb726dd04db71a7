/** Who goes home soon and is short of the goal: users' research, huddle; else common practice, no source. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  notDone,
  session,
  stayOf,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { did, fails, usual } from '../../board/rules/signs.testkit.ts';
import { toIso } from '../../../kernel/times.ts';
import { huddleOf } from './huddle.ts';
import { boardOf } from './round.testkit.ts';

const leaves = (h: number): Told => ({
  type: 'leaving-expected',
  at: 1,
  id: 'leaves',
  payload: { at: toIso(hours(h)) },
});
const goal = (timesUp: number): Told => ({
  type: 'goal-set',
  at: 13.5,
  payload: { goal: { activity: 'walk', timesUp } },
});
/** Walks at home; here no more than in the chair on three whole ward days, the last over 86 h after the arrival. */
const belowUsual = [usual('walks'), did(20, 'stand'), did(44, 'edge-sit'), did(68, 'chair')];

const rowAt = (h: number, told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(h)).view;
const pageAt = (h: number, ...told: readonly Told[]) => huddleOf(boardOf(rowAt(h, told)), hours(h), calendar);
const wordsAt = (h: number, ...told: readonly Told[]) =>
  pageAt(h, ...told).leavingShort.map(({ words }) => words);

describe('who is spoken of before they leave', () => {
  it('given two days to the very hour, then the person is spoken of; a minute more, and not yet', () => {
    const walker = [check('walk', 1), goal(3)];
    expect(wordsAt(20, ...walker, leaves(68))).toHaveLength(1);
    expect(wordsAt(20, ...walker, leaves(68 + 1 / 60))).toEqual([]);
    expect(pageAt(20, ...walker, leaves(68 + 1 / 60)).leavingOthers).toBe(0);
  });

  it('given a goal that is reached by part, then how much of it, with the entry that says when they leave', () => {
    const told = [check('walk', 1), goal(3), session(15), session(16), leaves(40)];
    const { today } = rowAt(20, told);
    expect(today.because).not.toEqual([]);
    expect(pageAt(20, ...told).leavingShort).toMatchObject([
      {
        words: 'Leaves 26 Oct 09:00: 2 of 3 today',
        because: [
          { rule: 'huddle/leaving', facts: ['leaves'], words: 'Expected to leave 26 Oct 09:00' },
          ...today.because,
        ],
      },
    ]);
    expect(pageAt(20, ...told).leavingOthers).toBe(0);
  });

  it('given nobody has checked, so that there is no goal, then nobody is called short of one', () => {
    expect(pageAt(20, leaves(40))).toMatchObject({ leavingShort: [], leavingOthers: 1 });
  });
});

describe('who leaves below the usual way of moving', () => {
  it('given no goal, then they are spoken of all the same, with the days that say so', () => {
    const [line, ...others] = pageAt(87, ...belowUsual, leaves(100)).leavingShort;
    expect(others).toEqual([]);
    expect(line!.words).toBe('Leaves 28 Oct 21:00: nothing recorded today; below the usual way');
    expect(line!.because[0]!.facts).toEqual(['leaves']);
    expect(line!.because[1]).toMatchObject({
      rule: 'signs/below-baseline',
      facts: ['usual', 's-20', 's-44', 's-68'],
    });
  });

  it('given no goal and times up today, then how often they were up', () => {
    expect(wordsAt(87, ...belowUsual, did(86.2, 'chair'), did(86.6, 'chair'), leaves(100))).toEqual([
      'Leaves 28 Oct 21:00: 2 times up today; below the usual way',
    ]);
    expect(wordsAt(87, ...belowUsual, did(86.6, 'chair'), leaves(100))).toEqual([
      'Leaves 28 Oct 21:00: 1 time up today; below the usual way',
    ]);
  });

  it('given another sign of decline, then it is not said to be that one', () => {
    const lost = [check('walk', 15), goal(3), fails('turn', 17)];
    expect(rowAt(20, lost).signs.map(({ kind }) => kind)).toEqual(['stages-lost']);
    expect(wordsAt(20, ...lost, leaves(40))).toEqual(['Leaves 26 Oct 09:00: nothing recorded today']);
    const refused = [notDone(15, 'said-no'), notDone(16, 'said-no'), notDone(17, 'said-no')];
    expect(rowAt(20, refused).signs.map(({ kind }) => kind)).toEqual(['refusals']);
    expect(pageAt(20, ...refused, leaves(40))).toMatchObject({ leavingShort: [], leavingOthers: 1 });
  });
});
