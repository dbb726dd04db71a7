/** When two are free together. Ours, practice: no published rule of pairing is known to us. */
import { describe, expect, it } from 'vitest';
import type { StayId } from '../../../kernel/ids.ts';
import { MINUTE, toIso } from '../../../kernel/times.ts';
import type { VisitView } from '../../board/activity-view.ts';
import { calendar, ward as history, type Told } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { handsOf, pairingsOf, plannedOn, type Hands, type PlannedTime } from './pairing.ts';
import { roundOf } from './round.ts';
import { at, boardOf, MORNING, rowOf, staff } from './round.testkit.ts';

/** Two minutes past the hour. */
const T = at(4) + 2 * MINUTE;
const LENGTH = DEFAULT_RULES.round.pairMinutes.value * MINUTE;
const on = (...names: readonly string[]): Hands =>
  new Map(names.map((name) => [staff(name), [{ from: at(0), to: at(9) }]]));
const visit = (by: string, second: string | null, from: number, minutes: number): VisitView => ({
  visit: `${by} ${from}` as VisitView['visit'],
  by: staff(by),
  second: second === null ? null : staff(second),
  from,
  until: from + minutes * MINUTE,
  event: 'e' as VisitView['event'],
});
const HER = 's1' as StayId;
const pairs = (
  hands: Hands,
  visits: readonly VisitView[],
  own: VisitView | null = null,
  planned: readonly PlannedTime[] = [],
) => pairingsOf({ t: T, hands, visits, planned, stay: HER, rules: DEFAULT_RULES, first: staff('ana'), own });

describe('who is on', () => {
  const member = (role: string) => ({ role, active: true, name: { ref: 'n' }, standing: 'ward' }) as never;
  const ward = {
    ...history,
    staff: new Map([
      [staff('ana'), member('aide')],
      [staff('ben'), member('nurse')],
      [staff('max'), member('manager')],
    ]),
  };
  const named = (until: number) =>
    new Map([['b1', { until, who: { nurse: staff('ben'), aide: null } }]]) as never;
  it('is who was said to be, less breaks, and who is named for a bed; nobody known is null', () => {
    expect(handsOf({ ...ward, carers: new Map(), peopleOn: new Map() }, T)).toBeNull();
    const day = new Map([
      [staff('ana'), { from: at(1), to: at(9), breaks: [{ from: at(5), to: at(5.5) }] }],
      [staff('max'), { from: at(1), to: at(9), breaks: [] }],
    ]);
    const hands = handsOf({ ...ward, carers: named(at(8)), peopleOn: new Map([['2026-10-25', day]]) }, T)!;
    expect([...hands]).toEqual([
      [
        'ana',
        [
          { from: at(1), to: at(5) },
          { from: at(5.5), to: at(9) },
        ],
      ],
      ['ben', [{ from: T, to: at(8) }]],
    ]);
  });
  it('does not count whoever was named until a time that is past', () => {
    expect(handsOf({ ...ward, carers: named(T), peopleOn: new Map() }, T)).toBeNull();
  });
});

