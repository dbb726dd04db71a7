/** Two looks at one invented stay that differ in one thing: what a doubtful entry may bring or take. */
import type { EventId } from '../../../kernel/ids.ts';
import { telling } from '../../../kernel/told.testkit.ts';
import type { TaskPlan } from '../moving-view.ts';
import type { StayView } from '../view.ts';
import { evaluateStay } from './evaluate-stay.ts';
import { calendar, hours, recordOf, ward } from './history.testkit.ts';
import { change, STAYS } from './told-stays.testkit.ts';

/** The third hour of a stay whose person walks freely. */
export const AT = hours(3.2);
export const BASE: StayView = evaluateStay(recordOf(STAYS['walks']!), ward, calendar, AT).view;

export const id = (of: string) => of as EventId;
const because = (rule: string, ...facts: string[]) => ({
  rule,
  facts: facts.map(id),
  words: `said by ${rule}`,
});
export const conflict = (question: string, safer: string, other: string) => ({
  question,
  safer: id(safer),
  other: id(other),
  words: `${question} disagree`,
});
const trust = (more: Partial<StayView['trust']>) => ({ trust: { ...BASE.trust, ...more } });
const open = (event: string) => ({ event: id(event), kind: 'fall' as const, at: AT, words: 'Fall' });
const held = (hold: string, scope: StayView['holds'][number]['scope']): StayView['holds'][number] => ({
  hold: hold as never,
  scope,
  reason: 'unstable',
  owner: 'nurse' as never,
  placedAt: AT,
  reviewAt: AT + 1,
  reviewDue: false,
  event: id(`${hold}-placed`),
  note: null,
});
const upTo = (event: string, most: 'chair' | 'bed') => ({
  event: id(event),
  order: { about: 'activity' as const, most },
  at: AT,
});
const line = (attachment: string) => ({
  attachment: attachment as never,
  kind: 'iv-line' as const,
  disconnects: 'nurse' as const,
  tetherMetres: null,
  needsOwnPerson: false,
});
const planned = (part: 'day' | 'night', task: string, more: Partial<TaskPlan>) => ({
  plan: {
    ...BASE.plan!,
    [part]: BASE.plan![part].map((one) => (one.task === task ? { ...one, ...more } : one)),
  },
});
const due = (state: StayView['due']['state'], at: number | null) => ({
  due: { state, at, because: [because('due/other', state)] },
});
const start = (word: 'not-now' | 'ask-first' | 'may-start') => ({
  mayStart: { word, reasons: [], notTaken: [word] },
});
const step = (which: 'up' | 'back'): Partial<StayView> => ({
  proposal: {
    step: which,
    goal: { activity: 'walk', timesUp: 3 },
    sessions: [],
    because: [because('goal/step', 'a-session')],
  },
});
const tier = (word: string, notch: number | null, more: Partial<StayView['tier']> = {}) => ({
  tier: { ...BASE.tier, word, notch, because: [because('tier/other', 'doubtful')], ...more },
});

