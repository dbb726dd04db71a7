/** Walls: least data by level, and never less help. Over every history that the schemas admit. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BedId } from '../../../kernel/ids.ts';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { BOARD_LEVELS } from '../../people/policy/document.ts';
import { bedView, type BedView, type StayView } from '../view.ts';
import { anyHistory } from './any-history.testkit.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { rowFor, rowsFor } from './for-wall.ts';
import { calendar, hold, hours, recordOf, stayOf, ward, type Told } from './history.testkit.ts';
import { histories } from './random-history.testkit.ts';
import { anyWard } from './random-ward.testkit.ts';

const WALLS = BOARD_LEVELS.filter((level) => level !== 'whole');
const wall = fc.constantFrom(...WALLS);
const told: fc.Arbitrary<readonly Told[]> = fc.oneof(anyHistory, histories);
const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));
const wish = fc.constantFrom('as-ward', 'as-ward', 'nothing');

const rowOf = (stay: StayView | null): BedView => ({
  bed: 'bed-1' as BedId,
  label: '1',
  bay: 'A',
  ceilingTrack: true,
  state: stay === null ? 'empty' : stay.away ? 'away' : 'occupied',
  carers: null,
  stay,
});
const viewAt = (record: ReturnType<typeof recordOf>, t: number, w = { ward, calendar }): StayView =>
  evaluateStay(record, w.ward, w.calendar, t).view;

/** What a plan asks for, without its reasons. */
const demands = (plan: StayView['plan']) =>
  plan &&
  [plan.day, plan.night].map((lines) =>
    lines.map(({ task, hold: held, people, aid, with: others }) => ({ task, held, people, aid, others })),
  );

/** What a row asks of whoever moves the person. */
const asked = (of: StayView) => ({
  plan: of.plan && demands(of.plan),
  check: of.checkBeforeMoving,
  scope: of.scope.kind,
  support: of.walkingSupport,
  holds: of.holds.map(({ scope, reviewDue }) => ({ scope, reviewDue })),
});

/** Every text and number in a value, with the path to it. */
function* leaves(value: unknown, path = ''): Generator<[string, unknown]> {
  if (typeof value !== 'object' || value === null) yield [path, value];
  else for (const [key, part] of Object.entries(value)) yield* leaves(part, `${path}/${key}`);
}

describe('a row for a wall', { timeout: patience }, () => {
  it('WALL-1 asks for the same people, aid and holds as the whole row, or sends to the bedside', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(told, at, anyWard, wall, wish, (all, t, w, level, wallOf) => {
        const whole: StayView = { ...viewAt(recordOf(all), t, w), wall: wallOf };
        const row = rowFor(rowOf(whole), level);
        expect(bedView.safeParse(row).error).toBeUndefined();
        const shown = row.stay!;
        seen.add(`${level} ${shown.shown}`);
        expect(shown.onOwn).toBeNull();
        const sent = shown.shown === 'ask-at-the-bedside';
        expect(asked(shown)).toEqual(sent ? { ...asked(shown), plan: null, check: true } : asked(whole));
        expect(row.state).toBe(sent ? 'occupied' : rowOf(whole).state);
      }),
      runs(150),
    );
    expect([...seen].toSorted()).toEqual([
      'bed-only ask-at-the-bedside',
      'bed-only bed-only',
      'initials ask-at-the-bedside',
      'initials bed-only',
      'visitors ask-at-the-bedside',
      'visitors visitors',
    ]);
  });

  it('WALL-2 names no reason, entry, person, order or reading', () => {
    fc.assert(
      fc.property(told, at, anyWard, wall, wish, (all, t, w, level, wallOf) => {
        const record = recordOf(all);
        const row = rowFor(rowOf({ ...viewAt(record, t, w), wall: wallOf }), level);
        // Ids of entries and of staff as the histories give them.
        const named = new Set<unknown>(record.events.flatMap((e) => [e.id, e.author.staff]));
        for (const [path, value] of leaves(row.stay)) {
          expect(named.has(value), `${path} is ${String(value)}`).toBe(false);
          expect(path).not.toMatch(/\/(because|facts|conflicts\/\d+\/words|attachments|orders)\/./);
        }
        const { signs, cautions, mayStart, earlyWarning, measures, usualWay, debt, nextCheck } = row.stay!;
        expect([cautions, mayStart, earlyWarning, measures, usualWay, debt, nextCheck]).toEqual(
          [[], null, null, null, null, null, null], // prettier-ignore
        );
        expect(signs.filter((sign) => sign.kind === 'refusals' || sign.words !== '')).toEqual([]);
        expect(Object.keys(row.stay!.today.notDone)).toEqual([]);
      }),
      runs(100),
    );
  });

  it('WALL-2 where visitors pass says nothing of trust, tier, goals or times', () => {
    const stay = viewAt(stayOf(hold(1, 'walking', 2)), hours(3));
    const row = rowFor(rowOf(stay), 'visitors').stay!;
    expect(row).toMatchObject({
      stay: 'not-shown',
      began: 0,
      tier: { word: null },
      trust: { state: 'not-known', conflicts: [] },
      due: { state: 'none', at: null },
      lastUp: null,
      today: { goal: null, recorded: false },
      firstTimeUpPending: false,
      shown: 'visitors',
    });
    expect(row.holds).toMatchObject([{ scope: 'walking', reason: 'other', owner: 'not-shown' }]);
  });

  it('WALL-2 within the ward says until when something stops and how old the check is; to visitors neither', () => {
    const stay = viewAt(stayOf(hold(1, 'walking', 2)), hours(3));
    const within = rowFor(rowOf(stay), 'bed-only').stay!;
    expect(within.holds.map((one) => one.reviewAt)).toEqual(stay.holds.map((one) => one.reviewAt));
    expect(within.tier).toMatchObject({ at: stay.tier.at, by: null, because: [] });
    const visitors = rowFor(rowOf(stay), 'visitors').stay!;
    expect(visitors.holds.map((one) => one.reviewAt)).toEqual([0]);
    expect(visitors.tier.at).toBeNull();
  });

  it('WALL-2 where visitors pass a comfort plan reads as any row that says nothing', () => {
    const comfort = { ...viewAt(stayOf(), hours(1)), plan: null };
    const stay: StayView = { ...comfort, scope: { kind: 'comfort', fence: null, plan: null } };
    const opted = rowFor(rowOf({ ...stay, wall: 'nothing' }), 'visitors');
    expect(rowFor(rowOf(stay), 'visitors')).toEqual(opted);
    expect(rowFor(rowOf(stay), 'bed-only').stay!.scope.kind).toBe('comfort');
  });
});

describe('a board for a level', () => {
  const rows = [rowOf(viewAt(stayOf(), hours(1))), rowOf(null)];
  it('is itself for those who may see the whole', () => {
    const board = { beds: rows };
    expect(rowsFor(board, 'whole')).toBe(board);
  });
  it('makes each row once a level, so that it is packed once for all screens', () => {
    const [first, again] = [rowsFor({ beds: rows }, 'bed-only'), rowsFor({ beds: rows }, 'bed-only')];
    expect(again.beds[0]).toBe(first.beds[0]);
    expect(rowsFor({ beds: rows }, 'visitors').beds[0]).not.toBe(first.beds[0]);
    expect(first.beds[1]).toBe(rows[1]);
  });
});
