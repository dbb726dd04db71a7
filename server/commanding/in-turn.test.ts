import { describe, expect, it } from 'vitest';
import { InTurn } from './in-turn.ts';

/** Work that ends when the test says so. */
function held() {
  let end!: () => void;
  const gate = new Promise<void>((resolve) => (end = resolve));
  return { gate, end };
}

describe('work in turn', () => {
  it('on one thing waits for the one before, in the order it came', async () => {
    const turns = new InTurn();
    const first = held();
    const done: string[] = [];
    const all = [
      turns.run('a', async () => {
        await first.gate;
        done.push('first');
      }),
      turns.run('a', async () => void done.push('second')),
      turns.run('a', async () => void done.push('third')),
    ];
    first.end();
    await Promise.all(all);
    expect(done).toEqual(['first', 'second', 'third']);
  });

  it('on another thing does not wait', async () => {
    const turns = new InTurn();
    const stuck = held();
    const waiting = turns.run('a', () => stuck.gate);
    expect(await turns.run('b', async () => 'b is done')).toBe('b is done');
    stuck.end();
    await waiting;
  });

  it('goes on after work that failed, and only its own caller hears of it', async () => {
    const turns = new InTurn();
    const failing = turns.run('a', async () => {
      throw new Error('no');
    });
    const next = turns.run('a', async () => 'yes');
    await expect(failing).rejects.toThrow('no');
    expect(await next).toBe('yes');
  });
});
