import { describe, expect, it } from 'vitest';
import { setUpWard, WARD, WardLog } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from './rules-document.ts';
import { foldWard, rulesOf } from './ward-state.ts';

const STREAM = `ward/${WARD}` as const;
const publish = (log: WardLog, document: unknown) =>
  log.add(STREAM, { type: 'rules-published', payload: { version: 2, document } });

function wardLog(): WardLog {
  const log = new WardLog();
  setUpWard(log, 2);
  return log;
}

describe('the ward', () => {
  it('does not exist until it is set up', () => {
    expect(foldWard(WARD, [])).toBeNull();
    const log = new WardLog();
    log.add(STREAM, { type: 'bed-added', payload: { bed: 'b', label: '1', bay: 'A', ceilingTrack: false } });
    expect(foldWard(WARD, log.events)).toBeNull();
  });
  it('keeps its beds in the order they were added, changed where they stand, closed ones left out', () => {
    const log = wardLog();
    log.add(STREAM, {
      type: 'bed-added',
      payload: { bed: 'bed-0', label: '0', bay: 'B', ceilingTrack: false },
    });
    log.add(STREAM, { type: 'bed-changed', payload: { bed: 'bed-1', label: '1a' } });
    log.add(STREAM, { type: 'bed-closed', payload: { bed: 'bed-2' } });
    expect(foldWard(WARD, log.events)!.beds).toEqual([
      { bed: 'bed-1', label: '1a', bay: 'A', ceilingTrack: true },
      { bed: 'bed-0', label: '0', bay: 'B', ceilingTrack: false },
    ]);
  });
  it('changes only what a change names', () => {
    const log = wardLog();
    log.add(STREAM, { type: 'ward-changed', payload: { nightFrom: '22:00' } });
    expect(foldWard(WARD, log.events)).toMatchObject({
      name: 'Lindenhof 2',
      nightFrom: '22:00',
      nightTo: '07:00',
    });
  });
  it('keeps its staff list', () => {
    const log = wardLog();
    log.add(STREAM, {
      type: 'staff-member-added',
      payload: { staff: 's1', role: 'aide', name: { ref: 'n1' } },
    });
    log.add(STREAM, { type: 'staff-member-changed', payload: { staff: 's1', active: false } });
    expect([...foldWard(WARD, log.events)!.staff]).toEqual([
      ['s1', { role: 'aide', name: { ref: 'n1' }, standing: 'own', active: false }],
    ]);
  });
  it('folds on from where it was to the same state as from the start, whatever the cut', () => {
    const log = wardLog();
    log.add(STREAM, { type: 'ward-changed', payload: { name: 'Lindenhof 3' } });
    for (let cut = 0; cut <= log.events.length; cut++) {
      const before = foldWard(WARD, log.events.slice(0, cut));
      expect(foldWard(WARD, log.events.slice(cut), before)).toEqual(foldWard(WARD, log.events));
    }
  });
  it('is the same object when no event concerned it', () => {
    const log = wardLog();
    const state = foldWard(WARD, log.events);
    log.add('bed/bed-1', { type: 'bed-taken', payload: { bed: 'bed-1', stay: 'stay-1' } });
    expect(foldWard(WARD, log.events.slice(-1), state)).toBe(state);
  });
});

describe('the ward rules', () => {
  it('are the defaults until the ward publishes its own', () => {
    const log = wardLog();
    expect(rulesOf(foldWard(WARD, log.events)!)).toEqual(DEFAULT_RULES);
    const own = { ...DEFAULT_RULES, version: 2 };
    publish(log, own);
    expect(rulesOf(foldWard(WARD, log.events)!)).toEqual(own);
  });
  it('are the defaults when what was published cannot be read', () => {
    const log = wardLog();
    publish(log, { version: 2, start: 'as before' });
    expect(rulesOf(foldWard(WARD, log.events)!)).toEqual(DEFAULT_RULES);
  });
  it('of a document older than a limit have that limit from the defaults, and keep every other', () => {
    const log = wardLog();
    const { stop: _stop, ...older } = DEFAULT_RULES;
    const { readingHours: _hours, ...start } = DEFAULT_RULES.start;
    const systolicBelow = { ...start.systolicBelow, value: 100 };
    publish(log, { ...older, version: 7, start: { ...start, systolicBelow } });
    const rules = rulesOf(foldWard(WARD, log.events)!);
    expect(rules.version).toBe(7);
    expect(rules.start.systolicBelow.value).toBe(100);
    expect(rules.start.readingHours).toEqual(DEFAULT_RULES.start.readingHours);
    expect(rules.stop).toEqual(DEFAULT_RULES.stop);
  });
});
