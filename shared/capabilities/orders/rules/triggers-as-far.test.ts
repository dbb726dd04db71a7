/** Triggers that a look at the person in bed does not answer. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { protocolLookup } from '../../assessments/rules/protocol.ts';
import { check, session, stayOf, trigger, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { triggersOf } from './triggers.ts';

function open(...told: readonly Told[]): string[] {
  const { facts, lookAgain } = effectiveFacts(stayOf(...told));
  return triggersOf(facts, lookAgain, protocolLookup([])).open.map((o) => o.kind);
}
const walks = check('walk', 0.5);

describe('given a person cleared to walk', () => {
  it.each([
    ['an attempt that failed', 'failed-attempt', trigger('failed-attempt', 1)],
    ['a session that was stopped', 'failed-attempt', session(1, { outcome: 'stopped' })],
    ['a near-fall', 'failed-attempt', session(1, { events: ['near-fall'] })],
    ['a nerve block that is off', 'block-off', trigger('block-off', 1)],
    ['days in intensive care', 'step-down-from-intensive-care', trigger('step-down-from-intensive-care', 1)],
  ] as const)('when %s comes, then only a check as far, or one that found less, answers', (_, kind, told) => {
    const named = { ...told, id: 'k' };
    expect(open(walks, named, check('clear', 2))).toEqual([kind]);
    expect(open(walks, named, check('turn', 2))).toEqual([kind]);
    expect(open(walks, named, check('turn', 2, {}, { answers: ['k'] }))).toEqual([kind]);
    expect(open(walks, named, check('walk', 2))).toEqual([]);
    expect(open(walks, named, check('stand', 2, { stand: { outcome: 'not-met' } }))).toEqual([]);
  });
});

it('given a person who comes from intensive care and nothing cleared here, then any first check answers', () => {
  expect(open(trigger('step-down-from-intensive-care', 0.1), check('clear', 1))).toEqual([]);
});
