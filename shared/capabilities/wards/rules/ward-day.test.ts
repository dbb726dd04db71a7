/** Who looks after the beds, who is on, and the plan of the day, as a ward's own stream says it. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { hours, setUpWard, WARD, WardLog, type Told } from '../../board/rules/history.testkit.ts';
import type { WardState } from '../context.ts';
import { foldWard } from './ward-state.ts';

/** The ward as its stream leaves it, from a ward with four beds, or on from an earlier look at it. */
function wardAfter(told: readonly Told[], before?: WardState): WardState {
  const log = new WardLog();
  if (!before) setUpWard(log);
  for (const one of told) log.add(`ward/${WARD}`, one);
  return foldWard(WARD, log.events, before ?? null)!;
}
const at = (h: number): string => toIso(hours(h));

describe('who looks after a bed', () => {
  const named = (
    until: number,
    ...beds: readonly (readonly [string, string | null, string | null])[]
  ): Told => ({
    type: 'carers-named',
    payload: { until: at(until), beds: beds.map(([bed, nurse, aide]) => ({ bed, nurse, aide })) },
  });
  const carersOf = ({ carers }: WardState) =>
    [...carers].map(([bed, { until, who }]) => [bed, until, who.nurse, who.aide]);
  const both = named(
    12,
    ['bed-1', 'nurse-1', 'aide-1'],
    ['bed-2', 'nurse-2', null],
    ['bed-3', null, 'aide-1'],
  );

  it('given a nurse, an aide or both are named, then they have the bed until then', () => {
    expect(carersOf(wardAfter([both]))).toEqual([
      ['bed-1', hours(12), 'nurse-1', 'aide-1'],
      ['bed-2', hours(12), 'nurse-2', null],
      ['bed-3', hours(12), null, 'aide-1'],
    ]);
  });
  it('given others are named for one bed, then that bed has them and every other keeps who it had', () => {
    expect(carersOf(wardAfter([both, named(20, ['bed-1', 'nurse-3', null], ['bed-4', null, null])]))).toEqual(
      [
        ['bed-1', hours(20), 'nurse-3', null],
        ['bed-2', hours(12), 'nurse-2', null],
        ['bed-3', hours(12), null, 'aide-1'],
      ],
    );
  });
  it('given the names of a bed are taken back, then nobody has it and the others stay', () => {
    const after = wardAfter([both, named(20, ['bed-2', null, null], ['bed-4', null, null])]);
    expect(carersOf(after).map(([bed]) => bed)).toEqual(['bed-1', 'bed-3']);
    expect(after.protocols).toEqual([]);
  });
  it('given a bed is closed, then nobody looks after it any more, not even when it comes back', () => {
    const closed = { type: 'bed-closed', payload: { bed: 'bed-1' } };
    const back = { type: 'bed-added', payload: { bed: 'bed-1', label: '1', bay: 'A', ceilingTrack: true } };
    expect(carersOf(wardAfter([both, closed])).map(([bed]) => bed)).toEqual(['bed-2', 'bed-3']);
    expect(wardAfter([both, closed, back]).carers.has('bed-1' as never)).toBe(false);
  });
  it('given a bed that nobody has is closed or said to be nobody’s, then the very same names stand', () => {
    const before = wardAfter([both]);
    const closed = wardAfter([{ type: 'bed-closed', payload: { bed: 'bed-4' } }], before);
    expect(closed.carers).toBe(before.carers);
    expect(wardAfter([named(20, ['bed-4', null, null])], before).carers).toBe(before.carers);
  });
});

describe('who is on the ward', () => {
  it('given people are said to be on, then they are on that ward day, with their breaks', () => {
    const people = [
      { staff: 'nurse-1', from: at(0), until: at(8), breaks: [{ from: at(3), until: at(3.5) }] },
      { staff: 'aide-1', from: at(1), until: at(5), breaks: [] },
    ];
    const off = [{ staff: 'aide-1', from: at(1), until: at(1), breaks: [] }];
    const on = (...days: readonly object[]) =>
      wardAfter(
        days.map((those) => ({ type: 'people-on-set', payload: { day: '2026-10-24', people: those } })),
      );
    const nurse = ['nurse-1', { from: hours(0), to: hours(8), breaks: [{ from: hours(3), to: hours(3.5) }] }];
    const whole = on(people);
    expect([...whole.peopleOn.keys()]).toEqual(['2026-10-24']);
    expect([...whole.peopleOn.get('2026-10-24')!]).toEqual([
      nurse,
      ['aide-1', { from: hours(1), to: hours(5), breaks: [] }],
    ]);
    expect([...on(people, off).peopleOn.get('2026-10-24')!]).toEqual([nurse]);
    expect(whole).toMatchObject({ name: 'Lindenhof 2', dayPlan: null });
  });
});

