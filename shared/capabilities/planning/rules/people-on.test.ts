import { describe, expect, it } from 'vitest';
import type { StaffId } from '../../../kernel/ids.ts';
import { HOUR, MINUTE, toIso } from '../../../kernel/times.ts';
import type { PeopleOn, WardState } from '../../wards/context.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { isFree, NOBODY_NAMED, peopleOnAt, timesOn, withPeopleOn } from './people-on.ts';

/** 07:00 on the ward's clock, winter time. */
const T = Date.UTC(2026, 2, 3, 6);
const at = (h: number) => T + h * HOUR;
const person = (staff: string, from: number, until: number, breaks: [number, number][] = []) => ({
  staff: staff as StaffId,
  from: toIso(at(from)),
  until: toIso(at(until)),
  breaks: breaks.map(([a, b]) => ({ from: toIso(at(a)), until: toIso(at(b)) })),
});
const named = (...people: ReturnType<typeof person>[]): PeopleOn =>
  withPeopleOn(NOBODY_NAMED, { day: '2026-03-03', people });
const member = (role: string, active = true) => ({ role, active }) as never;
const ward = (peopleOn: PeopleOn): Pick<WardState, 'zone' | 'staff' | 'peopleOn'> => ({
  zone: 'Europe/Berlin',
  peopleOn,
  staff: new Map([
    ['ana', member('nurse')],
    ['ben', member('aide')],
    ['cleo', member('charge-nurse')],
    ['tom', member('therapist')],
    ['max', member('manager')],
    ['gone', member('aide', false)],
  ]) as never,
});
const slots = (peopleOn: PeopleOn, from: number, to: number) =>
  peopleOnAt(ward(peopleOn), DEFAULT_RULES, at(from), at(to));

describe('who is on, by quarter hours', () => {
  it('counts the people of each kind who are there and on no break', () => {
    const on = named(
      person('ana', 0, 8, [[4, 4.5]]),
      person('ben', 1, 8),
      person('cleo', 0, 8),
      person('tom', 0, 8),
      person('max', 0, 8),
    );
    expect(slots(on, 0.75, 1.25)).toEqual([
      {
        from: at(0.75),
        to: at(1),
        said: 'named',
        people: ['ana', 'cleo', 'max', 'tom'],
        nurses: 2,
        aides: 0,
        therapists: 1,
      },
      {
        from: at(1),
        to: at(1.25),
        said: 'named',
        people: ['ana', 'ben', 'cleo', 'max', 'tom'],
        nurses: 2,
        aides: 1,
        therapists: 1,
      },
    ]);
    expect(slots(on, 3.75, 4.75).map((slot) => slot.nurses)).toEqual([2, 1, 1, 2]);
  });
  it('somebody who comes or goes within a quarter hour is not counted in it', () => {
    const on = named(person('ana', 0, 8), person('ben', 1.1, 1.9));
    expect(slots(on, 1, 2).map((slot) => slot.aides)).toEqual([0, 1, 1, 0]);
  });
  it('PEOPLE-1 has the usual staffing where nobody is named, and says so; on a break is not nobody', () => {
    const on = named(person('ana', 0, 2, [[1, 1.5]]));
    expect(slots(on, 1, 1.25)).toMatchObject([{ said: 'named', nurses: 0 }]);
    expect(slots(on, 2, 2.25)).toMatchObject([
      { said: 'usual', nurses: 3, aides: 2, therapists: 1, people: [] },
    ]);
    // 22:00 on the ward's clock.
    expect(slots(on, 15, 15.25)).toMatchObject([{ said: 'usual', nurses: 2, aides: 1, therapists: 0 }]);
  });
  it('leaves out whoever is no longer on the staff list', () => {
    expect(slots(named(person('gone', 0, 8)), 1, 1.25)).toMatchObject([{ said: 'usual' }]);
  });
  it('a night goes on after the ward day has ended', () => {
    const before = withPeopleOn(named(person('ana', 14, 24.5)), {
      day: '2026-03-04',
      people: [person('ben', 24, 32)],
    });
    expect(slots(before, 24, 24.75).map(({ nurses, aides }) => [nurses, aides])).toEqual([
      [1, 1],
      [1, 1],
      [0, 1],
    ]);
  });
});

describe('naming again', () => {
  it('PEOPLE-2 replaces what was said of that person for that day, and of nobody else', () => {
    const before = named(person('ana', 0, 8), person('ben', 0, 8));
    const after = withPeopleOn(before, { day: '2026-03-03', people: [person('ana', 2, 6)] });
    expect([...timesOn(ward(after), { from: at(0), to: at(24) })]).toEqual([
      ['ana', [{ from: at(2), to: at(6), breaks: [] }]],
      ['ben', [{ from: at(0), to: at(8), breaks: [] }]],
    ]);
  });
  it('with the same time twice takes the person off', () => {
    const after = withPeopleOn(named(person('ana', 0, 8), person('ben', 0, 8)), {
      day: '2026-03-03',
      people: [person('ana', 0, 0)],
    });
    expect([...after.get('2026-03-03')!.keys()]).toEqual(['ben']);
  });
  it('keeps six weeks of days', () => {
    let on = NOBODY_NAMED;
    for (let day = 0; day < 60; day++) {
      const date = toIso(at(day * 24)).slice(0, 10);
      on = withPeopleOn(on, { day: date, people: [person('ana', day * 24, day * 24 + 8)] });
    }
    expect(on.size).toBe(42);
    expect([...on.keys()].at(-1)).toBe('2026-05-01');
  });
});

it('free is on for all of it', () => {
  const time = { from: at(0), to: at(8), breaks: [{ from: at(4), to: at(4.5) }] };
  const span = (from: number, minutes: number) => ({ from: at(from), to: at(from) + minutes * MINUTE });
  expect(isFree([time], span(0, 15))).toBe(true);
  expect(isFree([time], span(3.75, 15))).toBe(true);
  expect(isFree([time], span(3.75, 16))).toBe(false);
  expect(isFree([time], span(7.75, 16))).toBe(false);
  expect(isFree([], span(0, 15))).toBe(false);
});
