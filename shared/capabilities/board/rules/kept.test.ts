/** Answers kept between two looks: the same as worked out anew, and never past the instant they named. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { evaluateFacts } from './evaluate-stay.ts';
import { calendar, canonical, hours, recordOf, ward } from './history.testkit.ts';
import { Kept } from './kept.ts';
import { histories } from './random-history.testkit.ts';

const instant = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));

describe('a kept answer', () => {
  const noted: number[] = [];
  const note = (at: number) => noted.push(at);

  it('is given again until the instant it named, and told that instant each time', () => {
    const kept = new Kept();
    const ask = (t: number) => kept.at('one', t, note, [], (n) => (n(20), n(30), { asked: t }));
    expect(ask(10)).toEqual({ asked: 10 });
    expect(ask(19)).toEqual({ asked: 10 });
    expect(noted).toEqual([20, 20]);
    expect(ask(20)).toEqual({ asked: 20 });
    expect(ask(29)).toEqual({ asked: 20 });
  });
  it('is worked out anew for an earlier instant', () => {
    const kept = new Kept();
    const ask = (t: number) => kept.at('one', t, note, [], () => t);
    ask(10);
    expect(ask(9)).toBe(9);
  });
  it('is worked out anew when it was made from something else', () => {
    const kept = new Kept();
    const ask = (from: object) => kept.at('one', 10, note, [from], () => ({ from }));
    const a = { a: 1 };
    const b = { a: 1 };
    expect(ask(a)).toBe(ask(a));
    expect(ask(b).from).toBe(b);
  });
  it('is one a name', () => {
    const kept = new Kept();
    expect(kept.at('one', 10, note, [], () => 1)).toBe(1);
    expect(kept.at('two', 10, note, [], () => 2)).toBe(2);
  });
});

describe('a stay looked at again and again', { timeout: patience }, () => {
  it('reads as one looked at for the first time, at whatever instants and in whatever order', () => {
    fc.assert(
      fc.property(histories, fc.array(instant, { minLength: 2, maxLength: 8 }), (all, instants) => {
        const record = recordOf(all);
        const effective = effectiveFacts(record);
        for (const t of instants) {
          const again = evaluateFacts(record, effective, ward, calendar, t);
          const first = evaluateFacts(record, effectiveFacts(record), ward, calendar, t);
          expect(again.nextChange).toBe(first.nextChange);
          expect(canonical(again.view)).toBe(canonical(first.view));
        }
      }),
      runs(100),
    );
  });
});
