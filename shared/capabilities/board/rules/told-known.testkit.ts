/** Invented stays of few entries, and what of them is in force, was seen in use, or stands against one another. */
import type { EventId } from '../../../kernel/ids.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { evaluateStay } from './evaluate-stay.ts';
import {
  begun,
  calendar,
  check,
  correct,
  hold,
  hours,
  onOwn,
  order,
  recordOf,
  retract,
  session,
  trigger,
  ward,
  type Told,
} from './history.testkit.ts';
import { knownAt } from './known.ts';
import { seenWalkingInForce } from './on-own.ts';
import { RESTRICTIONS } from './told-restrictions.testkit.ts';
import { named, role, told, type History } from './told-stays.testkit.ts';

const says = (waitsForHelp: string, followsInstructions: string) => ({
  cooperation: { waitsForHelp, followsInstructions },
});
const seenWalking = (at: number, walkingSupport: string, by: Told['role'] = 'nurse') =>
  role(told('seen-walking', at, { walkingSupport }, `seen-${walkingSupport}`), by!);
const upTo = (most: string, at = 3, by: Told['role'] = 'nurse') => order(at, { about: 'activity', most }, by);
const scope = (at: number, kind: string, more: object = {}) =>
  told('scope-set', at, { scope: kind, ...more }, `scope-${kind}`);

