import { mount } from '@vue/test-utils';
import { describe, expect, it } from 'vitest';
import { nextTick } from 'vue';
import type { EventId, StayId, WardId } from '@footboard/shared/kernel/ids';
import type { StayCourse, WardHours } from '@footboard/shared/wire/pictures';
import { HOUR, NOON, stayRow } from '../board/rows.testkit.ts';
import DayPicture from './DayPicture.vue';
import GoalBar from './GoalBar.vue';
import StayCoursePicture from './StayCoursePicture.vue';
import { goalIsWords, isRunning } from './course-words.ts';
import { courseShapes } from './course-shapes.ts';

const zone = 'Europe/Lisbon';
const at = (h: number) => NOON + h * HOUR;
const TIERS = ['Supported', 'Upright', 'Edge', 'Stand', 'Turn', 'Walk'];
const span = (
  from: number,
  to: number,
  tier: string | null,
  trust: 'current' | 're-check' | 'not-known',
) => ({
  from: at(from),
  to: at(to),
  tier,
  notch: tier === null || !TIERS.includes(tier) ? null : TIERS.indexOf(tier) / 5,
  trust,
  away: false,
  facts: [],
});
const dayOf = (from: number, to: number, recorded: boolean, goal: StayCourse['days'][number]['goal']) => ({
  from: at(from),
  to: at(to),
  recorded,
  goal,
  facts: [],
});
const course = (over: Partial<StayCourse> = {}): StayCourse => ({
  ward: 'w1' as WardId,
  stay: 's1' as StayId,
  position: 9,
  from: at(0),
  to: at(20),
  whole: true,
  ended: false,
  tiers: TIERS.map((word, i) => ({ word, notch: i / 5 })),
  standing: [
    span(0, 2, 'Not known', 'not-known'),
    span(2, 8, 'Edge', 'current'),
    span(8, 10, 'Edge', 're-check'),
    span(10, 20, 'Walk', 'current'),
  ],
  holds: [
    { hold: 'a', scope: 'walking', reason: 'order', from: at(3), to: at(6), facts: [] },
    { hold: 'b', scope: 'out-of-bed', reason: 'order', from: at(5), to: null, facts: [] },
    { hold: 'c', scope: 'walking', reason: 'order', from: at(7), to: at(9), facts: [] },
  ],
  sessions: [
    { event: 'e5' as EventId, at: at(4), outcome: 'done', activity: 'chair', group: null },
    { event: 'e6' as EventId, at: at(5), outcome: 'not-done', activity: null, group: 'said-no' },
  ],
  triggers: [{ event: 'e7' as EventId, at: at(8), kind: 'fall' }],
  days: [
    dayOf(0, 19, true, { met: false, proposed: false }),
    dayOf(19, 20, false, { met: null, proposed: false }),
  ],
  ...over,
});
const shapes = (of = course()) => courseShapes(of, { from: of.from, to: of.to, width: 900, zone });

