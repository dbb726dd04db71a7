import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { STAGE_MEANINGS } from '@footboard/shared/capabilities/assessments/rules/protocol';
import { triggerKind } from '@footboard/shared/capabilities/orders/values';
// @ts-expect-error a plain script without types
import { ruleIndex } from '../../docs/clinical/rule-index.mjs';

const CAPABILITIES = new URL('../../shared/capabilities/', import.meta.url);
/** The rooms whose rules decide help, trust, what is due, goals and signs. */
const ROOMS = ['assessments', 'board', 'handling', 'sessions', 'orders', 'stays', 'measures'];
const GROUPS =
  'ours|before-the-tables|capability|tier|may-start|due|trust|rising|secured|weight|night|attachments|order|scope|not-known|goal|debt|progression|signs|next-check|start|osha-3182|va-bariatric';

const code = ROOMS.flatMap((room) => {
  const folder = new URL(`${room}/rules/`, CAPABILITIES);
  return (readdirSync(folder, { recursive: true }) as string[])
    .filter((name) => name.endsWith('.ts') && !/\.(test|testkit)\.ts$/.test(name))
    .map((name) => ({ name: `${room}/${name}`, text: readFileSync(new URL(name, folder), 'utf8') }));
});
const found = (pattern: RegExp, text: string) => [...text.matchAll(pattern)].map((m) => m[1]!);

const inCode = [
  ...code.flatMap(({ text }) => found(new RegExp(`['"\`]((?:${GROUPS})/[a-z0-9-]+)['"\`]`, 'g'), text)),
  // Demands and cautions name their rule first; some of those names have one word only.
  ...code.flatMap(({ text }) =>
    found(/\b(?:demand|stop|note|caution|onePersonMore)\(\s*'([a-z][a-z/-]+)'/g, text),
  ),
  ...found(/\bsay\(\s*'([a-z/-]+)'/g, code.find((c) => c.name.endsWith('stay-cautions.ts'))!.text),
  ...found(/\bsay\(\s*'([a-z-]+)'/g, code.find((c) => c.name.endsWith('next-check.ts'))!.text).map(
    (rule) => `next-check/${rule}`,
  ),
  ...triggerKind.options.map((kind) => `trigger/${kind}`),
  ...STAGE_MEANINGS.map((stage) => `tier/${stage}`),
];

it('every rule that can stand under "why" has a line in the index of rules', () => {
  const index = (ruleIndex() as string[]).join('\n');
  expect(new Set(inCode).size).toBeGreaterThan(100);
  expect([...new Set(inCode)].filter((rule) => !index.includes(`| \`${rule}\` | `))).toEqual([]);
});

it('the index of rules names no rule that the code no longer has', () => {
  const named = found(/\| `([^`]+)` \|/g, (ruleIndex() as string[]).join('\n'));
  // Said with the step in the name.
  const known = new Set([...inCode, 'progression/up', 'progression/back', 'hold', 'on-own']);
  expect(named.filter((rule) => !known.has(rule))).toEqual([]);
});
