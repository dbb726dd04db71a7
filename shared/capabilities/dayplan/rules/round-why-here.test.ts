/** What each line of the round says of its place: the points, why after the one before, and what would change it. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { session, type Told } from '../../board/rules/history.testkit.ts';
import type { StayView } from '../../board/view.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { goalSet, NOON, roundFor, visitTaken } from './round-asked.testkit.ts';
import { at, MORNING, rowOf } from './round.testkit.ts';

const walked = (h: number): Told => session(MORNING + h);
const mealInBed = (h: number): Told =>
  session(MORNING + h, { occasion: 'meal', activities: ['back-raised'] });
const leavesAt = (h: number): Told => ({
  type: 'leaving-expected',
  at: MORNING,
  payload: { at: toIso(at(h)) },
});
const whyAfter = (stays: readonly StayView[], more: Parameters<typeof roundFor>[1] = {}) =>
  roundFor(stays, more).entries.map((e) => [e.label, e.notHigher]);
const changes = (...told: readonly Told[]) => roundFor([rowOf(NOON, ...told)]).entries[0]!.changes;

describe('the points of a line', () => {
  it('given four and a half hours awake and nothing recorded, then they are the sum of what is told', () => {
    const { reasons, points } = roundFor([rowOf(NOON)]).entries[0]!;
    expect(reasons.map((r) => r.points)).toEqual([12.7, 6.7]);
    expect(points).toBe(19.4);
  });
});

describe('why somebody comes after the one before', () => {
  it('given two who differ in how long they are awake and by less in the goal, then it names the hours', () => {
    expect(whyAfter([rowOf(NOON, walked(2)), rowOf(NOON)])).toEqual([
      ['2', null],
      ['1', 'After bed 2: Not up for 4 h awake'],
    ]);
  });

  it('given two awake as long of whom one leaves today, then it names the leaving, though the hours count more', () => {
    const t = at(7);
    const leaves = rowOf(t, leavesAt(30));
    const [first] = roundFor([leaves], { t }).entries;
    expect(first!.reasons[0]!.rule).toBe('round/awake');
    expect(whyAfter([rowOf(t), leaves], { t })).toEqual([
      ['2', null],
      ['1', 'After bed 2: Leaving 14:00'],
    ]);
  });

  it('given one awake far longer who leaves today, then the hours make most of the difference and are named', () => {
    const t = at(7);
    const long = rowOf(t, goalSet('walk', 1), leavesAt(30));
    const short = rowOf(t, goalSet('walk', 4), walked(4));
    expect(whyAfter([short, long], { t })).toEqual([
      ['2', null],
      ['1', 'After bed 2: Not up for 7 h awake'],
    ]);
  });

  it('given two alike of whom one has just eaten, then more stands against that one', () => {
    const ate = rowOf(NOON, mealInBed(3.5));
    const same = rowOf(NOON, session(MORNING + 3.5, { activities: ['back-raised'] }));
    expect(whyAfter([ate, same])).toEqual([
      ['2', null],
      ['1', 'After bed 2: more stands against this one now'],
    ]);
  });

  it("given the visit before is the asker's own, then that is why", () => {
    const mine = rowOf(NOON, visitTaken('ana', 3.9, 4.5));
    expect(whyAfter([rowOf(NOON), mine], { asker: 'ana' })).toEqual([
      ['2', null],
      ['1', 'After bed 2: that visit is yours'],
    ]);
  });

  it('given two visits that are both of the asker, then not that but their rank is why', () => {
    const mine = rowOf(NOON, visitTaken('ana', 3.9, 4.5));
    expect(whyAfter([mine, mine], { asker: 'ana' })).toEqual([
      ['1', null],
      ['2', 'After bed 1: the same rank, in the order of beds'],
    ]);
  });
});

describe('what would change the place', () => {
  it('given times up that are still asked for, then a time up recorded', () => {
    expect(changes()).toBe('A time up recorded takes them off the list for a while');
  });

  it("given today's goal is met, then the same, and it says that the goal is met", () => {
    expect(changes(goalSet('walk', 1), walked(2))).toBe(
      "Today's goal is met; a time up recorded takes them off the list for a while",
    );
  });

  it('given somebody was up and has eaten since, then they move up once the later of the two has passed', () => {
    expect(changes(walked(2.75))).toBe('Moves up from 12:45 on');
    expect(changes(mealInBed(3.5))).toBe('Moves up from 12:30 on');
    expect(changes(walked(2.75), mealInBed(3.5))).toBe('Moves up from 12:45 on');
    expect(changes(walked(2.25), mealInBed(3.5))).toBe('Moves up from 12:30 on');
  });

  it('given a ward where a meal makes nobody wait, then nobody moves up after it', () => {
    const { round } = DEFAULT_RULES;
    const rules = { ...DEFAULT_RULES, round: { ...round, mealPoints: { ...round.mealPoints, value: 0 } } };
    const [line] = roundFor([rowOf(NOON, mealInBed(3.5))], { rules }).entries;
    expect(line!.reasons.map((r) => r.words)).toContain('Ate 11:30');
    expect(line!.changes).toBe('A time up recorded takes them off the list for a while');
  });
});
