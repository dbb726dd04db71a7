/** Who counts in which hour of a ward day, at its edges, and what of a day that is over. Common practice, no source. */
import { describe, expect, it } from 'vitest';
import { hoursOf } from './hours.ts';
import {
  begun,
  calendar,
  hours,
  retract,
  session,
  WardLog,
  type Told,
} from '../../board/rules/history.testkit.ts';

// An ordinary ward day on the 26th: it begins 38 h after START, at 07:00, and ends 62 h after it.
const day = calendar.wardDay(hours(40));
const came = (at: number): Told => ({ ...begun(), at, id: 'came' });
const left = (at: number): Told => ({ type: 'stay-ended', at, payload: { bed: 'bed-1', to: 'home' } });
/** The day as it is seen `now` h after START, of one person of whom this is told. */
function seenAt(now: number, ...told: readonly Told[]) {
  const log = new WardLog();
  for (const one of told) log.add('stay/stay-1', one);
  const { stays, hours: all } = hoursOf([log.record('stay-1')], day, hours(now));
  return { stays, at: (h: number) => all.find(({ from }) => from === hours(h))!, all };
}

describe('who is of a ward day', () => {
  it.each<[string, number, readonly Told[]]>([
    ['who came before it and is here', 1, [came(0)]],
    ['who came in the course of it', 1, [came(44)]],
    ['who came only after it', 0, [came(63)]],
    ['who left in the course of it', 1, [came(0), left(39)]],
    ['who left before it', 0, [came(0), left(37)]],
    ['who left at its very beginning', 0, [came(0), left(38)]],
    ['whose arrival was withdrawn', 0, [came(39), session(40), retract(41, 'came')]],
  ])('given the day is over: %s, %i', (_who, stays, told) => {
    const seen = seenAt(70, ...told);
    expect(seen.stays).toBe(stays);
    expect(seen.all.every(({ nothingYet }) => nothingYet! <= stays)).toBe(true);
    expect(seen.all.filter(({ done }) => done > 0)).toEqual([]);
  });

  it('given the day runs: who comes this very minute is of it, who is to come later is not yet', () => {
    expect(seenAt(40.5, came(40.5)).stays).toBe(1);
    expect(seenAt(40.5, came(40.5)).at(40).nothingYet).toBe(1);
    expect(seenAt(40.5, came(41)).stays).toBe(0);
  });

  it('given an entry of before the arrival, then the person is here from the arrival on', () => {
    const weighed: Told = {
      type: 'weight-recorded',
      at: 38.5,
      payload: { weight: { kg: 70, how: 'measured' } },
    };
    const seen = seenAt(42, weighed, came(40.2));
    expect([38, 39, 40].map((h) => seen.at(h).nothingYet)).toEqual([0, 0, 1]);
  });
});

describe('in which hour something counts', () => {
  it('given a session at the stroke of the hour, then it is of the hour that begins', () => {
    const seen = seenAt(42, came(0), session(40));
    expect(seen.at(39)).toMatchObject({ done: 0, nothingYet: 1 });
    expect(seen.at(40)).toMatchObject({ done: 1, nothingYet: 0 });
  });

  it('given a session as the ward day begins, then it is of its first hour', () => {
    expect(seenAt(42, came(0), session(38)).at(38)).toMatchObject({ done: 1, nothingYet: 0 });
  });

  it('given somebody who comes at the stroke of the hour, then the hour before knows nothing of them', () => {
    const seen = seenAt(42, came(40));
    expect([39, 40].map((h) => seen.at(h).nothingYet)).toEqual([0, 1]);
  });

  it('given somebody who leaves this very minute, then nobody waits for an entry of theirs', () => {
    expect(seenAt(40.5, came(0), left(40.5)).at(40).nothingYet).toBe(0);
    expect(seenAt(40.5, came(0), left(40.6)).at(40).nothingYet).toBe(1);
  });

  it('given a session of this very minute, then it counts', () => {
    expect(seenAt(40.5, came(0), session(40.5)).at(40)).toMatchObject({ done: 1, nothingYet: 0 });
  });

  it('given an entry that was made only later, then what was seen at the time had nothing of it', () => {
    const late = { ...session(40.2), at: 41 };
    expect(seenAt(40.5, came(0), late).at(40)).toMatchObject({ done: 0, nothingYet: 1 });
    expect(seenAt(41.5, came(0), late).at(40)).toMatchObject({ done: 1, nothingYet: 0 });
  });

  it('given the stroke of the hour, then the hour that begins has begun', () => {
    expect(seenAt(41, came(0)).at(41)).toMatchObject({ begun: true, nothingYet: 1 });
    expect(seenAt(41, came(0)).at(42)).toMatchObject({ begun: false, nothingYet: null });
  });
});
