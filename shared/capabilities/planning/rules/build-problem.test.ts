import { describe, expect, it } from 'vitest';
import { HOUR, MINUTE } from '../../../kernel/times.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { BedView, StayView } from '../../board/view.ts';
import type { PeopleOn, WardState } from '../../wards/context.ts';
import { wardCalendar } from '../../wards/rules/calendar.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { dayProblem } from '../problem.ts';
import { buildProblem } from './build-problem.ts';
import type { PlanInput } from './plan-input.ts';
import { checkPlan } from './check-plan.ts';
import { greedyProposal } from './propose.ts';
import { move, toldStay } from './told-stay.testkit.ts';

/** 09:00 on the ward's clock, winter time; the night begins at 21:00, so the grid has 48 slots. */
const T = Date.UTC(2026, 2, 3, 8);
const at = (h: number) => T + h * HOUR;
const time = (from: number, to: number, breaks: [number, number][] = []) => ({
  from: at(from),
  to: at(to),
  breaks: breaks.map(([a, b]) => ({ from: at(a), to: at(b) })),
});
const ON: PeopleOn = new Map([
  [
    '2026-03-03',
    new Map([
      ['ana', time(-2, 6, [[2, 2.5]])],
      ['ben', time(-2, 12)],
    ]) as never,
  ],
]);
const WARD = {
  ward: 'w1',
  name: 'Invented',
  zone: 'Europe/Berlin',
  wardDayFrom: '07:00',
  nightFrom: '21:00',
  nightTo: '07:00',
  beds: [{ bed: 'b1', label: 'A1', bay: 'Bay A', ceilingTrack: false }],
  items: new Map([['lift', { label: 'Lift 1' }]]),
  staff: new Map([
    ['ana', { role: 'nurse', active: true }],
    ['ben', { role: 'aide', active: true }],
  ]),
  carers: new Map([['b1', { until: at(9), who: { nurse: 'ana', aide: null } }]]),
  peopleOn: ON,
  rules: null,
} as unknown as WardState;

type Told = Partial<StayView> & { readonly plans?: readonly TaskPlan[] };
const inBed = ({ plans = [move()], ...more }: Told = {}, fit: PlanInput['stays'][number]['fit'] = []) => {
  const stay = toldStay(plans, more);
  const bed = { bed: 'b1', label: 'A1', bay: 'Bay A', stay } as unknown as BedView;
  return { bed, stay, fit };
};
const built = (stays: PlanInput['stays'], more: Partial<PlanInput> = {}) =>
  buildProblem({
    t: T,
    ward: WARD,
    calendar: wardCalendar(WARD),
    rules: DEFAULT_RULES,
    stays,
    expected: [],
    items: [{ item: 'lift' as never, usable: 'usable' }],
    accepted: null,
    ...more,
  });
const blockedWhy = (stays: PlanInput['stays']) =>
  built(stays).problem.blocked.map(({ why, at: slots, visits }) => [
    why,
    slots.from,
    slots.until,
    visits?.length ?? null,
  ]);

