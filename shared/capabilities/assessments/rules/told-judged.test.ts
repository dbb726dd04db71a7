/** Readings before rising by themselves, and single stages judged: told whole. */
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { toIso } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Finding, Reading } from '../values.ts';
import { allMet, hours, record, type StageSays } from './assessment.testkit.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';
import { judgeStage } from './judge-stage.ts';
import { judgeStart, lastOxygenFlow, readingsAtStart, type StartInput } from './may-start.ts';

const at = (h: number) => toIso(hours(h));
const WELL: readonly Reading[] = [
  { kind: 'pressure', posture: 'lying', systolic: 120, diastolic: 70, at: at(0) },
  { kind: 'heart-rate', perMinute: 80, at: at(0) },
  { kind: 'oxygen', saturation: 97, litresPerMinute: 2, at: at(0) },
  { kind: 'breathing', perMinute: 16, at: at(0) },
  { kind: 'temperature', celsius: 37, at: at(0) },
  { kind: 'pain', outOfTen: 0, at: at(0) },
];
const instead = (...others: readonly Reading[]) => [
  ...WELL.filter((r) => !others.some((o) => o.kind === r.kind)),
  ...others,
];
const start = (readings: readonly Reading[], extra: Partial<StartInput> = {}) =>
  judgeStart({
    readings,
    cooperation: { waitsForHelp: 'yes', followsInstructions: 'yes' },
    oxygenFlowBefore: null,
    oxygenTarget: null,
    rules: DEFAULT_RULES.start,
    ...extra,
  });
const withRate = (heartRate: number): Reading => ({
  kind: 'pressure',
  posture: 'seated',
  systolic: 120,
  diastolic: 70,
  heartRate,
  at: at(0),
});
const starts = [
  ['start: all well', () => start(WELL)],
  ['start: nothing taken, nothing said', () => start([], { cooperation: undefined })],
  [
    'start: every sign beyond its limit',
    () =>
      start(
        [
          { kind: 'pressure', posture: 'lying', systolic: 200, diastolic: 70, at: at(0) },
          { kind: 'heart-rate', perMinute: 35, at: at(0) },
          { kind: 'oxygen', saturation: 80, litresPerMinute: 3, at: at(0) },
          { kind: 'breathing', perMinute: 50, at: at(0) },
          { kind: 'temperature', celsius: 40, at: at(0) },
          { kind: 'pain', outOfTen: 9, at: at(0) },
        ],
        { oxygenFlowBefore: 2, oxygenTarget: { low: 88, high: 92 } },
      ),
  ],
  ['start: the rate with the pressure alone', () => start([withRate(140)])],
  ['start: the rate with the pressure beside one of its own', () => start(instead(withRate(140)))],
  [
    'start: of two of a kind the last',
    () => start([...WELL, { kind: 'heart-rate', perMinute: 150, at: at(0.1) }]),
  ],
  ...[1, 2, 3].map(
    (before) =>
      [`start: oxygen ${before} l before, 2 now`, () => start(WELL, { oxygenFlowBefore: before })] as const,
  ),
  [
    'start: no flow now',
    () => start(instead({ kind: 'oxygen', saturation: 97, at: at(0) }), { oxygenFlowBefore: 1 }),
  ],
] as const;
const pressure = (posture: 'lying' | 'seated' | 'standing', systolic: number, h: number): Reading => ({
  kind: 'pressure',
  posture,
  systolic,
  diastolic: 60,
  at: at(h),
});
const few = [
  [
    'before rising: the last up to the start, or the first after it',
    () => ({
      counts: readingsAtStart(
        [
          { kind: 'pain', outOfTen: 5, at: at(2) },
          { kind: 'pain', outOfTen: 3, at: at(0.5) },
          { kind: 'pain', outOfTen: 4, at: at(1) },
          { kind: 'temperature', celsius: 38, at: at(3) },
          { kind: 'temperature', celsius: 37, at: at(2) },
          pressure('standing', 90, 0),
          pressure('lying', 120, 1),
          pressure('seated', 110, 0.9),
        ],
        hours(1),
      ),
    }),
  ],
  [
    'flow: none',
    () => ({
      flow: lastOxygenFlow([
        { kind: 'pain', outOfTen: 5, at: at(2) },
        { kind: 'oxygen', saturation: 97, at: at(1) },
      ]),
    }),
  ],
  [
    'flow: the last in time, of one time the last written',
    () => ({
      flow: lastOxygenFlow([
        { kind: 'oxygen', saturation: 97, litresPerMinute: 4, at: at(2) },
        { kind: 'oxygen', saturation: 97, litresPerMinute: 1, at: at(1) },
        { kind: 'oxygen', saturation: 97, litresPerMinute: 3, at: at(2) },
        { kind: 'oxygen', saturation: 97, at: at(3) },
      ]),
    }),
  ],
] as const;

const NOT_NOW = start([
  { kind: 'heart-rate', perMinute: 35, at: at(0) },
  { kind: 'pain', outOfTen: 5, at: at(0) },
]);
const ASK = start([{ kind: 'pain', outOfTen: 5, at: at(0) }]);
const stageOf = (id: string) => DEFAULT_PROTOCOL.stages.find((s) => s.id === id)!;
const judged = (id: string, says: StageSays, context: Partial<Parameters<typeof judgeStage>[2]> = {}) =>
  judgeStage(record(id, 0, says), stageOf(id), {
    start: null,
    rising: null,
    mayNotBear: new Set(),
    arms: 'both',
    ...context,
  });
const untested = (id: string, part: string): Finding[] =>
  allMet(id).map((f) => (f.part === part ? { ...f, result: 'not-tested', reason: 'pain' } : f));
const stages = DEFAULT_PROTOCOL.stages.flatMap(({ id, parts }) => [
  [`stage ${id}: met`, () => judged(id, {})] as const,
  [`stage ${id}: not tested`, () => judged(id, { outcome: 'not-tested', reason: 'pain' })] as const,
  [`stage ${id}: met, and the start says not now`, () => judged(id, {}, { start: NOT_NOW })] as const,
  [`stage ${id}: met, and the start asks first`, () => judged(id, {}, { start: ASK })] as const,
  [
    `stage ${id}: on one leg, arms not seen`,
    () => judged(id, { oneLeg: 'left' }, { arms: 'not-seen' }),
  ] as const,
  [
    `stage ${id}: on one leg, which may bear nothing, arms do not push`,
    () => judged(id, { oneLeg: 'left' }, { arms: 'not', mayNotBear: new Set(['left']) }),
  ] as const,
  ...parts.map(
    (part) =>
      [
        `stage ${id}: ${part.id} not tested, the rest met`,
        () => judged(id, { findings: untested(id, part.id) }),
      ] as const,
  ),
  ...parts.map(
    (part) =>
      [
        `stage ${id}: ${part.id} not tested on one leg`,
        () => judged(id, { oneLeg: 'right', findings: untested(id, part.id) }),
      ] as const,
  ),
]);

heldAgainst(new URL('told-judged.txt', import.meta.url), [...starts, ...few, ...stages]);
