/** What is refused at the door: place, words and remedy, as they were read before. */
import type { DataOf } from '../../../kernel/command-type.ts';
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { recordAssessment } from '../commands.ts';
import type { Finding, Reading, StageRecord } from '../values.ts';
import { allMet, hours, notMet, record, upTo, type StageSays } from './assessment.testkit.ts';
import { checkAssessment } from './check-record.ts';
import { checkUnder, LONG, SHORT } from './own-protocol.testkit.ts';
import { DEFAULT_PROTOCOL, type Protocol } from './protocol.ts';
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
  }) as unknown as Data;
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
        () => ({ stay: 's1', ...checkUnder(protocol, s.id, hours(0)) }) as unknown as Data,
        protocol,
      ),
      refusals(
        `${protocol.id}: ${s.id} held by a sling`,
        () =>
          ({
            stay: 's1',
            ...checkUnder(protocol, s.id, hours(0), { [s.id]: { how: 'secured', securedWith: 'sling' } }),
          }) as unknown as Data,
        protocol,
      ),
      refusals(
        `${protocol.id}: ${s.id} on the right leg`,
        () =>
          ({
            stay: 's1',
            ...checkUnder(protocol, s.id, hours(0), { [s.id]: { oneLeg: 'right' } }),
          }) as unknown as Data,
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
        }) as unknown as Data,
      protocol,
    ),
    refusals(
      `${protocol.id}: with symptoms`,
      () =>
        ({
          stay: 's1',
          ...checkUnder(protocol, protocol.stages.at(-1)!.id, hours(0)),
          risingSymptoms: ['faint'],
        }) as unknown as Data,
      protocol,
    ),
  ]),
];

heldAgainst(new URL('told-records.txt', import.meta.url), [...records, ...byPart]);
