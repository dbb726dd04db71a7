import { describe, it } from 'vitest';
import * as commands from '@footboard/shared/capabilities/planning/commands';
import { peopleOnSet } from '@footboard/shared/capabilities/planning/events';
import { newEvent, streamKey } from '@footboard/shared/kernel/event-type';
import type { StaffId } from '@footboard/shared/kernel/ids';
import type { Step } from '../world.testkit.ts';
import { arrived, CHARGE_NURSE, checked, given, hours, iso, LARCH, left, NURSE } from '../given.testkit.ts';

const WARD = streamKey('ward', LARCH);
const by = CHARGE_NURSE;
const on = (...people: [who: string, from: number, until: number, breaks?: [number, number][]][]): Step =>
  newEvent(peopleOnSet, WARD, {
    day: '2026-03-03',
    people: people.map(([staff, from, until, breaks = []]) => ({
      staff: staff as StaffId,
      from: iso(from),
      until: iso(until),
      breaks: breaks.map(([a, b]) => ({ from: iso(a), until: iso(b) })),
    })),
  });
/** A check is due within 4 h of the arrival. It is 12:00 on the ward's clock when somebody accepts. */
const visit = (start: number, more: object = {}) => ({
  visit: 'anna-c',
  stay: 'anna',
  kind: 'check' as const,
  start: iso(start),
  minutes: 15,
  crew: ['nurse'],
  items: [],
  ...more,
});
const plan = (...placements: object[]) => ({
  day: '2026-03-03',
  placements: placements as ReturnType<typeof visit>[],
  hash: 'a'.repeat(64),
  weightsVersion: 1,
  how: 'solver' as const,
  gap: 0.01,
  edited: true,
});
const HERE = [arrived('anna', 'b1'), on(['nurse', 0, 8, [[4.5, 5]]], ['aide', 0, 8])];

describe('accepting a day plan', () => {
  it('that keeps every rule is recorded as it is', () => {
    const data = plan(visit(3.25));
    given(...HERE)
      .when(commands.acceptDayPlan, data, { by })
      .appends(['day-plan-accepted', WARD, data]);
  });
  it('without any visit is a plan too', () => {
    given(...HERE)
      .when(commands.acceptDayPlan, plan(), { by })
      .accepts();
  });
  it.each([
    ['whoever goes is on a break', [visit(4.5)]],
    ['whoever goes is not on the ward', [visit(3.25, { crew: ['therapist'] })]],
    ['whoever goes may not lead a check', [visit(3.25, { crew: ['aide'] })]],
    ['two go where one is needed', [visit(3.25, { crew: ['nurse', 'aide'] })]],
    ['the same visit stands twice', [visit(3.25), visit(3.5)]],
    ['it begins in the middle of a quarter hour', [visit(3.3)]],
    ['long after the check is due', [visit(7)]],
    ['nobody asks for it', [visit(3.25, { visit: 'anna-g9', kind: 'goal' })]],
    ['it is longer ago than a quarter hour', [visit(1)]],
  ])('PLANNED-5 %s: refused with the visit named', (_why, placements) => {
    given(...HERE)
      .when(commands.acceptDayPlan, plan(...placements), { by })
      .refuses('plan-breaks-rule', `/placements/${placements.length - 1}`);
  });
  it('one person in two places at once is refused', () => {
    const other = visit(3.25, { visit: 'otto-c', stay: 'otto' });
    given(...HERE, arrived('otto', 'b2'))
      .when(commands.acceptDayPlan, plan(visit(3.25), other), { by })
      .refuses('plan-breaks-rule');
  });
  it('somebody who has left since is refused', () => {
    given(...HERE, left('anna', 'b1', { at: hours(2) }))
      .when(commands.acceptDayPlan, plan(visit(3.25)), { by })
      .refuses('plan-breaks-rule', '/placements/0');
  });
  it('a check done since is not asked for any more', () => {
    given(...HERE, checked('anna', 'walk', { at: hours(2) }))
      .when(commands.acceptDayPlan, plan(visit(3.25)), { by })
      .refuses('plan-breaks-rule', '/placements/0');
  });
  it('of another day is refused', () => {
    given(...HERE)
      .when(commands.acceptDayPlan, { ...plan(visit(3.25)), day: '2026-03-02' }, { by })
      .refuses('plan-of-another-day', '/day');
  });
  it('is for the charge nurse, the coordinator and the manager', () => {
    given(...HERE)
      .when(commands.acceptDayPlan, plan(visit(3.25)), { by: NURSE })
      .refuses('not-your-role');
  });
});
