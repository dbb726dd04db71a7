/** A session with a low pressure, over a whole stay: common practice, no source, to be signed by the ward. */
import { describe, expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import type { Reading } from '../../assessments/values.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  session,
  stayOf,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { TRIGGER_HELP } from '../../handling/rules/trigger-help.ts';
import { people } from '../../handling/values.ts';
import type { TaskPlan } from '../../board/moving-view.ts';

const pressure = (posture: 'lying' | 'seated' | 'standing', systolic: number, h: number): Reading => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic: 40,
  at: toIso(hours(h)),
});
const weight: Told = { type: 'weight-recorded', at: 1, payload: { weight: { kg: 70, how: 'measured' } } };
const walks = { ...check('walk', 1), id: 'walks' };
const walk = (readings: Reading[], role: Role = 'nurse'): Told => ({
  ...session(2, { readings }),
  role,
  id: 'low',
});
const seen = (...told: Told[]) =>
  evaluateStay(stayOf(weight, walks, ...told), ward, calendar, hours(2.5)).view;
const count = (p: TaskPlan): number => people.options.indexOf(p.people);

describe('a session in which the pressure was low', () => {
  it.each([
    ['a nurse', 'nurse', 'standing'],
    ['a nurse', 'nurse', 'seated'],
    ['an aide', 'aide', 'standing'],
  ] as const)('given one by %s (%s) with 70/40 %s, then somebody checks again', (_who, role, posture) => {
    const view = seen(walk([pressure(posture, 70, 2)], role));
    const says = 'A stop limit was passed: systolic 70 mmHg is below 90';
    expect(seen().trust.state).toBe('current');
    expect(view.trust.state).toBe('re-check');
    expect(view.trust.openTriggers).toEqual([
      expect.objectContaining({ event: 'low', kind: 'failed-attempt', at: hours(2), words: says }),
    ]);
    expect(view.mayStart!.word).not.toBe('may-start');
    expect(view.mayStart!.reasons).toContainEqual(
      expect.objectContaining({ words: `${says}; not looked at since`, facts: ['low'] }),
    );
  });
  it('given one with 70/40 standing, then each task asks one person more, as after a failed attempt', () => {
    const [before, after] = [seen(), seen(walk([pressure('standing', 70, 2)]))];
    const { more } = TRIGGER_HELP['failed-attempt'];
    for (const part of ['day', 'night'] as const) {
      for (const now of after.plan![part]) {
        const was = before.plan![part].find((p) => p.task === now.task)!;
        expect(count(now)).toBeGreaterThanOrEqual(Math.min(count(was) + more, people.options.length - 1));
      }
    }
  });
  it('given one with 90 standing, then nothing is open', () => {
    expect(seen(walk([pressure('standing', 90, 2)])).trust).toMatchObject({
      state: 'current',
      openTriggers: [],
    });
  });
  it('given 130 lying, then 128 and 113 standing in it, then the fall from the reading before opens it', () => {
    const readings = [
      pressure('lying', 130, 1.9),
      pressure('standing', 128, 2),
      pressure('standing', 113, 2.1),
    ];
    expect(seen(walk(readings)).trust.openTriggers.map((o) => o.words)).toEqual([
      'A stop limit was passed: systolic fell by 15 mmHg with effort (128 to 113), more than 10',
    ]);
  });
});
