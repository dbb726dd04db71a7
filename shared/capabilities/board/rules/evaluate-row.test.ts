/** What a row says of a stay: since when it runs, what is attached, when the person was last up, what they owe and did before. */
import { describe, expect, it } from 'vitest';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from './evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  hours,
  recordOf,
  session,
  stayOf,
  ward,
  type Told,
} from './history.testkit.ts';

/** START is 18:00; the ward day that begins 14 h later is the first whole one, the one after it begins at 38 h. */
const viewOf = (t: number, told: readonly Told[]) =>
  evaluateStay(recordOf(told), ward, calendar, hours(t)).view;
const view = (t: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(t)).view;
const named = (told: Told, id: string): Told => ({ ...told, id });
/** Weighed before the arrival was entered: as when an entry is dated back. */
const weighed: Told = {
  type: 'weight-recorded',
  id: 'weight',
  at: -1,
  payload: { weight: { kg: 70, how: 'measured' } },
};
const arrived = named(begun(), 'arrival');

describe('since when a stay runs', () => {
  it.each([
    ['the arrival', [arrived], 1, 0],
    ['the arrival, also with an entry dated before it', [weighed, arrived], 1, 0],
    ['the first entry that counts by then, where no arrival does', [weighed, { ...arrived, at: 3 }], 1, -1],
    ['the first entry to come, where none counts yet', [{ ...arrived, at: 3 }], 1, 3],
  ] as const)('is %s', (_what, told, t, from) => {
    expect(viewOf(t, told).began).toBe(hours(from));
  });
  it('is not known without an entry: no age is made up for it', () => {
    expect(viewOf(1, [])).toMatchObject({ began: 0, debt: null, version: 0 });
  });
});

describe('what is attached', () => {
  const attached = (more: object): Told => ({
    type: 'attachment-added',
    at: 0.5,
    payload: { attachment: 'a1', kind: 'chest-drain', disconnects: 'nobody', needsOwnPerson: true, ...more },
  });
  it.each([
    ['with how far it reaches', { tetherMetres: 1.5 }, 1.5],
    ['and that its reach was not said', {}, null],
  ])('is on the row with who disconnects it %s', (_what, more, tetherMetres) => {
    expect(view(1, attached(more)).attachments).toEqual([
      { attachment: 'a1', kind: 'chest-drain', disconnects: 'nobody', needsOwnPerson: true, tetherMetres },
    ]);
  });
});

describe('when the person was last up', () => {
  const checked = (at: number) => named(check('walk', at), 'check');
  const sat = (at: number, until: number): Told =>
    named(session(at, { activities: ['chair'], endedAt: toIso(hours(until)) }), 'session');
  it.each([
    ['the check, where it came after the session', [sat(1, 1.5), checked(2)], 'check', 2],
    ['the session, where it ended after the check', [checked(1), sat(1.5, 2)], 'session', 2],
    ['the session, where it ended as the check began', [sat(1, 2), checked(2)], 'session', 2],
    ['the check, where there was no session', [checked(1)], 'check', 1],
    ['the session, where there was no check', [sat(1, 2)], 'session', 2],
  ] as const)('is %s', (_what, told, event, at) => {
    expect(view(3, ...told).lastUp).toMatchObject({ event, at: hours(at) });
  });
  it('is not known before either', () => {
    expect(view(3).lastUp).toBeNull();
  });
});

describe('waking time without being up', () => {
  it('is counted from the arrival and names its entry, whatever was entered before it', () => {
    const { debt } = viewOf(2, [weighed, arrived]);
    expect(debt).toMatchObject({ since: hours(0), owed: false });
    expect(debt!.because[0]).toMatchObject({ rule: 'debt/since', facts: ['arrival'] });
  });
  it('is not counted where no arrival is recorded: nobody knows since when', () => {
    expect(viewOf(2, [weighed]).debt).toBeNull();
  });
  it('is not counted under a comfort plan, which has no goal and no rank', () => {
    expect(view(2, { type: 'scope-set', at: 1, payload: { scope: 'comfort' } })).toMatchObject({
      debt: null,
      signs: [],
    });
  });
});

describe('the ward day before', () => {
  const walks = [15, 16].map((at) => session(at));
  it('counts the times up of that day, not of today', () => {
    expect(view(40, ...walks, session(39)).lately!.yesterday).toEqual({ recorded: true, timesUp: 2 });
  });
  it('is a gap where nothing was recorded, not a zero', () => {
    expect(view(40, session(39)).lately!.yesterday).toEqual({ recorded: false, timesUp: 0 });
  });
  it('is left out where the person was not here for all of it, or nobody knows since when', () => {
    expect(view(16, ...walks).lately!.yesterday).toBeNull();
    expect(viewOf(40, walks).lately!.yesterday).toBeNull();
  });
});
