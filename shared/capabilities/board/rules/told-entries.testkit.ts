/** One thing more that may be entered of a stay: by whom, late, put right, withdrawn. */
import type { Role } from '../../../kernel/author.ts';
import { toIso } from '../../../kernel/times.ts';
import { holdScope, recordedTriggerKind } from '../../orders/values.ts';
import { activity, NOT_DONE_REASONS, sessionEventKind } from '../../sessions/values.ts';
import {
  check,
  confirm,
  correct,
  hold,
  hours,
  notDone,
  onOwn,
  order,
  retract,
  session,
  trigger,
  type StageId,
  type Told,
} from './history.testkit.ts';
import { named, pressures, role, told, type History } from './told-stays.testkit.ts';

const at = (h: number) => toIso(hours(h));
const ROLES: readonly Role[] = ['nurse', 'aide', 'therapist', 'charge-nurse'];
const twice = (title: string, one: Told): readonly (readonly [string, History])[] =>
  (['nurse', 'aide'] as const).map((who) => [`${title} by ${who}`, [named(role(one, who), 'more')]] as const);
const one = (title: string, entry: Told) => [title, [named(entry, 'more')]] as const;
const ends = (left: object) => session(3, { activities: ['chair'], endedAt: at(3.5), ...left });

/** Entries of the third hour of a stay; each list is one thing more. */
export const MORE: readonly (readonly [string, History])[] = [
  ...recordedTriggerKind.options.map((kind) => one(`trigger ${kind}`, trigger(kind, 3))),
  ...holdScope.options.flatMap((scope) => [
    one(`hold on ${scope} until the tenth hour`, hold(3, scope, 10)),
    ...twice(`hold on ${scope}, ended later`, hold(3, scope, 5)).map(
      ([title, [held]]) =>
        [
          title,
          [held!, role(told('hold-ended', 6, { hold: 'hold-1', placedBy: 'more' }, 'ended'), held!.role!)],
        ] as const,
    ),
  ]),
  [
    'hold renewed',
    [
      named(hold(3, 'walking', 5), 'more'),
      told('hold-renewed', 4, { hold: 'hold-1', reviewAt: at(30) }, 'renewed'),
    ],
  ],
  ...(['bed', 'edge-of-bed', 'chair', 'stand', 'walk', 'no-limit'] as const).flatMap((most) =>
    twice(`activity up to ${most}`, order(3, { about: 'activity', most })),
  ),
  [
    'activity up to chair, then no limit by an aide',
    [
      named(order(3, { about: 'activity', most: 'chair' }), 'more'),
      named(role(order(4, { about: 'activity', most: 'no-limit' }), 'aide'), 'freed'),
    ],
  ],
  ...(['none', 'limited', 'unrestricted'] as const).map((bears) =>
    one(`left leg bears ${bears}`, order(3, { about: 'weight-bearing', limb: 'left-leg', bears })),
  ),
  one('hip precautions', order(3, { about: 'precaution', precaution: 'hip', on: true })),
  ...activity.options.flatMap((what) => [
    one(`session ${what}`, session(3, { activities: [what], endedAt: at(3.5) })),
    one(`session ${what}, stopped`, session(3, { activities: [what], outcome: 'stopped', endedAt: at(3.2) })),
  ]),
  ...twice('session walk, 25 m', session(3, { metres: 25, effort: 2, endedAt: at(3.5) })),
  one('session in part', session(3, { outcome: 'part', metres: 5 })),
  one('session with no end', session(3)),
  ...sessionEventKind.options.map((kind) => one(`session with ${kind}`, session(3, { events: [kind] }))),
  ...Object.keys(NOT_DONE_REASONS).map((group) => one(`not done: ${group}`, notDone(3, group))),
  one('left in the chair', ends({ left: 'chair' })),
  one('left in the chair, back by the fifth hour', ends({ left: 'chair', backToBedBy: at(5) })),
  one('left in bed', ends({ left: 'bed' })),
  one('left at the toilet', ends({ activities: ['toilet'], left: 'toilet-with-staff' })),
  one('up for a meal', ends({ occasion: 'meal', left: 'chair' })),
  one('first time up', session(3, { firstTimeUp: true })),
  [
    'three sessions, easy',
    [3, 4, 5].map((h) => named(session(h, { effort: 1, metres: 30, endedAt: at(h + 0.3) }), `s-${h}`)),
  ],
  [
    'three sessions, hard',
    [3, 4, 5].map((h) => named(session(h, { effort: 9, endedAt: at(h + 0.3) }), `s-${h}`)),
  ],
  ['three noes', [3, 4, 5].map((h) => named(notDone(h, 'said-no'), `no-${h}`))],
  [
    'two noes, then up',
    [named(notDone(3, 'said-no'), 'no-3'), named(notDone(4, 'said-no'), 'no-4'), named(session(5), 'up')],
  ],
  ...ROLES.map((who) => one(`on own by ${who}`, onOwn(3, who))),
  ['on own, then taken back', [named(onOwn(3), 'own'), told('on-own-removed', 4)]],
  ['on own, then a hold', [named(onOwn(3), 'own'), named(hold(4, 'walking', 9), 'hold')]],
  ['on own, then fell', [named(onOwn(3), 'own'), named(trigger('fall', 4), 'fall')]],
  [
    'on own, then checked, not waiting',
    [
      named(onOwn(3), 'own'),
      named(
        check('walk', 4, {}, { cooperation: { waitsForHelp: 'no', followsInstructions: 'yes' } }),
        'later',
      ),
    ],
  ],
  [
    'on own, then checked, less',
    [named(onOwn(3), 'own'), named(check('walk', 4, { walk: { outcome: 'not-met' } }), 'later')],
  ],
  ...ROLES.map((who) =>
    one(
      `seen walking with a frame by ${who}`,
      role(told('seen-walking', 3, { walkingSupport: 'frame' }), who),
    ),
  ),
  ...(['clear', 'edge', 'stand', 'walk'] as const satisfies readonly StageId[]).flatMap((last) => [
    ...twice(`checked up to ${last}`, check(last, 3)),
    ...twice(`${last} not met`, check(last, 3, { [last]: { outcome: 'not-met' } })),
    one(`checked up to ${last} with the set`, check(last, 3, {}, pressures(3))),
    one(`checked up to ${last}, pressure fell`, check(last, 3, {}, pressures(3, 104))),
  ]),
  one(
    'checked in a standing hold',
    check('stand', 3, { stand: { how: 'secured' } }, { walkingSupport: 'frame' }),
  ),
  ...(['no', 'varies'] as const).map((waitsForHelp) =>
    one(
      `waits ${waitsForHelp}`,
      check('walk', 3, {}, { cooperation: { waitsForHelp, followsInstructions: 'no' } }),
    ),
  ),
  [
    'fell, then checked for it',
    [named(trigger('fall', 3), 'fall'), named(check('walk', 4, {}, { answers: ['fall'] }), 'later')],
  ],
  [
    'fell, then checked for it by an aide',
    [
      named(trigger('fall', 3), 'fall'),
      named(role(check('walk', 4, {}, { answers: ['fall'] }), 'aide'), 'later'),
    ],
  ],
  [
    'back from surgery, up again held',
    [
      named(trigger('return-from-surgery', 3), 'surgery'),
      named(
        check('stand', 4, { stand: { how: 'secured' } }, { firstTimeUp: true, answers: ['surgery'] }),
        'later',
      ),
    ],
  ],
  ...ROLES.map((who) => one(`confirmed by ${who}`, confirm(10, 'check', who))),
  one('asleep', told('asleep-seen', 9)),
  ['asleep, then up', [told('asleep-seen', 9), named(session(9.5), 'up')]],
  ['asleep, then offered', [told('asleep-seen', 9), named(notDone(9.5, 'bad-moment'), 'offered')]],
  ['asleep by day', [told('asleep-seen', 19)]],
  one('off the ward', told('went-off-ward', 3, { reason: 'test', dueBack: at(6) })),
  one('off the ward, no time said', told('went-off-ward', 3, { reason: 'dialysis' })),
  ['off the ward and back', [told('went-off-ward', 3, { reason: 'home-visit' }), told('came-back', 21)]],
  [
    'off and back twice',
    [
      told('went-off-ward', 3, { reason: 'test' }),
      told('came-back', 4),
      told('went-off-ward', 5, { reason: 'theatre' }, 'off-2'),
      told('came-back', 14, {}, 'back-2'),
    ],
  ],
  ...twice('weight 140 kg', told('weight-recorded', 3, { weight: { kg: 140, how: 'estimated' } })),
  ...twice(
    'usual way in a wheelchair',
    told('usual-way-recorded', 3, { usual: { moves: 'wheelchair', transfers: 'helped', stairs: 'no' } }),
  ),
  ...twice(
    'usual way in bed',
    told('usual-way-recorded', 3, { usual: { moves: 'bed', transfers: 'lifted', stairs: 'no' } }),
  ),
  ...twice('goal chair twice', told('goal-set', 3, { goal: { activity: 'chair', timesUp: 2 } })),
  one(
    'a drain',
    told('attachment-added', 3, {
      attachment: 'drain',
      kind: 'chest-drain',
      disconnects: 'nobody',
      needsOwnPerson: true,
      tetherMetres: 2,
    }),
  ),
  [
    'a drain, taken out',
    [
      told('attachment-added', 3, {
        attachment: 'drain',
        kind: 'chest-drain',
        disconnects: 'nurse',
        needsOwnPerson: true,
      }),
      told('attachment-removed', 5, { attachment: 'drain', kind: 'chest-drain' }),
    ],
  ],
  ...twice('comfort plan', told('scope-set', 3, { scope: 'comfort' })),
  ...twice(
    'clinician’s plan',
    told('scope-set', 3, { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } }),
  ),
  [
    'clinician’s plan, then staged by an aide',
    [
      told('scope-set', 3, { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 'text-1' } }),
      role(told('scope-set', 5, { scope: 'staged' }, 'back'), 'aide'),
    ],
  ],
  one('walls show nothing', told('wall-showing-set', 3, { showing: 'nothing' })),
  one('infection steps', told('isolation-set', 3, { on: true })),
  one('leaves', told('leaving-expected', 3, { at: at(40) })),
  one('a line at the bedside', told('therapist-line-set', 3, { line: { ref: 'text-2' } })),
  one(
    'a visit taken',
    told('visit-taken', 3, { visit: 'visit-1', by: 'staff-aide', from: at(9.5), until: at(10.5) }),
  ),
  [
    'a visit taken and given back',
    [
      told('visit-taken', 3, { visit: 'visit-1', by: 'staff-aide', from: at(9.5), until: at(10.5) }),
      told('visit-given-back', 4, { visit: 'visit-1', reason: 'called-away' }),
    ],
  ],
  one('a score of 7', told('early-warning-recorded', 3, { score: 7, anyThree: false, scale: 1 })),
  [
    'walking measured',
    [
      told('walking-measures-switched', 3, { on: true }),
      told('walking-measured', 4, { measure: { kind: 'up-and-go', seconds: 14, support: 'frame' } }),
    ],
  ],
  // What was said is changed, withdrawn or told late, with and without something open against it.
  ...ROLES.map((who) => one(`the check withdrawn by ${who}`, retract(3, 'check', who))),
  ...ROLES.map((who) =>
    one(`the check put right to the edge by ${who}`, correct(3, 'check', check('edge', 0.5), who)),
  ),
  ...(['nurse', 'aide'] as const).flatMap((who) => [
    [
      `not met, put right to met by ${who}`,
      [
        named(check('walk', 3, { walk: { outcome: 'not-met' } }), 'less'),
        named(correct(4, 'less', check('walk', 3), who), 'right'),
      ],
    ] as const,
    [
      `fell, withdrawn by ${who}`,
      [named(trigger('fall', 3), 'fall'), named(retract(4, 'fall', who), 'gone')],
    ] as const,
    [
      `held, withdrawn by ${who}`,
      [named(hold(3, 'walking', 30), 'hold'), named(retract(4, 'hold', who), 'gone')],
    ] as const,
    [
      `left leg bears nothing, withdrawn by ${who}`,
      [
        named(order(3, { about: 'weight-bearing', limb: 'left-leg', bears: 'none' }), 'order'),
        named(retract(4, 'order', who), 'gone'),
      ],
    ] as const,
    [
      `fell; a check of before told late by ${who}`,
      [named(trigger('fall', 3), 'fall'), { ...named(role(check('walk', 2), who), 'late'), recorded: 6 }],
    ] as const,
    [
      `fell; a check of after told late by ${who}`,
      [
        named(trigger('fall', 3), 'fall'),
        { ...named(role(check('walk', 4, {}, { answers: ['fall'] }), who), 'late'), recorded: 8 },
      ],
    ] as const,
    [
      `less was found; a walk of before told late by ${who}`,
      [
        named(check('stand', 3, { stand: { outcome: 'not-met' } }), 'less'),
        { ...named(role(check('walk', 2.9), who), 'late'), recorded: 6 },
      ],
    ] as const,
    [
      `pressure fell; a set of before told late by ${who}`,
      [
        named(check('walk', 3, {}, pressures(3, 104)), 'fell'),
        { ...named(role(check('walk', 2.5, {}, pressures(2.5)), who), 'late'), recorded: 6 },
      ],
    ] as const,
    [
      `a hold told late by ${who}`,
      [{ ...named(role(hold(2, 'out-of-bed', 30), who), 'late'), recorded: 9 }],
    ] as const,
    [
      `a session told late by ${who}`,
      [{ ...named(role(session(2, { metres: 40 }), who), 'late'), recorded: 9 }],
    ] as const,
  ]),
  [
    'two claims, one on the other',
    [
      named(trigger('fall', 3), 'fall'),
      named(check('walk', 3, { stand: { outcome: 'not-met' } }), 'less'),
      named(correct(5, 'less', check('walk', 3)), 'right'),
      named(retract(6, 'fall', 'nurse'), 'gone'),
    ],
  ],
];
