import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { begun, hours, setUpWard, WARD, WardLog, type Told } from '../../board/rules/history.testkit.ts';
import { foldHuddle, NO_HUDDLE } from './huddle-state.ts';

const STREAM = `ward/${WARD}` as const;
function folded(...told: readonly Told[]) {
  const log = new WardLog();
  setUpWard(log, 1);
  for (const one of told) log.add(STREAM, one);
  return foldHuddle(log.events);
}
const held = (at: number): Told => ({ type: 'huddle-held', at, role: 'charge-nurse', payload: {} });
const agreed = (action: string, at: number, by: number, more: object = {}): Told => ({
  type: 'action-agreed',
  at,
  payload: { action, kind: 'get-up-today', owner: 'nan', by: toIso(hours(by)), ...more },
});
const closed = (action: string, at: number): Told => ({
  type: 'action-closed',
  at,
  payload: { action, outcome: 'done' },
});
const expected = (id: string, more: object = {}): Told => ({
  type: 'arrival-expected',
  at: 1,
  payload: { expected: id, at: toIso(hours(5)), from: 'theatre', bariatric: false, ...more },
});

describe('what the ward’s stream says of its huddles', () => {
  it('is nothing before the first, and the same object after what does not concern them', () => {
    const log = new WardLog();
    setUpWard(log, 2);
    log.add('stay/stay-1', begun());
    expect(foldHuddle(log.events)).toBe(NO_HUDDLE);
    const state = folded(held(1));
    expect(foldHuddle(log.events, state)).toBe(state);
  });
  it('knows the last huddle with its position, time and who held it', () => {
    expect(folded(held(1), agreed('a', 2, 5), held(24)).last).toEqual({
      position: 5,
      at: hours(24),
      by: 'staff-charge-nurse',
    });
  });
  it('keeps an action open over any number of huddles, until it is closed', () => {
    const open = folded(agreed('a', 1, 5), held(2), held(26));
    expect([...open.actions.keys()]).toEqual(['a']);
    expect(folded(agreed('a', 1, 5), held(2), closed('a', 27)).actions.size).toBe(0);
  });
  it('agreed anew, an action has the new owner and time, and its age, its person and its note as before', () => {
    const note = { ref: 'text-1' };
    const state = folded(
      agreed('a', 1, 5, { stay: 'stay-1', note }),
      agreed('b', 2, 5),
      agreed('a', 3, 9, { owner: 'ned' }),
    );
    expect([...state.actions.keys()]).toEqual(['a', 'b']);
    expect(state.actions.get('a')).toMatchObject({
      owner: 'ned',
      by: hours(9),
      agreedAt: hours(1),
      stay: 'stay-1',
      note,
    });
  });
  it('once closed stays closed', () => {
    expect(folded(agreed('a', 1, 5), closed('a', 2), agreed('a', 3, 9)).actions.size).toBe(0);
  });
  it('knows who is expected, until they came or do not come', () => {
    const state = folded(expected('x', { bed: 'bed-1' }), expected('y'));
    expect([...state.expected.values()]).toMatchObject([
      { expected: 'x', at: hours(5), bed: 'bed-1', usual: null, previous: null },
      { expected: 'y', bed: null },
    ]);
    const over = folded(expected('x'), {
      type: 'expected-arrival-closed',
      payload: { expected: 'x', outcome: 'not-coming' },
    });
    expect([over.expected.size, over.expectedIds.has('x')]).toEqual([0, true]);
  });
});
