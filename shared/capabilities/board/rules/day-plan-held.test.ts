/** A visit of the accepted day plan that something stands against by now. */
import { describe, expect, it } from 'vitest';
import { foldBoard, viewBoard } from './board.ts';
import { check, hold, hours, trigger, WardLog, type Told } from './history.testkit.ts';
import { accepted, dayAt, given, LIFT, plannedAt, stayAt, visit, type Entered } from './day-plan.testkit.ts';

describe('PLANNED-7 a visit that is no longer allowed is held, never to be done', () => {
  const plan = accepted(1, [visit('g1', 3)]);
  it('a hold that came since', () => {
    const state = given(plan, hold(1.5, 'out-of-bed', 20));
    expect(plannedAt(state, 1.4)).toEqual([['stay-1-g1', null]]);
    expect(plannedAt(state, 2)).toEqual([['stay-1-g1', expect.stringMatching(/^Hold on out of bed since/)]]);
    expect(dayAt(state, 2)).toMatchObject({ ahead: 1, held: 1 });
  });
  describe('by its equipment, with since when', () => {
    const planned = accepted(1, [visit('g1', 3, { items: ['i1'] })]);
    const said = (type: string, payload: object = {}): Entered => ({
      on: 'item',
      type,
      at: 1.5,
      payload: { item: 'i1', ...payload },
    });
    const one = { on: 'ward' as const, ...LIFT };
    const why = (...told: readonly Entered[]) => plannedAt(given(one, planned, ...told), 2)[0]![1];
    // 17:30 in Universal Time, on the evening before the clocks go back in Berlin.
    it.each<[string, string, object, string]>([
      ['broken', 'item-out-of-service', { defect: 'brake-or-wheel' }, 'out of service since 19:30'],
      ['not there', 'item-not-there', {}, 'looked for 19:30 and is not there'],
      ['dirty', 'item-cleaning', { clean: false }, 'Lift 1 is dirty since 19:30'],
      ['flat', 'battery-read', { band: 'flat' }, 'the battery of Lift 1 is flat since 19:30'],
      ['kept for another', 'item-bound', { keptFor: 'stay-9' }, 'kept for another person since 19:30'],
    ])('%s', (_what, type, payload, words) => {
      expect(why(said(type, payload))).toContain(words);
    });
    it('taken off the list, or past its examination', () => {
      const off: Told = { type: 'item-withdrawn', payload: { item: 'i1' }, at: 1.5 };
      expect(why({ on: 'ward', ...off })).toBe('Equipment of this visit is not on the ward’s list any more');
      const is = { ...(LIFT.payload as { is: object }).is, inspectionDue: '2026-10-23' };
      const changed: Told = { type: 'item-changed', payload: { item: 'i1', is }, at: 1.5 };
      expect(why({ on: 'ward', ...changed })).toBe('Lift 1 was due for its examination 23 Oct 2026');
    });
    it('not by what may be settled by then: somebody has it, it is kept for them, nobody has spoken of it', () => {
      expect(why()).toBeNull();
      expect(why(said('item-taken', { isolation: false }))).toBeNull();
      expect(why(said('item-bound', { keptFor: 'stay-1' }))).toBeNull();
      expect(why(said('battery-read', { band: 'low' }))).toBeNull();
    });
    it('not before it broke, nor once the coordinator has returned it', () => {
      const broken = said('item-out-of-service', { defect: 'other' });
      const state = given(one, planned, broken);
      expect(plannedAt(state, 1.4)).toEqual([['stay-1-g1', null]]);
      expect(viewBoard(state, hours(1.4)).nextChange).toBeLessThanOrEqual(hours(1.5));
      expect(dayAt(state, 2)).toMatchObject({ held: 1 });
      expect(why(broken, { ...said('item-in-service'), at: 1.8 })).toBeNull();
    });
    it('a row that was shown before is worked out anew, and no other', () => {
      const log = new WardLog();
      const state = given(one, planned, said('battery-read', { band: 'full' }));
      const before = stayAt(state, 2);
      expect(before.planned![0]!.stopped).toBeNull();
      const last = log.add('item/i1', said('item-out-of-service', { defect: 'other' }));
      foldBoard(state, [{ ...last, position: state.position + 1, version: 2 }]);
      expect(stayAt(state, 2).planned![0]!.stopped?.rule).toBe('planned/item');
      const other = log.add('item/i2', said('item-not-there'));
      const shown = stayAt(state, 2);
      foldBoard(state, [{ ...other, position: state.position + 1, version: 1 }]);
      expect(stayAt(state, 2)).toBe(shown);
    });
  });
  it('a hold whose review is past still holds it', () => {
    const state = given(plan, hold(1.5, 'out-of-bed', 2));
    expect(plannedAt(state, 2.9)[0]![1]).toMatch(/^Hold on/);
  });
  it('a trigger: a nurse checks first', () => {
    expect(plannedAt(given(plan, trigger('fall', 1.5)), 2)[0]![1]).toMatch(/nurse/);
  });
  it('off the ward', () => {
    const left: Told = { type: 'went-off-ward', at: 1.5, payload: { reason: 'test' } };
    expect(plannedAt(given(plan, left), 2)[0]![1]).toMatch(/^Off the ward since/);
  });
  it.each<[string, string, Told[]]>([
    ['a time up', 'g1', [trigger('return-from-surgery', 1.2, 'nurse'), check('walk', 1.4)]],
    ['a check', 'c', [trigger('return-from-surgery', 1.2, 'nurse')]],
  ])('%s by one where the first time up asks for two by now; by two it stands', (_what, end, told) => {
    const words = 'Two people are asked for by now, and one is planned';
    const two = { crew: ['staff-aide', 'staff-nurse'] };
    expect(plannedAt(given(...told, accepted(1.5, [visit(end, 3)])), 2)).toEqual([[`stay-1-${end}`, words]]);
    expect(plannedAt(given(...told, accepted(1.5, [visit(end, 3, two)])), 2)).toEqual([
      [`stay-1-${end}`, null],
    ]);
  });
});