describe('what the rest of the day asks for', () => {
  it('PLANNED-1 each time up that the goal still asks for, with rest between, and nothing that is done', () => {
    const { problem } = built([
      inBed({ today: { goal: { activity: 'chair', timesUp: 3 }, timesUp: 1 } as never }),
    ]);
    expect(
      problem.visits.map(({ visit, kind, restAfter, people }) => [visit, kind, restAfter, people]),
    ).toEqual([
      ['s1-g2', 'goal', 4, 1],
      ['s1-g3', 'goal', 4, 1],
    ]);
    expect(problem.visits.map(({ after }) => after)).toEqual([[], ['s1-g2']]);
    expect(dayProblem.safeParse(problem).success).toBe(true);
  });
  it('a check that falls due, led by a nurse or therapist', () => {
    const { problem } = built([inBed({ due: { state: 'not-due', at: at(3), because: [] } })]);
    expect(problem.visits.find(({ kind }) => kind === 'check')).toMatchObject({
      visit: 's1-c',
      lead: ['nurse', 'charge-nurse', 'therapist'],
      windows: [{ from: 0, until: 16 }],
    });
  });
  it('PLANNED-2 no time up before the check where trust has run out', () => {
    const { problem } = built([
      inBed({
        due: { state: 'overdue', at: at(-1), because: [] },
        trust: { state: 're-check', openTriggers: [], conflicts: [], because: [] },
      }),
    ]);
    const goals = problem.visits.filter(({ kind }) => kind === 'goal');
    expect(goals.map(({ after }) => after)).toEqual([['s1-c'], ['s1-c', 's1-g1'], ['s1-c', 's1-g2']]);
  });
  it('two people where the plan says two, and for the first time up with somebody qualified', () => {
    const two = built([inBed({ plans: [move({ people: 'two' })] })]).problem.visits;
    expect(two.map(({ people }) => people)).toEqual([2, 2, 2]);
    const first = built([inBed({ firstTimeUpPending: true })]).problem.visits;
    expect(first.map(({ people, lead }) => [people, lead.includes('aide')])).toEqual([
      [2, false],
      [1, true],
      [1, true],
    ]);
  });
  it('nothing that fits, where a lift is needed and nobody answered which: it is not planned without one', () => {
    const lifted = { plans: [move({ aid: 'sling-lift', people: 'two' })] };
    expect(built([inBed(lifted)]).problem.visits[0]!.sets).toEqual([]);
    const plans = [move({ aid: 'walking-support' })];
    expect(built([inBed({ plans })]).problem.visits[0]!.sets).toBeNull();
  });

  it.each(['re-check', 'not-known'] as const)(
    'a look before getting up while trust is %s, whenever it is due; where no time is left for it, nobody is got up',
    (state) => {
      const trust = { state, openTriggers: [], conflicts: [], because: [] } as never;
      const { visits } = built([inBed({ trust })]).problem;
      const check = visits.find(({ kind }) => kind === 'check');
      const goals = visits.filter(({ kind }) => kind === 'goal');
      expect(goals.length).toBeGreaterThan(0);
      expect(goals.map(({ after }) => after)).toEqual(
        goals.map((_, i) => [check!.visit, ...(i > 0 ? [goals[i - 1]!.visit] : [])]),
      );
      const { planning } = DEFAULT_RULES;
      const long = { ...planning.checkMinutes, value: 24 * 60 };
      const rules = { ...DEFAULT_RULES, planning: { ...planning, checkMinutes: long } };
      expect(built([inBed({ trust })], { rules }).problem.visits).toEqual([]);
    },
  );

  it('the sets of equipment that the fit rules judged; none that fits is an empty list, not no need', () => {
    const plans = [move({ aid: 'sling-lift', people: 'two' })];
    const fit = (sets: { item: never; sling: never }[]) => [
      { task: 'bed-chair' as const, need: 'lift-and-sling', sets },
    ];
    const sets = (of: PlanInput['stays'][number]['fit']) =>
      built([inBed({ plans }, of)]).problem.visits[0]!.sets;
    expect(sets(fit([{ item: 'lift' as never, sling: 'sling' as never }]))).toEqual([['lift', 'sling']]);
    expect(sets(fit([]))).toEqual([]);
    expect(built([inBed()]).problem.visits[0]!.sets).toBeNull();
  });
  it('what stays in bed needs no lift, whatever the way to the chair', () => {
    const plans = [move({ aid: 'sling-lift', people: 'two' })];
    const today = { goal: { activity: 'back-raised', timesUp: 1 }, timesUp: 0, met: false } as never;
    const [visit] = built([inBed({ plans, today })]).problem.visits;
    expect(visit).toMatchObject({ people: 1, aid: 'none', sets: null });
  });
  it('a first check of whoever is expected, within the ward’s hours', () => {
    const expected = [
      { expected: 'e1', at: at(2), from: 'ward', bed: 'b1', usual: null, previous: null, bariatric: false },
    ];
    const { problem, about } = built([], { expected: expected as never });
    expect(problem.visits).toMatchObject([
      { visit: 'e1-a', kind: 'check', windows: [{ from: 8, until: 24 }] },
    ]);
    expect(about).toMatchObject([{ label: 'A1', expected: true }]);
  });
});

describe('whom no plan places', () => {
  it.each([
    ['comfort', { scope: { kind: 'comfort', fence: null, plan: null } }],
    ['clinicians-plan', { scope: { kind: 'clinicians-plan', fence: null, plan: null } }],
    ['three-or-more', { plans: [move({ people: 'three-or-more' })] }],
    ['no-move', { plans: [move({ hold: true })] }],
    ['talk-first', { signs: [{ kind: 'refusals', words: '', because: [] }] }],
    ['no-goal', { today: { goal: null, timesUp: 0, met: null } }],
    ['not-known', { version: 0 }],
  ] as const)('%s', (why, told) => {
    const { problem, notPlanned } = built([inBed(told as unknown as Told)]);
    expect(problem.visits).toEqual([]);
    expect(notPlanned).toEqual([{ stay: 's1', label: 'A1', why }]);
  });
});

