import { afterEach, describe, expect, it } from 'vitest';
import { keepTimer, keptTimer, secondsLeft } from './running-timer.ts';

const at = Date.UTC(2026, 9, 27, 9, 0);
afterEach(() => sessionStorage.clear());

describe('a timer at the bedside', () => {
  it('counts from the kept instant, down to zero and no further', () => {
    const timer = { startedAt: at, seconds: 180 };
    expect(secondsLeft(timer, at)).toBe(180);
    expect(secondsLeft(timer, at + 60_500)).toBe(120);
    expect(secondsLeft(timer, at + 180_000)).toBe(0);
    expect(secondsLeft(timer, at + 999_000)).toBe(0);
    expect(secondsLeft(timer, at - 5_000)).toBe(180);
  });

  it('is found again by its stay and stage, and by no other', () => {
    keepTimer('s1/upright', { startedAt: at, seconds: 180 });
    expect(keptTimer('s1/upright', at + 60_000)).toEqual({ startedAt: at, seconds: 180 });
    expect(keptTimer('s2/upright', at)).toBeNull();
    expect(keptTimer('s1/stand', at)).toBeNull();
  });

  it('is forgotten when it was stopped, long over, or not a timer at all', () => {
    keepTimer('s1/stand', { startedAt: at, seconds: 60 });
    expect(keptTimer('s1/stand', at + 12 * 60_000)).toBeNull();
    keepTimer('s1/stand', null);
    expect(keptTimer('s1/stand', at)).toBeNull();
    sessionStorage.setItem('footboard.timer.s1/stand', '{"startedAt":"soon"}');
    expect(keptTimer('s1/stand', at)).toBeNull();
    sessionStorage.setItem('footboard.timer.s1/stand', 'nonsense');
    expect(keptTimer('s1/stand', at)).toBeNull();
  });
});
