/** What is refused at the door, and what is wrong with a document: place, words and remedy, as they were read before. */
import type { DataOf } from '../../../kernel/command-type.ts';
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { recordAssessment } from '../commands.ts';
import type { Finding, Reading, StageRecord } from '../values.ts';
import { allMet, hours, notMet, record, upTo, type StageSays } from './assessment.testkit.ts';
import { checkAssessment } from './check-record.ts';
import { checkUnder, LONG, SHORT } from './own-protocol.testkit.ts';
import { checkProtocol, DEFAULT_PROTOCOL, protocolWarnings, type Protocol } from './protocol.ts';
import { toIso } from '../../../kernel/times.ts';

type Data = DataOf<typeof recordAssessment>;
const at = toIso(hours(0));
const data = (stages: Record<string, StageSays> | readonly StageRecord[], extra: object = {}): Data =>
  ({
    stay: 's1',
    protocol: { id: DEFAULT_PROTOCOL.id, version: DEFAULT_PROTOCOL.version },
    depth: 'full',
    readings: [],
    stages: Array.isArray(stages) ? stages : Object.entries(stages).map(([s, says]) => record(s, 0, says)),
    ...extra,
  }) as Data;
const at1 = (posture: string, minute: number): Reading =>
  ({ kind: 'pressure', posture, minute, systolic: 120, diastolic: 70, at }) as Reading;
const SET = [at1('lying', 5), at1('standing', 1), at1('standing', 3)];
const SIDES = ['left', 'right', undefined] as const;

/** Of every part of every stage: left out, not tested, not met, not applicable, twice, with a wrong side or reason. */
const byPart = DEFAULT_PROTOCOL.stages.flatMap(({ id: stage, parts }) =>
  parts.flatMap((part) => {
    const side = part.sided ? ('left' as const) : undefined;
    const is = (f: Finding) => f.part === part.id && f.side === side;
    const otherwise = (change: (f: Finding) => readonly object[], both = false) =>
      allMet(stage).flatMap((f) => (is(f) || (both && f.part === part.id) ? change(f) : [f])) as Finding[];
    const ways: readonly (readonly [string, Finding[]])[] = [
      ['left out', otherwise(() => [])],
      ['left out on both sides', otherwise(() => [], true)],
      ['not tested', otherwise((f) => [{ ...f, result: 'not-tested', reason: 'pain' }])],
      ['not tested on both sides', otherwise((f) => [{ ...f, result: 'not-tested', reason: 'pain' }], true)],
      ['not met', otherwise((f) => [{ ...f, result: 'not-met' }])],
      ['not met on both sides', otherwise((f) => [{ ...f, result: 'not-met' }], true)],
      ['not applicable', otherwise((f) => [{ ...f, result: 'not-applicable', reason: 'cast' }])],
      [
        'not applicable on both sides',
        otherwise((f) => [{ ...f, result: 'not-applicable', reason: 'limb-absent' }], true),
      ],
      [
        'not tested, by a reason of the other list',
        otherwise((f) => [{ ...f, result: 'not-tested', reason: 'cast' }]),
      ],
      [
        'not applicable, by a reason of the other list',
        otherwise((f) => [{ ...f, result: 'not-applicable', reason: 'pain' }]),
      ],
      ['not applicable, without a reason', otherwise((f) => [{ ...f, result: 'not-applicable' }])],
      ['twice', otherwise((f) => [f, f])],
      [
        'with a side it has not, or without one',
        otherwise((f) => [{ ...f, side: SIDES[part.sided ? 2 : 0] }]),
      ],
    ];
    return ways.map(
      ([how, findings]) =>
        [
          `${stage}: ${part.id} ${how}`,
          () => checkAssessment(DEFAULT_PROTOCOL, data(upTo(stage, { [stage]: { findings } }))),
        ] as const,
    );
  }),
);
const refusals = (title: string, of: () => Data, protocol: Protocol = DEFAULT_PROTOCOL) =>
  [title, () => checkAssessment(protocol, of())] as const;
const noLeg = (side: 'left' | 'right'): Finding[] =>
  allMet('stand').map((f) =>
    f.part === 'leg-bears' && f.side === side ? { ...f, result: 'not-applicable', reason: 'cast' } : f,
  );
