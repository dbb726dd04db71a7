/** What we add to OSHA 3182 figure 5 (moving up in a chair): common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { EventId } from '../../../kernel/ids.ts';
import { allMet } from '../../assessments/rules/assessment.testkit.ts';
import type { Weight } from '../../stays/values.ts';
import { inChairHelp } from './in-chair-help.ts';
import { dayPlan, planInput, seenTo, stated } from './plan.testkit.ts';

const partly = { edge: { people: 1 } };

describe('a seated aid in the chair', () => {
  const upright = { findings: allMet('upright').filter((f) => f.part !== 'arm-pushes') };
  const facts = seenTo('edge', { upright, ...partly });
  // The ward day of these tests turns 23 h after the check.
  it('without sitting balance of today is a sling lift, and says why, by the check of the edge', () => {
    expect(dayPlan(planInput(facts, {}, 23), 'in-chair').because).toContainEqual({
      rule: 'before-the-tables/fit-for-the-aid',
      facts: [facts[0]!.id],
      words: 'A seated aid needs sitting balance cleared today: sling lift instead',
    });
    const lift = inChairHelp(planInput(facts, {}, 23)).find((d) => d.help.aids.includes('sling-lift'));
    expect(lift?.help).toEqual({ hold: false, people: 'two', aids: ['sling-lift'] });
    expect(inChairHelp(planInput(facts)).flatMap((d) => d.help.aids)).toEqual(['seated-transfer-aid']);
  });
});

describe('one helper who pushes the knees', () => {
  const chair = (weight: Weight | null) =>
    dayPlan(
      planInput(seenTo('edge', partly), {
        weight: weight && stated(weight, 0, 'scales'),
        arrival: 'arrived' as EventId,
      }),
      'in-chair',
    );
  const measured = (kg: number) => chair({ kg, how: 'measured' });
  it('is enough below the bariatric weight', () => {
    expect(measured(135.9)).toMatchObject({ people: 'one', aid: 'none' });
    expect(measured(135.9).because.map((b) => b.rule)).not.toContain('ours/in-chair-weight');
  });
  it('is two from there up, or with a weight nobody knows, and says why', () => {
    const words = 'Weight unknown, or from the bariatric weight up: nobody pushes alone, two people';
    expect(measured(136)).toMatchObject({ people: 'two', aid: 'none' });
    expect(measured(136).because).toContainEqual({ rule: 'ours/in-chair-weight', facts: ['scales'], words });
    expect(chair(null)).toMatchObject({ people: 'two', aid: 'none' });
    expect(chair(null).because).toContainEqual({ rule: 'ours/in-chair-weight', facts: ['arrived'], words });
  });
});
