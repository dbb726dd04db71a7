import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { SETS_READ } from '@footboard/shared/capabilities/assessments/rules/read-in';
import { SEGMENTS_READ, TABLES_READ } from '@footboard/shared/capabilities/handling/rules/tables/read-in';
import { MEASURES_READ } from '@footboard/shared/capabilities/measures/rules/tables/read-in';
import { limitRead } from '@footboard/shared/capabilities/wards/rules/read-in';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { limitsOf, table, title, value, words } from './markdown.mjs';
import { TABLES } from './moving.mjs';

const PRACTICE = /practice|to be signed/;

/** Every table, published set and part of the body with how far it was read: [what, read]. */
export const setsRead = () => [
  ...TABLES.map(([name, t]) => [`table: ${name} (${t.source})`, TABLES_READ[t.rule]]),
  ...Object.entries(SEGMENTS_READ).map(([name, read]) => [`parts of the body: ${words(name)}`, read]),
  ...Object.entries(MEASURES_READ).map(([name, read]) => [`walking measures: ${words(name)}`, read]),
  ...Object.entries(SETS_READ),
];

export const limitsRead = () =>
  limitsOf(DEFAULT_RULES).map(([path, limit]) => ({ path, limit, read: limitRead(path, limit) }));

/** How many limits of each group were read how far. */
function groups() {
  const counted = new Map();
  for (const { path, read } of limitsRead()) {
    const of = counted.get(path[0]) ?? {};
    of[read.status] = (of[read.status] ?? 0) + 1;
    counted.set(path[0], of);
  }
  const heads = ['confirmed', 'restated', 'from memory', 'practice'];
  return table(
    ['limits', ...heads],
    [...counted].map(([group, of]) => [title(words(group)), ...heads.map((h) => of[h] ?? 0)]),
  );
}

const protocolParts = () =>
  DEFAULT_PROTOCOL.stages
    .flatMap((s) => [
      [`stage ${s.id}`, s.says, s.source],
      ...s.parts.map((p) => [`stage ${s.id}: ${words(p.id)}`, p.says, p.source]),
    ])
    .filter(([, , source]) => PRACTICE.test(source) || /from memory/.test(source))
    .map(([what, says, source]) => [
      what,
      says,
      /from memory/.test(source) ? 'from memory' : 'practice',
      source,
    ]);

/** Everything with how far it was read; then each thing that was not read in its published source. */
export function toSign() {
  const unread = limitsRead().filter(({ read }) => read.status !== 'confirmed');
  return [
    '## How far the sources were read',
    '',
    '**Confirmed**: read in the source itself, its abstract or its publisher’s page. **Restated**: read in somebody else’s',
    'restatement. **From memory**: in no text that could be read. **Practice**: no source, or our own.',
    '',
    ...table(
      ['table or published set', 'status', 'what to know', 'owner', 'review by'],
      setsRead().map(([what, read]) => [what, read.status, read.note, read.owner, read.reviewBy]),
    ),
    ...groups(),
    '## To be signed: what no published source was read for',
    '',
    'Common practice, from memory, restated by others or our own: each row of the list above that is not confirmed, each row',
    'below. Besides these: the rules before the tables, the rows of the triggers, what follows from a fall of the pressure, the',
    'goals and signs, who may make which entry, and every rule of the plan that names no source.',
    '',
    ...table(
      ['what', 'value', 'status', 'where it is from'],
      [
        ...unread.map(({ path, limit, read }) => [
          path.map(words).join(': '),
          value(limit.value),
          read.status,
          limit.source,
        ]),
        ...protocolParts(),
        ...setsRead()
          .filter(([, read]) => read.status !== 'confirmed')
          .map(([what, read]) => [what, 'every value', read.status, read.note]),
      ],
    ),
  ];
}
