/** What a lift or sling bears or is made for, at its very limit, and in which words. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { against, fit, judgedOf, lift, piece, sling } from './fit.testkit.ts';

const keeping = (loadMargin: number) => ({
  ...DEFAULT_RULES,
  aids: { ...DEFAULT_RULES.aids, loadMargin: { ...DEFAULT_RULES.aids.loadMargin, value: loadMargin } },
});

describe('what a lift bears', () => {
  it('is what its weakest part bears, less the share the ward keeps free', () => {
    expect(judgedOf(fit([lift('Lift 1', { barLoadKg: 150 })]), 'Lift 1').for).toEqual(['bears 150 kg']);
    expect(judgedOf(fit([lift('Lift 1')], { rules: keeping(0.1) }), 'Lift 1').for).toEqual(['bears 180 kg']);
  });
  it('is enough for a person of just that weight', () => {
    const answer = (kg: number) =>
      fit([lift('Lift 1', { safeLoadKg: 165 })], { rules: keeping(0.3), weight: { kg, how: 'measured' } });
    expect(judgedOf(answer(115.5), 'Lift 1').suits).toBe(true);
    expect(judgedOf(answer(115.6), 'Lift 1').suits).toBe(false);
  });
  it('given the weight is not known, then is asked of the lifts that reach the person alone', () => {
    const track = piece('Track', { kind: 'ceiling-lift', safeLoadKg: 250, covers: ['Bay 2'] });
    const answer = fit([track, lift('Floor'), lift('Small', { safeLoadKg: 130 })], { weight: null });
    expect(judgedOf(answer, 'Floor').suits).toBe(true);
    expect(against(answer, 'Small')).toBe('the weight is not known, and another bears more');
    expect(against(answer, 'Track')).toBe('its track does not reach Bay 1');
  });
});

describe('the body weight a sling is made for', () => {
  it('is asked of an estimate with its share at the upper end, to the very limit', () => {
    const upTo = (fitsToKg: number) =>
      against(
        fit([lift('Lift 1'), sling('S', { fitsToKg })], { weight: { kg: 100, how: 'estimated' } }),
        'S',
      );
    const counts = 100 * (1 + DEFAULT_RULES.handling.estimatedWeightMargin.value);
    expect(upTo(Math.ceil(counts))).toBe('');
    expect(upTo(Math.ceil(counts) - 1)).toMatch(/, the person counts as \d+ kg$/);
  });
  it('is asked of the weight as told at the lower end, and says that one', () => {
    const answer = fit([lift('Lift 1'), sling('S', { fitsFromKg: 89, fitsToKg: 200 })], {
      weight: { kg: 88, how: 'estimated' },
    });
    expect(against(answer, 'S')).toBe('made for 89 kg to 200 kg, the person weighs 88 kg');
  });
});
