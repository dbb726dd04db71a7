import { describe, expect, it } from 'vitest';
import { SEGMENT_TABLES } from '@footboard/shared/capabilities/handling/rules/tables/segments';
import { READ_STATUS, type ReadIn } from '@footboard/shared/kernel/read-in';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
// @ts-expect-error a plain script without types
import { clinicalRules } from '../../docs/clinical-rules.mjs';
// @ts-expect-error a plain script without types
import { limitsOf } from '../../docs/clinical/markdown.mjs';
// @ts-expect-error a plain script without types
import { TABLES } from '../../docs/clinical/moving.mjs';
// @ts-expect-error a plain script without types
import { limitsRead, setsRead } from '../../docs/clinical/to-sign.mjs';

const sets = setsRead() as [what: string, read: ReadIn | undefined][];
const limits = limitsRead() as { path: string[]; limit: { source: string }; read: ReadIn | null }[];
const toSign = (clinicalRules() as string).split('## To be signed')[1]!;
const statusOf = (what: string): (string | undefined)[] =>
  sets.filter(([name]) => name.includes(what)).map(([, read]) => read?.status);

describe('how far the sources of the rules were read', () => {
  it('is said of every table, set and limit, with an owner and a day to read it again', () => {
    const read = [...sets.map(([, r]) => r), ...limits.map((l) => l.read)];
    const whole = read.filter(
      (r) => r && READ_STATUS.includes(r.status) && r.note && r.owner && /^\d{4}-\d\d-\d\d$/.test(r.reviewBy),
    );
    expect(whole).toHaveLength(read.length);
    expect(limits).toHaveLength(limitsOf(DEFAULT_RULES).length);
    expect(sets.filter(([what]) => what.startsWith('table:'))).toHaveLength(TABLES.length);
    expect(statusOf('parts of the body')).toHaveLength(Object.keys(SEGMENT_TABLES).length);
  });

  // The project's list of check values gives each its status; these were not read at their source.
  it.each([
    ['figure 1', 'restated'],
    ['figure 2', 'restated'],
    ['figure 3', 'from memory'],
    ['figure 4', 'restated'],
    ['figure 5', 'restated'],
    ['figure 6', 'restated'],
    ['de leva', 'from memory'],
    ['chair stands', 'restated'],
    ['six minute walk: lower limit', 'from memory'],
    ['after a stroke', 'from memory'],
    ['active cooling', 'from memory'],
    ['every 12 hours', 'from memory'],
    ['cautions (age', 'from memory'],
    ['bars', 'restated'],
    ['Stop signs', 'restated'],
    ['lying, then standing', 'restated'],
  ])('calls %s %s', (what, status) => {
    expect([...new Set(statusOf(what))]).toEqual([status]);
  });

  it.each([
    'rising.initialSystolicFall',
    'rising.initialDiastolicFall',
    'rising.initialWithinSeconds',
    'rising.heartRateRise',
    'rising.lyingHighFrom',
    'criticalCare.heartRateAskFrom',
    'criticalCare.sedationBelow',
    'handling.bariatricFromKg',
    'walking.smallChange',
  ])('does not call the limit %s confirmed', (path) => {
    const found = limits.find((l) => l.path.join('.') === path);
    expect(found?.read?.status).toMatch(/^(restated|from memory)$/);
  });

  it('takes a source at its word that says practice, from memory or restated', () => {
    const unsure = limits.filter((l) => /practice|from memory|restated|weak copy/.test(l.limit.source));
    expect(unsure.length).toBeGreaterThan(40);
    expect(unsure.filter((l) => l.read?.status === 'confirmed')).toEqual([]);
  });

  it('puts everything that is not confirmed on the list to be signed', () => {
    const unread = sets.filter(([, read]) => read?.status !== 'confirmed').map(([what]) => `| ${what} |`);
    expect(unread.length).toBeGreaterThan(20);
    expect(unread.filter((line) => !toSign.includes(line))).toEqual([]);
  });
});
