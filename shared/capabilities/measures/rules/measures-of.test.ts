import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import {
  calendar,
  correct,
  hours,
  retract,
  stayOf,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { DEFAULT_RULES } from '../../wards/rules/default-rules.ts';
import type { Measure } from '../values.ts';
import { measuresOf } from './measures-of.ts';

const switched = (on: boolean, at: number, role: Role = 'therapist'): Told => ({
  type: 'walking-measures-switched',
  at,
  role,
  payload: { on },
});
const measured = (measure: Measure, at: number, extra: Partial<Told> = {}): Told => ({
  type: 'walking-measured',
  at,
  role: 'therapist',
  payload: { measure, readBy: { age: 78, sex: 'female' } },
  ...extra,
});
const upAndGo = (seconds: number, at: number, extra: Partial<Told> = {}) =>
  measured({ kind: 'up-and-go', seconds, support: 'frame' }, at, extra);
const stands = (count: number, at: number) =>
  measured({ kind: 'chair-stands', stands: count, usedArms: false }, at);
const speed = (seconds: number, at: number) =>
  measured(
    {
      kind: 'gait-speed',
      metres: 4,
      seconds,
      pace: 'usual',
      start: 'walking',
      turn: false,
      support: 'none',
    },
    at,
  );

const shown = (t: number, ...told: Told[]) =>
  measuresOf(effectiveFacts(stayOf(...told)).facts, hours(t), DEFAULT_RULES);

describe('MEASURE-1 walking measures', () => {
  it('are off until a therapist turns them on, also when some were taken', () => {
    expect(shown(9)).toBeNull();
    expect(shown(9, upAndGo(14, 2))).toBeNull();
    expect(shown(9, switched(true, 1))).toEqual({ event: 'e00002', last: [] });
  });
  it.each(['aide', 'nurse', 'charge-nurse', 'handling-coordinator', 'manager', 'records'] as const)(
    'are not turned on by the role %s',
    (role) => {
      expect(shown(9, switched(true, 1, role))).toBeNull();
    },
  );
  it('are on from the instant they were turned on', () => {
    expect(shown(0.9, switched(true, 1))).toBeNull();
    expect(shown(1, switched(true, 1))).not.toBeNull();
  });
  it('are off once turned off, by anyone, and on again by a therapist', () => {
    const off = [switched(true, 1), switched(false, 2, 'nurse')];
    expect(shown(1.9, ...off)).not.toBeNull();
    expect(shown(2, ...off)).toBeNull();
    expect(shown(4, ...off, switched(true, 3, 'nurse'))).toBeNull();
    expect(shown(4, ...off, switched(true, 3))?.event).toBe('e00004');
  });
  it('turned on and off at one instant are off, in whichever order it was told', () => {
    expect(shown(2, switched(true, 1), switched(false, 1))).toBeNull();
    expect(shown(2, switched(false, 1), switched(true, 1))).toBeNull();
  });
  it('name the entry that turned them on, the last if there are several', () => {
    expect(shown(3, switched(true, 1), switched(true, 2))?.event).toBe('e00003');
  });
});

describe('the measures of a stay', () => {
  const on = switched(true, 1);

  it('are the last of each kind, newest first', () => {
    const view = shown(9, on, upAndGo(20, 2), stands(4, 3), upAndGo(18, 4), speed(8, 3.5));
    expect(view?.last.map((m) => [m.event, m.words])).toEqual([
      ['e00005', 'Up and go over 3 m: 18 s'],
      ['e00006', 'Walking speed: 4 m in 8 s (usual pace)'],
      ['e00004', 'Chair stands in 30 s: 4'],
    ]);
  });
  it('are each judged, with the change since the one before of their kind', () => {
    const view = shown(9, on, stands(4, 2), upAndGo(20, 2), stands(6, 3), upAndGo(18, 4));
    expect(view?.last[0]).toEqual({
      event: 'e00006',
      at: hours(4),
      words: 'Up and go over 3 m: 18 s',
      says: 'At risk of falling: 12 s or more. 2 s quicker than the time before.',
      source: 'US Centers for Disease Control and Prevention, timed up and go (2017)',
      warnings: ['Walked with a frame: compare it only with a walk with the same.'],
    });
    expect(view?.last[1]?.says).toBe(
      'Below average for women of 75 to 79 (fewer than 10). 2 more than the time before.',
    );
  });
  it('add the source of a size of change to their own', () => {
    const [last] = shown(9, on, speed(10, 2), speed(8, 3))!.last;
    expect(last?.says).toContain('0.10 m/s faster than the time before: a substantial change');
    expect(last?.source).toMatch(/^Perry 1995.*; Perera et al\. 2006 \(from memory\)$/);
    expect(shown(9, on, speed(10, 2))!.last[0]?.source).not.toContain('Perera');
  });
  it('after the instant asked about do not count', () => {
    expect(shown(3.9, on, upAndGo(20, 2), upAndGo(18, 4))?.last[0]?.words).toContain('20 s');
    expect(shown(4, on, upAndGo(20, 2), upAndGo(18, 4))?.last[0]?.words).toContain('18 s');
  });
  it('corrected read as corrected, withdrawn are gone', () => {
    const was = upAndGo(12, 2);
    expect(shown(9, on, was, correct(3, 'e00003', upAndGo(21, 2)))?.last[0]?.words).toContain('21 s');
    expect(shown(9, on, was, retract(3, 'e00003'))?.last).toEqual([]);
  });
  it('entered by someone who does not measure say: repeat it', () => {
    const warned = 'Entered by someone who does not take this measure: repeat it.';
    const warnings = (role: Role) => shown(9, on, upAndGo(11, 2, { role }))?.last[0]?.warnings;
    for (const role of ['aide', 'records', 'manager'] as const) expect(warnings(role)).toContain(warned);
    for (const role of ['nurse', 'therapist', 'charge-nurse'] as const) {
      expect(warnings(role)).not.toContain(warned);
    }
  });
  it('never say the body weight', () => {
    const six: Measure = {
      kind: 'six-minute-walk',
      metres: 210,
      heightCm: 161,
      weightKg: 93.25,
      support: 'none',
    };
    expect(JSON.stringify(shown(9, on, measured(six, 2)))).not.toContain('93');
  });
});

describe('the board', () => {
  const at = (t: number, ...told: Told[]) => evaluateStay(stayOf(...told), ward, calendar, hours(t));

  it('shows them, and says when the next of them comes to count', () => {
    const { view, nextChange } = at(3, switched(true, 1), upAndGo(18, 3.25));
    expect(view.measures?.last).toEqual([]);
    expect(nextChange).toBe(hours(3.25));
    expect(at(3.25, switched(true, 1), upAndGo(18, 3.25)).view.measures?.last).toHaveLength(1);
  });
  it("reads them by the ward's own cut points", () => {
    const own = structuredClone(DEFAULT_RULES);
    own.walking.upAndGoFrom.value = 20;
    const told = stayOf(switched(true, 1), upAndGo(18, 2));
    const { view } = evaluateStay(told, { ...ward, rules: own }, calendar, hours(3));
    expect(view.measures?.last[0]?.says).toBe('Under the cut point for risk of falling (20 s).');
  });
});
