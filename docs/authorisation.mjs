/** docs/authorisation.md, from the one policy document: who may do what, and what the server does with a name that is only claimed. */
import { ACTORS, POLICY, WITHOUT_A_WARD } from '@footboard/shared/capabilities/people/policy/document';
import { COMMAND_TYPES } from '@footboard/shared/capabilities/registry';
import { table } from './clinical/markdown.mjs';

const HEAD = {
  aide: 'aide',
  nurse: 'nurse',
  therapist: 'therapist',
  'charge-nurse': 'charge nurse',
  'handling-coordinator': 'handling coordinator',
  manager: 'manager',
  records: 'records',
  administrator: 'administrator',
  device: 'shared device, nobody signed in',
  wall: 'wall',
};
const KINDS = [
  ['command', 'Entries'],
  ['query', 'Reading'],
  ['live', 'Live messages'],
  ['export', 'Taking out and erasing'],
  ['account', 'Accounts, devices, openings'],
  ['concern', 'Near misses and strain, apart from the record'],
];
const MOVES = { safer: 'safer', freer: 'freer', neither: '' };

const lines = (heads, rows) => table(heads, rows).join('\n').trim();

const matrix = (kind) => {
  const command = kind === 'command';
  return lines(
    ['action', ...ACTORS.map((a) => HEAD[a]), ...(command ? ['moves', 'name only claimed'] : []), 'instead'],
    POLICY.filter((row) => row.kind === kind).map((row) => [
      command ? `${row.action}: ${COMMAND_TYPES.get(row.action)?.says ?? ''}` : row.action,
      ...ACTORS.map((a) => (row.actors.includes(a) ? 'yes' : '')),
      ...(command
        ? [MOVES[row.moves], row.unconfirmed === 'recorded' ? 'recorded, unconfirmed' : 'waits on the device']
        : []),
      row.instead,
    ]),
  );
};

export function authorisation() {
  return `${[
    '# Who may do what',
    'Made from `shared/capabilities/people/policy/document.ts` by `npm run docs`; a test fails when it is not current. Roles of the trade, common practice, no source; local law and policy decide.',
    'Everything is scoped by ward: a person acts in the role that the ward’s staff list gives them there, a wall and a shared device on the ward they are paired with. An administrator of the server is an administrator on every ward and sees boards as a wall without initials does.',
    '**Anyone can make it safer; only a qualified person can make it freer.** An entry whose author could not be checked stands as an aide’s, marked unconfirmed, until its author confirms it: it can only raise help.',
    'Somebody who has broken the glass (a reason, one hour, reviewed by somebody else) may read the ward and do what is marked safer, nothing more.',
    ...KINDS.flatMap(([kind, title]) => [`## ${title}`, matrix(kind)]),
    '## Without a ward',
    lines(
      ['action', 'for'],
      Object.entries(WITHOUT_A_WARD).map(([action, who]) => [
        action,
        { anyone: 'anyone', 'signed-in': 'whoever has signed in', wide: 'an administrator of the server' }[
          who
        ],
      ]),
    ),
  ].join('\n\n')}\n`;
}
