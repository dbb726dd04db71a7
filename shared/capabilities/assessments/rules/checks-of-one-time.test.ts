/** Checks so close in time that neither is the later one: the safer stands. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { MINUTE, toIso } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import type { Finding } from '../values.ts';
import { allMet, assessment, hours, notMet, tierInput, upTo } from './assessment.testkit.ts';
import { judgeTier } from './tier.ts';

const judge = (...facts: Fact[]) => judgeTier(tierInput(facts));
type When = NonNullable<Parameters<typeof assessment>[1]>;
const stood = (id: string, at: number, more: When = {}) => assessment(upTo('stand'), { id, at, ...more });
const didNotStand = (id: string, at: number, more: When = {}) =>
  assessment(upTo('stand', { stand: notMet('rises') }), { id, at, ...more });
const seconds = (of: number) => of / 3600;
const disputes = (...facts: Fact[]) => judge(...facts).conflicts.map((c) => [c.safer, c.other]);

describe('two checks of one time that disagree on a stage', () => {
  it('stay in dispute until it is checked again, whatever that check finds', () => {
    const two = [stood('yes', 1), didNotStand('no', 1)];
    expect(disputes(...two)).toEqual([['no', 'yes']]);
    expect(disputes(...two, stood('again', 3))).toEqual([]);
    expect(disputes(...two, didNotStand('again', 3))).toEqual([]);
  });
  it('stay in dispute when a third of that time agrees with the safer one', () => {
    expect(disputes(stood('a', 1), didNotStand('b', 1), didNotStand('c', 1))).toEqual([['b', 'a']]);
  });
  it('are each named beside the one that found less', () => {
    const three = [didNotStand('no', 1), stood('one', 1 + seconds(20)), stood('two', 1 + seconds(40))];
    expect(disputes(...three)).toEqual([
      ['no', 'one'],
      ['no', 'two'],
    ]);
    expect(judge(...three).view.word).toBe('Edge');
  });
});

describe('a part that was not met', () => {
  const carries = (result: Finding['result']) => ({
    stand: {
      findings: allMet('stand').map((f): Finding =>
        f.part === 'leg-bears' && f.side === 'left' ? { ...f, result } : f,
      ),
    },
  });
  const notCarrying = assessment(upTo('stand', carries('not-met')), { at: 1 });
  const carrying = (at: number) => assessment(upTo('stand', carries('met')), { at });
  const leftBears = (...facts: Fact[]) => judge(...facts).seen.parts.get('leg-bears/left')?.met;
  it('is not made good within the same minute, but by a check after it', () => {
    expect(leftBears(notCarrying)).toBe(false);
    expect(leftBears(notCarrying, carrying(1 + seconds(20)))).toBe(false);
    expect(leftBears(notCarrying, carrying(2))).toBe(true);
  });
});

describe('a time known only about', () => {
  const minutes = (of: number) => of / 60;
  it.each([
    ['the one not met', { precision: 'about' as const }, {}],
    ['the one met', {}, { precision: 'about' as const }],
  ])('of %s reaches a quarter of an hour', (_, first, second) => {
    const no = didNotStand('no', 1, first);
    expect(judge(no, stood('yes', 1 + minutes(10), second)).view.word).toBe('Edge');
    expect(judge(no, stood('yes', 1 + minutes(15), second)).view.word).toBe('Stand');
  });
  it('is asked of that check alone: exact times are told apart by the minute', () => {
    expect(judge(didNotStand('no', 1), stood('yes', 1 + minutes(1))).view.word).toBe('Stand');
  });
});

describe('when a stage was done', () => {
  // In the testkit a check is recorded a minute after it occurred.
  const doneAt = (after: number) =>
    judge(assessment(upTo('edge', { edge: { at: toIso(hours(1) + after) } }), { at: 1 })).seen.stages.get(
      'edge',
    )!.at - hours(1);
  it('is what its record says, up to when the check was recorded', () => {
    expect(doneAt(-5 * MINUTE)).toBe(-5 * MINUTE);
    expect(doneAt(MINUTE)).toBe(MINUTE);
  });
  it('is the time of the check where the record says later than that', () => {
    expect(doneAt(MINUTE + 1)).toBe(0);
    expect(doneAt(60 * MINUTE)).toBe(0);
  });
});
