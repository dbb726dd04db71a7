/** May we start, by oxygen: the own target, and more of it than before. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { check, hours, order, type Told } from '../../board/rules/history.testkit.ts';
import { ask, checked, oxygen, said, taken, well } from './may-start-now.testkit.ts';

describe("oxygen against the person's own target and the check before", () => {
  const target = (low: number, h: number, role: Role = 'nurse'): Told => ({
    ...order(h, { about: 'oxygen-target', low, high: 99 }, role),
    id: `target-${low}`,
  });
  it('stands in place of the ward limit, and is named with its order', () => {
    const told = [target(94, 0.5), checked(1, [...well(1), oxygen(93, 1.1)])];
    expect(ask(2, told).reasons).toEqual([
      {
        word: 'not-now',
        words: 'oxygen saturation 93 % is below the own target of 94 %',
        limit: 94,
        source: "the person's own target, by order",
        takenAt: hours(1.1),
        facts: ['check-1', 'target-94'],
      },
    ]);
    expect(ask(2, [target(88, 0.5), checked(1, [...well(1), oxygen(89, 1.1)])]).word).toBe('may-start');
  });
  it('a lower target by someone who may not free does not count', () => {
    const told = [target(94, 0.4), target(88, 0.5, 'aide'), checked(1, [...well(1), oxygen(93, 1.1)])];
    expect(ask(2, told).reasons[0]!.facts).toEqual(['check-1', 'target-94']);
  });
  it('a first target by someone who may not free counts only above the ward limit of 90 %', () => {
    const below = [target(86, 0.5, 'aide'), checked(1, [...well(1), oxygen(89, 1.1)])];
    expect(said(2, below)).toEqual(['not-now: oxygen saturation 89 % is below 90 %']);
    const above = [target(94, 0.5, 'aide'), checked(1, [...well(1), oxygen(93, 1.1)])];
    expect(ask(2, above).reasons[0]!.facts).toEqual(['check-1', 'target-94']);
  });
  it('of two targets of one time the higher stands', () => {
    for (const both of [
      [target(94, 0.5), target(88, 0.5)],
      [target(88, 0.5), target(94, 0.5)],
    ]) {
      const told = [...both, checked(1, [...well(1), oxygen(93, 1.1)])];
      expect(ask(2, told).reasons[0]!.facts).toEqual(['check-1', 'target-94']);
    }
  });
  it('asks first when more oxygen is given than at the entry before', () => {
    const flow = (litres: number, h: number) => checked(h, [...well(h), oxygen(97, h, litres)]);
    const more = 'ask-first: more oxygen than at the last check (2 to 3 litres a minute)';
    expect(ask(3, [flow(2, 1), flow(2, 2)]).word).toBe('may-start');
    expect(said(3, [flow(2, 1), flow(3, 2)])).toEqual([more]);
    expect(ask(3, [flow(2, 1), flow(3, 2)]).reasons[0]!.facts).toEqual(['check-2', 'check-1']);
    expect(ask(4, [flow(2, 1), flow(3, 2), flow(3, 3)]).word).toBe('may-start');
    expect(ask(2, [flow(3, 1)]).word).toBe('may-start');
    expect(ask(2, [checked(1, [...well(1), oxygen(97, 1, 2), oxygen(97, 1.1, 3)])]).word).toBe('may-start');
    expect(said(4, [flow(2, 1), flow(3, 2), checked(3)])).toEqual([more]);
  });
  it('by someone who may not free the flow counts only where it is more, and hides no rise', () => {
    const nurse = (litres: number, h: number) => taken(h, [oxygen(97, h, litres)]);
    const aide = (litres: number, h: number) => taken(h, [oxygen(97, h, litres)], 'aide');
    const rise = (from: number, to: number) =>
      `ask-first: more oxygen than at the last check (${from} to ${to} litres a minute)`;
    expect(said(5, [checked(), nurse(2, 2), aide(4, 3)])).toEqual([rise(2, 4)]);
    expect(said(5, [checked(), nurse(2, 2), aide(4, 3), nurse(4, 4)])).toEqual([rise(2, 4)]);
    expect(said(5, [checked(), nurse(2, 1.5), nurse(2, 2), aide(1, 3)])).toEqual([]);
    expect(said(5, [checked(), nurse(4, 2), nurse(2, 3), aide(3, 4)])).toEqual([rise(2, 3)]);
  });
  it('asks first where the check before said nothing of it, until a flow is held against one', () => {
    const nurse = (litres: number, h: number) => taken(h, [oxygen(97, h, litres)]);
    expect(said(5, [checked(), nurse(2, 2)])).toEqual([
      'ask-first: on 2 litres of oxygen a minute; the flow before is not known',
    ]);
    expect(ask(5, [checked(), nurse(2, 2), nurse(2, 3)]).word).toBe('may-start');
    expect(ask(5, [checked(), nurse(0, 2)]).word).toBe('may-start');
  });
  it('a rise that is too old no longer asks when a check cleared the start after it', () => {
    const told = [taken(1, [oxygen(97, 1, 2)]), taken(2, [oxygen(97, 2, 3)]), check('walk', 3)];
    const rise = (t: number, all: Told[]) => said(t, all).some((w) => w.includes('more oxygen'));
    expect(rise(13.9, told)).toBe(true);
    expect(rise(14, told)).toBe(false);
    expect(rise(14, told.slice(0, 2))).toBe(true);
  });
});
