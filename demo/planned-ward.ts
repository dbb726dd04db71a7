/**
 * Invented wards for the day plan: beds, who is on, equipment and visits drawn from a seed, so that
 * tests and measures of the planner speak of the same ones. No number here is anybody's.
 */
import type { Role } from '@footboard/shared/kernel/author';
import {
  dayProblem,
  type Blocked,
  type DayProblem,
  type NeededVisit,
  type PlannedItem,
  type PlannedStaff,
  type Slots,
} from '@footboard/shared/capabilities/planning/problem';
import { chance, type Chance } from './random.ts';

const SLOTS = 48; // 07:00 to 19:00
const MEALS: readonly Slots[] = [
  { from: 4, until: 6 },
  { from: 20, until: 22 },
  { from: 42, until: 44 },
];
const REST: Slots = { from: 24, until: 28 };

/** A ward of that many beds on a day from 07:00 to 19:00. The same seed and beds give the same ward. */
export function plannedWard(seed: number, beds: number): DayProblem {
  const draw = chance(seed * 1_000 + beds);
  const bays = Array.from({ length: Math.ceil(beds / 6) }, (_, i) => `Bay ${i + 1}`);
  const items = kit(draw, beds);
  const stays = Array.from({ length: beds }, (_, bed) =>
    person(draw, bed, bays[Math.floor(bed / 6)]!, items),
  );
  return dayProblem.parse({
    grid: { start: Date.parse('2026-03-02T07:00:00Z'), slots: SLOTS },
    visits: stays.flatMap(({ visits }) => visits),
    blocked: stays.flatMap(({ blocked }) => blocked),
    staff: hands(draw, beds, bays),
    items,
    weights: { version: 1, otherBay: 1, seenLast: 0.2, spread: 0.3, fairness: 0.5, moved: 4, otherCrew: 2 },
    previous: [],
  });
}

function hands(draw: Chance, beds: number, bays: readonly string[]): PlannedStaff[] {
  const each = (role: Role, count: number, busy: number): PlannedStaff[] =>
    Array.from({ length: count }, (_one, i) => {
      const lunch = 16 + 2 * (i % 4);
      const taken = Array.from({ length: SLOTS }, (_, slot) => slot)
        .filter((slot) => slot % 2 === 0 && draw.is(busy))
        .map((from) => ({ from, until: from + 2 }));
      const late = role === 'aide' && draw.is(0.15);
      return {
        staff: `${role}-${i + 1}`,
        role,
        on: [role === 'therapist' ? { from: 4, until: 36 } : { from: late ? 16 : 0, until: SLOTS }],
        breaks: [{ from: lunch, until: lunch + 2 }],
        taken,
        bays: role === 'therapist' ? [] : bays.filter((_bay, bay) => bay % count === i % bays.length),
      } as PlannedStaff;
    });
  return [
    ...each('aide', Math.max(2, Math.round(beds / 7)), 0.4),
    ...each('nurse', Math.max(2, Math.round(beds / 7)), 0.7),
    ...each('therapist', beds > 24 ? 2 : 1, 0.3),
  ];
}

function kit(draw: Chance, beds: number): PlannedItem[] {
  const free = (): Slots[] => (draw.is(0.2) ? [{ from: 12, until: SLOTS }] : [{ from: 0, until: SLOTS }]);
  const each = (name: string, aid: PlannedItem['aid'], count: number): PlannedItem[] =>
    Array.from({ length: count }, (_, i) => ({
      item: `${name}-${i + 1}` as PlannedItem['item'],
      aid,
      free: free(),
      cleaning: 1,
      cleaningAfterIsolation: 2,
    }));
  return [
    ...each('lift', 'sling-lift', beds > 20 ? 2 : 1),
    ...each('sling', 'sling-lift', Math.ceil(beds / 6)),
    ...each('rise', 'standing-aid', beds > 16 ? 2 : 1),
  ];
}

function person(
  draw: Chance,
  bed: number,
  bay: string,
  items: readonly PlannedItem[],
): { visits: NeededVisit[]; blocked: Blocked[] } {
  const stay = `stay-${bed + 1}`;
  const isolation = draw.is(0.12);
  const kind = draw.next();
  const aid =
    kind < 0.22 ? 'sling-lift' : kind < 0.4 ? 'standing-aid' : kind < 0.7 ? 'walking-support' : 'none';
  const named = (name: string): string[] =>
    items.flatMap(({ item }) => (item.startsWith(name) ? [item as string] : []));
  const slings = named('sling');
  const sling = slings[bed % slings.length]!;
  const sets =
    aid === 'sling-lift'
      ? named('lift').map((lift) => [lift, sling])
      : aid === 'standing-aid'
        ? named('rise').map((rise) => [rise])
        : null;
  const checkFirst = draw.is(0.35);
  const times = draw.between(1, 3);
  const firstTimeUp = draw.is(0.06);
  const base = {
    stay,
    bay,
    isolation,
    windows: [{ from: 0, until: SLOTS }],
    restBefore: 4,
    restAfter: 4,
  };
  const check = {
    ...base,
    visit: `check-${bed + 1}`,
    kind: 'check',
    activity: null,
    aid: 'none',
    firstTimeUp: false,
    people: 1,
    lead: ['nurse', 'therapist'],
    crew: ['nurse', 'therapist'],
    length: 1,
    windows: [{ from: 0, until: draw.between(12, 32) }],
    restBefore: 0,
    restAfter: 0,
    after: [],
    sets: null,
    weight: draw.between(20, 40),
    debt: 0.4,
    around: null,
    seenLast: false,
  };
  const goals = Array.from({ length: times }, (_, i) => ({
    ...base,
    visit: `up-${bed + 1}-${i + 1}`,
    kind: 'goal',
    activity: aid === 'sling-lift' ? 'lifted-to-chair' : aid === 'none' ? 'walk' : 'chair',
    aid,
    firstTimeUp: firstTimeUp && i === 0,
    people: aid === 'sling-lift' || aid === 'standing-aid' || firstTimeUp ? 2 : 1,
    lead: firstTimeUp ? ['nurse', 'therapist'] : ['aide', 'nurse', 'therapist'],
    crew: ['aide', 'nurse', 'therapist'],
    length: aid === 'sling-lift' ? 2 : draw.between(1, 2),
    after: [...(checkFirst ? [`check-${bed + 1}`] : []), ...(i > 0 ? [`up-${bed + 1}-${i}`] : [])],
    sets,
    weight: Math.max(6, draw.between(18, 34) - 8 * i),
    debt: i === 0 ? 0.3 : 0,
    around: i === 0 ? null : times === 2 ? 32 : 16 + 16 * (i - 1),
    seenLast: isolation && i > 0,
  }));
  const away = draw.is(0.2) ? draw.between(4, 32) : null;
  const blocked = [
    ...MEALS.map((at) => ({ stay, at, why: 'meal', visits: null })),
    { stay, at: REST, why: 'rest', visits: null },
    ...(away === null ? [] : [{ stay, at: { from: away, until: away + 6 }, why: 'off-ward', visits: null }]),
    ...(draw.is(0.06) ? [{ stay, at: { from: 0, until: SLOTS }, why: 'hold', visits: null }] : []),
  ];
  return {
    visits: [...(checkFirst ? [check] : []), ...goals] as NeededVisit[],
    blocked: blocked as Blocked[],
  };
}
