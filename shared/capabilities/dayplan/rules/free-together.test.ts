/** Who is on and free for a visit by two, to the minute. Ours, practice: no published rule of pairing is known to us. */
import { describe, expect, it } from 'vitest';
import type { StaffId, StayId } from '../../../kernel/ids.ts';
import { HOUR, MINUTE } from '../../../kernel/times.ts';
import type { VisitView } from '../../board/activity-view.ts';
import { ward as history } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Period, WardState } from '../../wards/context.ts';
import { handsOf, pairingsOf, visitsOn, type Hands } from './pairing.ts';
import { at, boardOf, rowOf, staff } from './round.testkit.ts';

/** Noon, a full five minutes. */
const T = at(4);
const LENGTH = DEFAULT_RULES.round.pairMinutes.value * MINUTE;
const span = (from: number, to: number): Period => ({ from, to });

describe('who is on', () => {
  const member = { role: 'aide', active: true, name: { ref: 'n' }, standing: 'ward' } as never;
  const handsWith = (from: number, to: number, breaks: readonly Period[] = []) => {
    const day = new Map([[staff('ana'), { from, to, breaks }]]);
    const ward: WardState = {
      ...history,
      staff: new Map([[staff('ana'), member]]),
      carers: new Map(),
      peopleOn: new Map([['2026-10-25', day]]),
    };
    return handsOf(ward, T);
  };
  const timesOf = (...breaks: readonly Period[]) => handsWith(at(1), at(9), breaks)!.get(staff('ana'));

  it('given two breaks told in any order, then whoever takes them is on before, between and after', () => {
    const left = [span(at(1), at(3)), span(at(3.5), at(6)), span(at(6.5), at(9))];
    const [early, late] = [span(at(3), at(3.5)), span(at(6), at(6.5))];
    expect(timesOf(late, early)).toEqual(left);
    expect(timesOf(early, late)).toEqual(left);
  });
  it('given a break at the very beginning or end of a shift, then nobody is on for no time at all', () => {
    expect(timesOf(span(at(1), at(1.5)))).toEqual([span(at(1.5), at(9))]);
    expect(timesOf(span(at(8.5), at(9)))).toEqual([span(at(1), at(8.5))]);
  });
  it('given a shift that is over, or one that begins in a whole day or later, then nobody is on', () => {
    expect(handsWith(at(-4), T)).toBeNull();
    expect(handsWith(T + 24 * HOUR, T + 30 * HOUR)).toBeNull();
    expect([...handsWith(T + 24 * HOUR - 1, T + 30 * HOUR)!.keys()]).toEqual(['ana']);
  });
});

describe('two people free together', () => {
  const HER = 's1' as StayId;
  const ALL_DAY = [span(at(0), at(9))];
  const visit = (by: string, from: number, until: number): VisitView => ({
    visit: `${by} ${from}` as VisitView['visit'],
    by: staff(by),
    second: null,
    from,
    until,
    event: 'e' as VisitView['event'],
  });
  /** Ana asks at noon, on all day. */
  const pairsWith = (
    others: Readonly<Record<string, readonly Period[]>>,
    visits: readonly VisitView[] = [],
    own: VisitView | null = null,
  ) => {
    const on = Object.entries({ ana: ALL_DAY, ...others }) as unknown as [StaffId, readonly Period[]][];
    const hands: Hands = new Map(on);
    return pairingsOf({
      t: T,
      hands,
      visits,
      planned: [],
      stay: HER,
      rules: DEFAULT_RULES,
      first: staff('ana'),
      own,
    });
  };
  const minutesAway = (...of: Parameters<typeof pairsWith>) =>
    pairsWith(...of).map(({ from }) => (from - T) / MINUTE);

  it('given somebody who begins later, then from the minute they begin', () => {
    expect(minutesAway({ ben: [span(T + 30 * MINUTE, at(9))] })).toEqual([30]);
  });
  it('given somebody who leaves just as the visit would end, then they can still go', () => {
    expect(minutesAway({ ben: [span(at(0), T + LENGTH)] })).toEqual([0]);
    expect(minutesAway({ ben: [span(at(0), T + LENGTH - 1)] })).toEqual([]);
  });
  it('given somebody with a break, then before or after it, never into it', () => {
    const withBreak = [span(at(0), T + 10 * MINUTE), span(T + 40 * MINUTE, at(9))];
    expect(minutesAway({ ben: withBreak })).toEqual([40]);
  });
  it('given somebody free in just as long as is looked ahead, then that is the last time offered', () => {
    const ahead = DEFAULT_RULES.round.pairAheadHours.value * HOUR;
    expect(minutesAway({ ben: ALL_DAY }, [visit('ben', T, T + ahead)])).toEqual([ahead / MINUTE]);
    expect(minutesAway({ ben: ALL_DAY }, [visit('ben', T, T + ahead + MINUTE)])).toEqual([]);
  });
  it('given several free at the same time, then in the order of their ids, however they were named', () => {
    const names = (...of: readonly string[]) =>
      pairsWith(Object.fromEntries(of.map((name) => [name, ALL_DAY]))).map(({ second }) => second);
    expect(names('ben', 'bob', 'cas')).toEqual(['ben', 'bob', 'cas']);
    expect(names('cas', 'bob', 'ben')).toEqual(['ben', 'bob', 'cas']);
  });
  it('given a visit that has begun, then whoever came free by now can go along for the rest of it', () => {
    const own = visit('ana', T - 10 * MINUTE, T + 20 * MINUTE);
    const before = visit('ben', T - 20 * MINUTE, T);
    expect(pairsWith({ ben: [span(T, at(9))] }, [own, before], own)).toEqual([
      { second: 'ben', from: own.from, until: own.until },
    ]);
  });
  it('given a visit that begins soon, then whoever is free from its beginning on can go along', () => {
    const own = visit('ana', T + 10 * MINUTE, T + 30 * MINUTE);
    const before = visit('ben', T - 20 * MINUTE, T + 10 * MINUTE);
    expect(pairsWith({ ben: ALL_DAY }, [own, before], own).map(({ second }) => second)).toEqual(['ben']);
  });
});

it('given a board, then the visits that stand on it are those of its people, and of no empty bed', () => {
  const [busy, free] = [rowOf(T), rowOf(T)];
  const visit: VisitView = {
    visit: 'v' as VisitView['visit'],
    by: staff('ben'),
    second: null,
    from: T,
    until: T + LENGTH,
    event: 'e' as VisitView['event'],
  };
  expect(visitsOn(boardOf(null, free, { ...busy, visit }))).toEqual([visit]);
});
