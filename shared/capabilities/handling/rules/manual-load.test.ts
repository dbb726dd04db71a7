import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { carersFor, heaviestFor, legDemands, legLoad } from './manual-load.ts';
import { dayPlan, planInput, seenTo, walker, weight } from './plan.testkit.ts';
import type { Segment } from './tables/segments.ts';
import { heaviestShare, SEGMENT_TABLES } from './tables/segments.ts';
import { POUND } from './tables/table.ts';

const lb = (pounds: number) => pounds * POUND;
const inPounds = (kg: number) => kg / POUND;
const LIFT = lb(35);
const limits = DEFAULT_RULES.handling;

describe('Waters TR, "When is it safe to manually lift a patient?", Am J Nurs 2007;107(8):53-58, as reported: 35 lb a carer', () => {
  it('one leg of 250 lb at 16 % is about 40 lb: too heavy for one', () => {
    expect(inPounds(lb(250) * 0.16)).toBeCloseTo(40, 9);
    expect(carersFor(lb(250), 0.16, LIFT)).toBe(2);
  });
  it('180 lb able to take half the own weight: two fail at 45 lb each, three pass at 30', () => {
    expect(180 / 2 / 2).toBeGreaterThan(35);
    expect(180 / 2 / 3).toBeLessThan(35);
    expect(carersFor(lb(180), 0.5, LIFT)).toBe(3);
  });
  it('140 lb at a quarter is 35 lb, the limit itself: one; 140.1 lb: two (derived)', () => {
    expect(carersFor(lb(140), 0.25, LIFT)).toBe(1);
    expect(carersFor(lb(140.1), 0.25, LIFT)).toBe(2);
  });
  it('nothing to carry still has one carer at it', () => {
    expect(carersFor(lb(140), 0, LIFT)).toBe(1);
  });
  it("the ward's limit in kg is not over 35 lb: rounding up would let weight through", () => {
    expect(limits.liftLimitKgPerCarer.value).toBeLessThanOrEqual(LIFT);
    expect(limits.liftLimitKgPerCarer.value).toBeGreaterThan(lb(34.9));
  });
});

describe('peri-operative nursing ergonomic guidance (2022 edition, tool 2): leg 15.7 %, about 22 lb held two-handed', () => {
  it('141 lb (64 kg) is the last weight at which one holder a leg does', () => {
    expect(141 * 0.157).toBeLessThan(22.2);
    expect(carersFor(lb(141), 0.157, lb(22.2))).toBe(1);
    expect(carersFor(64, 0.157, lb(22.2))).toBe(1);
    expect(carersFor(lb(142), 0.157, lb(22.2))).toBe(2);
  });
  it("the ward's 10 kg is stricter than the published ceiling, by rounding", () => {
    expect(limits.limbHoldKgPerCarer.value).toBeLessThanOrEqual(lb(22.2));
    expect(carersFor(63, 0.157, limits.limbHoldKgPerCarer.value)).toBe(1);
    expect(carersFor(64, 0.157, limits.limbHoldKgPerCarer.value)).toBe(2);
  });
});

describe('heaviest body (lb) for a share, derived in references 4: 35 lb one and two carers, 22.2 lb held', () => {
  it.each([
    ['leg 15.7 %', 0.157, 222.9, 445.9, 141.4],
    ['leg 16.0 %', 0.16, 218.8, 437.5, 138.8],
    ['leg 16.1 % (Winter)', 0.161, 217.4, 434.8, 137.9],
    ['leg 20.9 % (de Leva, women)', 0.209, 167.5, 334.9, 106.2],
    ['foot and shank 6.1 %', 0.061, 573.8, 1147.5, 363.9],
    ['thigh 10.0 %', 0.1, 350, 700, 222],
    ['arm 5.0 % (Winter)', 0.05, 700, 1400, 444],
    ['arm 5.1 %', 0.051, 686.3, 1372.5, 435.3],
    ['head 8.1 %', 0.081, 432.1, 864.2, 274.1],
    ['head 8.4 %', 0.084, 416.7, 833.3, 264.3],
    ['trunk 49.7 %', 0.497, 70.4, 140.8, 44.7],
  ])('%s', (_, share, one, two, held) => {
    // Printed to a tenth of a pound.
    const off = (kg: number, printed: number) => Math.abs(inPounds(kg) - printed);
    expect(off(heaviestFor(share, LIFT), one)).toBeLessThan(0.051);
    expect(off(heaviestFor(share, LIFT, 2), two)).toBeLessThan(0.051);
    expect(off(heaviestFor(share, lb(22.2)), held)).toBeLessThan(0.051);
    // The same limit seen from the other side.
    expect(carersFor(heaviestFor(share, LIFT), share, LIFT)).toBe(1);
    expect(carersFor(heaviestFor(share, LIFT) + 0.01, share, LIFT)).toBe(2);
  });
});

