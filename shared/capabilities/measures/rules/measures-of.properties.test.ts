import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Role } from '../../../kernel/author.ts';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  begun,
  calendar,
  canonical,
  check,
  hours,
  recordOf,
  retract,
  stayOf,
  trigger,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { stayView } from '../../board/view.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { DEFAULT_RULES } from '../../wards/rules/default-rules.ts';
import type { Measure } from '../values.ts';
import { measuresOf } from './measures-of.ts';

const switched = (on: boolean): Told => ({ type: 'walking-measures-switched', payload: { on } });
const measured = (measure: Measure): Told => ({
  type: 'walking-measured',
  payload: { measure, readBy: { age: 78, sex: 'female' } },
});
const upAndGo = (seconds: number | null) => measured({ kind: 'up-and-go', seconds, support: 'frame' });
const stands = (count: number) => measured({ kind: 'chair-stands', stands: count, usedArms: false });

const entries = fc.record({
  of: fc.constantFrom(switched(true), switched(false), upAndGo(9), upAndGo(null), stands(14)),
  role: fc.constantFrom<Role>('therapist', 'nurse', 'aide'),
  at: fc.integer({ min: 1, max: 20 }),
  withdrawn: fc.boolean(),
});

it(
  'MEASURE-4 a walking measure changes nothing else of a stay, whoever enters or withdraws it, however late',
  () => {
    const stay = [check('stand', 2), trigger('fall', 5), check('walk', 6), trigger('faint', 12)];
    const at20 = (...told: Told[]) => evaluateStay(stayOf(...told), ward, calendar, hours(20)).view;
    const plain = at20(...stay);
    fc.assert(
      fc.property(fc.array(entries, { minLength: 1, maxLength: 5 }), (added) => {
        const told = added.flatMap(({ of, role, at, withdrawn }, i) => [
          { ...of, role, at, id: `m${i}`, recorded: 20 },
          ...(withdrawn ? [{ ...retract(20, `m${i}`, 'aide'), recorded: 20.1, id: `w${i}` }] : []),
        ]);
        const view = at20(...stay, ...told);
        stayView.parse(view);
        const rest = { ...view, measures: null, version: plain.version };
        expect(canonical(rest)).toBe(canonical(plain));
      }),
      runs(40),
    );
  },
  patience,
);

it(
  'the measures of a stay are the same in whichever order their entries arrived',
  () => {
    const told: readonly Told[] = [
      { ...begun(), id: 'a', at: 0 },
      ...[switched(true), upAndGo(20), stands(5), upAndGo(18), switched(false), switched(true)].map(
        (one, i) => ({ ...one, role: 'therapist' as const, id: `b${i}`, at: [1, 2, 2, 2, 3, 4][i]! }),
      ),
    ];
    const seen = (order: readonly Told[]) =>
      measuresOf(effectiveFacts(recordOf(order)).facts, hours(9), DEFAULT_RULES);
    const first = seen(told);
    expect(first?.event).toBe('b5');
    expect(first?.last.map((m) => m.words)).toEqual(['Up and go over 3 m: 18 s', 'Chair stands in 30 s: 5']);
    fc.assert(
      fc.property(fc.shuffledSubarray([...told], { minLength: told.length }), (order) => {
        expect(canonical(seen(order))).toBe(canonical(first));
      }),
      runs(100),
    );
  },
  patience,
);
