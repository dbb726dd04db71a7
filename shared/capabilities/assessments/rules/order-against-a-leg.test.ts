/**
 * A leg that an order lets bear nothing, in a check that has the person stand on both. The capability takes the lesser
 * of the order and what was seen; on one leg standing is its own route. Common practice, no source (design, capability).
 */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Side } from '../values.ts';
import { allMet, assessment, fact, tierInput, upTo } from './assessment.testkit.ts';
import type { StageSays } from './assessment.testkit.ts';
import { judgeTier } from './tier.ts';

const order = (side: Side, bears: 'none' | 'unrestricted', at = 0): Fact =>
  fact('order-changed', { order: { about: 'weight-bearing', limb: `${side}-leg`, bears } }, { at });
const check = (stand: StageSays = {}, role: Role = 'nurse') =>
  assessment(upTo('walk', { stand }), { at: 2, id: 'check', role });
const judge = (...facts: Fact[]) => judgeTier(tierInput(facts)).view;
const notMetWords = (...facts: Fact[]) =>
  judge(...facts).because.flatMap((b) => (b.rule === 'tier/stage-not-met' ? [b.words] : []));

describe.each([
  ['left', 'right'],
  ['right', 'left'],
] as const)('a person whose %s leg may bear nothing by order', (barred, other) => {
  it.each(['nurse', 'therapist'] as const)('stood on both by a %s: has not cleared Stand', (role) => {
    const facts = [order(barred, 'none'), check({}, role)];
    expect(judge(...facts)).toMatchObject({ word: 'Edge', oneLeg: null });
    expect(notMetWords(...facts)).toEqual([
      `Stand not met: the order lets the ${barred} leg bear nothing: use the one-leg route`,
    ]);
  });
  it('stood on both, with no part written down one by one: has not cleared Stand', () => {
    expect(judge(order(barred, 'none'), check({ findings: [] })).word).toBe('Edge');
  });
  it('stood on the other leg: has cleared Stand on one leg', () => {
    expect(judge(order(barred, 'none'), check({ oneLeg: other }))).toMatchObject({
      word: 'Stand',
      oneLeg: other,
    });
  });
  it('with that leg written down as not asked for, by order: has cleared Stand on one leg', () => {
    const findings = allMet('stand').map((f) =>
      f.part === 'leg-bears' && f.side === barred
        ? { ...f, result: 'not-applicable' as const, reason: 'order' as const }
        : f,
    );
    expect(judge(order(barred, 'none'), check({ findings }))).toMatchObject({ word: 'Stand', oneLeg: other });
  });
  it('with Stand not tested: loses nothing by that', () => {
    const walked = assessment(upTo('walk'), { at: -2 });
    const stand = { outcome: 'not-tested', reason: 'order' } as const;
    const later = assessment(upTo('stand', { stand }), { at: 2 });
    expect(judge(walked, order(barred, 'none'), later).word).toBe('Walk');
  });
  it('and the order over: has cleared what was met', () => {
    expect(judge(order(barred, 'none'), order(barred, 'unrestricted', 1), check()).word).toBe('Walk');
  });
});

describe('a person neither of whose legs may bear anything by order', () => {
  const both = [order('left', 'none'), order('right', 'none')];
  it('is told of both, and of no one-leg route', () => {
    expect(notMetWords(...both, check())).toEqual([
      'Stand not met: the order lets the left leg bear nothing; the order lets the right leg bear nothing',
    ]);
  });
  it('stood on one of them: is told of that one', () => {
    expect(notMetWords(...both, check({ oneLeg: 'left' }))).toEqual([
      'Stand not met: the order lets the left leg bear nothing',
    ]);
  });
});