describe('the picture of a stay’s course', () => {
  it('GAP-1 draws no line where no tier is known, and breaks it where the plan was to be checked', () => {
    const { lines, tierGaps, left } = shapes();
    expect(lines.map((one) => one.broken)).toEqual([false, true, false]);
    const starts = lines.map((one) => Number(/^M([\d.]+)/.exec(one.d)![1]));
    expect(tierGaps).toHaveLength(1);
    expect(tierGaps[0]!.x).toBe(left);
    expect(starts[0]).toBeCloseTo(tierGaps[0]!.x + tierGaps[0]!.width, 5);
    const nothing = shapes(course({ standing: [span(0, 20, null, 'current')] }));
    expect(nothing.lines).toEqual([]);
    expect(nothing.tierGaps[0]).toMatchObject({ known: 'no-tier' });
  });

  it('puts holds that stood at once one under the other, and leaves an open one open', () => {
    const { holds, right } = shapes();
    const [a, b, c] = holds;
    expect(b!.y).toBeGreaterThan(a!.y);
    expect(c!.y).toBe(a!.y);
    expect(holds.map((one) => one.open)).toEqual([false, true, false]);
    expect(b!.x + b!.width).toBeCloseTo(right, 5);
  });

  it('GAP-1 marks the day with nothing recorded as a gap', () => {
    expect(shapes().dayGaps).toHaveLength(1);
    expect(shapes(course({ days: [dayOf(0, 20, true, null)] })).dayGaps).toEqual([]);
  });

  it('GAP-1 says of each ward day whether its goal was met, not met or not recorded, and nothing where none applied', () => {
    const days = [
      dayOf(0, 5, true, { met: true, proposed: false }),
      dayOf(5, 10, true, { met: false, proposed: true }),
      dayOf(10, 15, true, { met: null, proposed: false }),
      dayOf(15, 18, true, null),
      dayOf(18, 20, true, { met: false, proposed: false }),
    ];
    const { goals } = shapes(course({ days }));
    expect(goals.map((one) => one.is)).toEqual(['met', 'not-met', 'not-recorded', 'not-met']);
    expect(goals[0]!.x).toBeGreaterThan(shapes().left);
    const wrapper = mount(StayCoursePicture, { props: { course: course({ days }), zone } });
    const said = wrapper.findAll('tbody tr').map((row) => row.text());
    expect(said.filter((row) => row.includes('oal of the day'))).toEqual([
      expect.stringContaining('Goal of the day: met'),
      expect.stringContaining('Proposed goal of the day: not met'),
      expect.stringContaining('Goal of the day: not recorded'),
      expect.stringContaining('Goal of the day: not met so far'),
    ]);
    // In the picture too, what is missing of a day that is not over may still come.
    const drawn = (of: StayCourse) =>
      shapes(of).goals.map(({ day }) => goalIsWords(day.goal!, isRunning(day, of)));
    expect(drawn(course({ days }))).toEqual(['met', 'not met', 'not recorded', 'not met so far']);
    const left = mount(StayCoursePicture, { props: { course: course({ days, ended: true }), zone } });
    expect(drawn(course({ days, ended: true })).at(-1)).toBe('not met');
    expect(left.text()).not.toContain('so far');
  });

  it('leaves out the goal of days that are not shown', () => {
    const of = course();
    const { goals } = courseShapes(of, { from: at(19.5), to: of.to, width: 900, zone });
    expect(goals.map((one) => one.is)).toEqual(['not-recorded']);
  });

  it('has every span and mark of it in the table, also while the picture is shown', async () => {
    const wrapper = mount(StayCoursePicture, { props: { course: course(), zone } });
    const rows = wrapper.findAll('tbody tr').map((row) => row.findAll('th, td').map((cell) => cell.text()));
    expect(rows).toEqual([
      ['Wed 25 Nov 12:00', 'Tier Not known, not known', 'Wed 25 Nov 14:00'],
      ['Wed 25 Nov 12:00', 'Goal of the day: not met', '07:00'],
      ['Wed 25 Nov 14:00', 'Tier Edge, current', 'Wed 25 Nov 20:00'],
      ['Wed 25 Nov 15:00', 'Hold: no walking', 'Wed 25 Nov 18:00'],
      ['Wed 25 Nov 16:00', 'Chair: done', ''],
      ['Wed 25 Nov 17:00', 'Hold: stay in bed', 'still stands'],
      ['Wed 25 Nov 17:00', 'Session: not done: the person said no', ''],
      ['Wed 25 Nov 19:00', 'Hold: no walking', 'Wed 25 Nov 21:00'],
      ['Wed 25 Nov 20:00', 'Tier Edge, re-check', 'Wed 25 Nov 22:00'],
      ['Wed 25 Nov 20:00', 'Trigger: fall, or lowered to the floor', ''],
      ['Wed 25 Nov 22:00', 'Tier Walk, current', 'now'],
      ['07:00', 'No session recorded: a gap, not a zero', 'now'],
      ['07:00', 'Goal of the day: not recorded so far', 'now'],
    ]);
    await nextTick();
    expect(wrapper.find('.drawing svg').exists()).toBe(true);
    expect(wrapper.get('.drawing').attributes('aria-hidden')).toBe('true');
    await wrapper.get('figcaption button').trigger('click');
    expect(wrapper.find('.drawing svg').exists()).toBe(false);
    expect(wrapper.get('[role=region]').text()).toContain('Tier Walk, current');
  });
});