describe('the plan of the day', () => {
  const HASH = 'a'.repeat(64);
  const accepted = (day: string, ...expected: readonly string[]): Told => ({
    type: 'day-plan-accepted',
    at: 1,
    role: 'charge-nurse',
    payload: {
      day,
      placements: expected.map((stay, i) => ({
        visit: `${stay}-a`,
        stay,
        kind: 'check',
        start: at(2 + i),
        minutes: 30,
        crew: ['aide-1'],
        items: [],
      })),
      hash: HASH,
      weightsVersion: 1,
      how: 'solver',
      gap: null,
      edited: false,
    },
  });
  const arrived = (expected: string, stay?: string): Told => ({
    type: 'expected-arrival-closed',
    payload: { expected, outcome: stay ? 'arrived' : 'not-coming', ...(stay ? { stay } : {}) },
  });
  const TODAY = '2026-10-24';
  const whom = ({ dayPlan }: WardState) => dayPlan?.placements.map(({ stay }) => stay) ?? null;

  it('given it was accepted, then it stands with who accepted it, when, and what it holds', () => {
    const { dayPlan, protocols } = wardAfter([accepted(TODAY, 'exp-a', 'exp-b')]);
    expect(dayPlan).toMatchObject({ day: TODAY, at: hours(1), by: 'staff-charge-nurse', unplaced: null });
    expect(dayPlan!.placements.map(({ stay, start }) => [stay, start])).toEqual([
      ['exp-a', hours(2)],
      ['exp-b', hours(3)],
    ]);
    expect(protocols).toEqual([]);
  });
  it('given another is accepted for the day or the next, then the last one counts', () => {
    expect(whom(wardAfter([accepted(TODAY, 'exp-a'), accepted(TODAY, 'exp-b')]))).toEqual(['exp-b']);
    expect(whom(wardAfter([accepted(TODAY, 'exp-a'), accepted('2026-10-25')]))).toEqual([]);
  });
  it('given one of a day gone by is accepted late, then nothing changes on the ward', () => {
    const before = wardAfter([accepted(TODAY, 'exp-a'), arrived('exp-a', 'stay-7')]);
    expect(wardAfter([accepted('2026-10-23', 'exp-b')], before)).toBe(before);
  });

  it('given people it expects come, or come no more, then it knows whose stay began', () => {
    const plan = accepted(TODAY, 'exp-a', 'exp-b', 'exp-c');
    const after = wardAfter([plan, arrived('exp-b', 'stay-7'), arrived('exp-c')]);
    expect([...after.notExpected]).toEqual([
      ['exp-b', 'stay-7'],
      ['exp-c', null],
    ]);
    expect(whom(after)).toEqual(['exp-a', 'exp-b', 'exp-c']);
    expect(after.protocols).toEqual([]);
  });
  it.each([
    ['there is no plan', []],
    ['the plan expects nobody', [accepted(TODAY)]],
    ['the plan expects others', [accepted(TODAY, 'exp-a', 'exp-b')]],
  ])('given %s, when somebody comes, then nothing changes on the ward', (_what, told) => {
    const before = wardAfter(told);
    expect(wardAfter([arrived('exp-z', 'stay-7')], before)).toBe(before);
  });
  it('given it is planned anew, then of those who came only the ones it still names are kept', () => {
    const came = [arrived('exp-a', 'stay-7'), arrived('exp-b', 'stay-8')];
    const after = wardAfter([accepted(TODAY, 'exp-a', 'exp-b'), ...came, accepted(TODAY, 'exp-b', 'exp-c')]);
    expect([...after.notExpected]).toEqual([['exp-b', 'stay-8']]);
  });
});
