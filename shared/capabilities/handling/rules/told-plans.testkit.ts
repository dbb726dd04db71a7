/**
 * Invented people, and what each of many single facts more changes in how they are helped, written out
 * in words. What is compared is the whole answer: people, aid, side, cautions, and every reason with its
 * rule and its facts.
 */
import { assessment, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { StageSays } from '../../assessments/rules/assessment.testkit.ts';
import type { Because } from '../../board/because.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import type { Fact } from '../../corrections/facts.ts';
import { holdScope, limb, precaution, triggerKind, weightBearing } from '../../orders/values.ts';
import { attachmentKind, fence } from '../../stays/values.ts';
import { walkingSupport } from '../../assessments/values.ts';
import { DEFAULT_RULES, type RulesDocument } from '../../wards/rules/rules-document.ts';
import { planStay, type StayPlan } from './plan.ts';
import { hold, limbs, noOrders, planInput, stated, trigger, trust, weight } from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

type Extra = Partial<PlanInput>;
export interface Person {
  readonly said: string;
  readonly facts: readonly Fact[];
  readonly extra: Extra;
}
export const seen = (
  last: string,
  says: Record<string, StageSays> = {},
  more: Parameters<typeof assessment>[2] = {},
): Fact[] => [assessment(upTo(last, says), { id: 'seen' }, more)];
export const coop = (waitsForHelp: 'yes' | 'no' | 'varies', followsInstructions: 'yes' | 'no') => ({
  cooperation: { waitsForHelp, followsInstructions },
});
export const person = (said: string, facts: readonly Fact[], extra: Extra = {}): Person => ({
  said,
  facts,
  extra,
});

/** Whose plans are told whole, and to whom one fact more happens. */
export const PEOPLE: readonly Person[] = [
  person('walks freely', seen('walk', {}, coop('yes', 'yes'))),
  person('stands held, and sits at the edge', [
    ...seen(
      'stand',
      { stand: { how: 'secured', securedWith: 'standing-aid', people: 2 } },
      coop('yes', 'yes'),
    ),
  ]),
  person('sits at the edge, no more', seen('edge', {}, coop('yes', 'yes'))),
  person('was never looked at', []),
];
/** Told whole as well, without more: other findings, other cooperation, other weights. */
const OTHERS: readonly Person[] = [
  ...['clear', 'upright', 'turn'].map((last) =>
    person(`got as far as ${last}`, seen(last, {}, coop('yes', 'yes'))),
  ),
  ...(['no', 'varies'] as const).flatMap((waits) =>
    (['yes', 'no'] as const).map((follows) =>
      person(`walks, waits for help: ${waits}, follows: ${follows}`, seen('walk', {}, coop(waits, follows))),
    ),
  ),
  person('sits, follows nothing', seen('edge', {}, coop('yes', 'no'))),
  ...[40, 91, 95, 130, 136, 160, 220].flatMap((kg) => [
    person(`walks, ${kg} kg`, seen('walk', {}, coop('yes', 'yes')), weight(kg)),
    person(`sits, ${kg} kg estimated`, seen('edge', {}, coop('yes', 'yes')), weight(kg, 'estimated')),
    person(`sits, follows nothing, ${kg} kg`, seen('edge', {}, coop('no', 'no')), weight(kg)),
  ]),
  person('stands on one leg', seen('stand', { stand: { oneLeg: 'left' } }, coop('yes', 'yes'))),
  person('walked before, only sits now', seen('edge', {}, coop('yes', 'yes')), { everWalkedHere: true }),
];

const orders = (of: Partial<PlanInput['orders']>): Extra => ({ orders: { ...noOrders, ...of } });
const ward = (of: Partial<Record<keyof RulesDocument['handling'], unknown>>): Extra => ({
  rules: {
    ...DEFAULT_RULES,
    handling: Object.fromEntries(
      Object.entries(DEFAULT_RULES.handling).map(([name, is]) => [
        name,
        name in of ? { ...(is as object), value: of[name as keyof typeof of] } : is,
      ]),
    ) as RulesDocument['handling'],
  },
});
const on = stated(true as const, 0, 'more');
const line = (kind: (typeof attachmentKind.options)[number], needsOwnPerson: boolean, n = 1) =>
  Array.from({ length: n }, (_, i) =>
    stated({ kind, needsOwnPerson, disconnects: 'nurse' }, 0, `line-${i + 1}`),
  );

/** One fact more, or one setting of the ward otherwise. */
const MORE: readonly (readonly [string, Extra])[] = [
  ...holdScope.options.flatMap((scope): (readonly [string, Extra])[] => [
    [`hold on ${scope}`, { holds: [hold(scope)] }],
    [`hold on ${scope}, review due`, { holds: [hold(scope, true)] }],
  ]),
  ...triggerKind.options.map((kind): readonly [string, Extra] => [
    `open: ${kind}`,
    { trust: trust('re-check', trigger(kind)) },
  ]),
  ['not known any more', { trust: trust('not-known') }],
  ...(['bed', 'edge-of-bed', 'chair', 'stand', 'walk', 'no-limit'] as const).map(
    (most): readonly [string, Extra] => [
      `activity up to ${most}`,
      orders({ activity: stated(most, 0, 'order') }),
    ],
  ),
  ...limb.options.flatMap((which) =>
    weightBearing.options.map((bears): readonly [string, Extra] => [
      `${which} bears ${bears}`,
      { orders: limbs({ [which]: bears }) },
    ]),
  ),
  ['both legs limited', { orders: limbs({ 'left-leg': 'limited', 'right-leg': 'limited' }) }],
  ['both legs bear none', { orders: limbs({ 'left-leg': 'none', 'right-leg': 'none' }) }],
  ['left leg and right arm bear none', { orders: limbs({ 'left-leg': 'none', 'right-arm': 'none' }) }],
  ['both arms bear none', { orders: limbs({ 'left-arm': 'none', 'right-arm': 'none' }) }],
  ...precaution.options.map((p): readonly [string, Extra] => [
    `${p} precautions`,
    { orders: limbs({}, [p]) },
  ]),
  ['all precautions', { orders: limbs({}, [...precaution.options]) }],
  ['a brace', orders({ brace: on })],
  ...attachmentKind.options.flatMap((kind): (readonly [string, Extra])[] => [
    [`${kind}`, { attachments: line(kind, false) }],
    [`${kind} with a person of its own`, { attachments: line(kind, true) }],
  ]),
  ['two lines', { attachments: line('iv-line', false, 2) }],
  ['three lines', { attachments: line('iv-line', false, 3) }],
  ['weight not known', { weight: null }],
  ['95 kg', weight(95)],
  ['140 kg', weight(140)],
  ['120 kg estimated', weight(120, 'estimated')],
  ...(['room', 'toilet', 'ward'] as const).flatMap((where) =>
    [['day'], ['day', 'night']].map((when): readonly [string, Extra] => [
      `on own: ${where}, ${when.join(' and ')}`,
      { onOwn: stated({ where: [where], when: when as ('day' | 'night')[] }, 0, 'own') },
    ]),
  ),
  [
    'on own everywhere, and a pressure drop',
    {
      onOwn: stated({ where: ['room', 'toilet', 'ward'], when: ['day', 'night'] }, 0, 'own'),
      pressureDrop: on,
    },
  ],
  ...walkingSupport.options.flatMap((support): (readonly [string, Extra])[] => [
    [`seen in use: ${support}`, { walkingSupport: stated(support, 0, 'support') }],
    [`seen walking on arrival: ${support}`, { seenWalking: stated(support, 0, 'arrival') }],
  ]),
  [
    'seen walking on arrival, then a fall',
    { seenWalking: stated('none', 0, 'arrival'), trust: trust('not-known', trigger('fall', 0.5)) },
  ],
  ['seen walking five hours ago', { seenWalking: stated('none', -4, 'arrival') }],
  ['pressure drop', { pressureDrop: on }],
  ['first time up ahead', { firstTimeUpPending: on }],
  ['first time up to be repeated', { firstTimeUpPending: stated('to-be-repeated', 0, 'more') }],
  ['sedated just now', { sedatedAt: stated(true, 0.5, 'more') }],
  ['sedated five hours ago', { sedatedAt: stated(true, -4, 'more') }],
  ['walked here before', { everWalkedHere: true }],
  ...fence.options.map((f): readonly [string, Extra] => [`fence: ${f}`, { fence: f }]),
  ['spine or pelvis in doubt', { spineOrPelvisInDoubt: on }],
  ['ward: a lone carer with a belt', ward({ loneCarerWithBelt: true })],
  ['ward: 200 lb is the lighter row', ward({ twoHundredPoundsIsHeavier: false })],
  ['ward: bariatric from 60 kg', ward({ bariatricFromKg: 60 })],
  ['ward: one line is many', ward({ manyAttachmentsFrom: 1 })],
  ['ward: a carer lifts 5 kg', ward({ liftLimitKgPerCarer: 5, limbHoldKgPerCarer: 3 })],
];

export const planOf = ({ facts, extra }: Person, more: Extra = {}): StayPlan =>
  planStay(planInput(facts, { ...extra, ...more }));

const why = ({ rule, facts, words }: Because): string => `${rule} [${facts.join(' ')}] ${words}`;
/** By what is told of (a task by day or night, the person as a whole): what is told, first what is done. */
export function toldOf(plan: StayPlan): Map<string, readonly string[]> {
  const task = (p: TaskPlan): string[] => [
    [p.hold ? 'HOLD' : null, p.people, p.aid, ...p.with, p.towards && `towards ${p.towards}`]
      .filter(Boolean)
      .join(', '),
    ...p.cautions.map((c) => `! ${c}`),
    ...p.because.map(why),
  ];
  return new Map<string, readonly string[]>([
    [
      'person',
      [
        plan.checkBeforeMoving ? 'CHECK BEFORE MOVING' : 'may be moved by the plan',
        ...plan.cautions.flatMap((c) => [`! ${c.words}`, ...c.because.map(why)]),
        `until ${plan.nextChange === null ? 'something is said' : new Date(plan.nextChange).toISOString()}`,
      ],
    ],
    ...plan.day.map((p) => [p.task, task(p)] as const),
    ...plan.night.map((p) => [`${p.task} by night`, task(p)] as const),
  ]);
}

/** What is told alike is told once; a night like its day is not told again. */
export function grouped(all: ReadonlyMap<string, readonly string[]>): string[] {
  const groups = new Map<string, string[]>();
  for (const [of, lines] of all) {
    const day = all.get(of.replace(' by night', ''));
    if (lines.length === 0 || (day !== lines && day?.join('\n') === lines.join('\n'))) continue;
    const text = lines.map((told, i) => (i === 0 ? told : `    ${told}`)).join('\n');
    groups.set(text, [...(groups.get(text) ?? []), of]);
  }
  return [...groups].map(([text, of]) => `  ${of.join(', ')}: ${text}`);
}

/** What is done, when that differs, and the reasons that came and went. */
export function change(before: readonly string[], after: readonly string[]): string[] {
  const come = after.slice(1).filter((told) => !before.includes(told));
  const gone = before.slice(1).filter((told) => !after.includes(told));
  if (before[0] === after[0] && come.length + gone.length === 0) return [];
  const is = before[0] === after[0] ? 'as before' : `${after[0]} (was ${before[0]})`;
  return [is, ...come.map((told) => `+ ${told}`), ...gone.map((told) => `- ${told}`)];
}

/** Everybody's plan; of one fact more only what it changes. */
export function toldPlans(): string {
  const whole = [...PEOPLE, ...OTHERS].flatMap((who) => [
    `# ${who.said}`,
    ...grouped(toldOf(planOf(who))),
    '',
  ]);
  const changed = PEOPLE.flatMap((who) => {
    const before = toldOf(planOf(who));
    return MORE.flatMap(([said, extra]) => {
      const after = toldOf(planOf(who, extra));
      const lines = grouped(new Map([...after].map(([of, is]) => [of, change(before.get(of)!, is)])));
      return [`# ${who.said}; ${said}`, ...(lines.length > 0 ? lines : ['  nothing changes']), ''];
    });
  });
  return `${[...whole, ...changed].join('\n')}\n`;
}
