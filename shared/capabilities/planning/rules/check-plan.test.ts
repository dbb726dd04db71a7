/** The checker names every rule a plan breaks, and nothing else. It is what everything else is judged by. */
import { describe, expect, it } from 'vitest';
import type { Placement } from '../problem.ts';
import { checkPlan } from './check-plan.ts';
import { at, kept, piece, problem, slots, stop, visit, who } from './planning.testkit.ts';

const rules = (is: Parameters<typeof problem>[0], ...plan: Placement[]) =>
  checkPlan(problem(is), plan).map(({ rule }) => rule);
const one = (is: Parameters<typeof visit>[1] = {}) => ({ visits: [visit('v', is)] });
const two = (a: Parameters<typeof visit>[1] = {}, b: Parameters<typeof visit>[1] = {}) => ({
  visits: [visit('a', a), visit('b', b)],
});

describe('a plan is checked', () => {
  it('and what keeps every rule has no breach', () => {
    expect(rules(two(), at('a', 0), at('b', 1))).toEqual([]);
    expect(rules(two(), at('a', 0), at('b', 0, ['ben']))).toEqual([]);
    expect(rules({ visits: [visit('v')], staff: [] })).toEqual([]);
  });

  it.each([
    ['after the last slot', 'window', one({ length: 2 }), [at('v', 7)]],
    ['over the end of its window', 'window', one({ length: 2, windows: [slots(0, 3)] }), [at('v', 2)]],
    [
      'over the seam of two windows',
      'window',
      one({ length: 2, windows: [slots(0, 3), slots(3, 8)] }),
      [at('v', 2)],
    ],
    ['into a meal', 'meal', { ...one({ length: 2 }), blocked: [stop('v', 3, 4)] }, [at('v', 2)]],
    ['under a hold', 'hold', { ...one(), blocked: [stop('v', 0, 8, 'hold', ['v'])] }, [at('v', 2)]],
    ['while they are away', 'off-ward', { ...one(), blocked: [stop('v', 0, 4, 'off-ward')] }, [at('v', 2)]],
    ['into the rest', 'rest', { ...one(), blocked: [stop('v', 2, 4, 'rest')] }, [at('v', 3)]],
    ['alone where two are needed', 'number-of-people', one({ people: 2 }), [at('v', 0)]],
    ['with one person named twice', 'number-of-people', one({ people: 2 }), [at('v', 0, ['ana', 'ana'])]],
    ['by a role that may not', 'role', one({ crew: ['nurse'], lead: ['nurse'] }), [at('v', 0)]],
    ['by somebody unknown', 'not-on', one(), [at('v', 0, ['eve'])]],
    [
      'before somebody comes on',
      'not-on',
      { ...one(), staff: [who('ana', { on: [slots(1, 8)] })] },
      [at('v', 0)],
    ],
    [
      'in a break',
      'break',
      { ...one({ length: 2 }), staff: [who('ana', { breaks: [slots(1, 2)] })] },
      [at('v', 0)],
    ],
    [
      'while promised elsewhere',
      'taken',
      { ...one(), staff: [who('ana', { taken: [slots(0, 1)] })] },
      [at('v', 0)],
    ],
    ['without the lift', 'item-fit', { ...one({ sets: [['lift']] }), items: [piece('lift')] }, [at('v', 0)]],
    [
      'with a lift that does not fit',
      'item-fit',
      { ...one({ sets: [['lift']] }), items: [piece('lift'), piece('other')] },
      [at('v', 0, ['ana'], ['other'])],
    ],
    [
      'with a lift that is not free',
      'item-free',
      { ...one({ sets: [['lift']] }), items: [piece('lift', { free: [slots(1, 8)] })] },
      [at('v', 0, ['ana'], ['lift'])],
    ],
    ['in two places at once', 'one-place-at-once', two({ length: 2 }), [at('a', 0), at('b', 1)]],
    [
      'twice at once with one person',
      'one-visit-at-once',
      two({ stay: 's', length: 2 }, { stay: 's' }),
      [at('a', 0), at('b', 1, ['ben'])],
    ],
    [
      'too soon after the last',
      'rest-interval',
      two({ stay: 's', restAfter: 2 }, { stay: 's', restBefore: 1 }),
      [at('a', 0), at('b', 2)],
    ],
    [
      'too soon before the next',
      'rest-interval',
      two({ stay: 's' }, { stay: 's', restBefore: 2 }),
      [at('b', 2), at('a', 0)],
    ],
    ['before the check', 'after', two({}, { after: ['a' as never] }), [at('b', 0), at('a', 1)]],
    ['without the check', 'after', two({}, { after: ['a' as never] }), [at('b', 0)]],
    [
      'with one lift in two places',
      'item-at-once',
      { ...two({ sets: [['lift']], length: 2 }, { sets: [['lift']] }), items: [piece('lift')] },
      [at('a', 0, ['ana'], ['lift']), at('b', 1, ['ben'], ['lift'])],
    ],
    [
      'with a lift not cleaned after isolation',
      'item-cleaning',
      {
        ...two({ sets: [['lift']], isolation: true }, { sets: [['lift']] }),
        items: [piece('lift', { cleaning: 0, cleaningAfterIsolation: 2 })],
      },
      [at('a', 0, ['ana'], ['lift']), at('b', 2, ['ben'], ['lift'])],
    ],
    ['twice in the plan', 'twice', one(), [at('v', 0), at('v', 4)]],
    ['though nobody asked', 'unknown', one(), [at('other', 0)]],
  ] as const)('a visit %s is a breach of "%s"', (_words, rule, is, plan) => {
    expect(rules(is as unknown as Parameters<typeof problem>[0], ...plan)).toContain(rule);
  });

  it('needs one of the crew who may lead', () => {
    const is = { ...one({ people: 2, lead: ['nurse'] }) };
    const staff = [who('ana'), who('ben'), who('nora', { role: 'nurse' })];
    expect(rules({ ...is, staff }, at('v', 0, ['ana', 'ben']))).toEqual(['role']);
    expect(rules({ ...is, staff }, at('v', 0, ['ana', 'nora']))).toEqual([]);
  });

  it('owes no cleaning between two visits of one person', () => {
    const is = two({ stay: 's', sets: [['lift']] }, { stay: 's', sets: [['lift']] });
    const items = [piece('lift', { cleaning: 2 })];
    expect(rules({ ...is, items }, at('a', 0, ['ana'], ['lift']), at('b', 1, ['ana'], ['lift']))).toEqual([]);
  });

  it('a hold on some visits leaves the others', () => {
    const is = { ...two({ stay: 's' }, { stay: 's' }), blocked: [stop('s', 0, 8, 'hold', ['a'])] };
    expect(rules(is, at('b', 0))).toEqual([]);
    expect(rules(is, at('a', 0))).toEqual(['hold']);
  });

  it('what is pinned stands, unless it cannot be kept any more', () => {
    const pinned = { ...one(), previous: [kept(at('v', 3), true)] };
    expect(rules(pinned, at('v', 3))).toEqual([]);
    expect(rules(pinned, at('v', 4))).toEqual(['pinned']);
    expect(rules(pinned, at('v', 3, ['ben']))).toEqual(['pinned']);
    expect(rules(pinned)).toEqual(['pinned']);
    expect(rules({ ...pinned, staff: [who('ben')] }, at('v', 3, ['ben']))).toEqual([]);
  });
});
