import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, hours, retract, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';

const view = (at: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(at)).view;
const isolation = (at: number, on: boolean): Told => ({ type: 'isolation-set', at, payload: { on } });
const leaving = (at: number, to: number | null): Told => ({
  type: 'leaving-expected',
  at,
  id: `leaving-${at}`,
  payload: { at: to === null ? null : toIso(hours(to)) },
});
const line = (at: number, ref?: string): Told => ({
  type: 'therapist-line-set',
  at,
  role: 'therapist',
  id: `line-${at}`,
  payload: ref === undefined ? {} : { line: { ref } },
});

describe('what stands beside the plan', () => {
  it('is nothing while nobody said it', () => {
    expect(view(1)).toMatchObject({ isolation: false, leaving: null, therapistLine: null });
  });
  it('infection steps apply from when they were set until they were ended', () => {
    const told = [isolation(2, true), isolation(5, false)];
    expect([1, 2, 4, 5].map((h) => view(h, ...told).isolation)).toEqual([false, true, true, false]);
  });
  it('a withdrawn entry leaves the one before it', () => {
    const told = [isolation(2, true), { ...isolation(3, false), id: 'ended' }, retract(4, 'ended')];
    expect(view(5, ...told).isolation).toBe(true);
  });
  it('the time of leaving is the last one told; it stays when it has passed, and ends nothing', () => {
    const told = [leaving(1, 20), leaving(2, 30), leaving(40, null)];
    expect(view(1, ...told).leaving).toEqual({ at: hours(20), event: 'leaving-1' });
    expect(view(35, ...told).leaving).toEqual({ at: hours(30), event: 'leaving-2' });
    expect(view(40, ...told).leaving).toBeNull();
  });
  it('the line is the last one, with whose it is; taken down there is none', () => {
    const told = [line(1, 'text-1'), line(2, 'text-2'), line(3)];
    expect(view(2, ...told).therapistLine).toEqual({
      line: { ref: 'text-2' },
      by: 'staff-therapist',
      at: hours(2),
      event: 'line-2',
    });
    expect(view(3, ...told).therapistLine).toBeNull();
  });
  it('the line stays through whatever else is entered', () => {
    const told = [line(1, 'text-1'), isolation(2, true), leaving(2, 20)];
    expect(view(3, ...told).therapistLine).toMatchObject({ event: 'line-1' });
  });
});
