/** What one row says on a wall of each level, field by field. Over every history: for-wall.test.ts. */
import { describe, expect, it } from 'vitest';
import type { BedId, EventId, StaffId } from '../../../kernel/ids.ts';
import { bedView, type BedView, type StayView } from '../view.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { rowFor, rowsFor, shownAt } from './for-wall.ts';
import { calendar, check, hours, session, stayOf, ward, type Told } from './history.testkit.ts';

/** Of the evening of arrival one time is left. */
const goal: Told = {
  type: 'goal-set',
  at: 0.8,
  payload: { goal: { activity: 'walk', timesUp: 2, metres: 40 } },
};
const seen = evaluateStay(
  stayOf(check('walk', 0.5), goal, session(1, { metres: 20, minutesOutOfBed: 10 })),
  ward,
  calendar,
  hours(2),
).view;
const event = 'e-1' as EventId;
const conflict = { question: 'late entry', safer: event, other: event, words: 'tell both authors' };
/** As busy a row as there is. */
const whole: StayView = {
  ...seen,
  trust: { ...seen.trust, conflicts: [conflict, conflict] },
  signs: [
    { kind: 'refusals', words: 'Said no twice', because: [] },
    { kind: 'below-baseline', words: 'Walked before', because: [{ rule: 'r', facts: [event], words: 'w' }] },
  ],
  visit: {
    visit: 'v-1',
    by: 'staff-aide' as StaffId,
    second: 'staff-nurse' as StaffId,
    from: hours(3),
    until: hours(3.5),
    event,
  },
};
const rowOf = (stay: StayView | null, carers: BedView['carers'] = null): BedView => ({
  bed: 'bed-1' as BedId,
  label: '1',
  bay: 'A',
  ceilingTrack: true,
  state: stay === null ? 'empty' : 'occupied',
  carers,
  stay,
});
const carers = { nurse: 'staff-nurse' as StaffId, aide: 'staff-aide' as StaffId };
const within = ['initials', 'bed-only'] as const;
const walls = [...within, 'visitors'] as const;

describe('WALL-2 a row of a wall within the ward', () => {
  it.each(within)(
    '%s: says that entries stand against one another, and how many, not what or whose',
    (level) => {
      const told = { question: '', safer: 'not-shown', other: 'not-shown', words: '' };
      expect(rowFor(rowOf(whole), level).stay!.trust).toEqual({
        state: whole.trust.state,
        openTriggers: [],
        conflicts: [told, told],
        because: [],
      });
    },
  );
  it.each(within)('%s: says how far the person is today in times up, no amounts and no reasons', (level) => {
    expect(whole.today).toMatchObject({ timesUp: 1, metres: 20, minutesOutOfBed: 10, met: true });
    expect(rowFor(rowOf(whole), level).stay!.today).toEqual({
      wardDayFrom: whole.today.wardDayFrom,
      goal: { activity: 'walk', timesUp: 1 },
      goalProposed: false,
      recorded: true,
      timesUp: 1,
      minutesOutOfBed: null,
      metres: null,
      notDone: {},
      met: true,
      boardWrong: 0,
      because: [],
    });
  });
  it.each(within)('%s: says when somebody comes, not who', (level) => {
    expect(rowFor(rowOf(whole), level).stay!.visit).toEqual({
      visit: 'not-shown',
      by: 'not-shown',
      second: null,
      from: hours(3),
      until: hours(3.5),
      event: 'not-shown',
    });
    expect(rowFor(rowOf(seen), level).stay!.visit).toBeNull();
  });
  it.each(within)('%s: has the kind of each sign alone, and of refusals nothing', (level) => {
    expect(rowFor(rowOf(whole), level).stay!.signs).toEqual([
      { kind: 'below-baseline', words: '', because: [] },
    ]);
  });
});

describe('WALL-2 where visitors pass', () => {
  it('nothing is said of conflicts, of today, of who comes or of signs', () => {
    const { trust, today, visit, signs, shown } = rowFor(rowOf(whole), 'visitors').stay!;
    expect([trust.conflicts, today.goal, today.timesUp, visit, signs]).toEqual([[], null, 0, null, []]);
    expect(shown).toBe('visitors');
  });
});

describe('WALL-2 a comfort plan', () => {
  const comfort: StayView = { ...whole, plan: null, scope: { kind: 'comfort', fence: null, plan: null } };
  it.each(within)('%s: is said within the ward', (level) => {
    expect(rowFor(rowOf(comfort), level).stay).toMatchObject({
      scope: { kind: 'comfort' },
      shown: 'bed-only',
    });
  });
  it('is not said where visitors pass: the answer is at the bedside, and a check comes before any move', () => {
    expect(rowFor(rowOf(comfort), 'visitors').stay).toMatchObject({
      scope: { kind: 'staged' },
      shown: 'ask-at-the-bedside',
      plan: null,
      checkBeforeMoving: true,
    });
  });
});

describe('WALL-2 who looks after a bed', () => {
  it.each(walls)('%s: is on no row, empty or not', (level) => {
    for (const stay of [null, whole]) {
      const row = rowFor(rowOf(stay, carers), level);
      expect(row.carers).toBeNull();
      expect(bedView.safeParse(row).error).toBeUndefined();
    }
  });
  it.each(walls)('%s: an empty bed that nobody looks after is the row it was', (level) => {
    const empty = rowOf(null);
    expect(rowFor(empty, level)).toBe(empty);
  });
});

describe('the rows of a board', () => {
  const rows = [rowOf(whole, carers), rowOf(null)];
  it.each(walls)('%s: are each what a row of that level is, made once', (level) => {
    const { beds } = rowsFor({ beds: rows }, level);
    expect(beds).toEqual(rows.map((row) => rowFor(row, level)));
    expect(beds[0]).toBe(rowFor(rows[0]!, level));
    expect(beds[0]).toBe(rowsFor({ beds: rows }, level).beds[0]);
    expect(beds[0]!.stay!.shown).toBe(shownAt(level));
  });
  it('are themselves for those who may see the whole', () => {
    expect(rowFor(rows[0]!, 'whole')).toBe(rows[0]);
    expect(rows[0]!.stay!.shown).toBe(shownAt('whole'));
  });
});

describe('what rows of a level are called', () => {
  it.each([
    ['whole', 'whole'],
    ['initials', 'bed-only'],
    ['bed-only', 'bed-only'],
    ['visitors', 'visitors'],
  ] as const)('%s: %s', (level, called) => {
    expect(shownAt(level)).toBe(called);
  });
});
