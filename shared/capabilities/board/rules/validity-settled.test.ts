/**
 * How long a check holds, and what renews it: the longer time once the tier was the same for the ward's settled time.
 * Hours are common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { wardCalendar } from '../../wards/rules/calendar.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { due, first, rulesWith, seen } from './due.testkit.ts';
import {
  begun,
  check,
  confirm,
  hours,
  order,
  recordOf,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';
import { knownAt } from './known.ts';
import { trustAndDue } from './trust.ts';

/** Checks that found the same for 48 h, the last of them at hour 48. */
const same = (...more: readonly Told[]) => [
  check('edge', 0),
  check('edge', 24),
  { ...check('edge', 48), id: 'last' },
  ...more,
];
const ranOut = (record: StayRecord, h: number) =>
  seen(record, hours(h)).trust.because.some((b) => b.rule === 'trust/ran-out');

describe('given the same tier for 48 h, the last check holds 24 h', () => {
  it('whatever was done since it', () => {
    expect(due(stayOf(...same(session(49))), 50).at).toBe(hours(72));
  });
  it('whatever happened since it: that asks for a look by itself', () => {
    const ordered = stayOf(...same(order(49, { about: 'activity', most: 'chair' })));
    expect(ranOut(ordered, 61)).toBe(false);
    expect(ranOut(ordered, 72)).toBe(true);
    expect(due(ordered, 61).state).toBe('at-next-move');
  });
  it('whatever an aide found less since it: the tier falls, the check is as old as it was', () => {
    const less = { ...check('edge', 49, { edge: { outcome: 'not-met' } }), role: 'aide' as const };
    const record = stayOf(...same(less));
    expect(seen(record, hours(50)).tier.word).toBe('Upright');
    expect(due(record, 50).at).toBe(hours(72));
  });
});

it('given the same tier for 48 h and a shorter look since, the words say what the 24 h are counted from', () => {
  const record = stayOf(...same({ ...check('clear', 59), id: 'short' }));
  expect(due(record, 60).because).toEqual([
    {
      rule: 'due/validity',
      facts: ['last', 'short'],
      words:
        '24 h after the last check as far as what stands cleared: ' +
        'the same tier for 48 h and no trigger (common practice, no source)',
    },
  ]);
});

describe('a check holds only 12 h', () => {
  it('when it is the first, however long the person is here', () => {
    expect(due(stayOf(check('edge', 50)), 51).at).toBe(hours(62));
  });
  it('when all that was the same was seen before the arrival', () => {
    const arrivedLater = recordOf([...same(), { ...begun(), at: 49 }]);
    expect(ranOut(arrivedLater, 59.9)).toBe(false);
    expect(ranOut(arrivedLater, 60)).toBe(true);
  });
  it('when no arrival was entered', () => {
    expect(due(recordOf(same()), 50).at).toBe(hours(60));
  });
});

it('a ward that asks for no settled time gives the first check the longer hours at once', () => {
  expect(due(stayOf(first), 2, rulesWith({ settledAfterHours: 0 })).at).toBe(hours(25));
});

describe('given a check that cannot be read here, by a protocol the ward does not have', () => {
  const foreign = (at: number, id: string): Told => {
    const { payload, ...told } = check('walk', at);
    return { ...told, id, payload: { ...(payload as object), protocol: { id: 'elsewhere', version: 1 } } };
  };
  it('alone it makes nothing known, confirmed or not', () => {
    const record = stayOf(foreign(1, 'foreign'), confirm(2, 'foreign'));
    expect(seen(record, hours(3))).toMatchObject({
      trust: { state: 'not-known' },
      tier: { word: 'Not known' },
      due: { state: 'not-due', at: hours(4) },
      checkBeforeMoving: true,
    });
  });
  it('after one that can be read, a confirm of that one renews, of the other or an older one does not', () => {
    const told = [{ ...check('edge', 0.5), id: 'older' }, first, foreign(5, 'foreign')];
    const confirmed = (of: string) => due(stayOf(...told, confirm(10, of)), 11).at;
    expect([confirmed('foreign'), confirmed('first'), confirmed('older')]).toEqual([
      // What cannot be read renews nothing: the age is that of the check before it.
      hours(13),
      hours(22),
      hours(13),
    ]);
  });
});

describe('trust names beforehand the instant at which', () => {
  // A check that holds longer than either, so that nothing else ends at the same instant.
  const long = rulesWith({ unsettledHours: 30 });
  /** Every later instant, in hours, that the rule names when it is asked at `h`. */
  const named = (record: StayRecord, h: number, rules = DEFAULT_RULES): number[] => {
    const here = { ...ward, rules };
    const calendar = wardCalendar(here);
    const t = hours(h);
    const out: number[] = [];
    const note = (at: number) => out.push((at - hours(0)) / 3_600_000);
    const known = knownAt(effectiveFacts(record), here, calendar, t, () => undefined);
    trustAndDue({ ...known, t, calendar, note });
    return out.filter((at) => at > h);
  };
  it.each([
    ['the first day after surgery ends', stayOf(trigger('return-from-surgery', 1.5), check('edge', 2)), 25.5],
    [
      'help is no longer said to be waited for only sometimes',
      stayOf(check('edge', 2, {}, { cooperation: { waitsForHelp: 'varies', followsInstructions: 'yes' } })),
      26,
    ],
  ])('%s', (_what, record, at) => {
    expect(named(record, 3, long)).toContain(at);
  });
});
