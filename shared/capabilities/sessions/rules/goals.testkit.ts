/** The day's goal and what was done of it, as the board shows them on the first whole ward day. */
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, hours, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { GoalInput } from './goals.ts';

/** START is 18:00 on 24 October; the next ward day, the first whole one, begins 14 h later. */
export const view = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(h)).view;
export const today = (...told: readonly Told[]) => view(16, ...told).today;
export const goalOf = (...told: readonly Told[]) => today(...told).goal;
export const set = (at: number, activity: string, extra: object = {}, more: Partial<Told> = {}): Told => ({
  type: 'goal-set',
  at,
  payload: { goal: { activity, timesUp: 2, ...extra } },
  ...more,
});
export const usual = (moves: string, transfers = 'alone', extra: object = {}): Told => ({
  type: 'usual-way-recorded',
  at: 0.5,
  payload: { usual: { moves, transfers, stairs: 'no' }, ...extra },
});

/** Somebody who has walked here: everything is cleared, and nothing stands against a goal. */
export const input = (over: Partial<GoalInput> = {}): GoalInput => ({
  cleared: new Set(['clear', 'upright', 'edge', 'stand', 'turn', 'walk']),
  tierFact: null,
  holds: [],
  plan: [],
  activityOrder: null,
  usualWay: null,
  wish: null,
  longestWalk: null,
  set: null,
  share: 1,
  arrival: null,
  rules: DEFAULT_RULES,
  ...over,
});
