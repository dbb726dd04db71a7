import {
  attachmentReasons,
  cooperationReasons,
  holdReasons,
  orderReasons,
  stageReasons,
  triggerReasons,
} from '@footboard/shared/capabilities/assessments/rules/start-in-force';
import { judgeCriticalCare } from '@footboard/shared/capabilities/assessments/rules/critical-care';
import { DEFAULT_PROTOCOL } from '@footboard/shared/capabilities/assessments/rules/default-protocol';
import { judgeReading, moreOxygen } from '@footboard/shared/capabilities/assessments/rules/may-start';
import { criticalCareBar } from '@footboard/shared/capabilities/assessments/values';
import { holdScope, order, triggerKind } from '@footboard/shared/capabilities/orders/values';
import { attachmentKind } from '@footboard/shared/capabilities/stays/values';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { bands, table, words } from './markdown.mjs';

const at = new Date(Date.UTC(2026, 0, 1, 9)).toISOString();
const WORD = { 'not-now': 'not now', 'ask-first': 'ask first' };
const strictest = (reasons) =>
  reasons.some((r) => r.word === 'not-now') ? 'not now' : reasons.length > 0 ? 'ask first' : '-';
const sourcesOf = (reasons) => [...new Set(reasons.map((r) => r.source))].join('; ') || '-';

/** Every value of a sign put to the rules: the bands in which they answer alike, the value itself left open. */
const swept = (name, unit, [from, to, step = 1], judge) =>
  bands(from, to, step, (number) => {
    const reasons = judge(number);
    const said = reasons.map((r) => r.words.replace(String(number), '…')).join('; ') || '-';
    return JSON.stringify([strictest(reasons), said, sourcesOf(reasons)]);
  }).map(({ says, answer }) => [name, `${says}${unit}`, ...JSON.parse(answer)]);

const reading = (build) => (number) =>
  judgeReading({ ...build(number), at }, { rules: DEFAULT_RULES.start, oxygenTarget: null }).reasons;
const SIGNS = [
  [
    'systolic pressure',
    ' mmHg',
    [1, 300],
    (n) => ({ kind: 'pressure', posture: 'lying', systolic: n, diastolic: 1 }),
  ],
  ['heart rate', ' a minute', [1, 250], (n) => ({ kind: 'heart-rate', perMinute: n })],
  ['oxygen saturation', ' %', [1, 100], (n) => ({ kind: 'oxygen', saturation: n })],
  ['breathing rate', ' a minute', [1, 80], (n) => ({ kind: 'breathing', perMinute: n })],
  ['temperature', ' °C', [30, 43, 0.1], (n) => ({ kind: 'temperature', celsius: n })],
  ['pain', ' of 10', [0, 10], (n) => ({ kind: 'pain', outOfTen: n })],
];

const care = (signs) => judgeCriticalCare({ bars: [], ...signs }, DEFAULT_RULES.criticalCare, 0);
const CARE = [
  ['oxygen saturation', ' %', [1, 100], (n) => ({ saturation: n })],
  ['oxygen fraction', '', [0.21, 1, 0.01], (n) => ({ oxygenFraction: n })],
  ['breathing rate', ' a minute', [1, 80], (n) => ({ breathing: n })],
  ['end-expiratory pressure', ' cmH2O', [0, 30], (n) => ({ endExpiratory: n })],
  ['mean pressure', ' mmHg', [20, 180], (n) => ({ meanPressure: n })],
  ['heart rate', ' a minute', [1, 250], (n) => ({ heartRate: n })],
  ['sedation grade', '', [-5, 4], (n) => ({ sedation: n })],
  ['temperature', ' °C', [30, 43, 0.1], (n) => ({ temperature: n })],
  ['temperature while being cooled', ' °C', [30, 43, 0.1], (n) => ({ temperature: n, activeCooling: true })],
];
const CARE_FOUND = [
  { confusedNotFollowing: true },
  { vasoactive: 'steady' },
  { vasoactive: 'new-or-raised' },
  ...criticalCareBar.options.map((bar) => ({ bars: [bar] })),
];

