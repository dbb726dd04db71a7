/** Where the next check begins and how deep it goes, with its reasons. */
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { toIso } from '../../../kernel/times.ts';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import {
  calendar as berlin,
  check,
  confirm,
  hours as later,
  onOwn,
  session as walked,
  stayOf,
  trigger,
  ward,
  type StageId,
  type Told,
} from '../../board/rules/history.testkit.ts';
import { recordedTriggerKind } from '../../orders/values.ts';
import { LONG } from './own-protocol.testkit.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';

const STAGES = DEFAULT_PROTOCOL.stages.map((s) => s.id);
/** Where the next check begins. */
const next = (title: string, history: readonly Told[], at: number) =>
  [
    `next: ${title}`,
    () => {
      const { view, nextChange } = evaluateStay(stayOf(...history), ward, berlin, later(at));
      return {
        depth: view.nextCheck?.depth,
        from: view.nextCheck?.from,
        because: view.nextCheck?.because,
        trust: view.trust.state,
        until: nextChange,
      };
    },
  ] as const;
const one = (
  last: StageId,
  at: number,
  says: Parameters<typeof check>[2] = {},
  extra: Record<string, unknown> = {},
): Told => ({ ...check(last, at, says, extra), id: `check-${at}` });
const nextSet = (at: number, standing: number) => {
  const pressure = (posture: string, minute: number, systolic: number) => ({
    kind: 'pressure',
    posture,
    minute,
    systolic,
    diastolic: 76,
    at: toIso(later(at + (posture === 'lying' ? 0 : minute / 60))),
  });
  return {
    depth: 'full-with-pressure',
    risingSymptoms: [],
    readings: [pressure('lying', 5, 130), pressure('standing', 1, standing), pressure('standing', 3, 126)],
  };
};
const nexts = [
  ...STAGES.flatMap((last) =>
    [1.5, 5, 13, 26].flatMap((t) => [
      next(`up to ${last}, at ${t} h`, [one(last as StageId, 1, {}, nextSet(1, 126))], t),
      next(`up to ${last}, no set, at ${t} h`, [one(last as StageId, 1)], t),
      next(
        `${last} not met, at ${t} h`,
        [
          one(
            last as StageId,
            1,
            { [last]: { outcome: 'not-met' } },
            last === 'walk' || last === 'turn' ? nextSet(1, 126) : {},
          ),
        ],
        t,
      ),
      next(
        `${last} not met after a walk, at ${t} h`,
        [
          one('walk', 0.5, {}, nextSet(0.5, 126)),
          one(last as StageId, 1, { [last]: { outcome: 'not-met' } }),
        ],
        t,
      ),
    ]),
  ),
  ...recordedTriggerKind.options.map((kind) =>
    next(
      `${kind} after a walk`,
      [one('walk', 1, {}, nextSet(1, 126)), { ...trigger(kind, 2), id: 'trigger' }],
      2.5,
    ),
  ),
  next('pressure fell', [one('walk', 1, {}, nextSet(1, 105))], 2),
  next('a symptom at the last check', [one('walk', 1, { walk: { symptom: true } }, nextSet(1, 126))], 2),
  next(
    'dizzy in a session',
    [one('walk', 1, {}, nextSet(1, 126)), { ...walked(2, { events: ['dizzy'] }), id: 'dizzy' }],
    2.5,
  ),
  next(
    'a near-fall in a session',
    [one('walk', 1, {}, nextSet(1, 126)), { ...walked(2, { events: ['near-fall'] }), id: 'near' }],
    2.5,
  ),
  next(
    'confirmed since',
    [one('walk', 1, {}, nextSet(1, 126)), { ...confirm(6, 'check-1'), id: 'confirm' }],
    7,
  ),
  next(
    'confirmed since, long ago',
    [one('walk', 1, {}, nextSet(1, 126)), { ...confirm(6, 'check-1'), id: 'confirm' }],
    25,
  ),
  next(
    'stood, confirmed since',
    [one('stand', 1, {}, nextSet(1, 126)), { ...confirm(6, 'check-1'), id: 'confirm' }],
    7,
  ),
  next('on own', [one('walk', 1, {}, nextSet(1, 126)), { ...onOwn(2), id: 'own' }], 3),
  next(
    'back from surgery, up again held safe',
    [
      one('walk', 1, {}, nextSet(1, 126)),
      { ...trigger('return-from-surgery', 2), id: 'surgery' },
      {
        ...one(
          'stand',
          3,
          { stand: { how: 'secured' } },
          { ...nextSet(3, 126), firstTimeUp: true, answers: [] },
        ),
        id: 'up',
      },
    ],
    4,
  ),
];

const moved = [
  'next: the ward works by another protocol since',
  () =>
    evaluateStay(
      stayOf(one('walk', 1, {}, nextSet(1, 126))),
      { ...ward, protocols: [{ id: LONG.id, version: LONG.version, document: LONG }] },
      berlin,
      later(2),
    ).view.nextCheck,
] as const;
heldAgainst(new URL('told-next.txt', import.meta.url), [...nexts, moved]);
