import { describe, expect, it } from 'vitest';
import { evaluateStay } from './evaluate-stay.ts';
import {
  calendar,
  canonical,
  check,
  hold,
  hours,
  order,
  recordOf,
  begun,
  unconfirmed,
  ward,
  type Told,
} from './history.testkit.ts';
import { ifRecorded, type IfRecorded, type MoveChange } from './if-recorded.ts';

/** What the board would say of `before` at an instant if `entry` were recorded too. */
const after = (before: readonly Told[], entry: Told, t = 3): IfRecorded => {
  const whole = recordOf([begun(), ...before, entry]);
  const record = { ...whole, version: whole.version - 1, events: whole.events.slice(0, -1) };
  return ifRecorded(record, whole.events.slice(-1), ward, calendar, hours(t));
};
const helpOf = (side: IfRecorded['now'], task: string) => {
  const plan = side.plan!.day.find((one) => one.task === task)!;
  return { people: plan.people, aid: plan.aid, hold: plan.hold };
};
const changeOf = ({ moves }: IfRecorded, task: MoveChange['task'], by: MoveChange['by'] = 'day') =>
  moves.find((one) => one.task === task && one.by === by)!.change;
const wellWalking = check('walk', 2.5);

describe('a check that is not recorded yet', () => {
  it('given a person nobody has checked, shows the plan now and the plan that would follow, move by move', () => {
    const seen = after([], wellWalking);
    expect(seen.now.tier.word).toBe('Not known');
    expect(helpOf(seen.now, 'walk')).toMatchObject({ people: 'three-or-more', aid: 'bariatric-lift' });
    expect(seen.would.tier.word).toBe('Walk');
    expect(helpOf(seen.would, 'walk')).toMatchObject({ people: 'one', aid: 'none', hold: false });
    expect(seen.now.plan!.day.length).toBeGreaterThan(5);
    expect(seen.moves.map(({ task, by }) => `${task} ${by}`)).toEqual([
      ...seen.would.plan!.day.map(({ task }) => `${task} day`),
      ...seen.would.plan!.night.map(({ task }) => `${task} night`),
    ]);
    expect(changeOf(seen, 'walk')).toBe('less-help');
  });

  it.each([
    ['nobody has checked', []],
    ['a hold stands', [hold(1, 'out-of-bed', 30)]],
    ['an earlier check stands', [check('edge', 1)]],
  ] as const)('given %s, says what the board says once it is recorded', (_what, before) => {
    const { would: told } = after(before, wellWalking);
    const { view } = evaluateStay(recordOf([begun(), ...before, wellWalking]), ward, calendar, hours(3));
    for (const part of Object.keys(told) as (keyof typeof told)[]) {
      expect(canonical(told[part])).toBe(canonical(view[part]));
    }
  });

  it('given a hold on leaving the bed, keeps it whatever the check cleared', () => {
    const seen = after([hold(1, 'out-of-bed', 30)], wellWalking);
    expect(helpOf(seen.would, 'bed-chair').hold).toBe(true);
    expect(helpOf(seen.would, 'walk').hold).toBe(true);
  });

  it('given the same findings as before, names no move that changes', () => {
    const seen = after([check('edge', 1)], check('edge', 2.5));
    expect(new Set(seen.moves.map(({ change }) => change))).toEqual(new Set(['same']));
  });

  it('given a check that ends lower, says more help', () => {
    const seen = after([check('walk', 1)], check('edge', 2.5, { edge: { outcome: 'not-met' } }));
    expect(seen.would.tier.word).toBe('Upright');
    expect(changeOf(seen, 'bed-chair')).toBe('more-help');
    expect(seen.moves.some(({ change }) => change === 'less-help')).toBe(false);
  });

  it('given an author who could not be checked, lowers no move', () => {
    const seen = after([check('edge', 1)], unconfirmed(wellWalking));
    expect(seen.moves.filter(({ change }) => change === 'less-help' || change === 'other-help')).toEqual([]);
  });

  it('given an order that asks to mind something in bed, says of turning that the words change, not the help', () => {
    const known: Told = {
      type: 'weight-recorded',
      at: 0.1,
      payload: { weight: { kg: 70, how: 'measured' } },
    };
    const hip = order(2.5, { about: 'precaution', precaution: 'hip', on: true });
    const brace = order(2.5, { about: 'brace', on: true });
    const seen = after([known, check('walk', 1)], hip);
    const turning = [seen.now, seen.would].map(({ plan }) => plan!.day.find((one) => one.task === 'in-bed')!);
    expect(turning[1]!.cautions).not.toEqual(turning[0]!.cautions);
    expect(helpOf(seen.would, 'in-bed')).toEqual(helpOf(seen.now, 'in-bed'));
    for (const by of ['day', 'night'] as const) {
      expect(changeOf(seen, 'in-bed', by)).toBe('words');
      // A brace asks for nothing in bed.
      expect(changeOf(after([known, check('walk', 1)], brace), 'in-bed', by)).toBe('same');
    }
  });

  it.each([
    ['goes over to a comfort plan', [], 'comfort', true, false],
    ['has a comfort plan', ['comfort'], 'comfort', false, false],
    ['has one and gets the staged check again', ['comfort'], 'staged', false, true],
  ] as const)(
    'given a person who %s, names no move: there are not two plans',
    (_what, first, then, now, would) => {
      const scope = (at: number, of: string): Told => ({ type: 'scope-set', at, payload: { scope: of } });
      const seen = after([check('walk', 1), ...first.map((of) => scope(2, of))], scope(2.5, then));
      expect([seen.now.plan !== null, seen.would.plan !== null]).toEqual([now, would]);
      expect(seen.moves).toEqual([]);
    },
  );

  it('leaves what it was asked about as it was', () => {
    const record = recordOf([begun(), check('edge', 1)]);
    const before = canonical(record);
    const drafted = recordOf([begun(), check('edge', 1), wellWalking]).events.slice(-1);
    ifRecorded(record, drafted, ward, calendar, hours(3));
    expect(canonical(record)).toBe(before);
  });
});
