import { describe, expect, it } from 'vitest';
import { WardGate } from './gate.ts';

/** Work that ends when told, and notes when it began. */
function work(name: string, begun: string[]) {
  let end!: () => void;
  const ended = new Promise<void>((resolve) => (end = resolve));
  return {
    end,
    run: async () => {
      begun.push(name);
      await ended;
      return name;
    },
  };
}
/** Lets everything that can go on without us go on. */
const settled = () => new Promise((resolve) => setImmediate(resolve));

describe('the gate of a ward', () => {
  it('given width 1 and work on a ward, more work on it waits in order of arrival and another ward goes on', async () => {
    const gate = new WardGate(1);
    const begun: string[] = [];
    const [first, second, third, other] = ['first', 'second', 'third', 'other'].map((n) => work(n, begun));
    const all = [
      gate.through(['a'], first!.run),
      gate.through(['a'], second!.run),
      gate.through(['a'], third!.run),
      gate.through(['b'], other!.run),
    ];
    await settled();
    expect(begun).toEqual(['first', 'other']);
    first!.end();
    await settled();
    expect(begun).toEqual(['first', 'other', 'second']);
    for (const one of [second!, third!, other!]) one.end();
    expect(await Promise.all(all)).toEqual(['first', 'second', 'third', 'other']);
  });

  it('given work on two wards, it waits for both and holds both, whatever order they are named in', async () => {
    const gate = new WardGate(1);
    const begun: string[] = [];
    const [onA, onB, both, after] = ['on a', 'on b', 'both', 'after'].map((n) => work(n, begun));
    const all = [
      gate.through(['a'], onA!.run),
      gate.through(['b'], onB!.run),
      gate.through(['b', 'a'], both!.run),
      gate.through(['a', 'b'], after!.run),
    ];
    onA!.end();
    await settled();
    expect(begun).toEqual(['on a', 'on b']);
    onB!.end();
    await settled();
    expect(begun).toEqual(['on a', 'on b', 'both']);
    both!.end();
    after!.end();
    await Promise.all(all);
  });

  it('given width 2, a third waits until one of the first two is done', async () => {
    const gate = new WardGate(2);
    const begun: string[] = [];
    const [first, second, third] = ['first', 'second', 'third'].map((n) => work(n, begun));
    const all = [first!, second!, third!].map((one) => gate.through(['a'], one.run));
    await settled();
    expect(begun).toEqual(['first', 'second']);
    second!.end();
    await settled();
    expect(begun).toEqual(['first', 'second', 'third']);
    first!.end();
    third!.end();
    await Promise.all(all);
  });

  it('given work that fails, the next still gets its turn', async () => {
    const gate = new WardGate(1);
    const failing = gate.through(['a'], () => Promise.reject(new Error('no')));
    const next = gate.through(['a'], async () => 'done');
    await expect(failing).rejects.toThrow('no');
    expect(await next).toBe('done');
  });
});
