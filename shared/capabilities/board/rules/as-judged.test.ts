/**
 * What a check found is read as it was judged: written down as met, a stage is not met where the readings
 * of the same check stand against it. And a check that nobody can read renews and answers nothing.
 * Source: design, rule 2 and the rows on pressure and "not now" (published limits as told there).
 */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { calendar, check, hours, onOwn, order, stayOf, trigger, ward, type Told } from './history.testkit.ts';

const view = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(h)).view;
const pressure = (h: number, posture: string, systolic: number) => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic: 60,
  minute: 1,
  at: toIso(hours(h)),
});
const walked = { ...check('walk', 1), id: 'walked' };
/** All written down as met; the pressure standing was below 90. */
const tooLow = (h: number): Told => ({
  ...check('walk', h, {}, { readings: [pressure(h, 'standing', 84)], risingSymptoms: [] }),
  id: 'too-low',
});

describe('given a check that wrote every stage down as met, and a pressure standing below 90', () => {
  it('"on own" is taken back, and does not come back with a later good check', () => {
    expect(view(2.5, walked, onOwn(2)).onOwn).not.toBeNull();
    const good = check('walk', 4, {}, { readings: [pressure(4, 'standing', 130)], risingSymptoms: [] });
    expect(view(5, walked, onOwn(2), good).onOwn).not.toBeNull();
    expect(view(5, walked, onOwn(2), tooLow(3), good).onOwn).toBeNull();
  });
  it('a late check of before it frees nothing, and both are shown', () => {
    const late: Told = { ...check('walk', 2), id: 'late', recorded: 4 };
    const byAide: Told = { ...tooLow(3), role: 'aide' };
    const { trust, tier } = view(5, check('upright', 1), byAide, late);
    expect(trust.conflicts).toEqual([expect.objectContaining({ safer: 'too-low', other: 'late' })]);
    expect(tier.word).toBe('Upright');
  });
});

describe('given a check under a protocol that nobody can read', () => {
  const unread = (last: 'clear' | 'walk', h: number): Told => ({
    ...check(last, h, {}, { protocol: { id: 'gone', version: 1 } }),
    id: 'unread',
  });
  it('renews no plan, not even of somebody of whom nothing stands cleared', () => {
    const lost = { ...check('clear', 1, { clear: { outcome: 'not-met' } }), id: 'lost' };
    expect(view(15, lost).trust.state).toBe('re-check');
    expect(view(15, lost, unread('walk', 10)).trust.state).toBe('re-check');
    expect(view(15, walked, unread('walk', 10)).trust.state).toBe('re-check');
  });
  it('before any other check it begins no validity, and confirming it renews nothing', () => {
    const first = view(15, unread('walk', 1), { ...check('edge', 4), id: 'edge' });
    expect(first.trust).toMatchObject({ state: 'current', because: [{ facts: ['edge'] }] });
    const confirmed: Told = {
      type: 'plan-confirmed',
      at: 11,
      payload: { task: 'walk', assessment: 'unread' },
    };
    expect(view(15, walked, unread('walk', 10), confirmed).trust.state).toBe('re-check');
  });
  it.each(['return-from-surgery', 'sedation', 'attachment-change', 'fall'])(
    'answers no trigger: %s',
    (kind) => {
      const open = view(4, walked, trigger(kind, 2), unread('walk', 3)).trust.openTriggers;
      expect(open).toMatchObject([{ kind }]);
    },
  );
  it('takes nothing back that speaks against starting, though it found something itself', () => {
    const lost = { ...check('clear', 1, { clear: { outcome: 'not-met' } }), id: 'lost' };
    const told = unread('walk', 2);
    const dizzy: Told = { ...told, payload: { ...(told.payload as object), risingSymptoms: ['dizzy'] } };
    expect(view(1.5, lost).mayStart).toMatchObject({ word: 'not-now' });
    expect(view(3, lost, dizzy).mayStart).toMatchObject({ word: 'not-now' });
    // Of somebody who walked nothing stays cleared, and what cannot be read asks first.
    const { tier, mayStart } = view(3, walked, dizzy);
    expect(tier.word).not.toBe('Walk');
    expect(mayStart).toMatchObject({ word: 'ask-first' });
  });
  it('answers no order either', () => {
    const limited = order(2, { about: 'activity', most: 'walk' });
    expect(view(4, walked, limited, unread('walk', 3)).trust.openTriggers).toHaveLength(1);
  });
});
