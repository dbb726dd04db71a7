/** Which plan applies, where entries of one instant differ or somebody may not free: design, rule 2. */
import { describe, expect, it } from 'vitest';
import { stayOf, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { scopesTold } from './scope.ts';
import { standingOf } from './standing.ts';

const DISAGREE =
  'Two entries of the same time differ on which plan applies: the one that guards more stands; tell both authors';
const SPINE = 'unstable-spine-pelvis-or-long-bone';
type Says = Pick<Told, 'role'> & { at?: number; fence?: string; ref?: string };
const says = (scope: string, id: string, { at = 2, role = 'nurse', fence, ref }: Says = {}): Told => ({
  type: 'scope-set',
  at,
  role,
  id,
  payload: { scope, ...(fence ? { fence } : {}), ...(ref ? { plan: { ref } } : {}) },
});
const comfort = (id: string, more: Says = {}) => says('comfort', id, more);
const staged = (id: string, more: Says = {}) => says('staged', id, more);
const clinicians = (id: string, more: Says = {}) =>
  says('clinicians-plan', id, { fence: 'traction', ref: 'text-1', ...more });

const factsOf = (...told: readonly Told[]) => effectiveFacts(stayOf(...told)).facts;
const counted = (...told: readonly Told[]) => scopesTold(factsOf(...told)).counted.map((f) => f.id);
const conflicts = (...told: readonly Told[]) => scopesTold(factsOf(...told)).conflicts;

describe('of two entries of one instant on which plan applies', () => {
  const aide = { role: 'aide' } as const;
  it.each([
    ['the staged check over comfort', staged, comfort],
    ['a clinician’s plan over comfort', clinicians, comfort],
    ['a clinician’s plan over the staged check', clinicians, staged],
    [
      'of two clinicians’ plans the one that leaves the spine in doubt',
      (id: string) => clinicians(id, { fence: SPINE }),
      clinicians,
    ],
    [
      'a doubt of the spine, also by an aide, over a nurse’s other plan',
      (id: string) => clinicians(id, { fence: SPINE, ...aide }),
      clinicians,
    ],
    [
      'of two that guard as much, the one by somebody qualified',
      clinicians,
      (id: string) => clinicians(id, { fence: 'under-18', ...aide }),
    ],
    ['an aide’s staged check over a nurse’s comfort', (id: string) => staged(id, aide), comfort],
  ] as const)('stands %s, whichever has the later id; the other is kept as a conflict', (_, more, less) => {
    const differ = (safer: string, other: string) => [{ question: 'scope', safer, other, words: DISAGREE }];
    expect(counted(more('a'), less('b'))).toEqual(['a']);
    expect(conflicts(more('a'), less('b'))).toEqual(differ('a', 'b'));
    expect(counted(less('a'), more('b'))).toEqual(['b']);
    expect(conflicts(less('a'), more('b'))).toEqual(differ('b', 'a'));
  });
  it('that guard as much, by people as qualified, the later entry stands, however they are read', () => {
    const told = [clinicians('a'), clinicians('b', { fence: 'under-18' })];
    const facts = factsOf(...told);
    for (const read of [facts, facts.toReversed()]) {
      expect(scopesTold(read).counted.map((f) => f.id)).toEqual(['b']);
      expect(scopesTold(read).conflicts).toMatchObject([{ safer: 'b', other: 'a' }]);
    }
    expect(counted(clinicians('a', { role: 'aide' }), clinicians('b', { role: 'aide' }))).toEqual(['b']);
  });
  it('that say the same, they do not differ', () => {
    expect(conflicts(clinicians('a'), clinicians('b'))).toEqual([]);
    expect(conflicts(clinicians('a'), clinicians('b', { ref: 'text-2' }))).toHaveLength(1);
  });
  it('the stay shows that they differ, until the next entry on it', () => {
    const told = [clinicians('a'), comfort('b')];
    expect(standingOf(factsOf(...told))).toMatchObject({
      scope: { kind: 'clinicians-plan' },
      conflicts: [{ question: 'scope', safer: 'a', other: 'b' }],
    });
    const later = standingOf(factsOf(...told, comfort('c', { at: 3 })));
    expect(later).toMatchObject({ scope: { kind: 'comfort' }, conflicts: [] });
  });
  it('of two instants they do not differ: each counts from its own', () => {
    const told = [clinicians('a', { at: 1 }), comfort('b', { at: 2 }), staged('c', { at: 3 })];
    expect(counted(...told)).toEqual(['a', 'b', 'c']);
    expect(conflicts(...told)).toEqual([]);
  });
});

describe('given the word of someone who may not free', () => {
  const aide = { role: 'aide' } as const;
  it('comfort does not count where nothing else was said: the staged check applies', () => {
    expect(counted(comfort('a', aide))).toEqual([]);
    expect(counted(staged('a', aide))).toEqual(['a']);
    expect(standingOf(factsOf(comfort('a', aide))).scope.kind).toBe('staged');
  });
  it('counts beside a nurse’s of the same instant, where it guards more than what the nurse says', () => {
    const plan = clinicians('p', { at: 1 });
    const told = [plan, comfort('nurse'), staged('aide', aide)];
    expect(counted(...told)).toEqual(['p', 'aide']);
    expect(conflicts(...told)).toMatchObject([{ safer: 'aide', other: 'nurse' }]);
    // Guarding less it is not heard; more than the least of what two nurses say, it is told beside them.
    expect(counted(plan, staged('nurse'), comfort('aide', aide))).toEqual(['p', 'nurse']);
    expect(conflicts(plan, staged('nurse'), comfort('aide', aide))).toEqual([]);
    const three = [comfort('one'), clinicians('two'), staged('aide', aide)];
    expect(counted(...three)).toEqual(['two']);
    expect(conflicts(...three).map((c) => c.other)).toEqual(['aide', 'one']);
  });
});