const clear = DEFAULT_PROTOCOL.stages.find((s) => s.shows === 'clear');
const stageAnswers = (record) =>
  stageReasons(
    {
      seen: {
        remarks: [],
        stages: new Map([
          [
            'clear',
            {
              outcome: 'not-met',
              fact: {
                id: 'check',
                occurred: 0,
                data: {
                  protocol: { id: DEFAULT_PROTOCOL.id, version: DEFAULT_PROTOCOL.version },
                  stages: [{ stage: clear.id, outcome: 'not-met', findings: [], ...record }],
                },
              },
            },
          ],
        ]),
      },
    },
    () => DEFAULT_PROTOCOL,
  );

const orders = order.options.find((o) => o.shape.about.value === 'activity').shape.most.options;
/** Takes turns at each answer, with the other one known and good. */
const cooperation = [
  ...['no', 'varies', 'not known'].map((waitsForHelp) => ({ waitsForHelp, followsInstructions: 'yes' })),
  ...['no', 'not known'].map((followsInstructions) => ({ waitsForHelp: 'yes', followsInstructions })),
];
const attached = [
  ...attachmentKind.options.map((kind) => ({ kind, needsOwnPerson: false, disconnects: 'anyone-trained' })),
  { kind: attachmentKind.options[0], needsOwnPerson: true, disconnects: 'nurse' },
  { kind: attachmentKind.options[0], needsOwnPerson: false, disconnects: 'nobody' },
];

/** Reasons that are not a number, each asked of the rules by itself. */
const found = () => [
  ...clear.parts.flatMap((part) =>
    stageAnswers({ findings: [{ part: part.id, result: 'not-met' }] }).map((r) => ['the last check', r]),
  ),
  ...orders.flatMap((most) =>
    orderReasons({ activity: { value: most, fact: 'order', at: 0 } }).map((r) => ['orders', r]),
  ),
  ...holdScope.options.flatMap((scope) =>
    holdReasons([{ scope, reason: 'order', reviewDue: false, event: 'hold', placedAt: 0 }]).map((r) => [
      'holds',
      r,
    ]),
  ),
  ...triggerKind.options.flatMap((kind) =>
    triggerReasons({ open: [{ event: 't', kind, at: 0, words: words(kind) }] }, DEFAULT_RULES).map((r) => [
      'triggers',
      r,
    ]),
  ),
  ...cooperation.flatMap((one) =>
    cooperationReasons(one, { seen: { cooperation: [] } }).map((r) => ['cooperation', r]),
  ),
  ...attached.flatMap((value) =>
    attachmentReasons([{ value, fact: 'attachment', at: 0 }]).map((r) => ['attachments', r]),
  ),
  ...[1, 'not-recorded'].flatMap((before) => moreOxygen(before, 2, 0)).map((r) => ['oxygen', r]),
];

const reasonRows = (all) => all.map(([about, r]) => [about, r.words, WORD[r.word], r.source]);

export const start = () => [
  '## May we start',
  '',
  'Three words: **not now**, **ask first**, may start. The strictest reason decides. Every value below was put to the rules',
  'themselves. A reading that was not taken is listed as not taken and never counts as normal. The person’s own oxygen',
  'target, by order, takes the place of the ward’s limit of saturation.',
  '',
  '### Readings',
  '',
  ...table(
    ['sign', 'value', 'word', 'as the board says it', 'source'],
    SIGNS.flatMap(([name, unit, range, build]) => swept(name, unit, range, reading(build))),
  ),
  '### Reasons that are not a number',
  '',
  ...table(['what', 'as the board says it', 'word', 'source'], reasonRows(found())),
  'An attachment is a reason where it needs a person to itself, where nobody may disconnect it, or where its kind stands',
  'above by itself. A hold past its review time holds on.',
  '',
  '### Critical care',
  '',
  `The set is ${DEFAULT_RULES.criticalCare.on.value ? 'on' : 'off until the ward turns it on'}. Where two published sets differ the stricter is the default. A lower target of`,
  'the mean pressure, by order, takes the place of the ward’s limit.',
  '',
  ...table(
    ['sign', 'value', 'word', 'as the board says it', 'source'],
    CARE.flatMap(([name, unit, range, build]) => swept(name, unit, range, (n) => care(build(n)))),
  ),
  ...table(
    ['as the board says it', 'word', 'source'],
    CARE_FOUND.flatMap((signs) => care(signs).map((r) => [r.words, WORD[r.word], r.source])),
  ),
];
