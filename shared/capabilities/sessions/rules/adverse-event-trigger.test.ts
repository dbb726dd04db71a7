/**
 * What went wrong in a session, over a whole stay. Users' job 3a: a rise of oxygen need or a failed attempt asks for
 * another look; for a pulled line, pain, distress and numbers out of ten: common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import type { TaskPlan } from '../../board/moving-view.ts';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  hours,
  session,
  stayOf,
  ward,
  type StageId,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { germanBook } from '../../../i18n/phrases/german.ts';
import { people } from '../../handling/values.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';

const weight: Told = { type: 'weight-recorded', at: 1, payload: { weight: { kg: 70, how: 'measured' } } };
const looked = (stage: StageId, at: number, id: string): Told => ({ ...check(stage, at), id });
const goal: Told = {
  type: 'goal-set',
  at: 1.5,
  role: 'nurse',
  payload: { goal: { activity: 'stand', timesUp: 2 } },
};
const stood = (at: number, id: string, more: Record<string, unknown> = {}): Told => ({
  ...session(at, { activities: ['stand'], effort: 3, ...more }),
  id,
});
const easy = [stood(2, 'a'), stood(3, 'b')];
const seen = (h: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(weight, looked('stand', 1, 'first'), goal, ...told), ward, calendar, hours(h)).view;
const count = (p: TaskPlan): number => people.options.indexOf(p.people);

const events = [
  ['low-oxygen', 'Something went wrong in a session: low oxygen'],
  ['line-pulled', 'Something went wrong in a session: line pulled'],
  ['distress', 'Something went wrong in a session: distress'],
  ['pain', 'Something went wrong in a session: pain'],
  ['dizzy', 'Something went wrong in a session: dizzy'],
] as const;
const { effortFrom, painFrom } = DEFAULT_RULES.stop;
const pain = (outOfTen: number) => ({ readings: [{ kind: 'pain', outOfTen, at: toIso(hours(4)) }] });
const scores = [
  ['effort', { effort: effortFrom.value }, 'A stop limit was passed: effort 8 of 10 is 8 or more'],
  ['pain after', { painAfter: painFrom.value }, 'A stop limit was passed: pain 7 of 10 is 7 or more'],
  ['pain meanwhile', pain(painFrom.value), 'A stop limit was passed: pain 7 of 10 is 7 or more'],
] as const;
const wrong: readonly (readonly [string, Record<string, unknown>, string])[] = [
  ...events.map(([event, words]) => [event, { events: [event] }, words] as const),
  ...scores,
];

describe('a session that was done and in which something went wrong', () => {
  it.each(wrong)(
    'MAY-6 given %s, told by an aide, then a check is due before the next move',
    (_what, more, words) => {
      const view = seen(5, stood(4, 'wrong', more));
      expect(view.trust.state).toBe('re-check');
      expect(view.trust.openTriggers).toEqual([
        { event: 'wrong', kind: 'failed-attempt', at: hours(4), words },
      ]);
      expect(view.due.state).not.toBe('none');
      expect(view.due.because[0]).toMatchObject({ facts: ['wrong'] });
      expect(view.due.because[0]!.words).toContain('before the next move');
      expect(view.mayStart!.reasons).toContainEqual(
        expect.objectContaining({ words: `${words}; not looked at since`, facts: ['wrong'] }),
      );
    },
  );
  it.each(wrong)('given %s, then no task asks for fewer people, and each for one more', (_what, more) => {
    const [before, after] = [seen(5, stood(4, 'well')), seen(5, stood(4, 'wrong', more))];
    for (const part of ['day', 'night'] as const) {
      for (const now of after.plan![part]) {
        const was = before.plan![part].find((p) => p.task === now.task)!;
        expect(count(now)).toBeGreaterThanOrEqual(Math.min(count(was) + 1, people.options.length - 1));
      }
    }
  });
  it.each(wrong)(
    'given %s after two easy sessions, then nobody is called ready nor goes up',
    (_what, more) => {
      const ready = seen(3.5, ...easy);
      expect(ready.signs.map((s) => s.kind)).toContain('ready');
      expect(ready.proposal).toMatchObject({ step: 'up' });
      const after = seen(5, ...easy, stood(4, 'wrong', more));
      expect(after.signs.map((s) => s.kind)).not.toContain('ready');
      expect(after.proposal).toMatchObject({ step: 'back', sessions: ['wrong'] });
    },
  );
  it.each(wrong)('given %s and a check after it that went as far, then it is answered', (_what, more) => {
    const view = seen(6, ...easy, stood(4, 'wrong', more), looked('stand', 5, 'again'));
    expect(view.trust).toMatchObject({ state: 'current', openTriggers: [] });
    expect(view.signs.map((s) => s.kind)).not.toContain('ready');
    expect(view.proposal).toBeNull();
  });
  it.each([
    ['effort', { effort: effortFrom.value - 1 }],
    ['pain after', { painAfter: painFrom.value - 1 }],
    ['pain before it', { painBefore: 10 }],
    ['an equipment fault', { events: ['equipment-fault'] }],
  ])('given %s that is no limit passed and nothing of the person, then nothing is open', (_what, more) => {
    expect(seen(5, stood(4, 'well', more)).trust).toMatchObject({ state: 'current', openTriggers: [] });
  });
  it('given both an event and a reading beyond a limit, then both are told', () => {
    const readings = [{ kind: 'oxygen', saturation: 82, at: toIso(hours(4)) }];
    const view = seen(5, stood(4, 'wrong', { events: ['low-oxygen', 'distress'], readings }));
    expect(view.trust.openTriggers.map((o) => o.words)).toEqual([
      'Something went wrong in a session: low oxygen, distress. A stop limit was passed: oxygen saturation 82 % is below 85',
    ]);
  });
  it('given one that was not done, then what is written beside it opens nothing', () => {
    const notDone = { outcome: 'not-done', activities: [], notDone: { group: 'said-no' }, painAfter: 9 };
    expect(seen(5, stood(4, 'no', notDone)).trust.openTriggers).toEqual([]);
  });
});

describe('what went wrong, in German', () => {
  it.each(wrong)('given %s, then its words are known', (_what, _more, words) => {
    expect(germanBook().say(words)).toMatch(/^(Zwischenfall bei einer|Eine Abbruchgrenze wurde)/);
  });
  it('given both, then both are said', () => {
    expect(
      germanBook().say(
        'Something went wrong in a session: low oxygen, distress. A stop limit was passed: effort 8 of 10 is 8 or more',
      ),
    ).toBe(
      'Zwischenfall bei einer Mobilisation: wenig Sauerstoff, Not. Eine Abbruchgrenze wurde überschritten: Anstrengung 8 von 10, Grenze 8 oder mehr',
    );
  });
});
