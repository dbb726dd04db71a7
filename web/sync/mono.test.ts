import { describe, expect, it } from 'vitest';
import { makeMono } from './mono.ts';

describe('the forward clock', () => {
  it('given a machine that slept, counts the sleep the browser’s clock leaves out', () => {
    let tick = 1_000;
    let wall = 50_000;
    const mono = makeMono(
      () => tick,
      () => wall,
    );
    const before = mono();
    tick += 500;
    wall += 60_500;
    expect(mono() - before).toBe(60_500);
  });

  it('given a wall clock set back, still goes forward by what truly passed', () => {
    let tick = 1_000;
    let wall = 50_000;
    const mono = makeMono(
      () => tick,
      () => wall,
    );
    const before = mono();
    tick += 2_000;
    wall -= 3_600_000;
    expect(mono() - before).toBe(2_000);
  });
});
