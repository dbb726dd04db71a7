/** Whom to see next. Ours, practice: no published order of a round is known to us. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import {
  calendar,
  check,
  hold,
  hours,
  notDone,
  order,
  session,
  trigger,
  type Told,
} from '../../board/rules/history.testkit.ts';
import type { StayView } from '../../board/view.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { roundOf } from './round.ts';
import { at, boardOf, MORNING, rowOf, staff } from './round.testkit.ts';

const T = at(4);
const round = (stays: readonly (StayView | null)[], t = T, asker: string | null = null) =>
  roundOf({ board: boardOf(...stays), t, calendar, asker: asker === null ? null : staff(asker), on: null });
const orderOf = (...of: Parameters<typeof round>) => round(...of).entries.map((e) => e.label);
const gateOf = (told: readonly Told[], t = T) => {
  const { entries, notListed } = round([rowOf(t, ...told)], t);
  expect(entries.length + notListed.length).toBe(1);
  return notListed[0] ?? null;
};
const walked = (h: number, more: Record<string, unknown> = {}) => session(MORNING + h, more);
const taken = (by: string, from: number): Told => ({
  type: 'visit-taken',
  at: MORNING + from,
  role: 'aide',
  staff: by,
  payload: { visit: 'v', by, from: toIso(at(from)), until: toIso(at(from + 0.5)) },
});

describe('who may be on the round', () => {
  it('is everybody present, known, free to get up and with a plan that holds', () => {
    expect(gateOf([])).toBeNull();
    expect(orderOf([null, rowOf(T)])).toEqual(['2']);
  });
  it.each<[string, readonly Told[], string]>([
    ['away', [{ type: 'went-off-ward', at: MORNING + 3, payload: { reason: 'test' } }], 'away'],
    ['under a comfort plan', [{ type: 'scope-set', at: MORNING, payload: { scope: 'comfort' } }], 'comfort'],
    ['on hold', [hold(MORNING + 1, 'out-of-bed', MORNING + 9)], 'held'],
    ['to be looked at', [trigger('fall', MORNING + 1)], 'held'],
    ['to be checked again', [trigger('asked-to-look-again', MORNING + 1)], 'nurse-first'],
    ['resting', [walked(3.5)], 'resting'],
    ['who said no', [notDone(MORNING + 3.5, 'said-no')], 'said-no'],
    ['at a bad moment', [notDone(MORNING + 3.75, 'bad-moment')], 'later'],
    ['somebody goes to', [taken('ana', 3.9)], 'taken'],
  ])('is not somebody %s', (_what, told, kind) => {
    const stopped = gateOf(told)!;
    expect(stopped.kind).toBe(kind);
    expect(stopped.because.words.length).toBeGreaterThan(5);
    expect(stopped.until.length).toBeGreaterThan(5);
  });
  it('is nobody at night, and says until when', () => {
    const night = gateOf([check('walk', 27)], hours(28.5))!;
    expect(night).toMatchObject({ kind: 'night', until: 'From 07:00 on' });
  });
  it('is somebody again from the time that was said', () => {
    expect(gateOf([notDone(MORNING + 3.5, 'said-no')], at(4.5))).toBeNull();
    expect(gateOf([walked(3)], at(4))).toBeNull();
    expect(gateOf([walked(3)], at(4) - 1)?.kind).toBe('resting');
  });
  it('keeps walking on hold to what is left: the person is listed for a lesser move', () => {
    const held = round([rowOf(T, hold(MORNING + 1, 'walking', MORNING + 9))]).entries[0];
    expect(held?.move.task).not.toBe('walk');
    expect(held).toBeDefined();
  });
  it.each(['back-raised', 'bed-exercise'] as const)(
    'never asks for more than the goal: given %s, nobody is moved out of bed',
    (activity) => {
      const goal: Told = { type: 'goal-set', at: MORNING, payload: { goal: { activity, timesUp: 2 } } };
      const entry = round([rowOf(T, goal)]).entries[0]!;
      expect(entry.move).toEqual({ task: 'in-bed', people: 'one', aid: 'none' });
    },
  );
  it('says how many turn somebody whose goal is in bed, where the plan asks for more than the aide', () => {
    const goal: Told = {
      type: 'goal-set',
      at: MORNING,
      payload: { goal: { activity: 'back-raised', timesUp: 2 } },
    };
    const whoGoes = (...told: readonly Told[]) => round([rowOf(T, goal, ...told)]).entries[0]!.who;
    const more = 'An aide alone while nobody is turned or moved up in bed; for that: ';
    expect(whoGoes()).toBe(`${more}Three people or more; who is on is not recorded`);
    const comesAlone = check('walk', MORNING + 1);
    const { stages } = comesAlone.payload as { stages: { stage: string; people: number }[] };
    stages.find((one) => one.stage === 'edge')!.people = 0;
    expect(whoGoes(comesAlone)).toBe('An aide alone');
    const spine = order(MORNING + 0.5, { about: 'precaution', precaution: 'spine', on: true });
    expect(whoGoes(spine, comesAlone)).toBe(`${more}Two people; who is on is not recorded`);
  });
});

describe('the order of the round', () => {
  it('has longer awake and not up first, and says so with the points', () => {
    const long = rowOf(T);
    const short = rowOf(T, walked(2));
    const { entries } = round([short, long]);
    expect(entries.map((e) => e.label)).toEqual(['2', '1']);
    expect(entries[0]!.reasons[0]!.words).toMatch(/^Not up for \d+ h awake$/);
    expect(entries[0]!.notHigher).toBeNull();
    expect(entries[1]!.notHigher).toMatch(/^After bed 2: /);
  });
  it('keeps the order of beds where nothing differs', () => {
    expect(orderOf([rowOf(T), rowOf(T), rowOf(T)])).toEqual(['1', '2', '3']);
    expect(round([rowOf(T), rowOf(T)]).entries[1]!.notHigher).toBe(
      'After bed 1: the same rank, in the order of beds',
    );
  });
  it('sees isolation last and says it, unless they have been awake long', () => {
    const isolated: StayView = { ...rowOf(T), isolation: true };
    const { entries } = round([isolated, rowOf(T, walked(2))]);
    expect(entries.map((e) => e.label)).toEqual(['2', '1']);
    expect(entries[1]!.notHigher).toBe('After bed 2: isolation is seen last on the round');
    const t = at(9);
    const late: StayView = { ...rowOf(t), isolation: true };
    expect(orderOf([late, rowOf(t, walked(6.5))], t)).toEqual(['1', '2']);
  });
  it('has whoever leaves soon before others, and whoever just ate after', () => {
    const leaving: StayView = { ...rowOf(T), leaving: { at: T + 3_600_000, event: 'e9' as never } };
    expect(orderOf([rowOf(T), leaving])).toEqual(['2', '1']);
    const ate: StayView = {
      ...rowOf(T),
      lately: { ...rowOf(T).lately!, meal: { at: T - 60_000, event: 'e8' as never } },
    };
    const { entries } = round([ate, rowOf(T)]);
    expect(entries.map((e) => e.label)).toEqual(['2', '1']);
    expect(entries[1]!.changes).toMatch(/^Moves up from \d\d:\d\d on$/);
  });
  it('names what is not known and never counts it as nothing done', () => {
    const reasons = round([{ ...rowOf(T), debt: null }]).entries[0]!.reasons;
    expect(reasons.find((r) => r.rule === 'round/awake')).toMatchObject({
      words: 'How long not up is not known',
      points: 0,
    });
    const goal = round([rowOf(T)]).entries[0]!.reasons.find((r) => r.rule === 'round/goal')!;
    expect(goal.words).toMatch(/^Nothing recorded today, \d asked for/);
  });
  it("has the asker's own visit first, and somebody else's not on the list", () => {
    const theirs = rowOf(T, taken('ana', 3.9));
    expect(orderOf([rowOf(T), theirs], T, 'ana')).toEqual(['2', '1']);
    expect(round([rowOf(T), theirs], T, 'ana').entries[0]).toMatchObject({ yours: true });
    expect(orderOf([rowOf(T), theirs], T, 'bea')).toEqual(['1']);
  });
  it('weighs as the ward says', () => {
    const { round: own } = DEFAULT_RULES;
    const rules = { ...DEFAULT_RULES, round: { ...own, awakePoints: { ...own.awakePoints, value: 0 } } };
    const of = (all: typeof DEFAULT_RULES) =>
      roundOf({ board: boardOf(rowOf(T)), t: T, calendar, rules: all, asker: null, on: null }).entries[0]!
        .points;
    expect(of(rules)).toBeLessThan(of(DEFAULT_RULES));
  });
});

describe('who could do it', () => {
  it('is said with who is known to be on', () => {
    const two = rowOf(T);
    const plan = {
      day: two.plan!.day.map((p) => ({ ...p, people: 'two' as const })),
      night: two.plan!.night,
    };
    const who = (on: ReadonlySet<never> | null) =>
      roundOf({ board: boardOf({ ...two, plan }), t: T, calendar, asker: null, on }).entries[0]!.who;
    expect(who(null)).toBe('Two people; who is on is not recorded');
    expect(who(new Set())).toBe('Two people; only 0 named for this shift');
    expect(round([rowOf(T)]).entries[0]!.who).toBe('An aide alone');
  });
});
