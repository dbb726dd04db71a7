/** Whom the staged check does not cover (design, scope): the clinician's own plan, and the comfort plan. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  stayOf,
  trigger,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import type { Fence } from '../../stays/values.ts';
import { fence } from '../../stays/values.ts';

const view = (at: number, ...told: Told[]) => evaluateStay(stayOf(...told), ward, calendar, hours(at)).view;
const walked: Told = { ...check('walk', 1), id: 'c1' };
const scope = (payload: Record<string, unknown>, at = 2, role: Told['role'] = 'nurse'): Told => ({
  type: 'scope-set',
  at,
  role: role!,
  id: `scope-${at}`,
  payload,
});
const fenced = (of: Fence) => scope({ scope: 'clinicians-plan', fence: of, plan: { ref: 'text-1' } });
const comfort = scope({ scope: 'comfort', plan: { ref: 'text-2' } });
const staged = (role: Told['role'] = 'nurse') => scope({ scope: 'staged' }, 4, role);

describe("the clinician's plan only", () => {
  it('has seven grounds', () => {
    expect(fence.options).toEqual([
      'under-18',
      'pregnancy-from-20-weeks-or-epidural',
      'ventilated-or-vasopressors',
      'unstable-spine-pelvis-or-long-bone',
      'traction',
      'open-head-or-lumbar-drain',
      'femoral-line-or-sheath',
    ]);
  });
  it.each(fence.options)(
    '%s: no tier, no plan of the rules, no next check; the text the clinician entered',
    (of) => {
      const v = view(3, walked, fenced(of));
      expect(v.scope).toEqual({ kind: 'clinicians-plan', fence: of, plan: { ref: 'text-1' } });
      expect(v.tier).toMatchObject({ word: null, notch: null, protocol: null, at: null, by: null });
      expect(v.tier.because).toEqual([
        {
          rule: 'tier/scope',
          facts: ['scope-2'],
          words: "Clinician's plan only: the staged check does not apply",
        },
      ]);
      expect(v).toMatchObject({
        plan: null,
        nextCheck: null,
        mayStart: null,
        checkBeforeMoving: false,
        onOwn: null,
      });
      expect(v.due).toMatchObject({ state: 'none', at: null });
      expect(v.today.goal).toBeNull();
    },
  );
  it('anyone may set it; only someone qualified ends it', () => {
    const byAide = { ...fenced('traction'), role: 'aide' as const };
    expect(view(3, walked, byAide).tier.word).toBeNull();
    expect(view(5, walked, byAide, staged('aide')).tier.word).toBeNull();
    const back = view(5, walked, byAide, staged());
    expect(back.tier.word).toBe('Walk');
    // What was seen before is old news: look before the next move.
    expect(back.trust.state).toBe('re-check');
    expect(back.nextCheck?.from).toBe('clear');
  });
});

describe('the comfort plan', () => {
  it('has no tier, no due time, no goal and no next check', () => {
    const v = view(3, walked, comfort);
    expect(v.scope).toEqual({ kind: 'comfort', fence: null, plan: { ref: 'text-2' } });
    expect(v.tier).toMatchObject({ word: null, notch: null });
    expect(v.tier.because[0]?.words).toBe('Comfort plan: no tier');
    expect(v).toMatchObject({
      plan: null,
      nextCheck: null,
      mayStart: null,
      debt: null,
      signs: [],
      proposal: null,
    });
    expect(v.due).toMatchObject({ state: 'none', at: null });
    expect(v.today.goal).toBeNull();
  });
  it('shows what happened all the same', () => {
    expect(view(3, walked, comfort, trigger('fall', 2.5)).trust.openTriggers).toMatchObject([
      { kind: 'fall' },
    ]);
  });
  it('a later ground for the clinician’s plan takes its place, and a check under it sets no tier', () => {
    const v = view(6, walked, comfort, { ...fenced('traction'), at: 3, id: 'scope-3' }, check('walk', 5));
    expect(v.scope.kind).toBe('clinicians-plan');
    expect(v.tier.word).toBeNull();
  });
});
