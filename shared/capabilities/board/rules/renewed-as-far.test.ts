/**
 * Which check gives a plan its age: one that went as far as what stands cleared, or as far as it was let.
 * A look at the person in bed says nothing of the walk. Common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { due, rulesWith, seen } from './due.testkit.ts';
import { check, confirm, hold, hours, order, stayOf, trigger, type Told } from './history.testkit.ts';

const walked = { ...check('walk', 1), id: 'walked' };
const dueAt = (...told: readonly Told[]) => due(stayOf(...told), 12.5).at;

describe('given a person cleared to walk at hour 1', () => {
  it('when only the start is checked again and again, then the plan runs out 12 h after the walk', () => {
    const again = [11, 22, 33, 44, 55].map((h) => ({ ...check('clear', h), id: `clear-${h}` }));
    const record = stayOf(walked, ...again);
    expect(seen(record, hours(12.9)).trust.state).toBe('current');
    const { trust, due: then, tier } = seen(record, hours(62));
    expect(tier.word).toBe('Walk');
    expect(trust).toMatchObject({
      state: 're-check',
      because: [
        {
          rule: 'trust/ran-out',
          facts: ['walked', 'clear-55'],
          words: 'Last check as far as what stands cleared 24 Oct 19:00: validity ran out',
        },
      ],
    });
    expect(then).toMatchObject({
      state: 'overdue',
      at: hours(13),
      because: [
        {
          facts: ['walked', 'clear-55'],
          words: '12 h after the last check as far as what stands cleared (common practice, no source)',
        },
      ],
    });
  });
  it.each([
    ['the walk again', check('walk', 11), 23],
    ['all but the walk', check('turn', 11), 13],
    ['a stage not met', check('stand', 11, { stand: { outcome: 'not-met' } }), 23],
    ['the start not met', check('clear', 11, { clear: { outcome: 'not-met' } }), 23],
  ] as const)(
    'when a check at hour 11 tests %s, then the plan holds as long as it should',
    (_, told, until) => {
      expect(dueAt(walked, told)).toBe(hours(until));
    },
  );
  it('when less is left after a stage not met, by whomever, then a check as far as that renews', () => {
    const lost = { ...check('walk', 3, { stand: { outcome: 'not-met' } }), role: 'aide' as const };
    expect(dueAt(walked, lost, check('edge', 11))).toBe(hours(23));
    expect(dueAt(walked, lost, check('upright', 11))).toBe(hours(13));
  });
  it("when a nurse confirms after the shorter check, then that renews as ever, and the age is the confirm's", () => {
    const short = { ...check('clear', 8), id: 'short' };
    const { trust, due: then } = seen(stayOf(walked, short, confirm(11, 'short')), hours(12.5));
    expect(then).toMatchObject({ at: hours(23) });
    expect(trust.because.map((b) => b.words)).toEqual(['Confirmed 25 Oct 04:00']);
  });
  it('when it was confirmed, and a shorter check came after that, then the age is still that of the confirm', () => {
    expect(dueAt(walked, confirm(10, 'walked'), check('clear', 11))).toBe(hours(22));
  });
  it('when an order holds them back only after the shorter check, then it went no further than it did', () => {
    const inBed = order(12, { about: 'activity', most: 'bed' });
    const { trust } = seen(stayOf(walked, check('upright', 11), inBed), hours(13));
    expect(trust.because.map((b) => b.rule)).toContain('trust/ran-out');
  });
  it('when a check by a protocol that nobody can read came after it, then that one is named beside it', () => {
    const unread = { ...check('walk', 11, {}, { protocol: { id: 'gone', version: 1 } }), id: 'unread' };
    expect(due(stayOf(walked, unread), 12).because).toEqual([
      {
        rule: 'due/validity',
        facts: ['walked', 'unread'],
        words: '12 h after the last check as far as what stands cleared (common practice, no source)',
      },
    ]);
    // Before any other check there is nothing that it went less far than.
    const earlier = stayOf({ ...unread, at: 0.5 }, walked);
    expect(due(earlier, 12).because).toMatchObject([{ facts: ['walked'] }]);
  });
  it('when the ward asks for a check in each shift, then a shorter one is not it, and the words say so', () => {
    const record = stayOf(walked, check('clear', 11));
    const rules = rulesWith({ eachShift: true, unsettledHours: 100 });
    expect(
      due(record, 12, rules)
        .because.map((b) => b.words)
        .join(' '),
    ).toContain('the last one as far as what stands cleared was in the shift to');
  });
});

describe('given a check in which nothing was tested but a stage that its protocol does not have', () => {
  const garden = (at: number): Told => {
    const told = check('clear', at);
    const { stages, ...rest } = told.payload as { stages: readonly object[] };
    return { ...told, id: 'garden', payload: { ...rest, stages: [{ ...stages[0], stage: 'garden' }] } };
  };
  it('alone it makes nothing known', () => {
    expect(seen(stayOf(garden(1)), hours(2)).trust.state).toBe('not-known');
  });
  it('after a walk, then a confirm of either of the two renews', () => {
    expect(dueAt(walked, garden(11))).toBe(hours(13));
    expect(dueAt(walked, garden(11), confirm(12, 'walked'))).toBe(hours(24));
    expect(dueAt(walked, garden(11), confirm(12, 'garden'))).toBe(hours(24));
  });
});

it('given a first check of the start alone, then it counts as far as it went', () => {
  expect(dueAt(check('clear', 1))).toBe(hours(13));
  expect(dueAt(check('clear', 1), check('clear', 11))).toBe(hours(23));
});

describe('given a person cleared to walk, and then held back', () => {
  const activity = (most: string) => order(2, { about: 'activity', most });
  const noWeight = (limb: string) => order(2, { about: 'weight-bearing', limb, bears: 'none' });
  it.each([
    ['an order to stay in bed', [activity('bed')], 'upright', 'clear'],
    ['an order up to the edge of the bed', [activity('edge-of-bed')], 'edge', 'upright'],
    ['an order up to the chair', [activity('chair')], 'edge', 'upright'],
    ['an order up to standing', [activity('stand')], 'turn', 'stand'],
    ['a hold on walking', [hold(2, 'walking', 40)], 'turn', 'stand'],
    ['a hold on standing', [hold(2, 'standing', 40)], 'edge', 'upright'],
    ['a hold on getting out of bed', [hold(2, 'out-of-bed', 40)], 'upright', 'clear'],
    ['a leg that may bear nothing', [noWeight('left-leg')], 'stand', 'edge'],
    ['two legs that may bear nothing', [noWeight('left-leg'), noWeight('right-leg')], 'edge', 'upright'],
    ['an order and a stricter hold', [activity('stand'), hold(2, 'standing', 40)], 'edge', 'upright'],
  ] as const)(
    'by %s, then a check as far as that renews, and a shorter one does not',
    (_, held, far, short) => {
      const until = (told: Told) =>
        seen(stayOf(walked, ...held, told), hours(13)).trust.because.some((b) => b.rule === 'trust/ran-out');
      expect(until(check(far, 11))).toBe(false);
      expect(until(check(short, 11))).toBe(true);
    },
  );
  it('by an order that lets everything, then nothing is shortened', () => {
    expect(dueAt(walked, activity('no-limit'), check('turn', 11))).toBe(hours(13));
    expect(dueAt(walked, activity('walk'), check('turn', 11))).toBe(hours(13));
  });
  it('by a hold that has ended, then the walk counts again', () => {
    const placed: Told = { ...hold(2, 'standing', 40), id: 'placed' };
    const ended: Told = {
      type: 'hold-ended',
      at: 10,
      payload: { hold: 'hold-1', placedBy: 'placed' },
    };
    expect(dueAt(walked, placed, ended, check('edge', 11))).toBe(hours(13));
  });
  it('by a fall, then the trigger still asks for a check as far as the walk', () => {
    const told = [walked, activity('edge-of-bed'), trigger('fall', 3), check('edge', 11)];
    expect(seen(stayOf(...told), hours(12)).trust.openTriggers.map((o) => o.kind)).toContain('fall');
  });
});