/** What the other look says otherwise. */
export const OTHERWISE: readonly (readonly [string, Partial<StayView>])[] = [
  ['nothing', {}],
  ['comfort', { scope: { kind: 'comfort', fence: null, plan: null }, plan: null, mayStart: null }],
  ["clinician's plan", { scope: { kind: 'clinicians-plan', fence: null, plan: null }, plan: null }],
  ['check before moving', { checkBeforeMoving: true }],
  ['first time up ahead', { firstTimeUpPending: true }],
  ['on own', { onOwn: { where: ['room'], when: ['day'], event: id('own') } }],
  ['a lower tier', tier('Edge', 0.4)],
  ['a lower tier that nobody stands by', tier('Edge', 0.4, { by: null })],
  ['a lower tier with no reason', tier('Edge', 0.4, { because: [] })],
  ['a higher tier', tier('Beyond', 1.1)],
  ['a tier as high', tier('Other', BASE.tier.notch)],
  ['no tier known', tier('Not known', null)],
  ['the lowest tier', tier('Lowest', 0)],
  ['one hold', { holds: [held('hold-1', 'walking')] }],
  ['two holds', { holds: [held('hold-1', 'walking'), held('hold-2', 'standing')] }],
  ['a trigger', trust({ openTriggers: [open('fell')] })],
  ['two triggers', trust({ openTriggers: [open('fell'), open('fell-again')] })],
  ['an order', { orders: [upTo('order-1', 'chair')] }],
  ['a stricter order', { orders: [upTo('order-2', 'bed')] }],
  ['an attachment', { attachments: [line('line-1')] }],
  ['two attachments', { attachments: [line('line-1'), line('line-2')] }],
  ['cautions', { cautions: [{ words: 'Mind the step', because: [because('caution', 'a')] }] }],
  ['two people to walk by day', planned('day', 'walk', { people: 'two' })],
  ['two people to walk by night', planned('night', 'walk', { people: 'two' })],
  ['no walking by day', planned('day', 'walk', { hold: true })],
  ['no plan', { plan: null }],
  ['re-check', trust({ state: 're-check', because: [because('trust/ran-out', 'old')] })],
  ['not known', trust({ state: 'not-known', because: [because('trust/never', 'begun')] })],
  ['a conflict', trust({ conflicts: [conflict('two checks', 'one', 'other')] })],
  [
    'a conflict, said as a reason too',
    trust({
      conflicts: [conflict('two checks', 'one', 'other')],
      because: [
        { rule: 'trust/conflict', facts: [id('one'), id('other')], words: 'two checks disagree' },
        { rule: 'trust/conflict', facts: [id('one'), id('doubtful')], words: 'two checks disagree' },
        because('trust/conflict', 'one', 'other'),
      ],
    }),
  ],
  [
    'a conflict with what is doubtful',
    trust({
      conflicts: [conflict('two checks', 'one', 'doubtful')],
      because: [
        { rule: 'trust/conflict', facts: [id('one'), id('doubtful')], words: 'two checks disagree' },
        because('tier/qualified-author', 'doubtful'),
      ],
    }),
  ],
  [
    'said as trusted',
    trust({ because: [because('trust/current', 'check'), because('trust/settled', 'check')] }),
  ],
  ...(
    [
      ['none', null],
      ['not-due', AT + 10],
      ['at-next-move', null],
      ['due', AT],
      ['overdue', AT - 10],
      ['not-due', AT - 10],
      ['not-due', 9e14],
    ] as const
  ).map(([state, at]) => [`${state} at ${at === null ? 'no time' : at - AT}`, due(state, at)] as const),
  ...(['not-now', 'ask-first', 'may-start'] as const).map((word) => [word, start(word)] as const),
  ['nobody asks whether to start', { mayStart: null }],
  ['a step up', step('up')],
  ['a step back', step('back')],
  ['no goal', { today: { ...BASE.today, goal: null } }],
  ['a goal that asks for less', { today: { ...BASE.today, goal: { activity: 'chair', timesUp: 3 } } }],
];
/** Each look has one of its own; the last is the same in both but for what it says. */
export const EACH_ONE: readonly (readonly [string, Partial<StayView>, Partial<StayView>])[] = [
  ['hold', { holds: [held('hold-1', 'walking')] }, { holds: [held('hold-2', 'walking')] }],
  ['scope of a hold', { holds: [held('hold-1', 'walking')] }, { holds: [held('hold-1', 'standing')] }],
  ['trigger', trust({ openTriggers: [open('fell')] }), trust({ openTriggers: [open('fell-again')] })],
  ['order', { orders: [upTo('order-1', 'chair')] }, { orders: [upTo('order-2', 'bed')] }],
  ['entry of one order', { orders: [upTo('order-1', 'chair')] }, { orders: [upTo('order-2', 'chair')] }],
  ['attachment', { attachments: [line('line-1')] }, { attachments: [line('line-2')] }],
  [
    'caution',
    { cautions: [{ words: 'Mind the step', because: [] }] },
    { cautions: [{ words: 'Mind the line', because: [] }] },
  ],
  [
    'conflict',
    trust({ conflicts: [conflict('two checks', 'one', 'other')] }),
    trust({ conflicts: [conflict('two orders', 'one', 'doubtful')] }),
  ],
  [
    'conflict that one reason names',
    trust({
      conflicts: [conflict('two checks', 'one', 'other'), conflict('two orders', 'three', 'four')],
      because: [
        { rule: 'trust/conflict', facts: [id('three'), id('four')], words: 'two orders disagree' },
        { rule: 'trust/conflict', facts: [id('three'), id('doubtful')], words: 'two orders disagree' },
      ],
    }),
    { checkBeforeMoving: true },
  ],
];
export const other = (more: Partial<StayView>): StayView => ({ ...BASE, ...more });

const task = ({ task: of, hold, people, aid }: TaskPlan) => `${of} ${hold ? 'HOLD ' : ''}${people} ${aid}`;
/** A row in lines; of a plan what is done, of a start its word and what was not taken. */
export function lines({ plan, mayStart, ...row }: StayView): string[] {
  return telling({
    ...row,
    day: plan?.day.map(task).join('; ') ?? 'no plan',
    night: plan?.night.map(task).join('; ') ?? 'no plan',
    mayStart: mayStart ? `${mayStart.word}; not taken: ${mayStart.notTaken.join(', ')}` : 'not asked',
  });
}
/** What differs from the stay as nobody doubts it. */
export const against = (view: StayView): string[] => change(lines(BASE), lines(view));
