/** Who came, went and moved since the last huddle, and who is spoken of first. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import type { EventId } from '../../../kernel/ids.ts';
import { check, hours, order, trigger, type Told } from '../../board/rules/history.testkit.ts';
import {
  arrive,
  between,
  boardOf,
  changed,
  changedFor,
  HUDDLE,
  LATER,
  leave,
  lines,
  move,
  stayIn,
  tell,
  wardOf,
} from './changes.testkit.ts';

const comfort: Told = { type: 'scope-set', at: 3, payload: { scope: 'comfort' } };
const fenced: Told = {
  type: 'scope-set',
  at: 3,
  payload: { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 't' } },
};
const bearsAll = order(3, { about: 'weight-bearing', limb: 'left-leg', bears: 'unrestricted' });

describe('somebody who came since the last huddle', () => {
  it.each<[string, readonly Told[]]>([
    ['not checked here yet', []],
    ['checked here', [check('walk', 3)]],
    ['comfort plan', [comfort]],
    ["clinician's plan only", [fenced]],
  ])('is said to have arrived: %s', (state, told) => {
    const changes = changed({}, (log) => arrive(log, 1, 2.5, told));
    expect(lines(changes)).toEqual([`1 arrived: Arrived 24 Oct 20:30: ${state}`]);
  });
});

describe('somebody who is not where they were', () => {
  it('left, where they are in no bed now: no entry of their own says so', () => {
    const [left, ...more] = changed({ 1: [check('walk', 1)] }, (log) => leave(log, 1, 3));
    expect(left).toMatchObject({ kind: 'left', label: '1', words: 'Left the ward' });
    expect(left!.because).toEqual([
      { rule: 'changes/left', facts: [], words: 'Was in a bed at the last huddle and is in none now' },
    ]);
    expect(more).toEqual([]);
  });
  it('moved, where they are in another bed: both beds are named', () => {
    const [moved, ...more] = changed({ 1: [check('walk', 1)] }, (log) => move(log, 1, 3, 3));
    expect(moved).toMatchObject({ kind: 'moved', label: '3', words: 'Moved from 1' });
    expect(moved!.because).toEqual([{ rule: 'changes/moved', facts: [], words: 'Was in 1, is in 3' }]);
    expect(more).toEqual([]);
  });
});

describe('what happened since and may be answered by now', () => {
  it('is said with when, and stands on its entry', () => {
    const board = boardOf(wardOf({ 1: [check('walk', 1)] }), LATER);
    const event = 'e-fall' as EventId;
    const happened = [{ stay: stayIn(1), event, at: hours(3), words: 'Fall' }];
    expect(between(board, board, happened).map(({ because }) => because)).toEqual([
      [{ rule: 'changes/happened', facts: [event], words: 'Fall, 24 Oct 21:00' }],
    ]);
  });
});

describe('what is spoken of first', () => {
  it('of one person is what limits them, then what frees them', () => {
    const changes = changedFor([check('edge', 1)], [bearsAll, check('walk', 3.5)]);
    expect(changes.map(({ kind }) => kind)).toEqual(['order-changed', 'less-help', 'tier-up']);
  });
  it('is whoever came, then whoever needs more, then whoever needs less, and last whoever left', () => {
    const checked = [check('edge', 1)];
    const changes = changed({ 1: checked, 2: checked, 3: checked }, (log) => {
      leave(log, 1, 3);
      tell(log, 2, [check('walk', 3)]);
      tell(log, 3, [trigger('fall', 3)]);
      arrive(log, 4, 3);
    });
    expect([...new Set(changes.map(({ label }) => label))]).toEqual(['4', '3', '2', '1']);
    // Whatever is said of one person is said together.
    expect(changes.map(({ label }) => label)).toEqual(['4', '3', '3', '2', '2', '1']);
  });
  it('is the same whichever bed it happened in', () => {
    const log = wardOf({ 1: [check('edge', 1)], 2: [check('edge', 1)] });
    const before = boardOf(log, HUDDLE);
    tell(log, 1, [trigger('fall', 3)]);
    tell(log, 2, [check('walk', 3)]);
    const changes = between(before, boardOf(log, LATER));
    expect([...new Set(changes.map(({ label }) => label))]).toEqual(['1', '2']);
  });
});
