import { describe, expect, it } from 'vitest';
import type { EventId, StaffId, StayId } from '@footboard/shared/kernel/ids';
import { bedRow, NOON, stayRow } from '../../board/rows.testkit.ts';
import { standsBeside } from './stands-beside.ts';

const MINUTE = 60_000;
const event = (id: string) => id as EventId;
const entry = { stay: 's1', occurred: NOON, events: ['mine'] };
const hold = (placedAt: number, id = 'h1') => ({
  hold: id,
  scope: 'walking' as const,
  reason: 'unstable' as const,
  owner: 'n1' as StaffId,
  placedAt,
  reviewAt: placedAt + 60 * MINUTE,
  reviewDue: false,
  event: event(id),
  note: null,
});
const row = (over: Parameters<typeof stayRow>[0]) => [
  bedRow('7', stayRow({ stay: 's1' as StayId, ...over })),
];

describe('what stands beside an entry that was sent late', () => {
  it('is nothing when nothing has happened since', () => {
    expect(standsBeside(entry, row({}))).toEqual([]);
  });

  it('names a hold that was placed since, and not one from before', () => {
    const beds = row({ holds: [hold(NOON - MINUTE, 'before'), hold(NOON + 5 * MINUTE, 'since')] });
    expect(standsBeside(entry, beds)).toEqual([{ kind: 'hold', at: NOON + 5 * MINUTE, scope: 'walking' }]);
  });

  it('does not name what the entry itself made', () => {
    expect(standsBeside({ ...entry, events: ['h1'] }, row({ holds: [hold(NOON)] }))).toEqual([]);
  });

  it('names what happened, orders, and what the entry disagrees with', () => {
    const { trust } = stayRow();
    const beds = row({
      orders: [
        { event: event('o1'), order: { about: 'activity', most: 'bed-rest' } as never, at: NOON + MINUTE },
      ],
      trust: {
        ...trust,
        openTriggers: [{ event: event('t1'), kind: 'fall', at: NOON + 2 * MINUTE, words: 'Fall' }],
        conflicts: [
          { question: 'tier', safer: event('x'), other: event('mine'), words: 'the lower tier stands' },
          { question: 'tier', safer: event('x'), other: event('y'), words: 'not about this entry' },
        ],
      },
    });
    expect(standsBeside(entry, beds)).toEqual([
      { kind: 'trigger', at: NOON + 2 * MINUTE, words: 'Fall' },
      { kind: 'order', at: NOON + MINUTE },
      { kind: 'disagrees', words: 'the lower tier stands' },
    ]);
  });

  it('names the bed the person is in now, where it is another, before what happened there', () => {
    const beds = row({ holds: [hold(NOON + MINUTE)] });
    expect(standsBeside({ ...entry, bed: '7' }, beds).map(({ kind }) => kind)).toEqual(['hold']);
    expect(standsBeside({ ...entry, bed: '4' }, beds)).toEqual([
      { kind: 'other-bed', from: '4', bed: '7' },
      { kind: 'hold', at: NOON + MINUTE, scope: 'walking' },
    ]);
  });

  it('says that the person has gone, and looks at nobody who is in the bed now', () => {
    const beds = [bedRow('7', stayRow({ stay: 's2' as StayId, holds: [hold(NOON + MINUTE)] }))];
    expect(standsBeside(entry, beds)).toEqual([{ kind: 'gone' }]);
  });

  it('has nothing to say of an arrival', () => {
    expect(standsBeside({ ...entry, stay: null }, row({ holds: [hold(NOON + MINUTE)] }))).toEqual([]);
  });
});
