/**
 * What is read of a whole ward over every history that the schemas admit: the huddle, the round, what
 * changed, the days in numbers and the course of each stay throw nowhere and name no entry that is not there.
 */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import type { WardId } from '../../../kernel/ids.ts';
import { huddlePage } from '../../../wire/http.ts';
import { stayCourse } from '../../../wire/pictures.ts';
import { anyHistory } from '../../board/rules/any-history.testkit.ts';
import { courseOf } from '../../board/rules/course.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { hours, recordOf } from '../../board/rules/history.testkit.ts';
import { asRecorded, histories } from '../../board/rules/random-history.testkit.ts';
import { anyWard } from '../../board/rules/random-ward.testkit.ts';
import { rulesOf } from '../../wards/rules/ward-state.ts';
import { changesBetween } from './changes.ts';
import { huddleOf } from './huddle.ts';
import { boardOf } from './round.testkit.ts';
import { roundOf } from './round.ts';
import { totalsOf } from './totals.ts';

const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));
const stays = fc.array(fc.oneof(histories.map(asRecorded), anyHistory), { minLength: 1, maxLength: 3 });
const lists = huddlePage.pick({
  needLift: true,
  overdue: true,
  holds: true,
  notUp: true,
  twoPeople: true,
  arrived: true,
  holdsToday: true,
  leavingShort: true,
  leavingOthers: true,
  totals: true,
});

/** Every entry named as the ground of something, wherever it stands. */
function grounds(value: unknown, key = ''): string[] {
  if (typeof value === 'string') return key === 'facts' || key === 'event' ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((one) => grounds(one, key));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([k, one]) => grounds(one, k));
}

describe('what is read of any ward', { timeout: patience }, () => {
  it('is said without a fault, in the shape that the screens read, of entries that are in the log', () => {
    let [listed, drawn, counted] = [0, 0, 0];
    fc.assert(
      fc.property(stays, at, at, anyWard, (all, one, other, { ward, calendar }) => {
        const [before, t] = [Math.min(one, other), Math.max(one, other)];
        const records = all.map((told) => recordOf(told));
        const boardAt = (when: number) =>
          boardOf(...records.map((r) => evaluateStay(r, ward, calendar, when).view));
        const board = boardAt(t);
        const rules = rulesOf(ward);

        const huddle = huddleOf(board, t, calendar, rules);
        expect(lists.safeParse(huddle).error).toBeUndefined();
        const round = roundOf({ board, calendar, rules, t, asker: null, on: null });
        const changes = changesBetween(boardAt(before), board, [], String);
        const courses = records.flatMap((r) => courseOf(r, ward, calendar, t) ?? []);
        for (const course of courses) {
          const sent = { ...course, ward: 'ward-1' as WardId, stay: 'stay-1', position: 0 };
          expect(stayCourse.safeParse(sent).error).toBeUndefined();
        }
        const totals = records.flatMap((r) => totalsOf(r, calendar, t, rules));
        expect(totals.filter(({ from, to }) => from >= to)).toEqual([]);
        // A gap is no zero, and nothing is counted in one.
        expect(totals.filter((day) => !day.recorded && day.timesUp > 0)).toEqual([]);

        const logged = new Set<string>(records.flatMap(({ events }) => events.map((e) => e.id)));
        const named = grounds([huddle, round, changes, courses]);
        expect(named.filter((id) => !logged.has(id))).toEqual([]);
        listed += named.length;
        drawn += courses.length;
        counted += totals.length;
      }),
      runs(60),
    );
    // With nothing listed, drawn or counted the rest would say nothing.
    expect(Math.min(listed, drawn, counted)).toBeGreaterThan(0);
  });
});
