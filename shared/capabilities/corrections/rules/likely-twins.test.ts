import { describe, expect, it } from 'vitest';
import type { EventId } from '../../../kernel/ids.ts';
import { MINUTE } from '../../../kernel/times.ts';
import { likelyTwins, type TwinLine } from './likely-twins.ts';

const line = (
  event: string,
  minutes: number,
  over: Partial<TwinLine> = {},
  session: object = {},
): TwinLine => ({
  event: event as EventId,
  type: 'session-recorded',
  occurred: minutes * MINUTE,
  counts: true,
  author: { staff: 'noor' },
  source: { kind: 'person', device: 'd1' },
  data: { session: { outcome: 'done', activities: ['chair'], ...session } },
  ...over,
});
const paper = { source: { kind: 'paper', serial: 'alder-1', device: 'd1' } };

describe('PAPER-6 (A12) sessions that may be one', () => {
  it('are pointed out when one is from paper and both are near, of one activity', () => {
    expect(likelyTwins([line('b', 30, paper), line('a', 0)])).toEqual([['a', 'b']]);
    expect(likelyTwins([line('a', 0), line('b', 31, paper)])).toEqual([]);
    expect(likelyTwins([line('a', 0), line('b', 5, paper, { activities: ['walk'] })])).toEqual([]);
    expect(likelyTwins([line('a', 0), line('b', 5, paper, { activities: ['walk', 'chair'] })])).toHaveLength(
      1,
    );
  });

  it('are pointed out from two devices, not from one', () => {
    expect(likelyTwins([line('a', 0), line('b', 5)])).toEqual([]);
    expect(
      likelyTwins([line('a', 0), line('b', 5, { source: { kind: 'person', device: 'd2' } })]),
    ).toHaveLength(1);
    expect(likelyTwins([line('a', 0, paper), line('b', 5, paper)])).toEqual([]);
    const other = { source: { kind: 'paper', serial: 'alder-2', device: 'd1' } };
    expect(likelyTwins([line('a', 0, paper), line('b', 5, other)])).toHaveLength(1);
  });

  it('not done is a twin of not done for the same reason only', () => {
    const no = (group: string) => ({ outcome: 'not-done', activities: [], notDone: { group } });
    expect(likelyTwins([line('a', 0, {}, no('said-no')), line('b', 5, paper, no('said-no'))])).toHaveLength(
      1,
    );
    expect(likelyTwins([line('a', 0, {}, no('said-no')), line('b', 5, paper, no('no-kit'))])).toEqual([]);
    expect(likelyTwins([line('a', 0, {}, no('said-no')), line('b', 5, paper)])).toEqual([]);
    expect(likelyTwins([line('a', 0), line('b', 5, paper, { outcome: 'part' })])).toHaveLength(1);
  });

  it('not done is no twin where the other was done, whatever was noted of it; without a reason it is one', () => {
    const tried = { outcome: 'not-done', activities: ['chair'], notDone: { group: 'said-no' } };
    expect(likelyTwins([line('a', 0), line('b', 5, paper, tried)])).toEqual([]);
    const noReason = { outcome: 'not-done', activities: [], notDone: undefined };
    expect(likelyTwins([line('a', 0, {}, noReason), line('b', 5, paper, noReason)])).toHaveLength(1);
    expect(likelyTwins([line('a', 0, {}, noReason), line('b', 5, paper, tried)])).toEqual([]);
    expect(likelyTwins([line('a', 0, {}, tried), line('b', 5, paper, noReason)])).toEqual([]);
  });

  it('have one activity in common at least, whichever of them has more', () => {
    const both = { activities: ['walk', 'chair'] };
    expect(likelyTwins([line('a', 0, {}, both), line('b', 5, paper)])).toHaveLength(1);
  });

  it('stand the earlier first, of one instant by their ids, at any time of day', () => {
    expect(likelyTwins([line('b', 1_000), line('a', 1_005, paper)])).toEqual([['b', 'a']]);
    expect(likelyTwins([line('b', 1_000, paper), line('a', 1_000)])).toEqual([['a', 'b']]);
    expect(likelyTwins([line('a', 1_000), line('b', 1_000, paper)])).toEqual([['a', 'b']]);
  });

  it('come from another kind of source though device and sheet are the same', () => {
    const fed = { source: { kind: 'import', device: 'd1' } };
    expect(likelyTwins([line('a', 0), line('b', 5, fed)])).toHaveLength(1);
  });

  it('are never an entry whose content nobody may see', () => {
    const hidden = { ...paper, data: undefined };
    expect(likelyTwins([line('a', 0), line('b', 5, hidden)])).toEqual([]);
    expect(likelyTwins([line('a', 0, hidden), line('b', 5)])).toEqual([]);
  });

  it('end when one is withdrawn, and never hold anything but sessions', () => {
    expect(likelyTwins([line('a', 0), line('b', 5, { ...paper, counts: false })])).toEqual([]);
    expect(likelyTwins([line('a', 0, { type: 'x' }), line('b', 5, { ...paper, type: 'x' })])).toEqual([]);
  });
});
