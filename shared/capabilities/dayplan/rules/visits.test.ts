/** Who has the next visit, from the facts of a stay. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  check,
  correct,
  hours,
  retract,
  session,
  stayOf,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';

const taken = (at: number, by: string, from: number, until: number, more: Partial<Told> = {}): Told => ({
  type: 'visit-taken',
  at,
  role: 'aide',
  staff: by,
  payload: {
    visit: `v-${String(at).replace('.', '_')}`,
    by,
    from: toIso(hours(from)),
    until: toIso(hours(until)),
  },
  ...more,
});
const handed = (at: number, visit: string, to: string): Told => ({
  type: 'visit-handed-over',
  at,
  role: 'aide',
  payload: { visit, to },
});
const back = (at: number, visit: string): Told => ({
  type: 'visit-given-back',
  at,
  role: 'aide',
  payload: { visit, reason: 'called-away' },
});
const seen = (t: number, ...told: readonly Told[]) => evaluateStay(stayOf(...told), ward, calendar, hours(t));
const visit = (t: number, ...told: readonly Told[]) => seen(t, ...told).view.visit;

describe('the next visit', () => {
  it('is whose who took it, until it ends; the view names that instant', () => {
    const ana = taken(1, 'ana', 1, 1.5);
    expect(visit(0.9, ana)).toBeNull();
    expect(visit(1, ana)).toMatchObject({ visit: 'v-1', by: 'ana', second: null, from: hours(1) });
    expect(seen(1.2, ana).nextChange).toBe(hours(1.5));
    expect(visit(1.5, ana)).toBeNull();
  });

  it('is the last one taken', () => {
    expect(visit(1.3, taken(1, 'ana', 1, 2), taken(1.2, 'bea', 1.2, 1.7))).toMatchObject({ by: 'bea' });
  });

  it('goes to whom it is handed; a second person who gets it is no second any more', () => {
    const two = taken(1, 'ana', 1, 2, {
      payload: { visit: 'v-1', by: 'ana', second: 'bea', from: toIso(hours(1)), until: toIso(hours(2)) },
    });
    expect(visit(1.2, two)).toMatchObject({ by: 'ana', second: 'bea' });
    expect(visit(1.2, two, handed(1.1, 'v-1', 'bea'))).toMatchObject({ by: 'bea', second: null });
    expect(visit(1.2, two, handed(1.1, 'v-1', 'cid'))).toMatchObject({ by: 'cid', second: 'bea' });
    expect(visit(1.2, two, handed(1.1, 'another', 'cid'))).toMatchObject({ by: 'ana' });
    expect(visit(1.2, two, handed(0.9, 'v-1', 'cid'))).toMatchObject({ by: 'ana' });
  });

  it('is free when given back; giving back an earlier one leaves the later', () => {
    expect(visit(1.2, taken(1, 'ana', 1, 2), back(1.1, 'v-1'))).toBeNull();
    const later = [taken(1, 'ana', 1, 2), taken(1.05, 'bea', 1.05, 2)];
    expect(visit(1.2, ...later, back(1.1, 'v-1'))).toMatchObject({ by: 'bea' });
  });

  it('ends with a session recorded after it began, also one that was not done', () => {
    const planned = taken(1, 'ana', 3, 3.5);
    const by = (staff: string, at: number): Told => ({ ...session(at), staff });
    expect(visit(3.2, planned, by('bea', 3.1))).toBeNull();
    expect(visit(3.2, planned, by('bea', 2))).toMatchObject({ by: 'ana' });
    expect(visit(3.2, planned, by('ana', 2.9))).toBeNull();
    const notNow = session(3.1, { outcome: 'not-done', activities: [], notDone: { group: 'bad-moment' } });
    expect(visit(3.2, planned, notNow)).toBeNull();
  });

  it('ends with the stay', () => {
    const left: Told = { type: 'stay-ended', at: 1.1, payload: { bed: 'bed-1', to: 'home' } };
    expect(visit(1.2, taken(1, 'ana', 1, 2), left)).toBeNull();
  });

  it('is as a correction says, and gone when it is withdrawn, by an aide too', () => {
    const wrong = taken(1, 'ana', 1, 2, { id: 'the-visit' });
    const right = taken(1, 'bea', 1, 1.5, {
      payload: { visit: 'v-1', by: 'bea', from: toIso(hours(1)), until: toIso(hours(1.5)) },
    });
    expect(visit(1.2, wrong, correct(1.1, 'the-visit', right, 'aide'))).toMatchObject({
      by: 'bea',
      until: hours(1.5),
    });
    expect(visit(1.2, wrong, retract(1.1, 'the-visit', 'aide'))).toBeNull();
    const { view } = seen(1.2, check('walk', 0.5), wrong, retract(1.1, 'the-visit', 'aide'));
    expect(view.trust.conflicts).toEqual([]);
    expect(view.trust.state).toBe('current');
  });
});

describe('what whoever goes next asks of the sessions', () => {
  const lately = (t: number, ...told: readonly Told[]) => seen(t, ...told).view.lately!;
  it('is the last one by its end, the last no and the last meal', () => {
    const chair = session(1, {
      activities: ['chair'],
      occasion: 'meal',
      endedAt: toIso(hours(1.5)),
      minutesOutOfBed: 30,
    });
    const no = session(1.2, { outcome: 'not-done', activities: [], notDone: { group: 'said-no' } });
    const now = lately(1.6, chair, no);
    expect(now.last).toMatchObject({ occasion: 'meal', from: hours(1), to: hours(1.5), minutesOutOfBed: 30 });
    expect(now.saidNo?.at).toBe(hours(1.2));
    expect(now.meal?.at).toBe(hours(1.5));
    expect(lately(1.3, chair, no).last).toMatchObject({ outcome: 'not-done', notDone: 'said-no' });
  });
  it('says of the day before only what was a whole day here, and a gap is no zero', () => {
    // START is 18:00: on the first ward day after the arrival the day before was not a whole one.
    expect(lately(14).yesterday).toBeNull();
    expect(lately(20).yesterday).toBeNull();
    expect(lately(39).yesterday).toEqual({ recorded: false, timesUp: 0 });
    expect(lately(39, session(20)).yesterday).toEqual({ recorded: true, timesUp: 1 });
  });
});
