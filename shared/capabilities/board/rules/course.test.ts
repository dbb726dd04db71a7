import { describe, expect, it } from 'vitest';
import { MINUTE } from '../../../kernel/times.ts';
import { stayCourse } from '../../../wire/pictures.ts';
import { courseOf } from './course.ts';
import { evaluateStay } from './evaluate-stay.ts';
import {
  calendar,
  check,
  hold,
  hours,
  notDone,
  retract,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';

const ended = (at: number): Told => ({
  type: 'stay-ended',
  at,
  payload: { bed: 'bed-1', to: 'home' },
});
const holdOver = (at: number, placedBy: string): Told => ({
  type: 'hold-ended',
  at,
  payload: { hold: 'hold-1', placedBy },
});
const course = (now: number, ...told: readonly Told[]) =>
  courseOf(stayOf(...told), ward, calendar, hours(now))!;

describe('the course of a stay', () => {
  it('steps with the tier and leaves a gap where none is known', () => {
    const { standing, tiers } = course(30, check('edge', 2), check('walk', 10));
    expect(standing[0]).toMatchObject({ from: hours(0), to: hours(2), tier: 'Not known', notch: null });
    const steps = standing.filter((s, i) => s.tier !== standing[i - 1]?.tier).map((s) => [s.tier, s.from]);
    expect(steps).toEqual([
      ['Not known', hours(0)],
      ['Edge', hours(2)],
      ['Walk', hours(10)],
    ]);
    expect(tiers.map((one) => one.word)).toEqual(['Supported', 'Upright', 'Edge', 'Stand', 'Turn', 'Walk']);
    for (const { tier, notch } of standing)
      expect(tiers.find((one) => one.word === tier)?.notch ?? null).toBe(notch);
  });

  it('has no hole between arrival and now, and says at each time what the board says', () => {
    const told = [
      check('stand', 2),
      trigger('fall', 9),
      session(5),
      hold(11, 'walking', 20),
      check('walk', 30),
    ];
    const record = stayOf(...told);
    const { standing, from, to } = courseOf(record, ward, calendar, hours(40))!;
    expect([standing[0]!.from, standing.at(-1)!.to]).toEqual([from, to]);
    expect(standing.slice(1).map((one) => one.from)).toEqual(standing.slice(0, -1).map((one) => one.to));
    for (const one of standing) {
      for (const t of [one.from, one.to - MINUTE]) {
        const { view } = evaluateStay(record, ward, calendar, t);
        expect([one.tier, one.notch, one.trust]).toEqual([view.tier.word, view.tier.notch, view.trust.state]);
      }
    }
    expect(new Set(standing.map((s) => s.trust))).toEqual(new Set(['not-known', 'current', 're-check']));
  });

  it('draws a hold from when it was placed until a qualified person ended it, and an open one to no end', () => {
    const over = course(30, { ...hold(2, 'walking', 4), id: 'h' }, holdOver(9, 'h'));
    expect(over.holds).toMatchObject([{ scope: 'walking', from: hours(2), to: hours(9) }]);
    const open = course(30, hold(2, 'walking', 4));
    expect(open.holds).toMatchObject([{ from: hours(2), to: null }]);
  });

  it('GAP-1 a ward day with nothing recorded is a gap beside days that have an entry', () => {
    // START is 18:00 in Berlin: the first ward day ends at 07:00, after 14 elapsed hours (the clocks go back).
    const { days, sessions } = course(50, session(2), notDone(45, 'said-no'));
    expect(days.map((d) => [d.from, d.to, d.recorded])).toEqual([
      [hours(0), hours(14), true],
      [hours(14), hours(38), false],
      [hours(38), hours(50), true],
    ]);
    expect(sessions.map((s) => [s.outcome, s.activity, s.group])).toEqual([
      ['done', 'walk', null],
      ['not-done', null, 'said-no'],
    ]);
  });

  it('leaves out what was withdrawn, and what comes later than asked', () => {
    const told = [{ ...trigger('fall', 3), id: 'f' }, retract(4, 'f'), trigger('faint', 5), session(20)];
    expect(course(10, ...told).triggers.map((x) => x.kind)).toEqual(['faint']);
    expect(course(10, ...told).sessions).toEqual([]);
  });

  it('ends when the stay ended, and is nothing before arrival', () => {
    const over = course(60, check('edge', 2), ended(20));
    expect(over).toMatchObject({ ended: true, to: hours(20), whole: true });
    expect(over.standing.at(-1)!.to).toBe(hours(20));
    expect(courseOf(stayOf(), ward, calendar, hours(-1))).toBeNull();
  });

  it('reads as the wire has it', () => {
    const page = {
      ward: 'w',
      stay: 's',
      position: 3,
      ...course(30, check('edge', 2), hold(3, 'walking', 9)),
    };
    expect(stayCourse.safeParse(page).error).toBeUndefined();
  });
});
