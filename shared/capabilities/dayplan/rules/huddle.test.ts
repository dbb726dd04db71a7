/** The huddle answers what users-job.md 2b asks of it. */
import { describe, expect, it } from 'vitest';
import type { StayId } from '../../../kernel/ids.ts';
import { huddlePage } from '../../../wire/http.ts';
import { emptyBoard, foldBoard, viewBoard } from '../../board/rules/board.ts';
import {
  begun,
  calendar,
  check,
  hold,
  hours,
  order,
  session,
  setUpWard,
  trigger,
  WARD,
  WardLog,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { huddleOf } from './huddle.ts';

function huddle(t: number, stays: Readonly<Record<string, readonly Told[]>>) {
  const log = new WardLog();
  setUpWard(log);
  for (const [bed, told] of Object.entries(stays)) {
    const stay = `stay-${bed}` as StayId;
    log.add(`stay/${stay}`, begun(stay, bed));
    log.add(`bed/${bed}`, { type: 'bed-taken', payload: { bed, stay } });
    for (const one of told) log.add(`stay/${stay}`, one);
  }
  const state = emptyBoard(WARD);
  foldBoard(state, log.events);
  return huddleOf(viewBoard(state, hours(t)).board, hours(t), calendar);
}
const words = (lines: readonly { label: string; words: string }[]) =>
  lines.map((l) => `${l.label}: ${l.words}`);

describe('the huddle', () => {
  it('fits the wire and counts the ward', () => {
    const away: Told = { type: 'went-off-ward', at: 1, payload: { reason: 'test' } };
    const page = huddle(3, { 'bed-1': [check('walk', 1), session(2)], 'bed-3': [away] });
    const rest = {
      ward: WARD,
      position: 9,
      at: hours(3),
      since: { at: hours(0), held: false, by: null },
      changes: [],
      actions: [],
      expected: [],
    };
    expect(huddlePage.safeParse({ ...page, ...rest }).error).toBeUndefined();
    expect(page.totals).toMatchObject({
      occupied: 1,
      away: 1,
      empty: 2,
      notKnown: 1,
      sessionsDone: 1,
      notRecorded: 1,
    });
  });
  it('names whose check comes first: since when, by how long, and what must be looked at before the next move', () => {
    const { overdue } = huddle(14, {
      'bed-1': [check('edge', 1)],
      'bed-2': [check('edge', 10)],
      'bed-3': [check('edge', 10), trigger('fall', 11)],
      'bed-4': [],
    });
    // 22:00 to 07:00 on the night the clocks go back is 10 h.
    expect(words(overdue)).toEqual([
      '3: Check overdue since 25 Oct 05:00, by 2 h; stay put until a nurse has looked: Fall, 25 Oct 04:00',
      '4: Check overdue since 24 Oct 22:00, by 10 h',
      '1: Check overdue since 25 Oct 06:00, by 1 h',
    ]);
    expect(overdue[0]!.because.map((b) => b.rule)).toEqual([
      'due-first/overdue-and-kept-still',
      'due/trigger-limit',
      'trust/trigger',
    ]);
  });
  it('lists every hold, and says whose review has passed', () => {
    const { holds } = huddle(10, { 'bed-1': [hold(1, 'walking', 9)], 'bed-2': [hold(1, 'out-of-bed', 12)] });
    expect(words(holds)).toEqual([
      '1: Hold on walking (waiting for review), HOLD REVIEW DUE since 25 Oct 02:00 (UTC+01:00)',
      '2: Hold on out of bed (waiting for review), review 25 Oct 05:00',
    ]);
  });
  it('names an order of bed that nobody reviewed today among what is reviewed today', () => {
    const bed = order(1, { about: 'activity', most: 'bed' });
    expect(words(huddle(13, { 'bed-1': [bed] }).holdsToday)).toEqual([]);
    expect(words(huddle(15, { 'bed-1': [bed] }).holdsToday)).toEqual([
      '1: Order to stay in bed since 24 Oct 19:00: not reviewed today; ask whether it still applies',
    ]);
  });
  it('names who was not up for 24 h, unless a hold says so or the plan is comfort', () => {
    const comfort: Told = { type: 'scope-set', at: 1, payload: { scope: 'comfort' } };
    const { notUp } = huddle(30, {
      'bed-1': [],
      'bed-2': [hold(1, 'out-of-bed', 40)],
      'bed-3': [comfort],
      'bed-4': [session(7, { activities: ['chair'] })],
    });
    expect(words(notUp)).toEqual(['1: No time up recorded since arrival 24 Oct 18:00']);
    const later = huddle(31.5, { 'bed-4': [session(7, { activities: ['chair'] })] });
    expect(words(later.notUp)).toEqual(['4: Not up since 25 Oct 01:00 (chair)']);
  });
  it('does not ask of the clinician’s plan when the person was last up', () => {
    const fenced: Told = {
      type: 'scope-set',
      at: 1,
      payload: { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 't' } },
    };
    expect(huddle(30, { 'bed-1': [fenced] }).notUp).toEqual([]);
  });
  it('says who needs a lift and two people in the words of the moves, never for a walk', () => {
    const weight: Told = {
      type: 'weight-recorded',
      at: 1,
      payload: { weight: { kg: 70, how: 'measured' } },
    };
    const { needLift, twoPeople } = huddle(3, {
      'bed-1': [weight, check('walk', 1)],
      'bed-2': [weight, check('clear', 1)],
      'bed-3': [weight, check('stand', 1, { stand: { outcome: 'not-met' } }), hold(2, 'out-of-bed', 9)],
      'bed-4': [],
    });
    expect(words(needLift)).toEqual([
      '2: sling lift for every move out of bed',
      '4: CHECK BEFORE MOVING; if it cannot wait: bariatric lift for every move out of bed',
    ]);
    expect(words(twoPeople)[1]).toBe(
      '2: two people for every move out of bed, across to a trolley; three people or more for turn or move up in bed',
    );
    expect(words([...needLift, ...twoPeople]).join()).not.toMatch(/walk|stand|bed chair/);
    expect(words(twoPeople).find((line) => line.startsWith('3:'))).not.toContain('out of bed');
  });
  it('names who arrived since the last one', () => {
    expect(words(huddle(5, { 'bed-1': [] }).arrived)).toEqual([
      '1: Arrived 24 Oct 18:00: not checked here yet',
    ]);
    expect(huddle(24, { 'bed-1': [] }).arrived).toEqual([]);
  });
});
