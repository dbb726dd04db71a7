/**
 * A check put off to the next move, off the ward or asleep: the design's validity row. The hours are
 * common practice, no source. The ward's night ends at 07:00, 14 h after the stay began.
 */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { before, changes, due, first, rulesSaid, rulesWith, seen } from './due.testkit.ts';
import {
  check,
  confirm,
  hold,
  hours,
  notDone,
  order,
  session,
  stayOf,
  trigger,
  type Told,
} from './history.testkit.ts';
import { timesAway } from './pauses.ts';

const away = (at: number): Told => ({ type: 'went-off-ward', at, payload: { reason: 'test' } });
const back = (at: number): Told => ({ type: 'came-back', at, id: `back-${at}`, payload: {} });
const asleep = (at: number): Told => ({
  type: 'asleep-seen',
  at,
  role: 'aide',
  id: `asleep-${at}`,
  payload: {},
});
describe('off the ward', () => {
  it('DUE-3 the check is due at the next move, not overdue', () => {
    expect(seen(stayOf(first, away(2)), hours(20))).toMatchObject({
      due: {
        state: 'at-next-move',
        at: null,
        because: [{ rule: 'due/away', words: 'Off the ward since 24 Oct 20:00: before the next move' }],
      },
      away: { since: hours(2), reason: 'test' },
      trust: { state: 're-check', because: [{ rule: 'trust/ran-out' }] },
    });
    expect(due(stayOf(trigger('fall', 1), away(2)), 20).state).toBe('at-next-move');
  });
  it('a check that ran out meanwhile is due an hour after coming back; trust still says that it ran out', () => {
    const returned = stayOf(first, away(2), back(21));
    const view = seen(returned, hours(before(22)));
    expect(view).toMatchObject({
      due: { state: 'at-next-move', at: null },
      away: null,
      trust: { state: 're-check', because: [{ rule: 'trust/ran-out' }] },
    });
    expect(view.due.because.map((b) => [b.rule, ...b.facts])).toEqual([
      ['due/after-return', 'back-21'],
      ['due/validity', 'first'],
    ]);
    expect(view.due.because[0]!.words).toBe(
      'Ran out while off the ward; back 25 Oct 14:00: before the next move, within 1 h at the latest (common practice, no source)',
    );
    expect(due(returned, 22)).toMatchObject({ state: 'overdue', at: hours(22) });
    const three = rulesWith({ afterReturnHours: 3 });
    expect(due(returned, before(24), three).state).toBe('at-next-move');
    expect(due(returned, 24, three)).toMatchObject({ state: 'overdue', at: hours(24) });
  });
  it('what ran out before leaving, or just on return, stays as it was', () => {
    expect(due(stayOf(first, away(13.25), back(21)), 21)).toMatchObject({ state: 'overdue', at: hours(13) });
    expect(due(stayOf(first, away(13), back(21)), 22)).toMatchObject({ state: 'overdue', at: hours(22) });
    expect(due(stayOf(first, away(2), back(13)), 13)).toMatchObject({ state: 'overdue', at: hours(13) });
    expect(due(stayOf(first, away(2), back(12)), 12.5)).toMatchObject({ state: 'not-due', at: hours(13) });
  });
  it('the first check, an open trigger and a check in every shift wait likewise', () => {
    expect(due(stayOf(away(1), back(6)), 6.5)).toMatchObject({ state: 'not-due', at: hours(7) });
    expect(due(stayOf(away(1), back(6)), 7)).toMatchObject({ state: 'overdue', at: hours(7) });
    const fell = stayOf(first, trigger('fall', 2), away(2.5), back(5));
    expect(due(fell, before(6))).toMatchObject({
      state: 'at-next-move',
      because: [{ words: 'Fall, 24 Oct 20:00: before the next move, and by 25 Oct 00:00 also without one' }],
    });
    expect(due(fell, 6)).toMatchObject({ state: 'overdue', at: hours(6) });
    const every = rulesWith({ eachShift: true, unsettledHours: 24 });
    expect(due(stayOf(first, away(17), back(19)), 20, every)).toMatchObject({ at: hours(20) });
  });
  it('each limit waits for itself: one that had passed before is not put off by another', () => {
    const two = stayOf(first, trigger('fall', 2), away(4), back(14));
    expect(due(two, 14)).toMatchObject({ state: 'overdue', at: hours(3) });
    expect(rulesSaid(two, 15)).toEqual(['due/trigger-limit', 'due/after-return', 'due/validity']);
  });
  it('going away again before that hour is over puts it off again', () => {
    const twice = stayOf(first, away(2), back(14), away(14.5), back(16));
    expect(due(twice, before(17)).state).toBe('at-next-move');
    expect(due(twice, 17)).toMatchObject({ state: 'overdue', at: hours(17) });
    const later = stayOf(first, away(2), back(14), away(15.5), back(17));
    expect(due(later, 17)).toMatchObject({ state: 'overdue', at: hours(15) });
  });
  it('said twice to be away, the person was away since the first', () => {
    expect(due(stayOf(first, away(12.5), away(13.5), back(15)), 16)).toMatchObject({ at: hours(16) });
    expect(due(stayOf(first, back(12), away(12.5), back(13.5), back(15)), 16)).toMatchObject({
      at: hours(14.5),
    });
  });
});

