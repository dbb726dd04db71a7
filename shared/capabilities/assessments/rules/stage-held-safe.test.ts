/** How somebody was held safe at a stage, and when that is still known. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Fact } from '../../corrections/facts.ts';
import { assessment, notMet, upTo, type StageSays } from './assessment.testkit.ts';
import { judge } from './stages.testkit.ts';

describe('held safe', () => {
  const held = (people: number, more: StageSays = {}): Record<string, StageSays> => ({
    stand: { how: 'secured', securedWith: 'standing-aid', people, ...more },
  });
  const standing = (...facts: Fact[]) => judge(...facts).seen.stages.get('stand');
  it('what held is not forgotten by failing, and the most people of the two stay', () => {
    const before = assessment(upTo('stand', held(2)), { at: 0 });
    const failed = assessment(upTo('stand', { stand: { ...notMet('rises'), people: 1 } }), { at: 3 });
    expect(standing(before, failed)).toMatchObject({
      outcome: 'not-met',
      securedWith: 'standing-aid',
      people: 2,
    });
    const more = assessment(upTo('stand', { stand: { ...notMet('rises'), people: 3 } }), { at: 3 });
    expect(standing(before, more)).toMatchObject({ people: 3 });
  });
  it('of two checks of one time that cleared it, what held more stands', () => {
    const sling = assessment(upTo('stand', { stand: { how: 'secured', securedWith: 'sling', people: 1 } }), {
      at: 1,
    });
    const aid = assessment(upTo('stand', held(2)), { at: 1 });
    expect(standing(aid, sling)).toMatchObject({ outcome: 'met', securedWith: 'sling', people: 2 });
    expect(standing(sling, aid)).toMatchObject({ outcome: 'met', securedWith: 'sling', people: 2 });
  });
});
describe('a stage held safe and then not met', () => {
  it.each<[StageSays['securedWith'], StageSays['securedWith'], string]>([
    ['sling', 'standing-aid', 'sling'],
    ['standing-aid', 'sling', 'sling'],
    ['standing-aid', 'two-people', 'standing-aid'],
    ['sling', undefined, 'sling'],
  ])('cleared in the %s and failed in the %s keeps what held more (%s)', (first, then, keeps) => {
    const how = (securedWith: StageSays['securedWith']): StageSays =>
      securedWith ? { how: 'secured', securedWith } : { how: 'free' };
    const { seen } = judge(
      assessment(upTo('stand', { stand: { ...how(first), people: 2 } }), { at: 0 }),
      assessment(upTo('stand', { stand: { ...how(then), ...notMet('rises') } }), { at: 4 }),
    );
    expect(seen.stages.get('stand')).toMatchObject({ outcome: 'not-met', securedWith: keeps, people: 2 });
  });
});
describe('a stage cleared at the very time at which one before it, or it, was not met', () => {
  const turned = assessment(upTo('turn', { turn: { how: 'secured', securedWith: 'sling', people: 2 } }), {
    at: 0,
  });
  const standing = assessment(upTo('stand'), { at: 4 });
  const failed = (stage: string) => assessment(upTo(stage, { [stage]: notMet() }), { at: 0, role: 'aide' });
  it.each(['clear', 'turn'])(
    'keeps how the person was held, in whichever order the two are taken (%s)',
    (at) => {
      for (const both of [
        [turned, failed(at)],
        [failed(at), turned],
      ]) {
        const turn = judge(...both, standing).seen.stages.get('turn');
        expect(turn).toMatchObject({ securedWith: 'sling', people: 2 });
        expect(turn!.outcome).toBe(at === 'turn' ? 'not-met' : 'taken-back');
      }
    },
  );
});
it('a stage done free beyond one that was not met does not undo how it was held before', () => {
  const sling = assessment(upTo('turn', { turn: { how: 'secured', securedWith: 'sling', people: 2 } }), {
    at: 0,
  });
  const beyond = assessment(upTo('turn', { stand: notMet('rises') }), { at: 4 });
  expect(judge(sling, beyond).seen.stages.get('turn')).toMatchObject({
    outcome: 'taken-back',
    how: 'secured',
    securedWith: 'sling',
    people: 2,
  });
});
