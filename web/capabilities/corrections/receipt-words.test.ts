import { describe, expect, it } from 'vitest';
import { receiptsPage } from '@footboard/shared/wire/access';
import { seenWords } from './receipt-words.ts';

const screen = (device: string, place: string) => ({
  device,
  place,
  kind: 'wall',
  connected: true,
  painted: 1,
  paintedAt: 1, // prettier-ignore
});
const page = (waiting: string[], feed: number | null = 7) =>
  receiptsPage.parse({
    feed: 9,
    screens: [screen('d1', 'Station'), screen('d2', 'Corridor wall')],
    changes: [{ event: 'e1', stay: 's1', recorded: 1, feed, waiting }],
  });

describe('who has seen a correction', () => {
  it('WALL-8 names the screens that have not', () => {
    expect(seenWords(page(['d2']), 'e1')).toEqual({
      words: 'Seen by 1 of 2 screens; not yet: Corridor wall',
      waiting: true,
    });
  });
  it('says it plainly once all have', () => {
    expect(seenWords(page([]), 'e1')).toEqual({ words: 'Seen by 2 of 2 screens', waiting: false });
  });
  it('says nothing of what changed no screen, or is older than is known', () => {
    expect(seenWords(page([], null), 'e1')).toBeNull();
    expect(seenWords(page([]), 'e9')).toBeNull();
  });
});
