/** "Seen walking steadily on arrival" beside an order for a leg: design, the safer stands. */
import { describe, expect, it } from 'vitest';
import { help, limbs, planInput, stated } from './plan.testkit.ts';
import type { Bears } from './plan.testkit.ts';
import { planStay } from './plan.ts';

const arrived = (bears: Bears) =>
  planInput([], { seenWalking: stated('none' as const, 0.5, 'seen'), orders: limbs(bears) });

describe('given a person not checked here who was seen walking on arrival', () => {
  it.each<[string, Bears]>([
    ['both legs none', { 'left-leg': 'none', 'right-leg': 'none' }],
    ['one leg none', { 'left-leg': 'none' }],
    ['one leg limited', { 'right-leg': 'limited' }],
  ])('when an order says %s, though given before, then it is checked before moving', (_, bears) => {
    expect(planStay(arrived(bears)).checkBeforeMoving).toBe(true);
    expect(help(arrived(bears), 'walk')).toEqual(['hold', 'two', 'sling-lift']);
    expect(help(arrived(bears), 'bed-chair').slice(1)).toEqual(['two', 'sling-lift']);
  });
  it.each<[string, Bears]>([
    ['nothing', {}],
    ['both legs unrestricted', { 'left-leg': 'unrestricted', 'right-leg': 'unrestricted' }],
    ['an arm limited', { 'left-arm': 'limited' }],
  ])('when an order says %s, then somebody stands by', (_, bears) => {
    expect(help(arrived(bears), 'walk').slice(0, 2)).toEqual(['go', 'stand-by']);
  });
});
