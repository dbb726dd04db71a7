import { describe, expect, it } from 'vitest';
import { forecastOf } from './forecast.ts';
import { changed } from './helps.ts';
import { posteriorOf } from './rates.ts';
import type { Due, Need, Scenario, SimItem, Source } from './scenario.ts';
import type { Change, ForecastInput } from './types.ts';

const SLOTS = 40;
const all = <T>(value: T): T[] => Array.from({ length: SLOTS }, () => value);
const lift = (item: string, more: Partial<SimItem> = {}): SimItem => ({
  item,
  group: 'lift',
  sure: 1,
  freeFrom: 0,
  from: 0,
  to: Infinity,
  minutes: 10,
  handMinutes: 5,
  ...more,
});
const need = (...items: number[]): Need => ({ group: 'lift', items, hands: 2, minutes: 5 });
const due = (at: number, more: Partial<Due> = {}): Due => ({
  kind: 'meal',
  at,
  spread: 5,
  chance: 1,
  need: need(0),
  follows: null,
  ...more,
});
const source = (bed: string, ...dues: Due[]): Source => ({
  bed,
  type: 0,
  scale: 1,
  care: { day: need(0), night: need(0) },
  from: 0,
  to: Infinity,
  due: dues,
});
/** Twelve people are got up by one lift for breakfast, an hour from now; nothing else happens. */
const breakfast = (more: Partial<Scenario> = {}): Scenario => ({
  slots: SLOTS,
  items: [lift('lift-1')],
  sources: Array.from({ length: 12 }, (_, i) => source(`bed-${i}`, due(60))),
  hands: all(12),
  on: all(12),
  night: all(false),
  lateAfter: 10,
  holdStages: 4,
  ...more,
});
const ask = (scenario: Scenario, more: Partial<ForecastInput> = {}) =>
  forecastOf({
    scenario,
    belief: { posteriors: [posteriorOf({ perSlot: all(0), days: 7 }, null)], daySpread: Infinity },
    runs: { seed: 1, runs: 200, blocks: 10 },
    sayFrom: 0.25,
    changes: [],
    ...more,
  });

describe('the forecast', () => {
  it('tells the clash, when, what is missing, and that nearly everybody would wait', () => {
    const { clashes, waits, groups, askedADay, lateADay } = ask(breakfast());
    expect(askedADay).toBe(12);
    expect(lateADay).toBeGreaterThan(9);
    expect(clashes).toHaveLength(1);
    expect(clashes[0]).toMatchObject({ group: 'lift', short: 'item' });
    expect(clashes[0]!.from).toBeLessThanOrEqual(4);
    expect(clashes[0]!.to).toBeGreaterThanOrEqual(5);
    expect(clashes[0]!.low).toBeLessThanOrEqual(clashes[0]!.chance);
    expect(clashes[0]!.high).toBeGreaterThanOrEqual(clashes[0]!.chance);
    expect(waits).toHaveLength(12);
    const peak = Math.max(...groups.lift.map(({ wanted }) => wanted));
    expect(peak).toBeGreaterThan(6);
    expect(groups.lift[20]).toMatchObject({ wanted: 0, late: null });
  });

  it('tells nothing where there is enough', () => {
    const items = Array.from({ length: 12 }, (_, i) => lift(`lift-${i}`));
    const sources = breakfast().sources.map((s, i) => ({ ...s, due: [due(60, { need: need(i) })] }));
    const { clashes, waits, lateADay, helps } = ask(
      breakfast({ items, sources, hands: all(30), on: all(30) }),
    );
    expect({ clashes, waits, lateADay, helps }).toEqual({ clashes: [], waits: [], lateADay: 0, helps: [] });
  });

  it('says that hands are missing, not lifts, when hands are', () => {
    const items = Array.from({ length: 12 }, (_, i) => lift(`lift-${i}`));
    const sources = breakfast().sources.map((s, i) => ({ ...s, due: [due(60, { need: need(i) })] }));
    const { clashes } = ask(breakfast({ items, sources, hands: all(2), on: all(2) }));
    expect(clashes.map(({ group, short }) => [group, short])).toContainEqual(['hands', 'hands']);
    expect(clashes.every(({ short }) => short === 'hands')).toBe(true);
  });

  it('counts a lift that nobody has spoken of as there on as many days as it is believed to be', () => {
    const one = breakfast({ sources: [source('bed-1', due(60))] });
    const { lateADay } = ask(
      { ...one, items: [lift('lift-1', { sure: 0.3 })] },
      { runs: { seed: 3, runs: 2_000, blocks: 10 } },
    );
    expect(lateADay).toBeGreaterThan(0.65);
    expect(lateADay).toBeLessThan(0.75);
  });

  it('lets everybody on come when nobody else is being moved, so that two at night are enough for one', () => {
    const one = breakfast({ sources: [source('bed-1', due(60))], hands: all(1), on: all(2) });
    expect(ask(one).lateADay).toBe(0);
    expect(ask({ ...one, on: all(1) }).lateADay).toBe(1);
  });

  it('is the same whenever it is asked the same', () => {
    expect(ask(breakfast())).toEqual(ask(breakfast()));
    expect(ask(breakfast(), { runs: { seed: 2, runs: 200, blocks: 10 } })).not.toEqual(ask(breakfast()));
  });
});

describe('what would help', () => {
  const track: Source = {
    ...source('bed-3', due(60, { need: need(1) })),
    care: { day: need(1), night: need(1) },
  };
  const changes: Change[] = [
    { kind: 'borrow', item: lift('borrowed') },
    { kind: 'move-session', source: 0, due: 0, by: 120 },
    { kind: 'move-session', source: 1, due: 0, by: 60 },
    { kind: 'swap-to-track', source: 3, becomes: track, track: '5A' },
    { kind: 'pair-of-aides', hands: 1 },
  ];
  const some = breakfast({ items: [lift('lift-1'), lift('track')] });

  it('is tried out and put in order; of a kind only the best; what changes nothing is not said', () => {
    const { helps } = ask(some, { changes });
    const kinds = helps.map(({ change }) => change.kind);
    expect(kinds[0]).toBe('borrow');
    expect(kinds).toContain('move-session');
    expect(kinds).toContain('swap-to-track');
    expect(new Set(kinds).size).toBe(kinds.length);
    // There are hands enough: two more do nothing here.
    expect(kinds).not.toContain('pair-of-aides');
    expect(helps.every(({ before, after }) => after < before)).toBe(true);
  });

  it('changes one thing and leaves the rest as it was', () => {
    const tight = { from: 3, to: 6 };
    expect(changed(some, changes[1]!, tight).sources.slice(1)).toEqual(some.sources.slice(1));
    expect(changed(some, changes[1]!, tight).sources[0]!.due[0]!.at).toBe(180);
    const more = changed(some, changes[0]!, tight);
    expect(more.items).toHaveLength(3);
    expect(more.sources[4]!.due[0]!.need.items).toEqual([0, 2]);
    const pair = changed({ ...some, hands: all(3), on: all(4) }, { kind: 'pair-of-aides', hands: 5 }, tight);
    expect(pair.hands.slice(2, 7)).toEqual([3, 4, 4, 4, 3]);
  });
});
