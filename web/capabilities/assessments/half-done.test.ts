import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { HOUR } from '@footboard/shared/kernel/times';
import { stillCounts } from './half-done.ts';

const BEGUN = Date.UTC(2026, 10, 25, 9, 12);
const { id, version } = DEFAULT_PROTOCOL;
const kept = { begun: BEGUN, protocol: { id, version } };
const counts = (after: number, over: { version?: number } = {}) =>
  stillCounts(kept, {
    rules: DEFAULT_RULES,
    protocol: { ...DEFAULT_PROTOCOL, version: over.version ?? version },
    now: BEGUN + after,
  });
const LIMIT = DEFAULT_RULES.start.readingHours.value * HOUR;

describe('BEDSIDE-2 a half-done check', () => {
  it('may be gone on with as long as the ward lets a reading count, and no longer', () => {
    expect([counts(0), counts(LIMIT), counts(LIMIT + 1)]).toEqual([true, true, false]);
  });
  it('is not gone on with under another version of the protocol', () => {
    expect(counts(60_000, { version: version + 1 })).toBe(false);
  });
  it('of a time that is still to come is not believed', () => {
    expect(counts(-60_000)).toBe(false);
  });
});
