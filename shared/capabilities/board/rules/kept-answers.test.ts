/** Answers kept between two looks: given again only for an instant they hold at and from what they were made from. */
import { describe, expect, it } from 'vitest';
import { Kept } from './kept.ts';

describe('a kept answer', () => {
  const noted: number[] = [];
  const note = (at: number) => noted.push(at);
  const asked = (kept: Kept, t: number, madeFrom: readonly unknown[] = []) =>
    kept.at('one', t, note, madeFrom, (n) => (n(20), n(30), { asked: t }));

  it('is given again until the instant it named, and told that instant each time', () => {
    const kept = new Kept();
    const first = asked(kept, 10);
    expect(first).toEqual({ asked: 10 });
    expect(asked(kept, 10)).toBe(first);
    expect(asked(kept, 19)).toBe(first);
    expect(noted).toEqual([20, 20, 20]);
    expect(asked(kept, 20)).toEqual({ asked: 20 });
    expect(asked(kept, 29)).toEqual({ asked: 20 });
  });
  it('holds for ever where it named no instant, and tells none', () => {
    const kept = new Kept();
    const told: number[] = [];
    const ask = (t: number) =>
      kept.at(
        'one',
        t,
        (at) => told.push(at),
        [],
        () => ({ asked: t }),
      );
    expect(ask(10)).toBe(ask(10_000_000));
    expect(told.filter((at) => at !== Infinity)).toEqual([]);
  });
  it('names the first of the instants still ahead, in whatever order they were told', () => {
    const told: number[] = [];
    new Kept().at(
      'one',
      10,
      (at) => told.push(at),
      [],
      (n) => (n(30), n(5), n(10), n(20), n(25)),
    );
    expect(told).toEqual([20]);
  });
  it('is worked out anew for an earlier instant', () => {
    const kept = new Kept();
    asked(kept, 10);
    expect(asked(kept, 9)).toEqual({ asked: 9 });
  });
  it.each([
    ['another of the same words', [{ a: 1 }], [{ a: 1 }]],
    ['another beside the same', ['same', 'one'], ['same', 'other']],
    ['another before the same', ['one', 'same'], ['other', 'same']],
    ['more', ['one'], ['one', 'two']],
    ['something, where it was made from nothing', [], ['one']],
    ['less', ['one', 'two'], ['one']],
    ['nothing any more', ['one'], []],
  ])('is worked out anew when it is made from %s', (_what, before, now) => {
    const kept = new Kept();
    const first = asked(kept, 10, before);
    expect(asked(kept, 11, [...before])).toBe(first);
    expect(asked(kept, 12, now)).toEqual({ asked: 12 });
    expect(asked(kept, 13, [...now])).toEqual({ asked: 12 });
  });
  it('is one a name', () => {
    const kept = new Kept();
    expect(kept.at('one', 10, note, [], () => 1)).toBe(1);
    expect(kept.at('two', 10, note, [], () => 2)).toBe(2);
  });
});
