import { describe, expect, it } from 'vitest';
import { changed, goesWithout } from './changed.ts';
import { checkPlan } from './check-plan.ts';
import { greedyProposal } from './propose.ts';
import { at, piece, problem, slots, visit, who } from './planning.testkit.ts';

describe('what if equipment fails', () => {
  const day = problem({
    visits: [
      visit('anna', { sets: [['lift']], windows: [slots(0, 2)] }),
      visit('otto', { sets: [['lift']], windows: [slots(5, 8)] }),
    ],
    staff: [who('ada')],
    items: [piece('lift')],
  });
  const plan = [at('anna', 0, ['ada'], ['lift']), at('otto', 6, ['ada'], ['lift'])];

  it('at a time: what comes before it stays, what comes after it is not possible any more', () => {
    const later = changed(day, { kind: 'item-lost', item: 'lift', from: 4 }, plan);
    expect(checkPlan(later, plan).map(({ rule, visit: of }) => [rule, of])).toEqual([['item-free', 'otto']]);
    expect(goesWithout(plan, greedyProposal(later, null).placed)).toEqual(['otto']);
  });
  it('at once: nobody can be lifted', () => {
    const now = changed(day, { kind: 'item-lost', item: 'lift', from: 0 }, plan);
    expect(goesWithout(plan, greedyProposal(now, null).placed)).toEqual(['anna', 'otto']);
  });
  it('in the middle of a use: that use is not possible either', () => {
    const long = { ...day, visits: day.visits.map((one) => ({ ...one, length: 2 })) };
    const during = changed(long, { kind: 'item-lost', item: 'lift', from: 1 }, plan);
    expect(goesWithout(plan, greedyProposal(during, null).placed)).toEqual(['anna', 'otto']);
  });
});
