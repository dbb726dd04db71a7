import { describe, expect, it } from 'vitest';
import type { StayView } from '../../board/view.ts';
import { measureNeeds, stopsMeasure } from './needs.ts';

const view = (word: string | null = 'Walk', over: object = {}) =>
  ({
    tier: { word },
    holds: [],
    orders: [],
    plan: null,
    checkBeforeMoving: false,
    ...over,
  }) as unknown as StayView;
const hold = (scope: string) => ({ holds: [{ scope, reason: 'clot-suspected' }] });
const order = (...orders: object[]) => ({ orders: orders.map((one) => ({ order: one })) });
const walking = new Set(['clear', 'stand', 'walk']);

it('a walk needs walking cleared, a rise from a chair standing', () => {
  const kinds = ['gait-speed', 'six-minute-walk', 'up-and-go', 'chair-stands', 'five-rises'] as const;
  expect(kinds.map(measureNeeds)).toEqual(['walk', 'walk', 'walk', 'stand', 'stand']);
});

describe('MEASURE-3 what stops a measure', () => {
  it('is nothing where the stage is cleared and nobody holds or limits it', () => {
    expect(stopsMeasure('up-and-go', walking, view())).toBeNull();
    expect(stopsMeasure('chair-stands', new Set(['stand']), view('Stand'))).toBeNull();
  });
  it('is a stage not cleared, with the tier as it is', () => {
    expect(stopsMeasure('up-and-go', new Set(['stand']), view('Stand'))).toBe(
      'walking is not cleared; the tier is Stand',
    );
    expect(stopsMeasure('five-rises', new Set(), view(null))).toBe(
      'standing is not cleared; the tier is none: the staged check does not apply',
    );
  });
  it('is a hold of what it needs', () => {
    expect(stopsMeasure('up-and-go', walking, view('Walk', hold('walking')))).toBe(
      'a hold stops walking: clot suspected',
    );
    expect(stopsMeasure('five-rises', walking, view('Walk', hold('walking')))).toBeNull();
    expect(stopsMeasure('five-rises', walking, view('Walk', hold('standing')))).toBe(
      'a hold stops standing: clot suspected',
    );
  });
  it('is an order below what it needs, whatever else is ordered', () => {
    const brace = { about: 'brace', on: true };
    const upTo = (most: string) => ({ about: 'activity', most });
    expect(stopsMeasure('up-and-go', walking, view('Walk', order(brace, upTo('edge-of-bed'))))).toBe(
      'the order allows activity up to edge of bed, not walking',
    );
    expect(stopsMeasure('up-and-go', walking, view('Walk', order(brace, upTo('walk'))))).toBeNull();
  });
  it('is still told by holds and orders where the cleared stages are not known', () => {
    expect(stopsMeasure('up-and-go', null, view())).toBeNull();
    expect(stopsMeasure('up-and-go', null, view('Walk', hold('out-of-bed')))).toContain('a hold stops');
  });
  it('is an order that lets a leg bear nothing, for rises from a chair', () => {
    const none = (limb: string) => order({ about: 'weight-bearing', limb, bears: 'none' });
    const words = 'the order lets a leg bear nothing: rises from a chair say nothing then';
    expect(stopsMeasure('five-rises', walking, view('Walk', none('left-leg')))).toBe(words);
    expect(stopsMeasure('chair-stands', walking, view('Walk', none('right-leg')))).toBe(words);
    expect(stopsMeasure('five-rises', walking, view('Walk', none('left-arm')))).toBeNull();
    expect(stopsMeasure('gait-speed', walking, view('Walk', none('left-leg')))).toBeNull();
    const limited = order({ about: 'weight-bearing', limb: 'left-leg', bears: 'limited' });
    expect(stopsMeasure('five-rises', walking, view('Walk', limited))).toBeNull();
  });
  it('is a plan that says HOLD for it, as after a fall that nobody has looked into', () => {
    const held = { plan: { day: [{ task: 'walk', hold: true }, { task: 'stand', hold: false }] } }; // prettier-ignore
    expect(stopsMeasure('up-and-go', walking, view('Walk', held))).toBe('the plan says HOLD for walking');
    expect(stopsMeasure('five-rises', walking, view('Walk', held))).toBeNull();
  });
  it('is that nobody knows how the person moves now', () => {
    const words = 'how this person moves now is not known';
    expect(stopsMeasure('up-and-go', walking, view('Walk', { checkBeforeMoving: true }))).toBe(words);
  });
});
