import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { i18n } from '../i18n/words.ts';
import { holdRow, planFor, stayRow } from './rows.testkit.ts';
import { SUPPORT, aidWords, todayWords, widestHold } from './words.ts';

describe('equipment in words', () => {
  it.each([
    [{ aid: 'walking-support', with: ['frame'] }, 'frame', 'frame'],
    [{ aid: 'walking-support', with: ['wheeled frame'] }, 'wheeled-frame', 'wheeled frame'],
    [{ aid: 'walking-support', with: [] }, 'stick', 'stick'],
    [{ aid: 'walking-support', with: [] }, null, 'walking support'],
    [{ aid: 'walking-support', with: ['chair following'] }, 'frame', 'chair following + frame'],
    [
      { aid: 'standing-aid', with: ['powered standing aid', 'frame'] },
      'frame',
      'powered standing aid + frame',
    ],
    [
      { aid: 'standing-aid', with: ['standing aid rated for the weight'] },
      null,
      'standing aid rated for the weight',
    ],
    [{ aid: 'belt', with: ['belt, stand and turn'] }, null, 'belt, stand and turn'],
    [{ aid: 'sling-lift', with: ['slide sheet'] }, null, 'sling lift + slide sheet'],
    [{ aid: 'none', with: ['slide sheet'] }, null, 'slide sheet'],
    [{ aid: 'none', with: [] }, null, 'no aid'],
  ] as const)('%o with a %s reads "%s"', (plan, support, words) => {
    expect(aidWords(planFor('walk', { ...plan, with: [...plan.with] }), support)).toBe(words);
  });
});

describe('the widest hold', () => {
  it('is the one that stops most, whichever came first', () => {
    const holds = [holdRow({ scope: 'walking' }), holdRow({ hold: 'h2', scope: 'all-including-turning' })];
    expect(widestHold(stayRow({ holds }))?.hold).toBe('h2');
    expect(widestHold(stayRow({ holds: holds.toReversed() }))?.hold).toBe('h2');
  });
  it('is none where none stands', () => expect(widestHold(stayRow())).toBeNull());
});

describe('today', () => {
  const today = stayRow().today;
  it('without a goal counts times up', () => {
    expect(todayWords({ ...today, goal: null, timesUp: 2 })).toBe('2 times up');
  });
  it('without a record is not recorded, goal or none', () => {
    expect(todayWords({ ...today, recorded: false, timesUp: 0, goal: null })).toBe('not recorded');
  });
});

describe('in German', () => {
  beforeEach(() => (i18n.global.locale.value = 'de'));
  afterEach(() => (i18n.global.locale.value = 'en'));
  it('equipment is put into words by what it is, whatever the rules call it', () => {
    const powered = planFor('walk', { aid: 'sling-lift', with: ['slide sheet', 'wheeled-frame'] });
    expect(aidWords(powered, null)).toBe('Lifter mit Hebetuch + Gleitmatte + Rollator');
    expect(Object.values(SUPPORT)).toContain('Gehgestell');
  });
  it('a gap is still not a number', () => {
    expect(todayWords({ ...stayRow().today, recorded: false, timesUp: 0 })).toBe('nicht erfasst');
  });
});
