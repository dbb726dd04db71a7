import { describe, expect, it } from 'vitest';
import { labelPlaces, planLabels, sharedHead, widestLabel } from './label.ts';
import { keepsPromise, planWall } from './legible.ts';

const PANEL = { inches: 55, metres: 5 };
const wall = (labels: readonly string[]) => planWall(labels.length, 1920, 1080, PANEL, widestLabel(labels));
const numbered = (head: string, count: number) => Array.from({ length: count }, (_, i) => `${head}${i + 1}`);

describe('what all labels begin with', () => {
  it.each([
    [['Nord-01', 'Nord-12'], 'Nord-'],
    [['Nord 1', 'Nord 12'], 'Nord '],
    [['Nord1', 'Nord12'], 'Nord'],
    // "12" is shared too, but half a number is no beginning.
    [['1201', '1212'], ''],
    [['Rose', 'Rowan'], ''],
    // Nothing may be left without a label.
    [['Nord-', 'Nord-1'], ''],
    [['A1'], ''],
  ])('%j is %j', (labels, head) => expect(sharedHead(labels)).toBe(head));
});

describe('labels of a ward', () => {
  it('are written whole where they fit', () => {
    const labels = numbered('A', 36);
    expect(planLabels(labels, wall(labels))).toEqual({ head: '', tooLong: false });
  });

  it('WALL-4 keep the height of what tells them apart, whatever they begin with', () => {
    const labels = numbered('Nordflügel-', 36);
    const plan = wall(labels);
    const { head, tooLong } = planLabels(labels, plan);
    expect([head, tooLong]).toEqual(['Nordflügel-', false]);
    expect(keepsPromise(plan)).toBe(true);
    const places = labelPlaces('Nordflügel-36', head, plan);
    expect(places.rest).toMatchObject({ words: '36', capital: plan.far });
    expect(places.rest.place / plan.far).toBeGreaterThanOrEqual(widestLabel(['36']));
    expect(places.head!.place + places.rest.place).toBeLessThanOrEqual(plan.label + 1e-6);
  });

  it('take what the words of trust leave them, and never make a tile smaller', () => {
    const long = numbered('Linde', 8);
    expect(wall(long).label).toBeGreaterThan(wall(numbered('A', 8)).label);
    expect(wall(long).scale).toBe(wall(numbered('A', 8)).scale);
  });

  it('WALL-5 that differ in more than fits are said to be too long', () => {
    const labels = ['Lavender', 'Sunflower', 'Chrysanthemum', ...numbered('A', 33)];
    expect(planLabels(labels, wall(labels))).toEqual({ head: '', tooLong: true });
  });
});
