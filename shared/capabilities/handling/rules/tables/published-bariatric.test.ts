/** Every row of the bariatric tables, written out here from the source and not from the table's data. */
import { describe, expect, it } from 'vitest';
import { dayPlan } from '../plan.testkit.ts';
import { BARIATRIC_LATERAL } from './lying.ts';
import { asksFor, person, printed, short, twice, who } from './published.testkit.ts';
import { BARIATRIC_TRANSFER } from './transfer.ts';

describe('VA bariatric tables (rev. 2007), as restated in a caregiver article; from 136 kg (300 lb, from memory)', () => {
  const cooperates = 'two standing-aid or two..three-or-more bariatric-lift';
  it.each([
    // bears, cooperates, arms, as printed, the plan
    ['full', true, true, 'stand-by none', 'stand-by none'],
    ['full', true, false, 'stand-by none', 'stand-by none'],
    // Ours: full weight that does not cooperate is not stood by.
    ['full', false, true, 'stand-by none', 'three-or-more bariatric-lift'],
    ['partial', false, true, 'three-or-more bariatric-lift', 'three-or-more bariatric-lift'],
    ['partial', false, false, 'three-or-more bariatric-lift', 'three-or-more bariatric-lift'],
    ['none', false, true, 'three-or-more bariatric-lift', 'three-or-more bariatric-lift'],
    ['none', false, false, 'three-or-more bariatric-lift', 'three-or-more bariatric-lift'],
    ['partial', true, false, cooperates, 'two standing-aid'],
    // A standing aid needs a leg that bears: the bariatric lift, with three of the printed two to three.
    ['none', true, false, cooperates, 'three-or-more bariatric-lift'],
    ['partial', true, true, 'two seated-transfer-aid', 'two seated-transfer-aid'],
    ['none', true, true, 'two seated-transfer-aid', 'two seated-transfer-aid'],
  ] as const)(
    'PLAN-1 transfer: bears %s, cooperates %s, arms %s: %s',
    (bears, cooperative, arms, line, plan) => {
      expect(printed(BARIATRIC_TRANSFER, { bears, cooperative, arms })).toBe(line);
      for (const task of twice) {
        const planned = dayPlan(person(who(bears, cooperative, arms), 136), task);
        expect(short(planned)).toBe(plan);
        expect(asksFor(planned, line)).toBe(true);
      }
    },
  );
  it.each([
    ['fully', 'two none', 'two none'],
    ['partly', 'three-or-more lateral-transfer-aid', 'three-or-more lateral-transfer-aid'],
    ['not', 'three-or-more lateral-transfer-aid', 'three-or-more lateral-transfer-aid'],
  ] as const)('PLAN-1 lateral: assists %s: %s', (assists, line, plan) => {
    expect(printed(BARIATRIC_LATERAL, { assists })).toBe(line);
    const planned = dayPlan(person({ assists }, 136), 'lateral');
    expect(short(planned)).toBe(plan);
    expect(asksFor(planned, line)).toBe(true);
  });
  it.each([
    ['bed-chair', who('none', false, false), 'two sling-lift', 'three-or-more bariatric-lift'],
    ['bed-chair', who('partial', true, false), 'one standing-aid', 'two standing-aid'],
    ['bed-chair', who('none', true, true), 'one seated-transfer-aid', 'two seated-transfer-aid'],
    ['lateral', { assists: 'fully' }, 'stand-by none', 'two none'],
    ['in-chair', { assists: 'partly' }, 'one none', 'two none'],
    [
      'in-chair',
      { assists: 'partly', armStrength: 'none' },
      'two seated-transfer-aid',
      'two seated-transfer-aid',
    ],
    ['in-chair', { assists: 'not' }, 'two sling-lift', 'three-or-more bariatric-lift'],
    ['from-floor', who('partial', true, true), 'two sling-lift', 'three-or-more bariatric-lift'],
  ] as const)('%s on both sides of 136 kg: %o', (task, over, under, from) => {
    expect(short(dayPlan(person(over, 135.9), task))).toBe(under);
    expect(short(dayPlan(person(over, 136), task))).toBe(from);
  });
  it.each([
    ['bed-chair', who('none', true, true)],
    ['bed-chair', who('partial', true, true)],
    ['in-chair', { assists: 'not' }],
    ['in-chair', { assists: 'partly', armStrength: 'none' }],
  ] as const)("weight unknown, %s: only the ward's highest-rated lift, three", (task, over) => {
    expect(short(dayPlan(person({ ...over, weightKg: null, weightMarked: 'unknown' }), task))).toBe(
      'three-or-more bariatric-lift',
    );
  });
  it('weight unknown: nobody pushes alone in the chair', () => {
    const unknown = person({ assists: 'partly', weightKg: null, weightMarked: 'unknown' });
    expect(short(dayPlan(unknown, 'in-chair'))).toBe('two none');
    expect(dayPlan(unknown, 'in-chair').because.map((b) => b.rule)).toContain('ours/in-chair-weight');
    // What would do in a chair that reclines is not said to them: it takes no account of the weight.
    const lifted = dayPlan(person({ assists: 'not' }, 136), 'in-chair');
    expect(lifted.cautions.join()).not.toContain('recline');
  });
});
