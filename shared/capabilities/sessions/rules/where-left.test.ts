/** The chair spell that runs and today's toilet times, through the whole view. START is 18:00; the night begins 3 h later. */
import { describe, expect, it } from 'vitest';
import { HOUR, toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar,
  hours,
  notDone,
  retract,
  session,
  stayOf,
  trigger,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { sessionsOf } from './activity.ts';
import { toiletTimes } from './where-left.ts';

const evaluated = (at: number, ...told: readonly Told[]) =>
  evaluateStay(stayOf(...told), ward, calendar, hours(at));
const chair = (at: number, ...told: readonly Told[]) => evaluated(at, ...told).view.chair;
const toilet = (at: number, ...told: readonly Told[]) =>
  evaluated(at, ...told).view.toilet.map((t) => (t - hours(0)) / HOUR);
/** 15 h after START is 08:00 of the next day, 28 h the evening's 21:00. */
const sat: Told = { ...session(15, { activities: ['chair'], left: 'chair' }), id: 'sat' };
const later = (at: number, over: object): Told => session(at, { activities: ['stand'], ...over });

describe('the chair spell', () => {
  it('runs since the session that left the person there, back in bed within the hours of the ward', () => {
    expect(chair(14.9, sat)).toBeNull();
    expect(chair(15.5, sat)).toEqual({ since: hours(15), backBy: hours(16), event: 'sat' });
    const rules = structuredClone(DEFAULT_RULES);
    rules.activity.chairSpellHours.value = 2;
    expect(evaluateStay(stayOf(sat), { ...ward, rules }, calendar, hours(15.5)).view.chair).toMatchObject({
      backBy: hours(17),
    });
  });
  it('counts from the end of that session, and by the time that was said', () => {
    const said = session(15, {
      activities: ['chair'],
      left: 'chair',
      endedAt: toIso(hours(15.25)),
      backToBedBy: toIso(hours(15.75)),
    });
    expect(chair(15.5, said)).toMatchObject({ since: hours(15.25), backBy: hours(15.75) });
  });
  it('goes on past that time until somebody writes that it ended', () => {
    expect(chair(20, sat)).toMatchObject({ backBy: hours(16) });
  });
  it.each([
    ['back in bed', later(16, { left: 'bed' })],
    ['on the toilet', later(16, { left: 'toilet-with-staff' })],
    ['a later session that does not say where', later(16, {})],
    ['off the ward', { type: 'went-off-ward', at: 16, payload: { reason: 'test' } }],
    ['a fall', trigger('fall', 16)],
  ] as const)('ends with %s', (_what, told) => {
    expect(chair(15.9, sat, told)).not.toBeNull();
    expect(chair(16, sat, told)).toBeNull();
  });
  it.each([
    ['off the ward', { type: 'went-off-ward', at: 15, payload: { reason: 'test' } }],
    ['a fall', trigger('fall', 15)],
  ] as const)(
    'is none with %s at the very instant it would begin, but goes on after one before',
    (_what, told) => {
      expect(chair(15.5, sat, told)).toBeNull();
      expect(chair(15.5, sat, { ...told, at: 14.9 })).toMatchObject({ event: 'sat' });
    },
  );
  it('is what the session that ended last left, although another began later', () => {
    const long = {
      ...session(15, { activities: ['chair'], left: 'chair', endedAt: toIso(hours(16.5)) }),
      id: 'long',
    };
    expect(chair(17, long, later(16, { left: 'bed' }))).toMatchObject({ since: hours(16.5), event: 'long' });
    // Of two that ended together the later entry says where the person is.
    expect(chair(17, long, later(16, { left: 'bed', endedAt: toIso(hours(16.5)) }))).toBeNull();
  });
  it('is not ended by a session that was not done, nor by other triggers', () => {
    expect(chair(17, sat, notDone(16, 'said-no'), trigger('board-wrong', 16))).toMatchObject({
      event: 'sat',
    });
  });
  it('ends when the night begins, and says beforehand that it will', () => {
    const before = evaluated(27.9, sat);
    expect(before.view.chair).not.toBeNull();
    expect(before.nextChange).toBeLessThanOrEqual(hours(28));
    expect(chair(28, sat)).toBeNull();
  });
  it('begun in the night it lasts into the day', () => {
    const early = session(13.5, { activities: ['chair'], left: 'chair' });
    expect(chair(14.25, early)).not.toBeNull();
    expect(chair(28, early)).toBeNull();
  });
  it('a withdrawn session leaves nobody in the chair', () => {
    expect(chair(16.5, sat, retract(16, 'sat'))).toBeNull();
  });
});

describe('the toilet times of the ward day', () => {
  it('are those of sessions that got there, done or in part, oldest first', () => {
    const told = [
      session(18, { activities: ['toilet'] }),
      session(16, { occasion: 'toilet', activities: ['walk'] }),
      session(17, { activities: ['toilet'], outcome: 'part' }),
      session(19, { activities: ['toilet'], outcome: 'stopped' }),
      session(19.5, { activities: ['walk'] }),
    ];
    expect(toilet(20, ...told)).toEqual([16, 17, 18]);
  });
  it('are not those of the ward day before, and are gone when the day turns', () => {
    const told = [session(13, { activities: ['toilet'] }), session(14, { activities: ['toilet'] })];
    expect(toilet(13.5, ...told)).toEqual([13]);
    expect(toilet(15, ...told)).toEqual([14]);
    expect(toilet(38, ...told)).toEqual([]);
  });
  it('go by when the toilet was reached, not by the order of the entries', () => {
    const late = { ...session(16, { activities: ['toilet'] }), at: 19 };
    const told = [session(18, { activities: ['toilet'] }), session(17, { activities: ['toilet'] }), late];
    expect(toilet(20, ...told)).toEqual([16, 17, 18]);
  });
  it('of a ward day that is over leave out whatever came after it', () => {
    const at = [9.9, 10, 10.1].map((h) => session(h, { activities: ['toilet'] }));
    const sessions = sessionsOf(effectiveFacts(stayOf(...at)).facts, hours(20));
    expect(toiletTimes(sessions, { from: hours(0), to: hours(10) })).toEqual([hours(9.9)]);
  });
  it('leaves out what was not done', () => {
    expect(toilet(17, { ...notDone(16, 'said-no') })).toEqual([]);
  });
});
