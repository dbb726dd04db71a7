import { describe, expect, it, vi } from 'vitest';
import { session, type Session } from '../values.ts';
import { countNotUsed, missedAid, notUsedIn, plannedAids } from './planned-aid.ts';

const PLAN = [
  { task: 'bed-chair', aid: 'sling-lift' },
  { task: 'toilet', aid: 'standing-aid' },
  { task: 'walk', aid: 'none' },
] as const;
const of = (over: Partial<Session>): Session =>
  session.parse({
    outcome: 'done',
    occasion: 'planned',
    activities: ['chair'],
    startedAt: '2026-11-25T08:00:00Z',
    events: [],
    ...over,
  });

describe('the equipment of the plan for what was done', () => {
  it('is that of the tasks the activities are, each once, and none where the plan has none', () => {
    expect(plannedAids(PLAN, ['chair', 'lifted-to-chair', 'toilet'])).toEqual(['sling-lift', 'standing-aid']);
    expect(plannedAids(PLAN, ['walk', 'bed-exercise', 'stairs', 'stand'])).toEqual([]);
    const onFeet = [
      { task: 'stand', aid: 'standing-aid' },
      { task: 'walk', aid: 'walking-support' },
    ] as const;
    expect(plannedAids(onFeet, ['march'])).toEqual(['standing-aid']);
    expect(plannedAids(onFeet, ['walk', 'stand'])).toEqual(['walking-support', 'standing-aid']);
    expect(plannedAids(onFeet, ['stairs'])).toEqual([]);
  });
  it('was used when any of it was, or a lift that bears more', () => {
    expect(missedAid(['sling-lift', 'standing-aid'], 'standing-aid')).toBeNull();
    expect(missedAid(['sling-lift'], 'bariatric-lift')).toBeNull();
    expect(missedAid(['bariatric-lift'], 'sling-lift')).toBe('bariatric-lift');
    expect(missedAid(['sling-lift'], 'none')).toBe('sling-lift');
    expect(missedAid([], 'belt')).toBeNull();
  });
});

describe('COORD-3 planned equipment that was not used', () => {
  it('is what whoever recorded it said, with the reason, and the plan is not asked', () => {
    const plan = vi.fn<() => typeof PLAN>(() => PLAN);
    expect(notUsedIn(of({ aidNotUsed: { planned: 'sling-lift', because: 'no-room' } }), plan)).toEqual({
      planned: 'sling-lift',
      used: null,
      because: 'no-room',
    });
    expect(plan).not.toHaveBeenCalled();
  });
  it('of a session without that is told from what was used and the plan then, as not said', () => {
    expect(notUsedIn(of({ help: { people: 2, aid: 'belt' } }), () => PLAN)).toEqual({
      planned: 'sling-lift',
      used: 'belt',
      because: null,
    });
  });
  it('is none where it was used, nothing was recorded of it, or nothing was done', () => {
    expect(notUsedIn(of({ help: { people: 2, aid: 'sling-lift' } }), () => PLAN)).toBeNull();
    expect(notUsedIn(of({}), () => PLAN)).toBeNull();
    expect(notUsedIn(of({ help: { people: 2, aid: 'belt' } }), () => null)).toBeNull();
    const notDone = { outcome: 'not-done', notDone: { group: 'no-kit' }, activities: [] } as const;
    expect(
      notUsedIn(of({ ...notDone, activities: [], help: { people: 1, aid: 'none' } }), () => PLAN),
    ).toBeNull();
  });
  it('is counted by equipment and reason, the most often first, "not said" apart', () => {
    const one = (because: 'no-room' | null) => ({ planned: 'sling-lift', used: null, because }) as const;
    expect(countNotUsed([one(null), one('no-room'), one('no-room')])).toEqual([
      { planned: 'sling-lift', because: 'no-room', count: 2 },
      { planned: 'sling-lift', because: null, count: 1 },
    ]);
    expect(countNotUsed([])).toEqual([]);
  });
  it('is none where the lift was meant and the person said no: nobody was moved without it', () => {
    const saidNo = of({
      outcome: 'not-done',
      notDone: { group: 'said-no' },
      help: { people: 1, aid: 'none' },
    });
    expect(saidNo.activities).toEqual(['chair']);
    expect(notUsedIn(saidNo, () => PLAN)).toBeNull();
  });
  it('that came as often is told by equipment, then by reason, "not said" first, whatever was told first', () => {
    const belt = { planned: 'belt', used: 'none', because: 'with-others' } as const;
    const lift = (because: 'no-room' | 'not-ready' | null) =>
      ({ planned: 'sling-lift', used: 'none', because }) as const;
    const told = [belt, lift(null), lift('no-room'), lift('not-ready')];
    const expected = told.map(({ planned, because }) => ({ planned, because, count: 1 }));
    for (let turn = 0; turn < told.length; turn++) {
      const turned = [...told.slice(turn), ...told.slice(0, turn)];
      expect(countNotUsed(turned)).toEqual(expected);
      expect(countNotUsed(turned.toReversed())).toEqual(expected);
    }
  });
});
