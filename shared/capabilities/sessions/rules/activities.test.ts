/** What each activity asks and shows. Ours, practice; holds and orders as the design's scopes name them. */
import { describe, expect, it } from 'vitest';
import { activity as activities, type Activity, type Session } from '../values.ts';
import {
  demandOf,
  isCleared,
  isHeld,
  isOrdered,
  isUp,
  LADDER,
  mostDemanding,
  reaches,
  showsAsMuch,
  showsMost,
  wasUp,
} from './activities.ts';
import { NEEDED_FOR } from './needed-for.ts';

const session = (...done: readonly Activity[]): Session => ({
  outcome: 'done',
  occasion: 'planned',
  activities: [...done],
  startedAt: '2026-10-25T08:00:00Z' as Session['startedAt'],
  events: [],
  firstTimeUp: false,
});
const lifted = (...done: readonly Activity[]): Session => ({
  ...session(...done),
  help: { people: 2, aid: 'sling-lift' },
});
const notDone: Session = {
  ...session('walk'),
  outcome: 'not-done',
  notDone: { group: 'said-no' },
};
const those = (test: (activity: Activity) => boolean) => activities.options.filter(test);

describe('an activity', () => {
  it('is up from the edge of the bed on, a lifted chair too', () => {
    expect(those((a) => !isUp(a))).toEqual(['bed-exercise', 'back-raised']);
  });
  it('has its place in what is demanded, each its own', () => {
    expect(activities.options.toSorted((a, b) => demandOf(a) - demandOf(b))).toEqual([
      'bed-exercise',
      'back-raised',
      'lifted-to-chair',
      'edge-sit',
      'stand',
      'toilet',
      'chair',
      'march',
      'walk',
      'stairs',
    ]);
    expect(LADDER).toEqual(['back-raised', 'edge-sit', 'stand', 'chair', 'walk']);
  });
  it('needs its stage cleared (design, goals row)', () => {
    expect(NEEDED_FOR).toEqual({
      'bed-exercise': null,
      'back-raised': null,
      'lifted-to-chair': null,
      'edge-sit': 'edge',
      stand: 'stand',
      march: 'turn',
      chair: 'turn',
      toilet: 'turn',
      walk: 'walk',
      stairs: 'walk',
    });
    expect(those((a) => isCleared(a, new Set()))).toEqual(['bed-exercise', 'back-raised', 'lifted-to-chair']);
    expect(isCleared('edge-sit', new Set(['edge']))).toBe(true);
    expect(isCleared('stand', new Set(['clear', 'upright', 'edge']))).toBe(false);
  });
});

describe('a hold stops', () => {
  it.each([
    ['walking', ['march', 'walk', 'stairs']],
    ['standing', ['stand', 'chair', 'march', 'walk', 'stairs', 'toilet']],
    ['out-of-bed', ['edge-sit', 'stand', 'chair', 'lifted-to-chair', 'march', 'walk', 'stairs', 'toilet']],
    [
      'raising-the-back',
      ['back-raised', 'edge-sit', 'stand', 'chair', 'lifted-to-chair', 'march', 'walk', 'stairs', 'toilet'],
    ],
    ['all-including-turning', activities.options],
  ] as const)('%s: %s', (scope, stopped) => {
    expect(those((a) => isHeld(a, scope))).toEqual(stopped);
  });
});

describe('an order leaves', () => {
  const most = activities.options;
  it.each([
    ['bed', ['bed-exercise', 'back-raised']],
    ['edge-of-bed', ['bed-exercise', 'back-raised', 'edge-sit']],
    ['chair', ['bed-exercise', 'back-raised', 'edge-sit', 'chair', 'lifted-to-chair', 'toilet']],
    [
      'stand',
      ['bed-exercise', 'back-raised', 'edge-sit', 'stand', 'chair', 'lifted-to-chair', 'march', 'toilet'],
    ],
    ['walk', most.filter((a) => a !== 'stairs')],
    ['no-limit', most],
  ] as const)('up to %s: %s', (limit, left) => {
    expect(those((a) => isOrdered(a, limit))).toEqual(left);
  });
});

describe('a session', () => {
  it('was up when anything in it was up, unless it was not done', () => {
    expect(wasUp(session('bed-exercise', 'edge-sit'))).toBe(true);
    expect(wasUp(session('back-raised'))).toBe(false);
    expect(wasUp({ ...session('walk'), outcome: 'stopped' })).toBe(true);
    expect(wasUp(notDone)).toBe(false);
  });
  it('is named by the most demanding thing in it', () => {
    expect(mostDemanding(session('edge-sit', 'walk', 'stand'))).toBe('walk');
    expect(mostDemanding({ ...notDone, activities: [] })).toBeNull();
  });
  it('reaches what it did and all that shows no more', () => {
    expect(those((a) => reaches(session('chair'), a))).toEqual([
      'bed-exercise',
      'back-raised',
      'edge-sit',
      'stand',
      'chair',
      'lifted-to-chair',
      'toilet',
    ]);
    expect(reaches(session('toilet'), 'chair')).toBe(true);
    expect(reaches(session('chair'), 'toilet')).toBe(true);
    expect(reaches(session('march'), 'walk')).toBe(false);
    expect(reaches(session('walk'), 'stairs')).toBe(false);
    expect(reaches(session('bed-exercise', 'stand'), 'stand')).toBe(true);
    expect(reaches(notDone, 'bed-exercise')).toBe(false);
  });
  it('by lift shows no more than being lifted', () => {
    for (const done of [
      lifted('walk'),
      { ...lifted('chair'), help: { people: 3, aid: 'bariatric-lift' as const } },
    ]) {
      expect(reaches(done, 'lifted-to-chair')).toBe(true);
      expect(reaches(done, 'edge-sit')).toBe(false);
      expect(showsMost(done)).toBe('lifted-to-chair');
    }
    expect(reaches(lifted('bed-exercise'), 'back-raised')).toBe(false);
    expect(showsMost(lifted('bed-exercise'))).toBe('bed-exercise');
    expect(showsMost({ ...session('walk'), help: { people: 1, aid: 'belt' } })).toBe('walk');
  });
  it('shows the most of what it did; nothing when it was not done', () => {
    expect(showsMost(session('edge-sit', 'walk', 'stand'))).toBe('walk');
    expect(showsMost(notDone)).toBeNull();
    expect(showsAsMuch('chair', 'toilet')).toBe(true);
    expect(showsAsMuch('stand', 'toilet')).toBe(false);
    expect(showsAsMuch('walk', 'toilet')).toBe(true);
  });
});
