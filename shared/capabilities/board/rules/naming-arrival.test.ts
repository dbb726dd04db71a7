/** Reasons at an instant that lies before the arrival, as it would stand with a disputed entry not counted. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from './evaluate-stay.ts';
import { calendar, check, hours, recordOf, START, trigger, ward } from './history.testkit.ts';
import { HOUR, toIso } from '../../../kernel/times.ts';

const arrival = { stay: 'stay-1', person: 'person-stay-1', bed: 'bed-1', from: 'home' };
const movedToLater = {
  target: 'arrived',
  type: 'stay-begun',
  schemaVersion: 1,
  replacement: arrival,
  occurred: toIso(START + HOUR / 4),
  reason: 'wrong-value',
};
const history = [
  { type: 'stay-begun', payload: arrival, id: 'arrived' },
  { type: 'correction-made', at: 0, role: 'charge-nurse', payload: movedToLater, id: 'moved' },
  {
    type: 'retraction-made',
    at: 0,
    role: 'nurse',
    payload: { target: 'moved', reason: 'never-happened' },
    id: 'taken-back',
  },
  {
    type: 'order-changed',
    at: 0,
    role: 'aide',
    payload: { order: { about: 'activity', most: 'bed' } },
    id: 'order',
  },
] as const;

describe('an arrival moved to later, which somebody took back, with an order between the two times', () => {
  // given an order in force at the arrival as first told; when looked at before the later one
  const looked = () => evaluateStay(recordOf([...history]), ward, calendar, hours(1 / 60)).view;

  it('names the arrival where nothing was seen of the person yet', () => {
    const view = looked();
    expect(view.trust.because.map(({ rule, facts }) => [rule, facts])).toContainEqual([
      'trust/not-known',
      ['arrived'],
    ]);
    const walking = view.plan!.day.find(({ task }) => task === 'walk')!;
    expect(walking.because.find(({ rule }) => rule === 'not-known')).toMatchObject({ facts: ['arrived'] });
    expect(view.nextCheck).toMatchObject({ because: [{ rule: 'next-check/first', facts: ['arrived'] }] });
  });

  it('names it for no reason that has an entry of its own', () => {
    const walking = looked().plan!.day.find(({ task }) => task === 'walk')!;
    expect(walking.because.find(({ rule }) => rule === 'order/activity')).toMatchObject({ facts: ['order'] });
  });

  it('names no entry where the reason applies to everyone', () => {
    const { plan } = looked();
    const all = [...plan!.day, ...plan!.night].flatMap(({ because }) => because);
    const toAll = all.filter(({ rule }) => rule === 'stand-by' || rule === 'manual-load');
    expect(toAll.length).toBeGreaterThan(0);
    expect(toAll.filter(({ facts }) => facts.length > 0)).toEqual([]);
    expect(all.filter(({ facts }) => facts.length === 0)).toEqual(toAll);
  });
});

describe('a stay of which nobody entered the arrival, with a check told late against a fall', () => {
  const fell = { ...trigger('fall', 3), id: 'fell' };
  const late = { ...check('walk', 2), id: 'late', recorded: 4 };
  const known = new Set<unknown>(['fell', 'late']);
  const namedIn = (value: unknown): unknown[] => {
    if (typeof value !== 'object' || value === null) return [];
    const own = 'facts' in value && 'words' in value ? (value.facts as unknown[]) : [];
    return [...own, ...Object.values(value).flatMap(namedIn)];
  };
  it('names what was entered, and nothing in place of the arrival', () => {
    const { view } = evaluateStay(recordOf([fell, late]), ward, calendar, hours(5));
    expect(view.trust.conflicts).toMatchObject([{ safer: 'fell', other: 'late' }]);
    expect(namedIn(view).filter((id) => !known.has(id))).toEqual([]);
  });
});