/** What was recorded of whoever arrived an hour or so ago. */
const HISTORIES: Readonly<Record<string, History>> = {
  'only arrived': [],
  'on own': [onOwn(2)],
  ...Object.fromEntries(
    (['aide', 'therapist', 'charge-nurse', 'records'] as const).map((by) => [
      `on own by ${by}`,
      [onOwn(2, by)],
    ]),
  ),
  'on own, set again': [named(onOwn(2), 'first'), named(onOwn(3), 'second')],
  'on own, then a hold': [onOwn(2), hold(3, 'walking', 9)],
  'a hold, then on own': [hold(1, 'walking', 9), onOwn(2)],
  'on own, then taken back': [onOwn(2), told('on-own-removed', 3)],
  'on own, then all met': [onOwn(2), check('walk', 3)],
  'on own, then a stage not met': [onOwn(2), check('walk', 3, { walk: { outcome: 'not-met' } })],
  'a stage not met, then on own': [check('walk', 1, { walk: { outcome: 'not-met' } }), onOwn(2)],
  'on own, then does not wait': [onOwn(2), check('walk', 3, {}, says('no', 'yes'))],
  'on own, then nothing said of waiting': [onOwn(2), check('walk', 3, {}, { cooperation: undefined })],
  'on own, then a session': [onOwn(2), session(3)],
  'on own, then fell': [onOwn(2), trigger('fall', 3)],
  'on own, fell at that time': [onOwn(2), trigger('fall', 2)],
  'fell, then on own': [trigger('fall', 1), onOwn(2)],
  'on own, then the staged check again by an aide': [
    scope(1, 'comfort'),
    onOwn(2),
    role(scope(1.5, 'staged'), 'aide'),
  ],
  'on own, the plan told late by an aide': [
    onOwn(2),
    { ...role(scope(1.5, 'staged'), 'aide'), recorded: 2.5 },
  ],
  'on own, the plan told late by a nurse': [onOwn(2), { ...scope(1.5, 'staged'), recorded: 2.5 }],
  'on own, the plan told at that time by an aide': [
    { ...onOwn(2), recorded: 2.5 },
    { ...role(scope(1.5, 'staged'), 'aide'), recorded: 2.5 },
  ],
  'on own, the plan told before by an aide': [role(scope(1, 'staged'), 'aide'), onOwn(2)],
  'seen walking': [seenWalking(0.5, 'frame')],
  'seen walking by an aide': [seenWalking(0.5, 'frame', 'aide')],
  'seen walking twice': [seenWalking(0.5, 'frame'), seenWalking(0.7, 'stick')],
  'seen walking, then by an aide': [seenWalking(0.5, 'frame'), seenWalking(0.7, 'stick', 'aide')],
  'seen walking, then checked': [seenWalking(0.5, 'frame'), check('edge', 1)],
  'seen walking, then checked with a stick': [
    seenWalking(0.5, 'frame'),
    check('walk', 1, {}, { walkingSupport: 'stick' }),
  ],
  'checked with a stick, then without a word': [
    check('walk', 1, {}, { walkingSupport: 'stick' }),
    check('walk', 2),
  ],
  'checked with a stick by an aide': [role(check('walk', 1, {}, { walkingSupport: 'stick' }), 'aide')],
  'seen walking, then fell': [seenWalking(0.5, 'frame'), trigger('fall', 1)],
  'seen walking, fell at that time': [seenWalking(0.5, 'frame'), trigger('fall', 0.5)],
  'fell, then seen walking': [trigger('fall', 0.3), seenWalking(0.5, 'frame')],
  'seen walking, then a session': [seenWalking(0.5, 'frame'), session(1)],
  ...Object.fromEntries(
    (['clear', 'upright', 'edge', 'stand', 'turn', 'walk'] as const).flatMap((last) => [
      [`checked up to ${last}`, [check(last, 1)]],
      [`${last} not met`, [check(last, 1, { [last]: { outcome: 'not-met' } })]],
      [`checked up to ${last} by an aide`, [role(check(last, 1), 'aide')]],
    ]),
  ),
  'walk, then edge': [named(check('walk', 1), 'walked'), named(check('edge', 2), 'sat')],
  'edge, then clear alone': [named(check('edge', 1), 'sat'), named(check('clear', 2), 'looked')],
  'sedated twice': [named(trigger('sedation', 1), 'first'), named(trigger('sedation', 2), 'second')],
  sedated: [trigger('sedation', 1)],
  'fainted only': [trigger('faint', 1)],
  'up to chair, then walked': [named(upTo('chair', 1), 'chair'), named(check('walk', 2), 'walked')],
  'walked, then up to chair': [named(check('walk', 1), 'walked'), named(upTo('chair', 2), 'chair')],
  'up to chair at the time of walking': [named(upTo('chair', 1), 'chair'), named(check('walk', 1), 'walked')],
  'up to chair, walked, then no limit': [
    named(upTo('chair', 1), 'chair'),
    named(check('walk', 2), 'walked'),
    named(upTo('no-limit', 3), 'free'),
  ],
  'up to chair, walked by an aide': [
    named(upTo('chair', 1), 'chair'),
    named(role(check('walk', 2), 'aide'), 'walked'),
  ],
  'up to chair, then sat': [named(upTo('chair', 1), 'chair'), named(check('edge', 2), 'sat')],
  'a hold and an order, then walked': [
    hold(1, 'walking', 9),
    named(upTo('chair', 1.2), 'chair'),
    named(check('walk', 2), 'walked'),
  ],
  'a check withdrawn by an aide': [
    named(check('walk', 1), 'walked'),
    named(retract(2, 'walked', 'aide'), 'gone'),
  ],
  'a check withdrawn by an aide, then checked': [
    named(check('walk', 1), 'walked'),
    named(retract(2, 'walked', 'aide'), 'gone'),
    named(check('edge', 3), 'sat'),
  ],
  'a fall withdrawn by an aide': [
    named(trigger('fall', 1), 'fall'),
    named(retract(2, 'fall', 'aide'), 'gone'),
  ],
  'a fall withdrawn by an aide, checked at that time': [
    named(trigger('fall', 1), 'fall'),
    named(retract(2, 'fall', 'aide'), 'gone'),
    named(check('walk', 2), 'walked'),
  ],
  'a fall withdrawn by an aide, then checked': [
    named(trigger('fall', 1), 'fall'),
    named(retract(2, 'fall', 'aide'), 'gone'),
    named(check('walk', 2.5), 'walked'),
  ],
  'less put right by an aide': [
    named(check('stand', 1, { stand: { outcome: 'not-met' } }), 'less'),
    named(correct(2, 'less', check('walk', 1), 'aide'), 'right'),
  ],
  ...Object.fromEntries(
    (['fracture-unclear', 'after-fall', 'unstable', 'clot-suspected'] as const).map((reason) => [
      `held: ${reason}`,
      [{ ...hold(1, 'walking', 9), payload: { ...(hold(1, 'walking', 9).payload as object), reason } }],
    ]),
  ),
  'held and fell': [
    {
      ...hold(1, 'walking', 9),
      payload: { ...(hold(1, 'walking', 9).payload as object), reason: 'after-fall' },
    },
    trigger('fall', 2),
  ],
  'a spine that is not stable': [
    scope(1, 'clinicians-plan', { fence: 'unstable-spine-pelvis-or-long-bone', plan: { ref: 'text-1' } }),
  ],
  'under 18': [scope(1, 'clinicians-plan', { fence: 'under-18', plan: { ref: 'text-1' } })],
  fell: [trigger('fall', 1)],
  'fell and was checked': [trigger('fall', 1), check('walk', 2)],
};

