import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { emptyBoard, foldBoard, viewBoard } from '../../board/rules/board.ts';
import {
  begun,
  calendar,
  check,
  hours,
  setUpWard,
  WARD,
  WardLog,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { foldHuddle } from './huddle-state.ts';
import { reviewOf, sinceWhen } from './review.ts';

const STREAM = `ward/${WARD}` as const;
function wardWith(...told: readonly Told[]): WardLog {
  const log = new WardLog();
  setUpWard(log, 2);
  log.add(STREAM, {
    type: 'staff-member-added',
    payload: { staff: 'nan', role: 'nurse', name: { ref: 'name-nan' } },
  });
  log.add('stay/stay-1', begun('stay-1', 'bed-1'));
  log.add('bed/bed-1', { type: 'bed-taken', payload: { bed: 'bed-1', stay: 'stay-1' } });
  for (const one of told) log.add(STREAM, one);
  return log;
}
const held = (at: number): Told => ({ type: 'huddle-held', at, payload: {} });
const agreed = (action: string, by: number, more: object = {}): Told => ({
  type: 'action-agreed',
  at: 1,
  payload: { action, kind: 'get-up-today', owner: 'nan', by: toIso(hours(by)), ...more },
});
const boardOf = (log: WardLog, t: number) => {
  const state = emptyBoard(WARD);
  foldBoard(state, log.events);
  return viewBoard(state, hours(t)).board;
};
function review(log: WardLog, t: number) {
  const state = foldHuddle(log.events);
  const now = boardOf(log, t);
  return reviewOf({
    state,
    before: now,
    now,
    happened: [],
    t: hours(t),
    calendar,
    texts: new Map([['n1', 'by the window']]),
  });
}

describe('what a huddle begins with', () => {
  it('is the last huddle, or 24 h back by the hour where none was held', () => {
    expect(sinceWhen(foldHuddle(wardWith(held(2), held(26)).events), hours(30))).toEqual({
      at: hours(26),
      position: 8,
    });
    expect(sinceWhen(foldHuddle(wardWith().events), hours(30.7))).toEqual({ at: hours(6), position: null });
    expect(review(wardWith(), 30).since).toMatchObject({ held: false, by: null });
    expect(review(wardWith(held(2)), 30).since).toEqual({ at: hours(2), held: true, by: 'staff-nurse' });
  });
});

describe('what was agreed', () => {
  it('comes back until it is closed: of earlier huddles first, then by its time, and overdue from that time', () => {
    const { actions } = review(
      wardWith(agreed('late', 5), agreed('early', 3), held(2), agreed('new', 2.5), held(26)),
      27,
    );
    expect(actions.map((one) => [one.action, one.earlier, one.overdue])).toEqual([
      ['new', true, true],
      ['early', true, true],
      ['late', true, true],
    ]);
    const today = review(wardWith(agreed('old', 9), held(2), agreed('new', 4)), 4).actions;
    expect(today.map((one) => [one.action, one.earlier, one.overdue])).toEqual([
      ['old', true, false],
      ['new', false, true],
    ]);
  });
  it('says where the person is now, and what was noted', () => {
    const note = { ref: 'n1' };
    const log = wardWith(agreed('a', 5, { stay: 'stay-1', note }), agreed('b', 6, { stay: 'stay-9' }));
    log.add('bed/bed-1', { type: 'bed-freed', payload: { bed: 'bed-1', stay: 'stay-1' } });
    log.add('bed/bed-2', { type: 'bed-taken', payload: { bed: 'bed-2', stay: 'stay-1' } });
    expect(review(log, 3).actions).toMatchObject([
      { bed: { bed: 'bed-2', label: '2' }, note: 'by the window' },
      { stay: 'stay-9', bed: null, note: null },
    ]);
  });
  it('says that a note was removed with its person’s key', () => {
    const [action] = review(wardWith(agreed('a', 5, { note: { ref: 'gone' } })), 3).actions;
    expect(action!.note).toBe('(text removed)');
  });
});

describe('who has a change in hand', () => {
  it('is the nurse named for the bed', () => {
    const log = wardWith({
      type: 'carers-named',
      payload: { until: toIso(hours(9)), beds: [{ bed: 'bed-1', nurse: 'nan', aide: null }] },
    });
    const before = boardOf(log, 2);
    log.add('stay/stay-1', check('edge', 2.5));
    const { changes } = reviewOf({
      state: foldHuddle(log.events),
      before,
      now: boardOf(log, 3),
      happened: [],
      t: hours(3),
      calendar,
      texts: new Map(),
    });
    expect(changes.length).toBeGreaterThan(0);
    expect(changes.every(({ owner }) => owner === 'nan')).toBe(true);
  });
});
