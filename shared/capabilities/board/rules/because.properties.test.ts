/** Design rule 10: each reason that a view gives names facts of the stay's own log, and it names some. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import type { Because } from '../because.ts';
import { anyHistory } from './any-history.testkit.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { hours, recordOf } from './history.testkit.ts';
import { asRecorded, histories } from './random-history.testkit.ts';
import { anyWard } from './random-ward.testkit.ts';

interface Given {
  /** Where in the view: "plan.day.because". */
  readonly of: string;
  readonly reason: Because;
}

/** Every reason anywhere in a view: whatever carries facts and words. */
function reasonsIn(value: unknown, of = ''): Given[] {
  if (Array.isArray(value)) return value.flatMap((one) => reasonsIn(one, of));
  if (typeof value !== 'object' || value === null) return [];
  const own = 'facts' in value && 'words' in value ? [{ of, reason: value as Because }] : [];
  return [
    ...own,
    ...Object.entries(value).flatMap(([key, one]) => reasonsIn(one, of === '' ? key : `${of}.${key}`)),
  ];
}

/** Every entry that a view names anywhere: in a reason, a conflict, a hold, a session that carries a proposal. */
const NAMES_ENTRIES = new Set(['event', 'facts', 'safer', 'other', 'sessions']);
function entriesIn(value: unknown, key = ''): string[] {
  if (typeof value === 'string') return NAMES_ENTRIES.has(key) ? [value] : [];
  if (Array.isArray(value)) return value.flatMap((one) => entriesIn(one, key));
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([k, one]) => entriesIn(one, k));
}

/**
 * Reasons that may name no entry, by rule: what applies to everyone, and what only says a table's row
 * beside the reason that chose it. What was never recorded names the arrival: it was not recorded since.
 */
const STANDS_ON_NOTHING: ReadonlySet<string> = new Set([
  // Applies to everyone.
  'stand-by',
  'manual-load',
]);

const at = fc.integer({ min: 0, max: 4 * 100 }).map((q) => hours(q / 4 + 1 / 60));
const anything = fc.oneof(histories, histories.map(asRecorded), anyHistory);

describe('the reasons of a view', { timeout: patience }, () => {
  it("WHY-1 name only entries of the stay's own log, in words", () => {
    fc.assert(
      fc.property(anything, at, anyWard, (all, t, { ward, calendar }) => {
        const record = recordOf(all);
        const { view } = evaluateStay(record, ward, calendar, t);
        const known = new Set<string>(record.events.map((e) => e.id));
        expect(entriesIn(view).filter((id) => !known.has(id))).toEqual([]);
        expect(reasonsIn(view).filter(({ reason }) => reason.words.trim() === '')).toEqual([]);
      }),
      runs(100),
    );
  });

  it('WHY-2 name at least one entry, from the arrival on, but for those that stand on nothing seen', () => {
    fc.assert(
      fc.property(histories, at, anyWard, (all, t, { ward, calendar }) => {
        const record = recordOf(all);
        // An arrival is never withdrawn (refusal placement-stands); of nothing at all nothing can be named.
        fc.pre(effectiveFacts(record).facts.some((f) => f.type === 'stay-begun' && f.occurred <= t));
        const { view } = evaluateStay(record, ward, calendar, t);
        const bare = reasonsIn(view).filter(
          ({ of, reason }) => reason.facts.length === 0 && !STANDS_ON_NOTHING.has(reason.rule ?? of),
        );
        expect(bare.map(({ of, reason }) => `${of}: ${reason.rule}: ${reason.words}`)).toEqual([]);
        // Taken together: what holds the person where they are, how far it is believed, when to look
        // again, and each task by day and by night.
        const { tier, trust, due, today, plan } = view;
        const named = [tier.because, trust.because, due.because, today.because];
        for (const task of plan ? [...plan.day, ...plan.night] : []) named.push(task.because);
        const nameless = named.filter((reasons) => reasons.flatMap((r) => r.facts).length === 0);
        expect(nameless.map((reasons) => reasons.map((r) => r.rule))).toEqual([]);
      }),
      runs(100),
    );
  });
});
