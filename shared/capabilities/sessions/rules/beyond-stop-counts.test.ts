/** A session beyond a stop limit went wrong, whatever its outcome says. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  stayOf,
  ward,
  session,
  type Told,
} from '../../board/rules/history.testkit.ts';

const walker: Told = { ...check('walk', 1), id: 'walker' };
const goal: Told = {
  type: 'goal-set',
  at: 1.5,
  role: 'nurse',
  payload: { goal: { activity: 'walk', timesUp: 2 } },
};
const walk = (at: number, id: string, more: Record<string, unknown> = {}): Told => ({
  ...session(at, { effort: 3, metres: 120, ...more }),
  id,
});
const readings = (at: number) => ({
  readings: [{ kind: 'oxygen', saturation: 82, at: toIso(hours(at)) }],
});
const view = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(walker, goal, ...told), ward, calendar, hours(h)).view;

describe('sessions at a saturation of 82 %', () => {
  it('given two easy walks, then a step up is proposed; at 82 % none is, but a step back with that session', () => {
    expect(view(5, walk(2, 'a'), walk(3, 'b')).proposal).toMatchObject({ step: 'up', sessions: ['a', 'b'] });
    const low = view(5, walk(2, 'a'), walk(3, 'b', readings(3))).proposal!;
    expect(low).toMatchObject({ step: 'back', sessions: ['b'] });
    expect(low.because[0]!.words).toContain('A stop limit was passed');
  });

  it('given that what went wrong was named as well, then the step back says what was named', () => {
    const dizzy = view(5, walk(3, 'b', { ...readings(3), events: ['dizzy'] })).proposal!;
    expect(dizzy).toMatchObject({ step: 'back', sessions: ['b'] });
    expect(dizzy.because[0]!.words).toBe('Something went wrong in a session: dizzy');
  });

  it('given that only a device failed beside it, then the step back says which limit was passed', () => {
    const failed = view(5, walk(3, 'b', { ...readings(3), events: ['equipment-fault'] })).proposal!;
    expect(failed).toMatchObject({ step: 'back', sessions: ['b'] });
    expect(failed.because[0]!.words).toContain('A stop limit was passed');
    const stopped = walk(3, 'b', { outcome: 'stopped', events: ['equipment-fault'] });
    expect(view(5, stopped).proposal!.because[0]!.words).toBe('A session was stopped: equipment fault');
  });

  it('given a check afterwards, then they carry no step up', () => {
    const looked: Told = { ...check('walk', 4), id: 'looked' };
    const told = [walk(2, 'a', readings(2)), walk(3, 'b', readings(3)), looked];
    expect(view(5, ...told).proposal).toBeNull();
  });

  it('given the longest walk was at 82 %, then no goal is made from it', () => {
    const proposedFrom = (...told: readonly Told[]) =>
      evaluateStay(stayOf(walker, ...told), ward, calendar, hours(5)).view.today.goal?.metres;
    expect(proposedFrom(walk(2, 'a'))).toBe(120);
    expect(proposedFrom(walk(2, 'a', readings(2)))).toBeUndefined();
    expect(proposedFrom(walk(2, 'a', { metres: 10 }), walk(3, 'b', readings(3)))).toBe(10);
  });
});
