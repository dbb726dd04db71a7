/** What is wrong with a protocol document, and what it leaves out: place and words, as they were read before. */
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { LONG, SHORT } from './own-protocol.testkit.ts';
import { checkProtocol, DEFAULT_PROTOCOL, protocolWarnings, type Protocol } from './protocol.ts';

/** A document of a ward, with one field otherwise; `undefined` takes the field out. */
function changed(of: Protocol, path: readonly (string | number)[], value: unknown): unknown {
  const copy = structuredClone({ ...of, id: of.id === DEFAULT_PROTOCOL.id ? 'our-own' : of.id }) as never;
  let place: Record<string | number, unknown> = copy;
  for (const key of path.slice(0, -1)) place = place[key] as Record<string | number, unknown>;
  const last = path.at(-1)!;
  if (value === undefined) delete place[last];
  else place[last] = value;
  return copy;
}
const document = (title: string, of: () => unknown) =>
  [
    title,
    () => {
      const checked = checkProtocol(of());
      return 'ok' in checked ? { passes: true, warnings: protocolWarnings(checked.ok) } : checked;
    },
  ] as const;
const values = (path: readonly (string | number)[], ...all: readonly unknown[]) =>
  all.map((value) =>
    document(
      `document: ${path.join('/')} = ${value === undefined ? 'left out' : JSON.stringify(value)}`,
      () => changed(DEFAULT_PROTOCOL, path, value),
    ),
  );
const documents = [
  document('document: no object', () => 'a text'),
  document('document: nothing', () => null),
  document('document: the default as it is', () => DEFAULT_PROTOCOL),
  document('document: short', () => SHORT),
  document('document: long', () => LONG),
  ...values(['id'], 'our-own', 'Our own', '', 7, undefined),
  ...values(['lowestWord'], 'walk', 'NOT KNOWN', 'Edge '),
  document('document: nobody stands on one leg, and a leg that bears nothing only informs', () =>
    changed(
      changed(DEFAULT_PROTOCOL, ['stages', 3, 'oneLegRoute'], false) as Protocol,
      ['stages', 3, 'parts', 1, 'gate'],
      'informs',
    ),
  ),
  document('document: short, and no grip', () =>
    changed(SHORT, ['stages', 1, 'parts', 2, 'shows'], undefined),
  ),
  document('document: a field with a slash and a tilde', () => changed(DEFAULT_PROTOCOL, ['a/b~c'], 1)),
  ...values(['version'], 0, 1.5, 'two', 2),
  ...values(['name'], '', '  ', 'x'.repeat(401), undefined, 4),
  ...values(['reviewBy'], '2027', '2027-05-31', undefined, 3),
  ...values(['lowestWord'], 'Not known', 'Walk', 'x'.repeat(25), ''),
  ...values(['stages'], [], 'none', undefined),
  ...values(['colour'], 'blue'),
  ...[
    'id',
    'word',
    'says',
    'shows',
    'parts',
    'securedBy',
    'firstTimeSecured',
    'symptomStops',
    'oneLegRoute',
    'source',
  ].flatMap((field) => values(['stages', 3, field], undefined, 5)),
  ...DEFAULT_PROTOCOL.stages.flatMap((s, i) => [
    ...values(
      ['stages', i, 'word'],
      null,
      'Walk',
      'Not known',
      s.word?.toUpperCase() ?? 'Begun',
      s.word === null ? 'again' : ` ${s.word} `,
    ),
    ...values(['stages', i, 'shows'], null, 'clear', 'stand', 'walk', 'hop'),
    ...values(['stages', i, 'id'], 'clear', 'walk', 'Upper'),
    ...values(
      ['stages', i, 'securedBy'],
      [],
      ['sling'],
      ['raised-bed'],
      ['standing-aid'],
      ['two-people', 'sling', 'two-people'],
      ['rope'],
    ),
    ...values(['stages', i, 'firstTimeSecured'], true),
    ...values(['stages', i, 'symptomStops'], true, false),
    ...values(['stages', i, 'oneLegRoute'], true, false),
    ...s.parts.flatMap((p, j) => [
      ...values(['stages', i, 'parts', j, 'gate'], 'one-side', 'informs', 'required', 'maybe'),
      ...values(['stages', i, 'parts', j, 'sided'], !p.sided),
      ...values(
        ['stages', i, 'parts', j, 'shows'],
        undefined,
        'leg-bears',
        'grip',
        'sits-unheld',
        'arm-pushes',
        'comes-to-edge',
      ),
      ...values(['stages', i, 'parts', j, 'id'], s.parts[0]!.id, 'two words'),
      ...values(['stages', i, 'parts', j, 'says'], s.parts[0]!.says, s.parts.at(-1)!.says, ''),
    ]),
    document(`document: without stage ${s.id}`, () =>
      changed(
        DEFAULT_PROTOCOL,
        ['stages'],
        DEFAULT_PROTOCOL.stages.filter((o) => o !== s),
      ),
    ),
    document(`document: ${s.id} alone`, () => changed(DEFAULT_PROTOCOL, ['stages'], [s])),
    document(`document: ${s.id} at the end`, () =>
      changed(DEFAULT_PROTOCOL, ['stages'], [...DEFAULT_PROTOCOL.stages.filter((o) => o !== s), s]),
    ),
    document(`document: nothing decides ${s.id}`, () =>
      changed(
        DEFAULT_PROTOCOL,
        ['stages', i, 'parts'],
        s.parts.map((p) => ({ ...p, gate: 'informs' })),
      ),
    ),
    document(`document: no part of ${s.id}`, () => changed(DEFAULT_PROTOCOL, ['stages', i, 'parts'], [])),
    document(`document: ${s.id} without what it shows`, () =>
      changed(
        DEFAULT_PROTOCOL,
        ['stages', i, 'parts'],
        s.parts.map((p) => ({ ...p, shows: undefined })),
      ),
    ),
  ]),
  ...values(['pressureSet', 'lying'], false, 'no'),
  ...values(
    ['pressureSet', 'standingMinutes'],
    [],
    [1],
    [3, 1],
    [1, 1],
    [1, 2],
    [1, 2.1],
    [0, 31],
    [1, 2, 3, 4, 5, 6, 7],
  ),
  ...values(['pressureSet', 'within'], 0, 1, 0.9, 6, -1),
  ...values(['toldApart', 'exactMinutes'], -1, 61, 0, 60),
  ...values(['toldApart', 'aboutMinutes'], 0, 241, 0.5),
];

heldAgainst(new URL('told-documents.txt', import.meta.url), documents);
