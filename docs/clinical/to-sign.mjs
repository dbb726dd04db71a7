import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { CHAIR_STANDS } from '@footboard/shared/capabilities/measures/rules/tables/chair-stands';
import { SIX_MINUTE_WALK } from '@footboard/shared/capabilities/measures/rules/tables/six-minute-walk';
import { WALKING_SPEED } from '@footboard/shared/capabilities/measures/rules/tables/walking-speed';
import { SEGMENT_TABLES } from '@footboard/shared/capabilities/handling/rules/tables/segments';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { limitsOf, table, value, words } from './markdown.mjs';
import { TABLES } from './moving.mjs';

const UNSURE = /practice|from memory|no published source|weak copy|restated|to be signed/;

/** Everything that no published source was read for, wherever it stands. */
export function toSign() {
  const rows = [
    ...limitsOf(DEFAULT_RULES).map(([path, l]) => [path.map(words).join(': '), value(l.value), l.source]),
    ...DEFAULT_PROTOCOL.stages.flatMap((s) => [
      [`stage ${s.id}`, s.says, s.source],
      ...s.parts.map((p) => [`stage ${s.id}: ${words(p.id)}`, p.says, p.source]),
    ]),
    ...TABLES.map(([name, t]) => [`table: ${name}`, 'every row', t.source]),
    ...Object.values(SEGMENT_TABLES).map((t) => ['parts of the body', 'every share', t.source]),
    ...[CHAIR_STANDS, SIX_MINUTE_WALK, WALKING_SPEED].map((t) => [
      'walking measures',
      'every value',
      t.source,
    ]),
  ].filter(([, , source]) => UNSURE.test(source));
  return [
    '## To be signed: what no published source was read for',
    '',
    'Common practice, from memory, restated by others or our own. Besides these: the rules before the tables, the rows of the',
    'triggers, what follows from a fall of the pressure, the goals and signs, and who may make which entry.',
    '',
    ...table(['what', 'value', 'where it is from'], rows),
  ];
}
