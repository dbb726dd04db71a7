import { describe, expect, it, vi } from 'vitest';
import { remembered } from './remembered.ts';

describe('what is remembered', () => {
  it('is made once', () => {
    const make = vi.fn<() => string>(() => 'twelve');
    const words = remembered<string>(3);
    expect([words('12', make), words('12', make)]).toEqual(['twelve', 'twelve']);
    expect(make).toHaveBeenCalledTimes(1);
  });

  it('is never more than was asked for: the oldest goes and is made anew', () => {
    const make = vi.fn<() => number>(() => 1);
    const kept = remembered<number>(3);
    for (const key of ['a', 'b', 'c', 'd']) kept(key, make);
    kept('d', make);
    kept('b', make);
    expect(make).toHaveBeenCalledTimes(4);
    kept('a', make);
    expect(make).toHaveBeenCalledTimes(5);
  });
});
