/** Standing on one leg. Design section 1, "tier": one leg meets, both arms push, the order allows (common practice, no source). */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import type { Finding, Side } from '../values.ts';
import { allMet, assessment, fact, upTo, type StageSays } from './assessment.testkit.ts';
import { judge, of, says, swapped, word } from './stages.testkit.ts';

describe('the one-leg route', () => {
  const cast = (side: Side): StageSays => ({
    findings: swapped('stand', { part: 'leg-bears', side, result: 'not-applicable', reason: 'cast' }),
  });
  const arms = (...changes: Finding[]): StageSays => ({ findings: swapped('upright', ...changes) });
  const noArms: StageSays = { findings: allMet('upright').filter((f) => f.part !== 'arm-pushes') };
  const onLeft = { oneLeg: 'left' as const };

  it('opens when the other leg does not apply', () => {
    expect(judge(assessment(upTo('stand', { stand: cast('right') }))).view).toMatchObject({
      word: 'Stand',
      oneLeg: 'left',
    });
  });
  it('opens when the other leg was not met', () => {
    const findings = swapped('stand', of('leg-bears', 'not-met', 'right'));
    expect(judge(assessment(upTo('stand', { stand: { ...onLeft, findings } }))).view).toMatchObject({
      word: 'Stand',
      oneLeg: 'left',
    });
    expect(word(assessment(upTo('stand', { stand: { findings } })))).toBe('Edge');
  });
  it.each([
    ['declared', onLeft as StageSays],
    ['because of a cast', cast('right')],
  ])('needs both arms pushing, %s', (_, stand) => {
    const one = assessment(upTo('stand', { upright: arms(of('arm-pushes', 'not-met', 'right')), stand }));
    expect(word(one)).toBe('Edge');
    expect(says(one).join()).toContain('on one leg both arms must push, and they do not');
    const absent = arms(of('arm-pushes', 'not-applicable', 'right'));
    expect(word(assessment(upTo('stand', { upright: absent, stand })))).toBe('Edge');
  });
  it('counts arms seen to push at an earlier check, and no arms that nobody saw', () => {
    const stand = assessment(upTo('stand', { upright: noArms, stand: onLeft }), { at: 3 });
    expect(word(stand)).toBe('Edge');
    expect(word(assessment(upTo('upright'), { at: 1 }), stand)).toBe('Stand');
    const weak = arms(of('arm-pushes', 'not-met', 'left'));
    expect(word(assessment(upTo('upright', { upright: weak }), { at: 1 }), stand)).toBe('Edge');
  });
  it('takes no arm that an order keeps from pushing, in part or at all, until someone qualified lifts it', () => {
    const arm = (bears: string, at: number, role: Role = 'nurse', limb = 'right-arm') =>
      fact('order-changed', { order: { about: 'weight-bearing', limb, bears } }, { at, role });
    const stand = assessment(upTo('stand', { stand: onLeft }), { at: 3 });
    expect(word(arm('limited', 1), stand)).toBe('Edge');
    expect(word(arm('none', 1), stand)).toBe('Edge');
    expect(word(arm('none', 1, 'nurse', 'left-arm'), stand)).toBe('Edge');
    expect(word(arm('unrestricted', 1), stand)).toBe('Stand');
    expect(word(arm('none', 1), arm('unrestricted', 2), stand)).toBe('Stand');
    expect(word(arm('none', 1), arm('unrestricted', 2, 'aide'), stand)).toBe('Edge');
    expect(word(arm('none', 1), arm('unrestricted', 2, 'nurse', 'left-arm'), stand)).toBe('Edge');
    // On two legs the arms do not matter for the stage.
    expect(word(arm('none', 1), assessment(upTo('stand'), { at: 3 }))).toBe('Stand');
  });
  it('takes back what was cleared beyond it on two legs, until a therapist clears it on one', () => {
    const walked = assessment(upTo('walk'), { at: 0 });
    const oneLeg = assessment(upTo('stand', { stand: onLeft }), { at: 5 });
    expect(word(walked)).toBe('Walk');
    const j = judge(walked, oneLeg);
    expect(j.view).toMatchObject({ word: 'Stand', oneLeg: 'left' });
    expect(j.seen.stages.get('walk')).toMatchObject({
      outcome: 'taken-back',
      reasons: ['to be cleared again: Stand is on one leg since'],
    });
    const therapist = assessment(upTo('walk', { stand: onLeft }), { at: 8, role: 'therapist' });
    expect(word(walked, oneLeg, therapist)).toBe('Walk');
    // Said again by a nurse, still on that leg, it takes nothing back.
    expect(word(walked, therapist, assessment(upTo('stand', { stand: onLeft }), { at: 9 }))).toBe('Walk');
    const other = assessment(upTo('stand', { stand: { oneLeg: 'right' } }), { at: 9 });
    expect(word(walked, therapist, other)).toBe('Stand');
  });
  it.each([
    ['nurse first', 0, 1],
    ['nurse last', 1, 0],
  ])('of one time with a check on two legs the one leg stands (%s)', (_, one, two) => {
    const pair = [
      assessment(upTo('stand', { stand: onLeft }), { at: 5, id: `t${one}` }),
      assessment(upTo('walk'), { at: 5, id: `t${two}` }),
    ];
    expect(judge(...pair).view).toMatchObject({ word: 'Stand', oneLeg: 'left' });
  });
  it('is closed with no leg at all, and that is not met', () => {
    const none = swapped(
      'stand',
      of('leg-bears', 'not-applicable', 'left'),
      of('leg-bears', 'not-applicable', 'right'),
    );
    const check = assessment(upTo('stand', { stand: { findings: none } }), { at: 2 });
    expect(word(check)).toBe('Edge');
    expect(word(assessment(upTo('walk'), { at: 0 }), check)).toBe('Edge');
    expect(says(check).join()).toContain('there is no leg it applies to');
    const wrong = swapped('stand', of('leg-bears', 'not-applicable', 'left'));
    expect(word(assessment(upTo('stand', { stand: { ...onLeft, findings: wrong } })))).toBe('Edge');
  });
  it('a free rise counts as held unless the leg that bears pushes against resistance', () => {
    const push = (side: Side) => arms(of('sole-pushes', 'not-met', side));
    const free = (upright: StageSays, stand: StageSays) =>
      judge(assessment(upTo('stand', { upright, stand }))).clearedFree.has('stand');
    expect(free(push('right'), onLeft)).toBe(true);
    expect(free(push('left'), onLeft)).toBe(false);
    expect(free(push('left'), {})).toBe(true);
    expect(free(arms(of('sole-pushes', 'not-met', 'left'), of('sole-pushes', 'not-met', 'right')), {})).toBe(
      false,
    );
  });
});
