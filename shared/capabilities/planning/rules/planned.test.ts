import { describe, expect, it } from 'vitest';
import { HOUR } from '../../../kernel/times.ts';
import { NOTHING_SEEN } from '../../aids/rules/item-state.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { StayView } from '../../board/view.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { AcceptedPlan } from './accepted.ts';
import { plannedOf } from './planned.ts';
import { move as moveOf, toldStay } from './told-stay.testkit.ts';

const T = Date.UTC(2026, 2, 3, 8);
const move = (more: Partial<TaskPlan> = {}) =>
  moveOf({
    people: 'two',
    aid: 'sling-lift',
    because: [{ rule: 'table', facts: ['e1' as never], words: 'lifted' }],
    ...more,
  });
const stay = toldStay;

/** What stands against a visit at 10:00 by these people with this equipment, in words; null: nothing. */
function against(
  of: StayView,
  crew: readonly string[],
  items: readonly string[],
  lists = ['lift'],
  { plannedFor = of.stay as string, states = new Map() } = {},
) {
  const placement = {
    visit: 's1-g1',
    stay: plannedFor,
    kind: 'goal',
    start: T + HOUR,
    minutes: 30,
    crew,
    items,
  };
  const plan = { at: T, placements: [placement] } as unknown as AcceptedPlan;
  const ward = {
    items: new Map(lists.map((item) => [item, { label: `${item} 1`, inspectionDue: null }])),
    lent: new Map(),
    // Whoever was planned for under another name was expected then, and has arrived.
    notExpected: new Map(plannedFor === of.stay ? [] : [[plannedFor, of.stay]]),
  } as never;
  const given = { today: '2026-03-03', rules: DEFAULT_RULES.aids, items: states, say: String };
  const { visits } = plannedOf(of, [], { t: T, plan, ward, ...given }, () => undefined);
  return visits[0]!.stopped;
}

describe('PLANNED-7 a planned visit when the plan of moving asks for more by now', () => {
  it.each<[string, Partial<TaskPlan>, string[], string[], string | null]>([
    ['two people with the lift: as planned', {}, ['ana', 'ben'], ['lift'], null],
    ['one for two', {}, ['ana'], ['lift'], 'Two people are asked for by now, and one is planned'],
    [
      'two for three',
      { people: 'three-or-more' },
      ['ana', 'ben'],
      ['lift'],
      'The plan asks for three people or more by now',
    ],
    [
      'no lift where one is asked for',
      {},
      ['ana', 'ben'],
      [],
      'The plan asks for equipment by now, and none is planned',
    ],
    ['less than was planned: it stands', { people: 'one', aid: 'none' }, ['ana', 'ben'], ['lift'], null],
  ])('%s', (_what, plan, crew, items, words) => {
    expect(against(stay([move(plan)]), crew, items)?.words ?? null).toBe(words);
  });
  it('names the entries that ask for it', () => {
    expect(against(stay([move()]), ['ana'], [])!.facts).toEqual(['e1']);
  });
  it('a ward that keeps no list of equipment is not asked which', () => {
    expect(against(stay([move()]), ['ana', 'ben'], [], [])).toBeNull();
  });
  it('exercise in bed needs no move out of it', () => {
    const today = { goal: { activity: 'bed-exercise', timesUp: 3 }, timesUp: 0, met: false };
    const inBed = stay([move({ hold: true })], { today: today as never });
    expect(against(inBed, ['ana'], [])).toBeNull();
    expect(against(stay([move({ hold: true })]), ['ana'], [])!.words).toBe(
      'The plan allows no move out of bed',
    );
  });
  it('a sling kept for the person is theirs also where the visit was planned before they arrived', () => {
    const slingOf = (keptFor: string) =>
      new Map([['sling', { ...NOTHING_SEEN, keptFor, bound: { at: T, by: 'e1' } }]]) as never;
    const seen = (keptFor: string) =>
      against(stay([move()]), ['ana', 'ben'], ['sling'], ['sling'], {
        plannedFor: 'arrival-1',
        states: slingOf(keptFor),
      });
    expect(seen(stay([move()]).stay)).toBeNull();
    expect(seen('s9')!.words).toBe(`sling 1 is kept for another person since ${T}`);
  });
});
