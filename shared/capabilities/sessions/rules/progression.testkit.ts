/** A goal of three times in the chair, and what is proposed of it in the evening. */
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hours, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { did } from '../../board/rules/signs.testkit.ts';

/** The whole ward day from START + 14 h; looked at in its evening. */
export const view = (...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(25)).view;
export const proposal = (...told: readonly Told[]) => view(...told).proposal;
export const step = (...told: readonly Told[]) => {
  const now = proposal(...told);
  return now && [now.step, now.goal];
};
export const set = (goal: object, at = 14.1, more: Partial<Told> = {}): Told => ({
  type: 'goal-set',
  at,
  payload: { goal: { activity: 'chair', timesUp: 3, ...goal } },
  ...more,
});
export const twice = (activity: string, extra: object = {}) => [
  did(15, activity, extra),
  did(17, activity, extra),
];
export const walks = check('walk', 14.05);
export const chair = set({});
