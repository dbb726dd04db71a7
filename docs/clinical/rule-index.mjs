import { STAGE_MEANINGS } from '@footboard/shared/capabilities/assessments/rules/protocol';
import { TRIGGER_HELP } from '@footboard/shared/capabilities/handling/rules/trigger-help';
import { table } from './markdown.mjs';
import { RULE_WORDS } from './rule-words.mjs';

const all = () => [
  ...Object.entries(RULE_WORDS),
  ...Object.entries(TRIGGER_HELP).map(([kind, row]) => [`trigger/${kind}`, `${row.says}.`]),
  ...STAGE_MEANINGS.map((stage) => [
    `tier/${stage}`,
    `Two entries of the same time disagree on the stage ${stage}: the safer one stands.`,
  ]),
];

/** Every rule that can stand under "why" on the board, by the name it has there. */
export const ruleIndex = () => [
  '## Index of rules',
  '',
  'Each answer of the board names the rules and the entries it stands on. These are their names, one line each. The lists of',
  'the round, the huddle and the day plan have names of their own: they order work and decide no help.',
  '',
  ...table(
    ['rule', 'what it says'],
    all()
      .toSorted(([a], [b]) => (a < b ? -1 : 1))
      .map(([rule, says]) => [`\`${rule}\``, says]),
  ),
];