describe('when nobody may come', () => {
  it('meals and the ward’s rest for times up, not for a check', () => {
    const due = { state: 'due', at: at(1), because: [] } as StayView['due'];
    // 12:00-12:45, 17:30-18:15 and 13:00-14:00 on the ward's clock; three times up.
    expect(blockedWhy([inBed({ due })])).toEqual([
      ['meal', 12, 15, 3],
      ['meal', 34, 37, 3],
      ['rest', 16, 20, 3],
    ]);
  });
  it('off the ward until due back, after leaving, and while somebody is there: for everything', () => {
    const away = { since: at(-1), reason: 'test', dueBack: at(1) };
    expect(blockedWhy([inBed({ away })])).toContainEqual(['off-ward', 0, 4, null]);
    expect(blockedWhy([inBed({ away: { ...away, dueBack: null } })])).toContainEqual([
      'off-ward',
      0,
      48,
      null,
    ]);
    expect(blockedWhy([inBed({ leaving: { at: at(5), event: 'e' as never } })])).toContainEqual([
      'off-ward',
      20,
      48,
      null,
    ]);
    const visit = { visit: 'v', by: 'ana', second: null, from: T, until: at(0.5), event: 'e' };
    expect(blockedWhy([inBed({ visit: visit as never })])).toContainEqual(['appointment', 0, 2, null]);
  });
  it('PLANNED-3 a hold keeps the person out of the plan to the end of it, also past its review', () => {
    const holds = [{ scope: 'out-of-bed', reviewAt: at(-1), reviewDue: true }] as never;
    const { problem } = built([inBed({ holds })]);
    expect(greedyProposal(problem, null).placed).toEqual([]);
    expect(blockedWhy([inBed({ holds })])).toContainEqual(['hold', 0, 48, 3]);
  });
});

describe('with whom and what', () => {
  it('people as named, without breaks and what they have taken; bays of those they look after', () => {
    const visit = { visit: 'v', by: 'ben', second: null, from: T, until: at(0.5), event: 'e' };
    const { staff } = built([inBed({ visit: visit as never })]).problem;
    expect(staff).toEqual([
      {
        staff: 'ana',
        role: 'nurse',
        on: [{ from: 0, until: 24 }],
        breaks: [{ from: 8, until: 10 }],
        taken: [],
        bays: ['Bay A'],
      },
      {
        staff: 'ben',
        role: 'aide',
        on: [{ from: 0, until: 48 }],
        breaks: [],
        taken: [{ from: 0, until: 2 }],
        bays: [],
      },
    ]);
  });
  it.each([
    ['usable', [{ from: 0, until: 48 }]],
    ['in-use', [{ from: 2, until: 48 }]],
    ['unknown', []],
    ['not-usable', []],
  ] as const)('equipment that is %s', (usable, free) => {
    const { items } = built([], { items: [{ item: 'lift' as never, usable }] }).problem;
    expect(items[0]!.free).toEqual(free);
  });
  it('the accepted plan is the plan before, as far as it is still asked for and ahead', () => {
    const one = (visit: string, h: number) => ({
      visit,
      stay: 's1',
      kind: 'goal',
      start: at(h),
      minutes: 15,
      crew: ['ben'],
      items: [],
    });
    const accepted = { placements: [one('s1-g1', -1), one('s1-g2', 3), one('s9-g1', 4)] };
    expect(built([inBed()], { accepted: accepted as never }).problem.previous).toEqual([
      { visit: 's1-g2', start: 12, crew: ['ben'], items: [], pinned: false },
    ]);
  });
  it('PLANNED-4 what is made of it keeps every rule', () => {
    const due = { state: 'due', at: at(1), because: [] } as StayView['due'];
    const { problem } = built([inBed({ due })]);
    const { placed } = greedyProposal(problem, null);
    expect(placed).toHaveLength(4);
    expect(checkPlan(problem, placed)).toEqual([]);
  });
});

it('a quarter hour that has begun is over: the grid begins with the next', () => {
  expect(built([], { t: T + MINUTE }).problem.grid).toEqual({ start: T + 15 * MINUTE, slots: 47 });
});

describe('PLANNED-8 more than one plan may hold', () => {
  it('what weighs least stands beside the problem by name, nothing is lost', () => {
    const many = Array.from({ length: 130 }, (_, i) =>
      inBed({
        stay: `s${i}` as never,
        today: { goal: { activity: 'chair', timesUp: 2 }, timesUp: 0 } as never,
      }),
    );
    const { problem, beyond, about } = built(many);
    expect([problem.visits.length, beyond.length]).toEqual([240, 20]);
    // The second time up weighs less than the first: nobody goes without their first.
    expect(new Set(beyond.map(({ visit }) => visit.slice(-3)))).toEqual(new Set(['-g2']));
    const named = new Set(about.map(({ visit }) => visit));
    expect([...problem.visits, ...beyond].every(({ visit }) => named.has(visit))).toBe(true);
    expect(dayProblem.safeParse(problem).error).toBeUndefined();
  });
  it('what has to come first is not left behind by what follows it', () => {
    const many = Array.from({ length: 130 }, (_, i) =>
      inBed({
        stay: `s${i}` as never,
        trust: { state: 're-check', openTriggers: [], conflicts: [], because: [] },
        due: { state: 'overdue', at: T, because: [] },
      }),
    );
    const { problem, beyond } = built(many);
    expect(problem.visits.length + beyond.length).toBe(520);
    const kept = new Set(problem.visits.map(({ visit }) => visit));
    expect(problem.visits.flatMap(({ after }) => after).filter((id) => !kept.has(id))).toEqual([]);
  });
});
