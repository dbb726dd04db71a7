/** May we start, told whole with reasons, sources and facts, over invented stays. */
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import {
  check,
  hold,
  hours,
  order,
  trigger,
  type StageId,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { holdScope, recordedTriggerKind } from '../../orders/values.ts';
import { attachmentKind } from '../../stays/values.ts';
import { findingsMet, checkUnder, LONG } from './own-protocol.testkit.ts';
import { DEFAULT_PROTOCOL } from './protocol.ts';
import { at, reading, WELL, readings, checked, taken, named, stay, type Said } from './told-start.testkit.ts';

/** Each sign at its limits and beside them. */
const SIGNS: readonly Said[] = [
  ...[89, 90, 91, 180, 181, 200, 201].map((v): Said => ['pressure', v]),
  ...[39, 40, 41, 49, 50, 51, 99, 100, 110, 119, 120, 130, 131].map((v): Said => ['heart-rate', v]),
  ...[87, 88, 89, 90, 91, 92].map((v): Said => ['oxygen', v]),
  ...[24, 25, 29, 30, 31, 35, 36].map((v): Said => ['breathing', v]),
  ...[37.9, 38, 38.4, 38.5, 39].map((v): Said => ['temperature', v]),
  ...[3, 4, 6, 7, 8].map((v): Said => ['pain', v]),
];
const signs = SIGNS.map((said) => stay(`${said[0]} ${said[1]}`, [checked(1, readings(1, said))]));
const ages = [
  stay('nothing recorded', []),
  stay('well at the check', [checked(1, readings(1))]),
  ...[3, 4.9, 5, 5.1, 13].map((t) => stay(`well at the check, ${t - 1} h ago`, [checked(1, readings(1))], t)),
  ...[3, 6, 13].map((t) =>
    stay(`heart rate 140 at the check, ${t - 1} h ago`, [checked(1, readings(1, ['heart-rate', 140]))], t),
  ),
  ...WELL.map(([kind]) =>
    stay(`all but ${kind}`, [
      checked(
        1,
        readings(1).filter((r) => r.kind !== kind),
      ),
    ]),
  ),
  ...(['nurse', 'aide', 'therapist', 'charge-nurse'] as const).flatMap((role) => [
    stay(`heart rate 140, then 80 by ${role}`, [
      checked(1, readings(1, ['heart-rate', 140])),
      taken(1.5, [['heart-rate', 80]], role),
    ]),
    stay(`heart rate 80, then 112 by ${role}`, [
      checked(1, readings(1)),
      taken(1.5, [['heart-rate', 112]], role),
    ]),
    stay(`heart rate 112, then 140 by ${role}`, [
      checked(1, readings(1, ['heart-rate', 112])),
      taken(1.5, [['heart-rate', 140]], role),
    ]),
    stay(`heart rate 140 by ${role}, then 80 by a nurse at once`, [
      checked(1, readings(1)),
      named(taken(1.5, [['heart-rate', 140]], role), 'a'),
      named(taken(1.5, [['heart-rate', 80]]), 'b'),
    ]),
    stay(`every sign well by ${role} alone`, [taken(1, WELL, role)]),
    stay(`pain before and after a session by ${role}`, [
      checked(1, readings(1)),
      taken(1.4, [], role, { painBefore: 5, painAfter: 8, endedAt: at(1.6) }),
    ]),
    stay(`pain before a session by ${role}`, [
      checked(1, readings(1)),
      taken(1.4, [], role, { painBefore: 7 }),
    ]),
    stay(`pain after a session that ends later, by ${role}`, [
      checked(1, readings(1)),
      taken(1.4, [], role, { painBefore: 0, painAfter: 8, endedAt: at(2.5) }),
    ]),
  ]),
  stay('a pressure with a heart rate of its own', [
    checked(1, [
      reading(['pressure', 120, { heartRate: 135 }], 1),
      ...readings(1).filter((r) => r.kind !== 'pressure' && r.kind !== 'heart-rate'),
    ]),
  ]),
  stay('a standing pressure alone', [
    checked(1, [
      reading(['pressure', 80, { posture: 'standing' }], 1),
      ...readings(1).filter((r) => r.kind !== 'pressure'),
    ]),
  ]),
  stay('seated 85', [checked(1, readings(1, ['pressure', 85, { posture: 'seated' }]))]),
  stay('readings after the start was looked at', [checked(1, readings(1.5, ['heart-rate', 140]))]),
];
const litres = (n: number) => ({ litresPerMinute: n });
const oxygen = [
  ...[
    [1, 2],
    [2, 2],
    [2, 1],
    [0, 4],
  ].flatMap(([before, now]) =>
    (['nurse', 'aide'] as const).flatMap((role) => [
      stay(`oxygen ${before} l, then ${now} by ${role}`, [
        checked(1, readings(1, ['oxygen', 97, litres(before!)])),
        taken(1.5, [['oxygen', 97, litres(now!)]], role),
      ]),
      stay(`oxygen ${before} l by ${role}, then ${now} at a check`, [
        checked(0.5, readings(0.5)),
        taken(0.8, [['oxygen', 97, litres(before!)]], role),
        checked(1.5, readings(1.5, ['oxygen', 97, litres(now!)])),
      ]),
      stay(
        `oxygen ${before} l, then ${now} by ${role}, seen 6 h later`,
        [
          checked(1, readings(1, ['oxygen', 97, litres(before!)])),
          taken(1.5, [['oxygen', 97, litres(now!)]], role),
        ],
        7.5,
      ),
    ]),
  ),
  ...[
    [2, 1, 3, 2],
    [2, 3, 5, 4],
    [3, 1, 1, 2],
    [1, 3, 2, 3],
  ].flatMap(([first, ...then]) =>
    (['nurse', 'aide'] as const).map((role) =>
      stay(`oxygen ${first} l, then ${then.join(', ')} by ${role}`, [
        checked(1, readings(1, ['oxygen', 97, litres(first!)])),
        ...then.map((n, i) => taken(1.2 + i / 5, [['oxygen', 97, litres(n)]], role)),
      ]),
    ),
  ),
  stay('oxygen 2 l, then 4 and 3 at once by an aide', [
    checked(1, readings(1, ['oxygen', 97, litres(2)])),
    named(taken(1.5, [['oxygen', 97, litres(4)]], 'aide'), 'a'),
    named(taken(1.5, [['oxygen', 97, litres(3)]], 'aide'), 'b'),
  ]),
  stay('heart rate 40 beside an own target', [
    { ...order(0.5, { about: 'oxygen-target', low: 94, high: 98 }), id: 'target' },
    checked(1, readings(1, ['heart-rate', 35])),
  ]),
  stay('oxygen 2 l, then 1 by an aide, then 2', [
    checked(1, readings(1, ['oxygen', 97, litres(2)])),
    taken(1.3, [['oxygen', 97, litres(1)]], 'aide'),
    taken(1.6, [['oxygen', 97, litres(2)]], 'aide'),
  ]),
  ...(['nurse', 'charge-nurse', 'aide'] as const).flatMap((role) =>
    [
      [88, 92],
      [94, 98],
    ].flatMap(([low, high]) =>
      [87, 89, 93, 95].map((v) =>
        stay(`own target ${low} to ${high} by ${role}, ${v} %`, [
          { ...order(0.5, { about: 'oxygen-target', low, high }, role), id: 'target' },
          checked(1, readings(1, ['oxygen', v])),
        ]),
      ),
    ),
  ),
  stay('a target, then another, then the first again', [
    { ...order(0.3, { about: 'oxygen-target', low: 88, high: 92 }, 'charge-nurse'), id: 'target-1' },
    { ...order(0.5, { about: 'oxygen-target', low: 94, high: 98 }, 'charge-nurse'), id: 'target-2' },
    { ...order(0.7, { about: 'oxygen-target', low: 88, high: 92 }, 'charge-nurse'), id: 'target-3' },
    checked(1, readings(1, ['oxygen', 87])),
  ]),
];
const help = [
  ...(['yes', 'no', 'varies'] as const).flatMap((waitsForHelp) =>
    (['yes', 'no'] as const).flatMap((followsInstructions) =>
      (['nurse', 'aide'] as const).map((role) =>
        stay(`waits ${waitsForHelp}, follows ${followsInstructions}, seen by ${role}`, [
          checked(1, readings(1)),
          named(checked(1.5, [], { cooperation: { waitsForHelp, followsInstructions } }, role), 'seen'),
        ]),
      ),
    ),
  ),
  stay('no word on waiting for help', [checked(1, readings(1), { cooperation: undefined })]),
];
const inForce = [
  ...holdScope.options.flatMap((scope) => [
    stay(`hold on ${scope}`, [checked(1, readings(1)), { ...hold(1.2, scope, 8), id: 'hold' }]),
    stay(`hold on ${scope}, review due`, [checked(1, readings(1)), { ...hold(1.2, scope, 1.5), id: 'hold' }]),
  ]),
  ...(['bed', 'edge-of-bed', 'chair', 'stand', 'walk', 'no-limit'] as const).map((upTo) =>
    stay(`order up to ${upTo}`, [
      checked(1, readings(1)),
      { ...order(1.2, { about: 'activity', most: upTo }, 'charge-nurse'), id: 'order' },
    ]),
  ),
  ...recordedTriggerKind.options.map((kind) =>
    stay(`open: ${kind}`, [checked(1, readings(1)), named(trigger(kind, 1.2), 'trigger')]),
  ),
  ...attachmentKind.options.flatMap((kind) =>
    (['nobody', 'nurse', 'anyone-trained'] as const).flatMap((disconnects) =>
      [true, false].map((needsOwnPerson) =>
        stay(`${kind}, ${disconnects} disconnects${needsOwnPerson ? ', a person of its own' : ''}`, [
          checked(1, readings(1)),
          {
            type: 'attachment-added',
            at: 1.2,
            id: 'line',
            payload: { attachment: 'line-1', kind, disconnects, needsOwnPerson },
          },
        ]),
      ),
    ),
  ),
  ...DEFAULT_PROTOCOL.stages.map((s) =>
    stay(`${s.id} not met at the last check`, [
      checked(1, readings(1)),
      named(check(s.id as StageId, 1.5, { [s.id]: { outcome: 'not-met' } }), 'last'),
    ]),
  ),
  ...DEFAULT_PROTOCOL.stages[0]!.parts.map((part) =>
    stay(`${part.id} not met at the last check`, [
      checked(1, readings(1)),
      named(
        startRecord({
          findings: DEFAULT_PROTOCOL.stages[0]!.parts.map((p) => ({
            part: p.id,
            result: p.id === part.id ? 'not-met' : 'met',
          })),
        }),
        'last',
      ),
    ]),
  ),
  stay('a symptom at the start, met all the same', [
    checked(1, readings(1)),
    named(startRecord({ symptom: true }), 'last'),
  ]),
  stay('the start not met, with no finding', [
    checked(1, readings(1)),
    named(startRecord({ outcome: 'not-met', findings: [] }), 'last'),
  ]),
  stay(
    'the start not met, and 13 h ago',
    [checked(1, readings(1)), named(startRecord({ outcome: 'not-met', findings: [] }), 'last')],
    15,
  ),
  ...(['met', 'not-met'] as const).map((outcome) =>
    stay(`under a protocol nobody has here, ${outcome}`, [
      checked(1, readings(1)),
      named(startRecord({ outcome, findings: [] }, { id: 'gone', version: 3 }), 'last'),
    ]),
  ),
];
function startRecord(
  says: object,
  protocol: object = { id: DEFAULT_PROTOCOL.id, version: DEFAULT_PROTOCOL.version },
): Told {
  return {
    type: 'assessment-recorded',
    at: 1.5,
    payload: {
      ...checkUnder(DEFAULT_PROTOCOL, 'clear', hours(1.5), {
        clear: { findings: findingsMet(DEFAULT_PROTOCOL.stages[0]!), ...says },
      }),
      protocol,
    },
  };
}

heldAgainst(new URL('told-start.txt', import.meta.url), [
  ...ages,
  ...signs,
  ...oxygen,
  ...help,
  ...inForce,
  stay('under a ward’s own protocol, the start not met', [
    {
      type: 'assessment-recorded',
      at: 1,
      id: 'own',
      payload: checkUnder(LONG, 'look', hours(1), { look: { outcome: 'not-met', findings: [] } }),
    },
  ]),
]);
