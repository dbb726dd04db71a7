/** Each rule of a plan as the reason of a refusal: what is wrong, in one clause. */
import type { PlanRule } from '../proposal.ts';

const WORDS: Readonly<Record<PlanRule, string>> = {
  window: 'it is outside the times at which it can be done',
  hold: 'a hold stops it',
  meal: 'it is in a meal time',
  rest: 'it is in the rest time of the ward',
  'off-ward': 'the person is off the ward then, or leaves',
  appointment: 'somebody is with the person already',
  night: 'it is in the night',
  'rest-interval': 'the person has too little rest before or after it',
  'one-visit-at-once': 'the person has two visits at once',
  after: 'a check has to come first',
  'number-of-people': 'it has the wrong number of people',
  role: 'whoever goes may not do it',
  'not-on': 'whoever goes is not on the ward then',
  break: 'whoever goes is on a break',
  taken: 'whoever goes has taken something else then',
  'one-place-at-once': 'somebody would be in two places at once',
  'item-fit': 'the equipment does not fit the person, or some is missing',
  'item-free': 'the equipment cannot be used then',
  'item-cleaning': 'the equipment has to be cleaned first',
  'item-at-once': 'the equipment would be in two places at once',
  pinned: 'it must stay as it is',
  unknown: 'it is not asked for any more',
  twice: 'it stands in the plan twice',
};
export const breachWords = (rule: PlanRule): string => WORDS[rule];
