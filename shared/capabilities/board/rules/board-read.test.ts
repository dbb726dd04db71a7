/** A stay's stream handed over as it was read: what it brings, and what it does not undo. */
import { describe, expect, it } from 'vitest';
import type { StayId } from '../../../kernel/ids.ts';
import type { StayRecord } from '../../corrections/facts.ts';
import { boardView } from '../view.ts';
import { addRecord, emptyBoard, foldBoard, viewBoard, type BoardState } from './board.ts';
import { begun, hours, session, setUpWard, WARD, WardLog } from './history.testkit.ts';

const STAY = 'stay-1';
const walked = (at: number, metres: number) => session(at, { metres });

/** In bed 1, and walked three times: versions 1 to 4 of the stream. The ward and the bed come first. */
function given(): { log: WardLog; state: BoardState; upTo: (version: number) => StayRecord } {
  const log = new WardLog();
  setUpWard(log);
  log.add('bed/bed-1', { type: 'bed-taken', payload: { bed: 'bed-1', stay: STAY } });
  const state = emptyBoard(WARD);
  foldBoard(state, log.events);
  for (const told of [begun(), walked(0.5, 1), walked(0.7, 10), walked(0.9, 100)])
    log.add('stay/stay-1', told);
  const upTo = (version: number): StayRecord => ({
    stay: STAY as StayId,
    version,
    events: log.record(STAY).events.filter((e) => e.version <= version),
  });
  return { log, state, upTo };
}
const viewOf = (state: BoardState) => viewBoard(state, hours(2)).board.beds[0]!.stay!;
/** Which walks count, by their metres, and the version of the stream that was reached. */
const shown = (state: BoardState) => [viewOf(state).today.metres, viewOf(state).version];
const missing = (state: BoardState) => [...foldBoard(state, []).missing];

describe('a stream that was read', () => {
  it('makes a person who holds a bed known, and is asked for no more', () => {
    const { state, upTo } = given();
    expect(missing(state)).toEqual([STAY]);
    addRecord(state, upTo(4));
    expect(missing(state)).toEqual([]);
    expect(shown(state)).toEqual([111, 4]);
    expect(boardView.safeParse(viewBoard(state, hours(2)).board).error).toBeUndefined();
  });

  it('says the same in whatever order its entries are given', () => {
    const { state, upTo } = given();
    const { events, ...rest } = upTo(4);
    addRecord(state, { ...rest, events: events.toReversed() });
    expect(shown(state)).toEqual([111, 4]);
  });

  it('is not kept of somebody who holds no bed', () => {
    const { log, state, upTo } = given();
    log.add('bed/bed-1', { type: 'bed-freed', payload: { bed: 'bed-1', stay: STAY } });
    foldBoard(state, log.events.slice(-1));
    addRecord(state, upTo(4));
    expect(state.records.size).toBe(0);
  });

  it('keeps what came while it was read, each entry once', () => {
    const { log, state, upTo } = given();
    foldBoard(state, log.events.slice(-2));
    expect(missing(state)).toEqual([STAY]);
    addRecord(state, upTo(3));
    expect(shown(state)).toEqual([111, 4]);
  });

  it('that reached further than the page: the page brings nothing twice', () => {
    const { log, state, upTo } = given();
    addRecord(state, upTo(4));
    foldBoard(state, log.events.slice(-2));
    expect(missing(state)).toEqual([]);
    expect(shown(state)).toEqual([111, 4]);
  });

  it('that reaches as far as the part that is here takes its place', () => {
    const { log, state, upTo } = given();
    foldBoard(state, log.events.slice(-1));
    addRecord(state, upTo(4));
    expect(missing(state)).toEqual([]);
    expect(shown(state)).toEqual([111, 4]);
  });

  it('takes the place of an older one, and one as old or older changes nothing', () => {
    const { state, upTo } = given();
    addRecord(state, upTo(2));
    expect(shown(state)).toEqual([1, 2]);
    addRecord(state, upTo(3));
    expect(shown(state)).toEqual([11, 3]);
    const row = viewOf(state);
    for (const version of [3, 2]) {
      addRecord(state, upTo(version));
      expect(viewOf(state)).toBe(row);
    }
  });

  it.each([
    ['with the leaving in it, is dropped when the bed is freed', true, 0],
    ['without a leaving, is kept when the bed is freed: the person may be between two beds', false, 1],
  ])('%s', (_words, left, kept) => {
    const { log, state } = given();
    if (left) log.add('stay/stay-1', { type: 'stay-ended', at: 1, payload: { bed: 'bed-1', to: 'home' } });
    addRecord(state, log.record(STAY));
    expect(shown(state)[0]).toBe(111);
    log.add('bed/bed-1', { type: 'bed-freed', at: 1, payload: { bed: 'bed-1', stay: STAY } });
    foldBoard(state, log.events.slice(-1));
    expect(state.records.size).toBe(kept);
  });
});
