import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { TRIGGER_HELP } from '@footboard/shared/capabilities/handling/rules/trigger-help';
import { triggerKind } from '@footboard/shared/capabilities/orders/values';
import { fence } from '@footboard/shared/capabilities/stays/values';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
// @ts-expect-error a plain script without types
import { clinicalRules } from '../../docs/clinical-rules.mjs';
// @ts-expect-error a plain script without types
import { limitsOf, value, words } from '../../docs/clinical/markdown.mjs';
// @ts-expect-error a plain script without types
import { TABLES } from '../../docs/clinical/moving.mjs';

interface Limit {
  readonly value: unknown;
  readonly source: string;
}
interface AnyTable {
  readonly source: string;
  readonly rows: readonly { readonly says: string }[];
}
const made: string = clinicalRules();
const missing = (all: readonly string[]): string[] => all.filter((one) => !made.includes(one));

it('docs/clinical-rules.md says what the program runs (npm run docs)', () => {
  const written = readFileSync(new URL('../../docs/clinical-rules.md', import.meta.url), 'utf8');
  expect(written).toBe(made);
});

describe('the clinical rules as a clinician reads them', () => {
  it('have every limit with its value and where it is from', () => {
    const limits = limitsOf(DEFAULT_RULES) as [string[], Limit][];
    expect(limits.length).toBeGreaterThan(100);
    const rows = limits.map(([path, l]) => `${words(path.at(-1))} | ${value(l.value)} | ${l.source}`);
    expect(missing(rows)).toEqual([]);
  });

  it('have every part of the staged check, every row of every table and every trigger', () => {
    const parts = DEFAULT_PROTOCOL.stages.flatMap((s) => s.parts.map((p) => `| ${p.says} |`));
    const rows = (TABLES as [string, AnyTable][]).flatMap(([, t]) => [
      t.source,
      ...t.rows.map((r) => r.says),
    ]);
    const triggers = triggerKind.options.map((k) => `| ${words(k)} | `);
    expect(missing([...parts, ...rows, ...triggers])).toEqual([]);
    expect(Object.keys(TRIGGER_HELP).toSorted()).toEqual(triggerKind.options.toSorted());
  });

  it('say what the software is not, for whom it says nothing, and where to sign', () => {
    expect(missing(fence.options.map((f) => `- ${words(f)}`))).toEqual([]);
    expect(missing(['not an alarm', 'not a substitute for judgement', '## Signature'])).toEqual([]);
  });

  it('list each value that no published source was read for once more at the end', () => {
    const toSign = made.slice(made.indexOf('## To be signed'));
    const unsure = (limitsOf(DEFAULT_RULES) as [string[], Limit][]).filter(([, l]) =>
      /no source|from memory/.test(l.source),
    );
    expect(unsure.length).toBeGreaterThan(40);
    const lines = unsure.map(
      ([path, l]) => `| ${path.map((p) => words(p)).join(': ')} | ${value(l.value)} |`,
    );
    expect(lines.filter((line) => !toSign.includes(line))).toEqual([]);
  });

  it('have no hole where a value should stand', () => {
    expect(made).not.toMatch(/undefined|\[object|NaN|\| null \|/);
  });
});
