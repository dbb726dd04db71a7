/** The forecast of a day with an accepted plan: its visits are counted, not guessed. */
import { describe, expect, it } from 'vitest';
import type { PlannedView } from '../../board/activity-view.ts';
import type { BedView, BoardView, StayView } from '../../board/view.ts';
import {
  begun,
  calendar,
  hours,
  recordOf,
  session,
  ward,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { composed } from './compose.ts';
import { timesSet } from './demand.ts';
import { historyOf, type History } from './history.ts';

const T = hours(16);
const DAY = calendar.wardDay(T);
const two = { task: 'bed-chair', hold: false, people: 'two', aid: 'none', because: [] };
const visit = (from: number, more: Partial<PlannedView> = {}): PlannedView =>
  ({
    visit: 'v',
    kind: 'goal',
    from,
    until: from + 1,
    crew: [],
    with: [],
    stopped: null,
    ...more,
  }) as PlannedView;
const stay = (more: Partial<StayView> = {}): StayView =>
  ({
    stay: 'stay-1',
    scope: { kind: 'staged' },
    plan: { day: [two], night: [two] },
    away: null,
    leaving: null,
    chair: null,
    visit: null,
    ...more,
  }) as unknown as StayView;

const help = { people: 2, aid: 'none' };
/** Two moves of the day before for two people: one planned, one to the toilet. */
const before: readonly Told[] = [
  session(1, { help, activities: ['chair'] }),
  session(2, { help, occasion: 'toilet', activities: ['toilet'] }),
];
const history = (): History =>
  historyOf([recordOf([begun(), ...before])], [calendar.wardDay(DAY.from - 1)], calendar.zone);

/** The moves of a day that are guessed for somebody, and the visits that have a time. */
function forecastOf(of: StayView, dayPlan: BoardView['dayPlan']) {
  const beds = [{ bed: 'b1', label: '1', bay: 'A', state: 'occupied', stay: of }] as unknown as BedView[];
  const { input } = composed(
    {
      board: { ...ward, beds, dayPlan } as unknown as BoardView,
      calendar,
      rules: DEFAULT_RULES,
      now: T,
      items: [],
      fits: new Map(),
      fitsIn: () => new Map(),
      history: history(),
      measured: new Map(),
      visits: new Map([[of.stay as string, timesSet(of)]]),
      on: ({ slots }) => Array.from({ length: slots }, () => ({ n: 4, said: 'usual' as const })),
    },
    1,
  );
  const helped = input.belief.posteriors[1]!;
  return {
    guessed: helped.shape.reduce((sum, a, i) => sum + a / helped.days[i]!, 0),
    visits: input.scenario.sources[0]!.due.filter(({ kind }) => kind === 'visit').map(({ at }) => at),
  };
}
const PLAN = { at: T, by: 'ines', ahead: 2, held: 0, passed: 0, unplaced: 0 } as BoardView['dayPlan'];

describe('FORECAST-3 a day with an accepted plan', () => {
  it('a planned visit has its time; a check, and one that is held, asks for nothing', () => {
    const of = stay({
      planned: [
        visit(T + 3_600_000),
        visit(T + 7_200_000, { kind: 'check' }),
        visit(T + 10_800_000, { stopped: { rule: 'round/held', facts: [], words: 'Hold' } }),
      ],
    });
    expect(forecastOf(of, PLAN).visits).toEqual([60]);
    expect(timesSet(stay({ visit: { from: T } as never, planned: [visit(T + 1)] }))).toEqual([T, T + 1]);
  });
  it('what is planned is not guessed as well; what comes beside it is', () => {
    const [without, by] = [forecastOf(stay(), null), forecastOf(stay(), PLAN)];
    expect(by.guessed).toBeLessThan(without.guessed);
    expect(by.guessed).toBeGreaterThan(0);
  });
  it('of the record only planned moves are left out', () => {
    const { seen, besidePlan, days } = history();
    const all = (counts: readonly number[]) => counts.reduce((sum, n) => sum + n, 0);
    expect([all(seen.helped.counts), all(besidePlan.helped.counts)]).toEqual([2, 1]);
    expect(besidePlan.helped.days).toEqual(seen.helped.days);
    expect(days).toEqual([{ moves: 2, planned: 1, stays: { lifted: 0, helped: 1 } }]);
  });
});
