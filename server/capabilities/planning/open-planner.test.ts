/** The planner in real threads: the pool, the worker as built, the solver. Needs `npm run build`. */
import { afterAll, describe, expect, it } from 'vitest';
import { checkPlan } from '@footboard/shared/capabilities/planning/rules/check-plan';
import { problem, slots, visit } from '@footboard/shared/capabilities/planning/rules/planning.testkit';
import { openWorkerPool, type WorkerPool } from '../../platform/worker-pool.ts';
import { openPlanner } from './open-planner.ts';

const pool = openWorkerPool();
afterAll(() => pool.close());
const day = problem({
  visits: Array.from({ length: 6 }, (_, i) => visit(`v${i}`, { people: i % 2 ? 2 : 1 })),
});
const never = new AbortController().signal;

// Time enough on a machine that does much else: the search ends by itself long before.
describe('the planner', { timeout: 180_000 }, () => {
  it('plans in a thread while this one goes on', async () => {
    let beats = 0;
    const beat = setInterval(() => beats++, 5);
    const proposal = await openPlanner(pool).plan(day, { seconds: 60, signal: never });
    clearInterval(beat);
    expect(proposal).toMatchObject({ how: 'solver', unplaced: [] });
    expect(checkPlan(day, proposal.placed)).toEqual([]);
    expect(beats).toBeGreaterThan(0);
  });

  it('can be stopped, and plans again afterwards', async () => {
    const planner = openPlanner(pool);
    const hard = problem({
      grid: { start: 0, slots: 96 },
      visits: Array.from({ length: 120 }, (_, i) => visit(`v${i}`, { people: 2, windows: [slots(0, 96)] })),
    });
    const stop = new AbortController();
    const planning = planner.plan(hard, { seconds: 60, signal: stop.signal });
    setTimeout(() => stop.abort(), 50);
    await expect(planning).rejects.toThrow(/abort/i);
    await expect(planner.plan(day, { seconds: 60, signal: never })).resolves.toMatchObject({ how: 'solver' });
  });

  it('answers with the tighter bound and the better plan of its two threads, and needs only the first', async () => {
    const found = await openPlanner(pool).plan(day, { seconds: 60, signal: never });
    const { value } = found.objective;
    const two = (whole: Promise<unknown>): WorkerPool => ({
      ...pool,
      threads: 2,
      run: <T>(_file: string, task: string) =>
        (task === 'whole'
          ? whole
          : whole.catch(() => null).then(() => ({ ...found, bound: value + 4 }))) as Promise<T>,
    });
    const plan = (whole: Promise<unknown>) =>
      openPlanner(two(whole)).plan(day, { seconds: 60, signal: never });
    expect(await plan(Promise.resolve({ ...found, bound: value + 1 }))).toMatchObject({
      placed: found.placed,
      bound: value + 1,
      gap: 1 / (value + 1),
    });
    const more = { ...found.objective, value: value + 2 };
    expect(await plan(Promise.resolve({ ...found, objective: more, bound: value + 3 }))).toMatchObject({
      objective: more,
      bound: value + 3,
    });
    expect(await plan(Promise.resolve(null))).toMatchObject({ bound: value + 4 });
    expect(await plan(Promise.reject(new Error('the thread died')))).toMatchObject({ bound: value + 4 });
  });

  it('gives the greedy plan, marked, when the solver fails in its thread', async () => {
    const failing: WorkerPool = {
      ...pool,
      run: (file, task, input, signal) =>
        task === 'solve' ? Promise.reject(new Error('the thread died')) : pool.run(file, task, input, signal),
    };
    const proposal = await openPlanner(failing).plan(day, { seconds: 60, signal: never });
    expect(proposal).toMatchObject({ how: 'greedy', fallback: 'solver-failed', gap: null });
    expect(checkPlan(day, proposal.placed)).toEqual([]);
  });
});