describe('shares of body mass: Winter (after Dempster), Plagenhoef 1983, de Leva 1996 (from memory)', () => {
  const segments: Segment[] = [
    'hand',
    'forearm',
    'upper-arm',
    'arm',
    'foot',
    'shank',
    'foot-and-shank',
    'thigh',
    'leg',
    'head',
    'trunk',
  ];
  it.each([
    ['winter', [0.006, 0.016, 0.028, 0.05, 0.0145, 0.0465, 0.061, 0.1, 0.161, 0.081, 0.497]],
    [
      'plagenhoef-men',
      [0.0065, 0.0187, 0.0325, 0.0577, 0.0143, 0.0475, 0.0618, 0.105, 0.1668, 0.0896, 0.4684],
    ],
    ['plagenhoef-women', [0.005, 0.0157, 0.029, 0.0497, 0.0133, 0.0535, 0.0668, 0.1175, 0.1843, 0.082, 0.45]],
    ['de-leva-men', [0.0061, 0.0162, 0.0271, 0.0494, 0.0137, 0.0433, 0.057, 0.1416, 0.1986, 0.0694, 0.4346]],
    [
      'de-leva-women',
      [0.0056, 0.0138, 0.0255, 0.0449, 0.0129, 0.0481, 0.061, 0.1478, 0.2088, 0.0668, 0.4257],
    ],
  ] as const)('%s', (name, shares) => {
    expect(segments.map((s) => SEGMENT_TABLES[name].shares[s])).toEqual(shares);
  });
  it.each(Object.keys(SEGMENT_TABLES) as (keyof typeof SEGMENT_TABLES)[])(
    '%s: whole limbs are the sum of their parts',
    (name) => {
      const s = SEGMENT_TABLES[name].shares;
      expect(s.hand + s.forearm + s['upper-arm']).toBeCloseTo(s.arm, 9);
      expect(s.foot + s.shank).toBeCloseTo(s['foot-and-shank'], 9);
      expect(s['foot-and-shank'] + s.thigh).toBeCloseTo(s.leg, 9);
    },
  );
  it('Winter: two legs, two arms, head and trunk make the whole body', () => {
    const { leg, arm, head, trunk } = SEGMENT_TABLES.winter.shares;
    expect(2 * leg + 2 * arm + head + trunk).toBeCloseTo(1, 9);
  });
  it('what is from memory says so, and every table names its source', () => {
    expect(SEGMENT_TABLES['de-leva-men'].source).toContain('from memory');
    expect(SEGMENT_TABLES['de-leva-women'].source).toContain('from memory');
    for (const { source } of Object.values(SEGMENT_TABLES)) {
      expect(source).toMatch(/Winter|Plagenhoef|de Leva/);
    }
  });
  it('the heaviest published share is taken, with its source', () => {
    expect(heaviestShare('leg')).toEqual({ share: 0.2088, source: SEGMENT_TABLES['de-leva-women'].source });
    expect(heaviestShare('head')).toEqual({ share: 0.0896, source: SEGMENT_TABLES['plagenhoef-men'].source });
    expect(heaviestShare('trunk').share).toBe(0.497);
  });
});

describe('a leg to be moved, by the heaviest published share (20.88 %) and the limits of the ward', () => {
  // 10 kg held: 47.9 kg, two: 95.8 kg; 15.87 kg lifted: 76.0 kg. Arithmetic.
  it.each([
    [47.8, undefined],
    [47.9, 'Holding a leg up: two people or a limb sling'],
    [76, 'Holding a leg up: two people or a limb sling'],
    [76.1, 'Leg: two people or a limb sling'],
    [95.7, 'Leg: two people or a limb sling'],
    [95.8, 'Leg: a limb sling; too heavy for two people, or weight unknown'],
    [null, 'Leg: a limb sling; too heavy for two people, or weight unknown'],
  ])('%s kg: %s', (kg, words) => {
    expect(legLoad(kg, limits)?.words).toBe(words);
  });
  it('says the share, the limit that decided and both sources, and never the weight of the person', () => {
    expect(legLoad(83, limits)?.why).toBe(
      'A leg is up to 20.9 % of the body (de Leva, J Biomech 1996;29:1223-30, women, from memory); ' +
        'one carer may lift 15.87 kg (Waters, Am J Nurs 2007;107(8):53-58: 35 lb, rounded down)',
    );
    expect(legLoad(61, limits)?.why).toContain('one carer may hold up 10 kg (peri-operative');
  });
  it('a ward whose limit for lifting is below that for holding up is told of the lifting', () => {
    // 20.88 % of 40 kg is 8.4 kg: two lift by 5 kg each, one may hold up 20 kg. Arithmetic.
    const own = {
      liftLimitKgPerCarer: { ...limits.liftLimitKgPerCarer, value: 5 },
      limbHoldKgPerCarer: { ...limits.limbHoldKgPerCarer, value: 20 },
    };
    expect(legLoad(40, own)?.words).toBe('Leg: two people or a limb sling');
    expect(legLoad(40, own)?.why).toContain('one carer may lift 5 kg');
  });
  it.each([
    ['on-own', 0],
    ['stand-by', 0],
    ['one', 1],
    ['three-or-more', 1],
  ] as const)('is said when somebody helps: %s', (people, times) => {
    const input = planInput(seenTo('upright'), weight(83));
    expect(legDemands('in-bed', people, input)).toHaveLength(times);
    expect(legDemands('edge-of-bed', people, input)).toHaveLength(times);
  });
  const legs = (task: 'in-bed' | 'edge-of-bed' | 'bed-chair' | 'lateral', facts = seenTo('upright')) =>
    dayPlan(planInput(facts, weight(83)), task);
  it('the plan says it in bed and at the edge, with the arithmetic behind "why"', () => {
    for (const task of ['in-bed', 'edge-of-bed'] as const) {
      expect(legs(task).cautions).toContain('Leg: two people or a limb sling');
      expect(legs(task).because).toContainEqual({
        rule: 'manual-load',
        facts: ['f1'],
        words: legLoad(83, limits)?.why,
      });
      expect(JSON.stringify(legs(task))).not.toContain('83');
    }
  });
  it('not where nobody lifts a leg: other tasks, a light leg, or only standing by', () => {
    for (const plan of [
      legs('bed-chair'),
      legs('lateral'),
      legs('in-bed', walker),
      dayPlan(planInput(seenTo('upright'), weight(45)), 'in-bed'),
    ]) {
      expect(plan.cautions.join()).not.toContain('eg:');
      expect(plan.because.map((b) => b.rule)).not.toContain('manual-load');
    }
  });
});
