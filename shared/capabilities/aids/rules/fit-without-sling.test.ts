/** Standing, moving across and walking: which aid of the ward can do it, with no sling. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { FitInput } from './fit.ts';
import { against, fit, judgedOf, lift, piece, sling } from './fit.testkit.ts';

const toStand: Partial<FitInput> = { plan: { task: 'bed-chair', aid: 'standing-aid' } };
const across: Partial<FitInput> = { plan: { task: 'lateral', aid: 'lateral-transfer-aid' } };
const toWalk: Partial<FitInput> = { plan: { task: 'walk', aid: 'walking-support' } };

const standing = piece('Stand 1', { kind: 'standing-aid', powered: true, safeLoadKg: 180 });
const board = piece('Board', { kind: 'lateral-aid', safeLoadKg: 150 });
const frame = piece('Frame', { kind: 'walking-aid' });
/** A lift and a sling that would do, if they were asked for. */
const whole = [lift('Lift 1'), sling('S'), standing, board, frame];

describe('what stands, moves across or walks without a sling', () => {
  it('offers a standing aid alone for standing up, and judges no sling', () => {
    const answer = fit(whole, toStand);
    expect(answer.need).toBe('standing-aid');
    expect(answer.sets).toEqual([{ item: 'Stand 1', sling: null, usableNow: true }]);
    expect(answer.judged).toEqual([
      { item: 'Stand 1', part: 'lift', suits: true, for: ['bears 180 kg'], against: [], unfit: [] },
    ]);
    expect(answer.warnings).toEqual([]);
  });

  it('offers what moves across alone, as an aid and not as a lift', () => {
    const answer = fit(whole, across);
    expect(answer.need).toBe('lateral-aid');
    expect(answer.sets).toEqual([{ item: 'Board', sling: null, usableNow: true }]);
    expect(answer.judged).toEqual([
      { item: 'Board', part: 'aid', suits: true, for: ['bears 150 kg'], against: [], unfit: [] },
    ]);
  });

  it('asks no load of a walking frame: it suits, though nobody has entered what it bears', () => {
    const answer = fit(whole, toWalk);
    expect(answer.need).toBe('walking-aid');
    expect(answer.sets).toEqual([{ item: 'Frame', sling: null, usableNow: true }]);
    expect(answer.judged).toEqual([
      { item: 'Frame', part: 'aid', suits: true, for: [], against: [], unfit: [] },
    ]);
  });

  it('does not offer a walking frame that is listed with less than the person counts as', () => {
    const small = piece('Small', { kind: 'walking-aid', safeLoadKg: 100 });
    const answer = fit([small, frame], { ...toWalk, weight: { kg: 150, how: 'measured' } });
    expect(against(answer, 'Small')).toBe('bears 100 kg, the person counts as 150 kg');
    expect(answer.sets).toEqual([{ item: 'Frame', sling: null, usableNow: true }]);
    expect(fit([small], { ...toWalk, weight: { kg: 100, how: 'measured' } }).sets).toHaveLength(1);
  });

  it('given no weight, then offers each frame, and asks for one where a frame is listed with a load', () => {
    const small = piece('Small', { kind: 'walking-aid', safeLoadKg: 100 });
    const answer = fit([small, frame], { ...toWalk, weight: null });
    expect(answer.sets.map(({ item }) => item)).toEqual(['Small', 'Frame']);
    expect(answer.warnings).toEqual(['Weight not known: weigh or estimate before a walking aid is chosen']);
    // What a lift on the same list bears is no matter of walking.
    expect(fit(whole, { ...toWalk, weight: null }).warnings).toEqual([]);
    expect(fit(whole, { ...toStand, weight: null }).warnings).toEqual([
      'Weight not known: weigh or estimate before a lift is chosen',
    ]);
  });

  it('judges nothing of the list where the plan asks nothing of it', () => {
    expect(fit(whole, { plan: { task: 'walk', aid: 'belt' } })).toMatchObject({ judged: [], sets: [] });
  });

  it('does not offer what bears less than the person counts as, and says so', () => {
    const answer = fit(whole, { ...across, weight: { kg: 160, how: 'measured' } });
    expect(answer.sets).toEqual([]);
    expect(judgedOf(answer, 'Board').for).toEqual([]);
    expect(against(answer, 'Board')).toBe('bears 150 kg, the person counts as 160 kg');
  });

  it('keeps the place in the list of what is with somebody else, as not usable now', () => {
    const busy = piece(
      'Stand 2',
      { kind: 'standing-aid', safeLoadKg: 180 },
      {},
      {
        word: 'in-use',
        against: ['somebody has it'],
      },
    );
    const answer = fit([busy, standing], toStand);
    expect(answer.sets).toEqual([
      { item: 'Stand 1', sling: null, usableNow: true },
      { item: 'Stand 2', sling: null, usableNow: false },
    ]);
    expect(against(answer, 'Stand 2')).toBe('not now: somebody has it');
  });
});
