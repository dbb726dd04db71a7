/** The closed list of what the handling room may refuse: code -> title. */
export const handlingRefusals = {
  'not-cleared-for-own': 'Nobody goes alone before the last stage is cleared free',
  'may-not-wait-for-help': 'Nobody goes alone who may not wait for help',
  'pressure-drop': 'Nobody goes alone after a drop in standing pressure',
  'own-while-open-trigger': 'Nobody goes alone while something is still to be looked at',
  'own-while-recheck': 'Nobody goes alone on a plan that is to be re-checked',
  'own-while-hold': 'Nobody goes alone while a hold is on',
  'own-while-order': 'Nobody goes alone while an order stops walking',
  'own-while-plan-holds': 'Nobody goes alone while the plan says HOLD for standing or walking',
} as const;
export type HandlingRefusal = keyof typeof handlingRefusals;