const HOURS = [3.5, 4.5, 9];
const ids = (of: { fact: EventId; at: number; value: unknown } | null) =>
  of && { ...of, at: (of.at - hours(0)) / 3_600_000 };
/** What is known at these hours after the arrival. */
function seen(history: History) {
  const entries = [named(begun(), 'begun'), ...history];
  return new Map(
    HOURS.map((h) => {
      const t = hours(h);
      const effective = effectiveFacts(recordOf(entries));
      const noted: number[] = [];
      const known = knownAt(effective, ward, calendar, t, () => undefined);
      const walking = seenWalkingInForce(known.facts, known.triggers.seen, t, DEFAULT_RULES, (at) =>
        noted.push((at - hours(0)) / 3_600_000),
      );
      const { view, nextChange } = evaluateStay(recordOf(entries), ward, calendar, t);
      const floor = view.plan?.day.find(({ task }) => task === 'from-floor');
      return [
        `at hour ${h}`,
        {
          onOwn: ids(known.onOwn),
          walkingSupport: ids(known.walkingSupport),
          seenWalking: ids(walking),
          seenWalkingEnds: noted,
          sedated: ids(known.sedatedAt),
          up: known.upInCheck && { ...known.upInCheck, at: (known.upInCheck.at - hours(0)) / 3_600_000 },
          conflicts: known.conflicts,
          floor: floor?.because.map(({ rule, facts }) => `${rule} ${facts.join(' ')}`) ?? 'no plan',
          until: nextChange === null ? null : (nextChange - hours(0)) / 3_600_000,
        },
      ] as const;
    }),
  );
}

/** When somebody was last up, by what came to this. */
const UP: Readonly<Record<string, History>> = {
  'in a session and in a check of one time': [named(session(2), 'session'), named(check('edge', 2), 'check')],
  'in a session, then in a check': [named(session(2), 'session'), named(check('edge', 3), 'check')],
  'in a check, then in a session': [named(check('edge', 2), 'check'), named(session(3), 'session')],
  'in a check alone': [named(check('edge', 2), 'check')],
  'in a session alone': [named(session(2), 'session')],
};
const lastUp = (history: History) =>
  evaluateStay(recordOf([named(begun(), 'begun'), ...history]), ward, calendar, hours(5)).view.lastUp;

export const KNOWN = [
  ...Object.entries(UP).map(([title, history]) => [`up ${title}`, () => lastUp(history)] as const),
  ...RESTRICTIONS,
  ...Object.entries(HISTORIES).map(([title, history]) => [title, () => seen(history)] as const),
];