const hour = (h: number, over: Partial<WardHours['hours'][number]> = {}) => ({
  from: at(h),
  to: at(h + 1),
  begun: true,
  done: 0,
  part: 0,
  stopped: 0,
  notDone: {},
  nothingYet: 2,
  ...over,
});

describe('the picture of a ward day', () => {
  const day: WardHours = {
    ward: 'w1' as WardId,
    day: '2026-11-25',
    from: at(0),
    to: at(4),
    at: at(2.5),
    stays: 3,
    hours: [
      hour(0, { nothingYet: 3 }),
      hour(1, { done: 2, part: 1, notDone: { 'said-no': 1, 'no-kit': 1 } }),
      hour(2, { stopped: 1, nothingYet: 1 }),
      hour(3, { begun: false, nothingYet: null }),
    ],
  };
  const wrapper = mount(DayPicture, { props: { day, zone } });

  it('stacks each kind once, by its count, and draws nothing for an hour to come', () => {
    const parts = wrapper.findAll('.drawing rect.part title').map((title) => title.text());
    expect(parts).toEqual(['done: 2', 'part done: 1', 'not done: 2', 'stopped: 1']);
    expect(wrapper.findAll('.drawing > svg:first-of-type rect.silent')).toHaveLength(3);
    expect(wrapper.text()).toContain('still to come');
  });

  it('GAP-1 the table keeps not done apart from nothing recorded, with the reasons', () => {
    const rows = wrapper.findAll('tbody tr').map((row) => row.findAll('th, td').map((cell) => cell.text()));
    expect(rows).toEqual([
      ['12:00–13:00', '0', '0', '0', '0', '3'],
      ['13:00–14:00', '2', '1', '0', '2 (The person said no 1, No equipment 1)', '2'],
      ['14:00–15:00', '0', '0', '1', '0', '1'],
      ['Day so far', '2', '1', '1', '2', '1'],
    ]);
  });
});

describe('the goal as a bar', () => {
  const bar = (over: object) =>
    mount(GoalBar, { props: { today: { ...stayRow().today, ...over } as never } });
  const goal = { activity: 'walk', timesUp: 3, minutesOutOfBed: 60, metres: 120 };

  it('has a bar and its counts for each amount that the goal asks for', () => {
    const wrapper = bar({ goal, timesUp: 2, minutesOutOfBed: 30, metres: 150 });
    expect(wrapper.findAll('dl > div').map((line) => line.text())).toEqual([
      'Times up2 of 3',
      'Minutes out of bed30 of 60',
      'Distance150 m of 120 m',
    ]);
    const width = (line: number) => Number(wrapper.findAll('.had')[line]!.attributes('width'));
    expect(width(0) / 200).toBeCloseTo(2 / 3, 5);
    expect(width(1) / 200).toBeCloseTo(1 / 2, 5);
    expect(width(2)).toBe(200);
  });

  it('GAP-1 draws no bar for what was not recorded or not written down, and says which', () => {
    const nothing = bar({ goal, recorded: false, timesUp: 0, minutesOutOfBed: null, metres: null });
    expect(nothing.findAll('svg')).toHaveLength(0);
    expect(nothing.text()).not.toMatch(/0 of/);
    expect(nothing.findAll('dd').map((one) => one.text())).toEqual(Array(3).fill('not recorded'));
    const some = bar({ goal, timesUp: 1, minutesOutOfBed: null, metres: 20 });
    expect(some.findAll('dd').map((one) => one.text())).toEqual([
      '1 of 3',
      'not written down',
      '20 m of 120 m',
    ]);
  });

  it('says that no goal is set, and when one is met', () => {
    expect(bar({ goal: null }).text()).toBe('No goal is set for today.');
    expect(bar({ goal, met: true }).text()).toContain('Goal met');
  });
});
