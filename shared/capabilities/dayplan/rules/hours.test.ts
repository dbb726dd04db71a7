import { describe, expect, it } from 'vitest';
import { HOUR } from '../../../kernel/times.ts';
import { wardHours } from '../../../wire/pictures.ts';
import {
  begun,
  calendar,
  hours,
  notDone,
  retract,
  session,
  WARD,
  WardLog,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { hoursOf } from './hours.ts';

// 40 h after START (18:00 on 24 October in Berlin) is 09:00 on the 26th: an ordinary ward day from hour 38.
const NOW = hours(40.5);
const day = calendar.wardDay(NOW);
function records(of: Readonly<Record<string, readonly Told[]>>) {
  const log = new WardLog();
  for (const [stay, told] of Object.entries(of))
    for (const one of [{ ...begun(stay), at: 0 }, ...told]) log.add(`stay/${stay}`, one);
  return Object.keys(of).map((stay) => log.record(stay));
}
const at = (h: number, of: Parameters<typeof records>[0], t = NOW) =>
  hoursOf(records(of), day, t).hours.find((one) => one.from === hours(h))!;

describe('a ward day by the hour', () => {
  it('counts what began in an hour by how it went, and what was not done by its reason', () => {
    const of = {
      a: [session(39.2), session(39.9, { outcome: 'stopped' }), session(40)],
      b: [notDone(39.5, 'said-no'), notDone(39.6, 'said-no'), notDone(39.7, 'no-people')],
      c: [session(39.1, { outcome: 'part' })],
    };
    expect(at(39, of)).toMatchObject({
      done: 1,
      part: 1,
      stopped: 1,
      notDone: { 'said-no': 2, 'no-people': 1 },
    });
    expect(at(40, of)).toMatchObject({ done: 1, notDone: {} });
  });

  it('GAP-1 says of how many nothing is recorded yet, apart from what was not done', () => {
    const of = { a: [session(39.5)], b: [notDone(40.2, 'not-here')], c: [] };
    expect([38, 39, 40].map((h) => at(h, of).nothingYet)).toEqual([3, 2, 1]);
    expect(at(40, of)).toMatchObject({ done: 0, notDone: { 'not-here': 1 } });
  });

  it('says nothing of an hour to come', () => {
    expect(at(41, { a: [] })).toMatchObject({ begun: false, nothingYet: null });
    expect(at(40, { a: [] })).toMatchObject({ begun: true, nothingYet: 1 });
  });

  it('holds the people who were on the ward in that hour', () => {
    const left: Told = { type: 'stay-ended', at: 39.5, payload: { bed: 'bed-1', to: 'home' } };
    const came = { ...begun('c'), at: 40.1 };
    const log = new WardLog();
    for (const [stay, told] of [
      ['a', begun('a')],
      ['b', begun('b')],
      ['b', left],
      ['c', came],
    ] as const)
      log.add(`stay/${stay}`, told);
    const answer = hoursOf(
      ['a', 'b', 'c'].map((s) => log.record(s)),
      day,
      NOW,
    );
    expect(answer.hours.slice(0, 3).map((h) => h.nothingYet)).toEqual([2, 1, 2]);
    expect(answer.stays).toBe(3);
  });

  it('counts no entry of another ward day, and none that was withdrawn', () => {
    const of = { a: [session(37), { ...session(39.5), id: 's' }, retract(40, 's')] };
    expect(at(39, of)).toMatchObject({ done: 0, nothingYet: 1 });
  });

  it('has 25 hours on the day the clocks go back, each elapsed', () => {
    const long = calendar.wardDay(hours(5));
    const answer = hoursOf(records({ a: [session(8)] }), long, NOW);
    expect(answer.hours).toHaveLength(25);
    expect(answer.hours.every((h) => h.to - h.from === HOUR)).toBe(true);
    const page = { ward: WARD, day: '2026-10-24', ...long, at: NOW, ...answer };
    expect(wardHours.safeParse(page).error).toBeUndefined();
  });
});
