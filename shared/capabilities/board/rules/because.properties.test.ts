/** Design rule 10: each reason that a view gives names facts of the stay's own log, and it names some. */
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { patience, runs } from '../../../kernel/runs.testkit.ts';
import type { Because } from '../because.ts';
import { anyHistory } from './any-history.testkit.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { check, hours, recordOf, type Told } from './history.testkit.ts';
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
 * Reasons that may name no entry, by rule: what was never recorded, what applies to everyone, and what
 * only says a table's row beside the reason that chose it.
 */
const STANDS_ON_NOTHING: ReadonlySet<string> = new Set([
  // Applies to everyone.
  'stand-by',
  'manual-load',
  'trust/re-check',
  // Never recorded or never seen: there is no entry to name.
  'weight/unknown',
  'ours/in-chair-weight',
  'capability/not-seen-standing',
  'capability/not-recorded',
  'capability/assists',
  'goal/usual-way-not-known',
  'today/not-recorded',
  'mayStart.reasons',
  // Beside the reason that names the entry.
  'before-the-tables/not-cooperating',
  'ours/does-not-wait',
  'ours/limited-leg',
  'ours/stand',
  'ours/walk',
  'osha-3182/figure-2',
  'osha-3182/figure-4',
  'osha-3182/figure-5',
  'va-bariatric/lateral',
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

  it('WHY-2 name at least one entry once the person was checked, but for those that stand on nothing seen', () => {
    fc.assert(
      fc.property(histories, at, anyWard, (all, t, { ward, calendar }) => {
        const checked: Told[] = [...all, { ...check('walk', 0), id: 'checked' }];
        const { view } = evaluateStay(recordOf(checked), ward, calendar, t);
        const bare = reasonsIn(view).filter(
          ({ of, reason }) => reason.facts.length === 0 && !STANDS_ON_NOTHING.has(reason.rule ?? of),
        );
        expect(bare.map(({ of, reason }) => `${of}: ${reason.rule}: ${reason.words}`)).toEqual([]);
        // Taken together: what holds the person where they are, how far it is believed, when to look again.
        const { tier, trust, due } = view;
        const named = {
          tier: tier.because,
          trust: trust.because,
          due: due.because,
        };
        for (const [of, reasons] of Object.entries(named)) {
          expect(`${of}: ${reasons.flatMap((r) => r.facts).length > 0}`).toBe(`${of}: true`);
        }
      }),
      runs(100),
    );
  });
});
