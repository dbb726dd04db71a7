import { describe, expect, it } from 'vitest';
import { enteredWords } from './entered-words.ts';

const said = (data: unknown) =>
  enteredWords(data, (at) => `at ${at}`).map(({ of, words }) => `${of}: ${words}`);

describe('what was entered, in words', () => {
  it('names each field and its value, and no ids', () => {
    expect(
      said({
        stay: '0b7e1a52-64a0-4a35-9f2b-3f7b8a8f0d11',
        scope: 'out-of-bed',
        reviewBy: '1970-01-01T00:00:01.000Z',
        session: { outcome: 'done', activities: ['walk', 'chair'], metres: 20, refused: false },
        note: 'Dizzy after 10 m',
      }),
    ).toEqual([
      'Scope: Getting out of bed',
      'Review by: at 1000',
      'Outcome: Done',
      'Activities: Walk, Chair',
      'Metres: 20',
      'Refused: no',
      'Note: Dizzy after 10 m',
    ]);
  });
});