const arms = (left: object, right: object): Finding[] =>
  allMet('upright').map((f) =>
    f.part === 'arm-pushes' ? { ...f, ...(f.side === 'left' ? left : right) } : f,
  ) as Finding[];
const UNTESTED = { result: 'not-tested', reason: 'pain' };

const records = [
  ...DEFAULT_PROTOCOL.stages.flatMap(({ id }) => [
    refusals(`whole up to ${id}`, () => data(upTo(id))),
    refusals(`${id} not met, nothing after it`, () => data(upTo(id, { [id]: notMet() }))),
    ...['raised-bed', 'sling', 'standing-aid', 'two-people'].map((by) =>
      refusals(`${id} held by ${by}`, () =>
        data(upTo(id, { [id]: { how: 'secured', securedWith: by as 'sling' } })),
      ),
    ),
    refusals(`${id} on the left leg`, () => data(upTo(id, { [id]: { oneLeg: 'left' } }))),
    refusals(`${id} not met, and gone on`, () => data(upTo('walk', { [id]: notMet() }))),
    refusals(`${id} not met, the next not tested`, () =>
      data(
        upTo('walk', {
          ...Object.fromEntries(
            DEFAULT_PROTOCOL.stages
              .slice(DEFAULT_PROTOCOL.stages.findIndex((s) => s.id === id) + 1)
              .map((s) => [
                s.id,
                { outcome: 'not-tested', reason: 'stopped-before', findings: [] } as StageSays,
              ]),
          ),
          [id]: notMet(),
        }),
      ),
    ),
    refusals(`without ${id}`, () =>
      data(Object.fromEntries(Object.entries(upTo('walk')).filter(([s]) => s !== id))),
    ),
    refusals(`${id} without findings`, () => data(upTo(id, { [id]: { findings: [] } }))),
    refusals(`${id} with a part that is none`, () =>
      data(upTo(id, { [id]: { findings: [{ part: 'hops', result: 'met' }] } })),
    ),
  ]),
  refusals('another protocol', () => data(upTo('clear'), { protocol: { id: 'other', version: 1 } })),
  refusals('another version', () =>
    data(upTo('clear'), { protocol: { id: DEFAULT_PROTOCOL.id, version: 2 } }),
  ),
  refusals('a stage that is none', () =>
    data([record('clear', 0), { ...record('upright', 0), stage: 'hop' }]),
  ),
  refusals('a stage twice', () => data([record('clear', 0), record('clear', 0)])),
  refusals('more stages than there are', () =>
    data([...Object.keys(upTo('walk')).map((s) => record(s, 0)), record('walk', 0)]),
  ),
  refusals('times backwards', () => data([record('clear', 1), record('upright', 0)])),
  refusals('times alike', () => data([record('clear', 1), record('upright', 1)])),
  ...(['left', 'right'] as const).flatMap((leg) => [
    refusals(`one ${leg} leg in a cast, both arms push`, () =>
      data(upTo('stand', { stand: { findings: noLeg(leg) } })),
    ),
    refusals(`one ${leg} leg said, the other in a cast`, () =>
      data(upTo('stand', { stand: { findings: noLeg(leg), oneLeg: leg === 'left' ? 'right' : 'left' } })),
    ),
    refusals(`the ${leg} leg said, and that one in a cast`, () =>
      data(upTo('stand', { stand: { findings: noLeg(leg), oneLeg: leg } })),
    ),
    refusals(`on the ${leg} leg, an arm not seen to push`, () =>
      data(upTo('stand', { upright: { findings: arms({}, UNTESTED) }, stand: { oneLeg: leg } })),
    ),
    refusals(`on the ${leg} leg, an arm that does not push`, () =>
      data(upTo('stand', { upright: { findings: arms({ result: 'not-met' }, {}) }, stand: { oneLeg: leg } })),
    ),
    refusals(`on the ${leg} leg, arms not told of`, () =>
      data(
        upTo('stand', {
          upright: { findings: allMet('upright').filter((f) => f.part !== 'arm-pushes') },
          stand: { oneLeg: leg },
        }),
      ),
    ),
    refusals(`on the ${leg} leg, nothing found upright`, () =>
      data(upTo('stand', { upright: { findings: [] }, stand: { oneLeg: leg } })),
    ),
    refusals(`on the ${leg} leg, upright not tested`, () =>
      data(
        upTo('stand', {
          upright: { outcome: 'not-tested', reason: 'pain', findings: arms(UNTESTED, UNTESTED) },
          stand: { oneLeg: leg },
        }),
      ),
    ),
  ]),
  ...[[], ['dizzy'], ['faint', 'nausea']].flatMap((risingSymptoms) =>
    (['stand', 'walk'] as const).flatMap((last) => [
      refusals(`up to ${last}, symptoms ${risingSymptoms.join(' ') || 'none'}`, () =>
        data(upTo(last), { risingSymptoms }),
      ),
      refusals(`up to ${last} with the set, symptoms ${risingSymptoms.join(' ') || 'none'}`, () =>
        data(upTo(last), { risingSymptoms, depth: 'full-with-pressure', readings: SET }),
      ),
      refusals(
        `stand not met with the set missing (${last}), symptoms ${risingSymptoms.join(' ') || 'none'}`,
        () =>
          data(upTo('stand', { stand: notMet('rises') }), { risingSymptoms, depth: 'full-with-pressure' }),
      ),
    ]),
  ),
  refusals('the set without an answer on symptoms', () =>
    data(upTo('stand'), { depth: 'full-with-pressure', readings: SET }),
  ),
  refusals('the set, upright only', () => data(upTo('edge'), { depth: 'full-with-pressure' })),
  ...SET.map((_, i) =>
    refusals(`the set without its reading ${i + 1}`, () =>
      data(upTo('stand'), {
        depth: 'full-with-pressure',
        risingSymptoms: [],
        readings: SET.filter((__, j) => j !== i),
      }),
    ),
  ),
  refusals('the set without any reading', () =>
    data(upTo('stand'), { depth: 'full-with-pressure', risingSymptoms: [] }),
  ),
  ...[SHORT, LONG].flatMap((protocol) => [
    ...protocol.stages.flatMap((s) => [
      refusals(
        `${protocol.id}: whole up to ${s.id}`,
        () => ({ stay: 's1', ...checkUnder(protocol, s.id, hours(0)) }) as Data,
        protocol,
      ),
      refusals(
        `${protocol.id}: ${s.id} held by a sling`,
        () =>
          ({
            stay: 's1',
            ...checkUnder(protocol, s.id, hours(0), { [s.id]: { how: 'secured', securedWith: 'sling' } }),
          }) as Data,
        protocol,
      ),
      refusals(
        `${protocol.id}: ${s.id} on the right leg`,
        () =>
          ({ stay: 's1', ...checkUnder(protocol, s.id, hours(0), { [s.id]: { oneLeg: 'right' } }) }) as Data,
        protocol,
      ),
    ]),
    refusals(
      `${protocol.id}: with the set and none taken`,
      () =>
        ({
          stay: 's1',
          ...checkUnder(protocol, protocol.stages.at(-1)!.id, hours(0)),
          depth: 'full-with-pressure',
          risingSymptoms: [],
        }) as Data,
      protocol,
    ),
    refusals(
      `${protocol.id}: with symptoms`,
      () =>
        ({
          stay: 's1',
          ...checkUnder(protocol, protocol.stages.at(-1)!.id, hours(0)),
          risingSymptoms: ['faint'],
        }) as Data,
      protocol,
    ),
  ]),
];

/** A document of a ward, with one field otherwise; `undefined` takes the field out. */
function changed(of: Protocol, path: readonly (string | number)[], value: unknown): unknown {
  const copy = structuredClone({ ...of, id: of.id === DEFAULT_PROTOCOL.id ? 'our-own' : of.id }) as never;
  let at_: Record<string | number, unknown> = copy;
  for (const key of path.slice(0, -1)) at_ = at_[key] as Record<string | number, unknown>;
  const last = path.at(-1)!;
  if (value === undefined) delete at_[last];
  else at_[last] = value;
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
        s.parts.map(({ shows: _, ...p }) => p),
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

heldAgainst(new URL('told-doors.txt', import.meta.url), [...records, ...byPart, ...documents]);