describe('two people for one visit', () => {
  it('are offered the next full five minutes where nothing stands against it', () => {
    expect(pairs(on('ana', 'ben'), [])).toEqual([
      { second: 'ben', from: T + 3 * MINUTE, until: T + 3 * MINUTE + LENGTH },
    ]);
  });
  it('wait until both are free: of the first, of the second, and of a part gone along to', () => {
    const free = (visits: readonly VisitView[]) =>
      (pairs(on('ana', 'ben'), visits)[0]!.from - at(4)) / MINUTE;
    expect(free([visit('ana', null, T, 28)])).toBe(30);
    expect(free([visit('ben', null, T, 18)])).toBe(20);
    expect(free([visit('cas', 'ben', T, 33)])).toBe(35);
    expect(free([visit('cas', 'dan', T, 33)])).toBe(5);
  });
  it('fit before a booking only if the whole visit does', () => {
    const booked = (minute: number) => visit('ben', null, at(4) + minute * MINUTE, 30);
    expect(pairs(on('ana', 'ben'), [booked(25)])[0]!.from).toBe(at(4) + 5 * MINUTE);
    expect(pairs(on('ana', 'ben'), [booked(24)])[0]!.from).toBe(at(4) + 55 * MINUTE);
  });
  it('are the earliest first, and of equal ones in the order of their ids', () => {
    const visits = [visit('ben', null, T, 20)];
    expect(pairs(on('ana', 'cas', 'ben', 'bob'), visits).map(({ second }) => second)).toEqual([
      'bob',
      'cas',
      'ben',
    ]);
  });
  it('are nobody who is not known to be on for the whole of it', () => {
    const leaves: Hands = new Map([[staff('ben'), [{ from: at(0), to: T + LENGTH }]]]);
    expect(pairs(leaves, [])).toEqual([]);
    expect(pairs(new Map(), [])).toEqual([]);
  });
  describe('ROUND-8 with a visit of the accepted plan', () => {
    const planned = (crew: readonly string[], stay = 's2', minutes = 33): PlannedTime => ({
      stay: stay as StayId,
      crew: crew.map(staff),
      from: T,
      until: T + minutes * MINUTE,
    });
    const minute = (...of: PlannedTime[]) =>
      (pairs(on('ana', 'ben'), [], null, of)[0]!.from - at(4)) / MINUTE;
    it('are not free at its time, the first or the second', () => {
      expect(minute(planned(['ben', 'cas']))).toBe(35);
      expect(minute(planned(['cas', 'ana']))).toBe(35);
      expect(minute(planned(['cas']))).toBe(5);
    });
    it('are free for the very person whom it was planned for', () => {
      expect(minute(planned(['ana', 'ben'], HER))).toBe(5);
      expect(minute(planned(['ana', 'ben'], HER), planned(['ben'], 's3'))).toBe(35);
    });
    it('go along to a visit that is taken only if their own does not meet it', () => {
      const own = visit('ana', null, T, 30);
      expect(pairs(on('ana', 'ben', 'dan'), [own], own, [planned(['dan'])])).toEqual([
        { second: 'ben', from: own.from, until: own.until },
      ]);
    });
    it('read it from the board: what is ahead, and of whoever is expected; what is held binds nobody', () => {
      const row = (stopped: object | null) =>
        ({ stay: 's2', planned: [{ crew: ['ben'], from: T, until: T + 1, stopped }] }) as never;
      const beds = (stopped: object | null) => [{ stay: row(stopped) }] as never;
      const arrivals = [{ visit: 'x-a', expected: 'x', from: T, until: T + 2, crew: ['cas'] }];
      const ofPlan = { dayPlan: { arrivals } as never };
      expect(plannedOn({ beds: beds(null), ...ofPlan })).toEqual([
        { stay: 's2', crew: ['ben'], from: T, until: T + 1 },
        expect.objectContaining({ stay: 'x', crew: ['cas'], from: T, until: T + 2 }),
      ]);
      expect(plannedOn({ beds: beds({}), dayPlan: null })).toEqual([]);
    });
  });
  it('for a visit that is taken are those who are free for all of it', () => {
    const own = visit('ana', null, T, 30);
    const dan = visit('dan', null, T + 20 * MINUTE, 30);
    const found = pairs(on('ana', 'ben', 'dan'), [own, dan], own);
    expect(found).toEqual([{ second: 'ben', from: own.from, until: own.until }]);
  });
});

describe('the round with hands known', () => {
  const two = (...told: readonly Told[]) => {
    const row = rowOf(T, ...told);
    return {
      ...row,
      plan: { ...row.plan!, day: row.plan!.day.map((p) => ({ ...p, people: 'two' as const })) },
    };
  };
  const asked = (row: ReturnType<typeof two>, who: string) =>
    roundOf({
      board: boardOf(row),
      t: T,
      calendar,
      asker: staff(who),
      on: new Set([staff('ana'), staff('ben')]),
      hands: on('ana', 'ben'),
    });
  it('offers times for whoever needs two, and none for whoever needs one', () => {
    expect(asked(two(), 'ana').entries[0]!.pairs.map(({ second }) => second)).toEqual(['ben']);
    expect(asked(rowOf(T) as ReturnType<typeof two>, 'ana').entries[0]!.pairs).toEqual([]);
  });
  it('keeps a booking off the list until its time comes, and says when', () => {
    const booked: Told = {
      type: 'visit-taken',
      at: MORNING + 3.9,
      role: 'aide',
      staff: 'ana',
      payload: { visit: 'v', by: 'ana', second: 'ben', from: toIso(at(4.5)), until: toIso(at(5)) },
    };
    for (const who of ['ana', 'ben']) {
      expect(asked(two(booked), who).notListed[0]).toMatchObject({ kind: 'booked', yours: true });
    }
    const due = roundOf({
      board: boardOf({ ...rowOf(at(4.5), booked) }),
      t: at(4.5),
      calendar,
      asker: staff('ben'),
      on: null,
    });
    expect(due.entries[0]).toMatchObject({ yours: true, pairs: [] });
  });
});
