import { isQualified, role } from '@footboard/shared/kernel/author';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { mayUse } from '@footboard/server/capabilities/people/policy';
import { table, words } from './markdown.mjs';

export const who = () => [
  '## Who may make it freer',
  '',
  'Anyone can make it safer; only a qualified person can make it freer. Roles of the trade, common practice, no source;',
  'local law and policy decide.',
  '',
  `May make it freer: ${role.options
    .filter((r) => isQualified({ role: r }))
    .map(words)
    .join(', ')}.`,
  '',
  ...table(
    ['entry', 'who may make it'],
    [...COMMAND_TYPES.keys()].map((name) => {
      const may = role.options.filter((r) => mayUse(name, r));
      return [words(name), may.length === role.options.length ? 'everyone' : may.map(words).join(', ')];
    }),
  ),
];
