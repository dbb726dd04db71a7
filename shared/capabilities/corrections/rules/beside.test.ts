/** What another room works out from the facts of a stay is kept with these facts, and with no others. */
import { describe, expect, it } from 'vitest';
import { retract, session, stayOf, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from './effective.ts';

const walk: Told = { ...session(1), id: 'walk' };

describe('beside the facts of a stay', () => {
  it.each([
    ['as told', stayOf(walk)],
    ['with one withdrawn', stayOf(walk, retract(2, 'walk'))],
  ])('there is nothing at first, then what was worked out from them: %s', (_, record) => {
    const { beside } = effectiveFacts(record);
    expect(beside.kept).toBeNull();
    const workedOut = { tier: 'Walk' };
    beside.kept = workedOut;
    expect(beside.kept).toBe(workedOut);
    // Facts read anew, perhaps with one more, know nothing of it.
    expect(effectiveFacts(record).beside.kept).toBeNull();
  });
});