describe('the times off the ward', () => {
  const times = (...told: readonly Told[]) => timesAway(effectiveFacts(stayOf(first, ...told)).facts);
  const one = { since: hours(2), back: hours(4), cameBack: 'back-4' };
  it('end with coming back, whatever else is recorded meanwhile', () => {
    const meanwhile = [order(2.5, { about: 'activity', most: 'chair' }), hold(3, 'walking', 40), asleep(3.5)];
    expect(times(away(2), ...meanwhile, back(4))).toEqual([one]);
    expect(times(away(2), ...meanwhile)).toEqual([]);
  });
  it('are told one after another, and coming back without having left is none', () => {
    expect(times(back(1.5), away(2), back(4), back(5), away(6), back(7))).toEqual([
      one,
      { since: hours(6), back: hours(7), cameBack: 'back-7' },
    ]);
  });
});

describe('seen asleep', () => {
  it('a check that runs out by night waits for the next move until the night ends', () => {
    const sleeps = stayOf(first, asleep(12));
    expect(due(sleeps, before(13))).toMatchObject({ state: 'not-due', at: hours(13) });
    expect(due(sleeps, 13)).toEqual({
      state: 'at-next-move',
      at: null,
      because: [
        {
          rule: 'due/asleep',
          facts: ['asleep-12'],
          words: 'Seen asleep 25 Oct 05:00: before the next move',
        },
        {
          rule: 'due/validity',
          facts: ['first'],
          words: '12 h after the last check (common practice, no source)',
        },
      ],
    });
    expect(due(sleeps, before(14)).state).toBe('at-next-move');
    expect(due(sleeps, 14)).toMatchObject({ state: 'overdue', at: hours(13) });
  });
  it('by day it waits for 4 h, or as long as the ward says', () => {
    const sleeps = stayOf(first, asleep(14.5));
    expect(due(sleeps, 14.25)).toMatchObject({ state: 'overdue', at: hours(13) });
    expect(due(sleeps, 14.5).state).toBe('at-next-move');
    expect(due(sleeps, before(18.5)).state).toBe('at-next-move');
    expect(due(sleeps, 18.5)).toMatchObject({ state: 'overdue', at: hours(13) });
    expect(due(sleeps, 16.5, rulesWith({ asleepHours: 2 })).state).toBe('overdue');
  });
  it('the last time somebody saw it counts', () => {
    expect(due(stayOf(first, asleep(12), asleep(14.5)), 15).because[0]!.facts).toEqual(['asleep-14.5']);
  });
  it.each([
    ['a session done', session(13.5)],
    ['a session in part', session(13.5, { outcome: 'part' })],
    ['a check', { ...check('edge', 13.5), role: 'aide' }],
    ['a confirm', confirm(13.5, 'first', 'aide')],
    ['seen walking', { type: 'seen-walking', at: 13.5, payload: { walkingSupport: 'none' }, role: 'aide' }],
    [
      'a walk measured',
      {
        type: 'walking-measured',
        at: 13.5,
        role: 'therapist',
        payload: {
          measure: { kind: 'chair-stands', stands: 9, usedArms: false },
        },
      },
    ],
    ['coming back', back(13.5)],
  ] as const)('is over with %s', (_what, told) => {
    const sleeps = stayOf(first, asleep(12), told as Told);
    expect(due(sleeps, 13.25).state).toBe('at-next-move');
    expect(due(sleeps, 13.5)).toMatchObject({ state: 'overdue', at: hours(13) });
    // Of the very instant it counts too; from before it does not.
    expect(due(stayOf(first, asleep(13.5), told as Told), 13.75).state).toBe('overdue');
    expect(due(stayOf(first, asleep(13.75), told as Told), 13.8).state).toBe('at-next-move');
  });
  it('is over once the person has been off the ward', () => {
    expect(due(stayOf(first, asleep(13.25), away(13.5), back(13.6)), 13.7).state).toBe('overdue');
  });
  it('is over with a stopped session or a fall, which bring their own time', () => {
    expect(due(stayOf(first, asleep(12), session(13.5, { outcome: 'stopped' })), 13.6).state).toBe('overdue');
    expect(due(stayOf(first, asleep(12), trigger('fall', 13.5)), 13.6)).toMatchObject({
      state: 'overdue',
      at: hours(13),
    });
  });
  it.each([
    ['something not done', notDone(13.5, 'bad-moment')],
    ['a sedative', trigger('sedation', 13.5)],
    ['an order', order(13.5, { about: 'activity', most: 'chair' })],
    ['a hold', hold(13.5, 'walking', 40)],
  ] as const)('is not over with %s', (_what, told) => {
    expect(due(stayOf(first, asleep(13.25), told), 13.6).state).toBe('at-next-move');
  });
  it('in the chair is over when that session ends', () => {
    const inChair = session(13, { activities: ['chair'], endedAt: toIso(hours(13.6)) });
    const sleeps = stayOf(first, inChair, asleep(13.4));
    expect(due(sleeps, before(13.6)).state).toBe('at-next-move');
    expect(due(sleeps, 13.6).state).toBe('overdue');
    expect(due(stayOf(first, inChair, asleep(13.7)), 13.8).state).toBe('at-next-move');
    expect(due(stayOf(first, inChair, asleep(13.6)), 13.6).state).toBe('overdue');
  });
  it.each([13.25, 13.5])(
    'is over as soon as a session begins at or after it, seen asleep at %s',
    (seenAt) => {
      const runs = session(13.5, { activities: ['chair'], endedAt: toIso(hours(14.5)) });
      expect(due(stayOf(first, asleep(seenAt), runs), 13.75).state).toBe('overdue');
    },
  );
  it('after a session of which nobody wrote the end is not over', () => {
    expect(due(stayOf(first, session(13), asleep(13.4)), 13.75).state).toBe('at-next-move');
  });
  it('does not put off the first check of a stay', () => {
    expect(due(stayOf(asleep(3)), 4)).toMatchObject({ state: 'overdue', at: hours(4) });
  });
  it('does not put off a trigger that has hours, and puts off what else ran out', () => {
    const failed = stayOf(first, trigger('failed-attempt', 1.75), asleep(13.25));
    expect(due(failed, 13.5)).toMatchObject({
      state: 'at-next-move',
      because: [{ rule: 'due/asleep' }, { rule: 'due/trigger' }, { rule: 'due/validity' }],
    });
    expect(due(failed, 13.75)).toMatchObject({
      state: 'overdue',
      at: hours(13.75),
      because: [{ rule: 'due/trigger-limit' }],
    });
  });
  it('puts off a check in every shift', () => {
    const every = rulesWith({ eachShift: true, unsettledHours: 24 });
    expect(due(stayOf(first, asleep(17)), 18, every)).toMatchObject({
      state: 'at-next-move',
      because: [{ rule: 'due/asleep' }, { rule: 'due/every-shift' }],
    });
  });
  it('DUE-3 touches neither trust nor the plan', () => {
    const told = [first, trigger('sedation', 12)];
    const awake = seen(stayOf(...told), hours(13.5));
    const sleeps = seen(stayOf(...told, asleep(13)), hours(13.5));
    expect(sleeps.trust).toEqual(awake.trust);
    expect(sleeps.plan).toEqual(awake.plan);
  });
});

describe('an instant at which a pause ends', () => {
  const inChair = session(13, { activities: ['chair'], endedAt: toIso(hours(13.6)) });
  it.each([
    ['of the hour after coming back', stayOf(first, away(2), back(21.3)), 22.3],
    ['of sleep by day', stayOf(first, asleep(14.7)), 18.7],
    ['of sleep in the chair', stayOf(first, inChair, asleep(13.4)), 13.6],
  ])('%s is told before it comes', (_what, stay, at) => {
    expect(changes(stay, 13.45, 30)).toContain(at);
  });
});
