import { holdScope, order } from '@footboard/shared/capabilities/orders/values';
import { task as tasks } from '@footboard/shared/capabilities/handling/values';
import { holdDemands, orderDemands } from '@footboard/shared/capabilities/handling/rules/limits';
import { AID_CHAINS } from '@footboard/shared/capabilities/handling/rules/help';
import { TRIGGER_HELP } from '@footboard/shared/capabilities/handling/rules/trigger-help';
import { FROM_FLOOR } from '@footboard/shared/capabilities/handling/rules/tables/from-floor';
import { IN_CHAIR } from '@footboard/shared/capabilities/handling/rules/tables/in-chair';
import {
  BARIATRIC_LATERAL,
  IN_BED,
  LATERAL,
} from '@footboard/shared/capabilities/handling/rules/tables/lying';
import { EDGE, STAND, WALK } from '@footboard/shared/capabilities/handling/rules/tables/ours';
import { SEGMENT_TABLES } from '@footboard/shared/capabilities/handling/rules/tables/segments';
import {
  BARIATRIC_TRANSFER,
  CHAIR_TO_TROLLEY,
  TRANSFER,
} from '@footboard/shared/capabilities/handling/rules/tables/transfer';
import {
  CONFIRM_ANSWERS,
  NEEDS_AS_FAR,
  NEEDS_PRESSURE_SET,
} from '@footboard/shared/capabilities/orders/rules/triggers';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { table, title, value, words } from './markdown.mjs';
import { moreHelp } from './more-help.mjs';

/** Published tables, then our own. */
export const TABLES = [
  ['Bed to chair, toilet', TRANSFER],
  ['Bed to chair, toilet, from the bariatric weight', BARIATRIC_TRANSFER],
  ['Lateral, to a trolley', LATERAL],
  ['Lateral, from the bariatric weight', BARIATRIC_LATERAL],
  ['Chair to trolley', CHAIR_TO_TROLLEY],
  ['Turning and moving up in bed', IN_BED],
  ['Moving up in the chair', IN_CHAIR],
  ['Up from the floor', FROM_FLOOR],
  ['Edge of the bed', EDGE],
  ['Standing', STAND],
  ['Walking', WALK],
];

const people = ([low, high]) => (low === high ? words(low) : `${words(low)} to ${words(high)}`);
const optionWords = (o) => `${people(o.people)}, ${words(o.aid)}${o.item ? ` (${o.item})` : ''}`;
const whenWords = (when) =>
  Object.entries(when)
    .map(([k, v]) => `${words(k)}: ${typeof v === 'boolean' ? value(v) : words(v)}`)
    .join('; ') || 'all others';

function decisionTables() {
  const lines = [
    '### The tables',
    '',
    'Rows in order; the first that fits decides. Of several options the first that the person and the ward’s rules allow is',
    'taken; of a printed range the higher number. Tables only add to one another; nothing lowers what another asks for.',
    '',
  ];
  for (const [name, one] of TABLES) {
    lines.push(`#### ${name}`, '', `Source: ${one.source}.`, '');
    lines.push(
      ...table(
        ['when', 'people and aid', 'as the source says'],
        one.rows.map((r) => [whenWords(r.when), r.options.map(optionWords).join('; or '), r.says]),
      ),
    );
  }
  return lines;
}

const stopped = (demandsOf) => {
  const held = tasks.options.filter((t) => demandsOf(t).some((d) => d.help.hold));
  const lifted = tasks.options.filter((t) => demandsOf(t).some((d) => d.help.aids.includes('sling-lift')));
  return [held.map(words).join(', ') || 'nothing', lifted.map(words).join(', ') || '-'];
};
const noOrders = { activity: null, weightBearing: new Map(), precautions: new Map(), brace: null };

function stops() {
  const hold = (scope) => (t) =>
    holdDemands(t, { holds: [{ scope, reason: 'order', reviewDue: false, event: 'hold' }] });
  const activity = order.options.find((o) => o.shape.about.value === 'activity').shape.most.options;
  const ordered = (most) => (t) =>
    orderDemands(t, { orders: { ...noOrders, activity: { value: most, fact: 'order', at: 0 } } });
  return [
    '### Holds and orders',
    '',
    'A hold passes its review time and frees nobody: a qualified person ends or renews it. Skin care, turning and the toilet',
    'in bed go on unless the scope says so.',
    '',
    ...table(
      ['hold on', 'stops', 'only lifted'],
      holdScope.options.map((s) => [words(s), ...stopped(hold(s))]),
    ),
    ...table(
      ['activity ordered up to', 'stops'],
      activity.map((most) => [words(most), stopped(ordered(most))[0]]),
    ),
  ];
}

/** What ends a trigger, from the sets the rules themselves ask. */
const answeredBy = (kind) =>
  [
    CONFIRM_ANSWERS.has(kind) ? 'a nurse’s or therapist’s confirm, or a staged check' : 'a staged check',
    NEEDS_PRESSURE_SET.has(kind) && 'with its pressure set, unless it names the trigger',
    kind === 'order-change' && 'that does not go beyond the new order',
    NEEDS_AS_FAR.has(kind) && 'that goes as far as what stands cleared, or finds a stage not met',
  ]
    .filter(Boolean)
    .join(', ');

function triggers() {
  const within = DEFAULT_RULES.validity.triggers;
  return [
    '### What a trigger does until someone has looked',
    '',
    'Common practice, no source: to be signed by the ward. Every trigger ends trust in the plan and takes "on own" back.',
    'Several triggers ask for the most that any of them asks for. A new symptom is also signs of a stroke, and more oxygen',
    'needed than before.',
    '',
    ...table(
      [
        'trigger',
        'not done until a nurse has looked',
        'people more, every task',
        'looked at within (hours)',
        'answered by',
      ],
      Object.entries(TRIGGER_HELP).map(([kind, r]) => [
        words(kind),
        r.holds.map(words).join(', ') || '-',
        r.more,
        value(within[kind]?.value ?? null),
        answeredBy(kind),
      ]),
    ),
  ];
}

/** No data stands behind these: they are the program's own order of questions. */
const BEFORE_THE_TABLES = [
  'Weight bearing is the lesser of what is ordered and what was seen. Not yet seen standing counts as none.',
  'Who does not follow instructions or wait for help is never taken from the row of full weight bearing and stand by, but as partial and not cooperating.',
  'A seated transfer needs sitting balance cleared on the same ward day; else sling lift.',
  'A standing aid needs sitting balance, one leg that bears, instructions followed, grip on one side and arms that may pull; else sling lift.',
  'One leg that bears nothing and one without limit is partial.',
  'Of a printed range of people the higher number is taken. A lone carer with a belt is off unless the ward turns it on.',
  'Strength against gravity allows a secured rise only; a free rise needs strength against resistance on a bearing side.',
  'Waits for help, and follows instructions: the worst of the window decides.',
  'Aids that cannot be combined, or an order that forbids the fallback, are a HOLD: do not move, ask.',
  'By night never less than by day.',
];

function segments() {
  const all = Object.entries(SEGMENT_TABLES);
  const names = Object.keys(all[0][1].shares);
  const percent = (share) => `${Math.round(share * 10_000) / 100} %`;
  const { liftLimitKgPerCarer: lift, limbHoldKgPerCarer: limb } = DEFAULT_RULES.handling;
  return [
    '### Parts of the body as shares of its weight',
    '',
    `Behind "why" only: the plan says "leg: two people or a limb sling". One carer lifts at most ${lift.value} kg`,
    `(${lift.source}) and holds a limb of at most ${limb.value} kg (${limb.source}). The heaviest share of any table counts.`,
    '',
    ...table(
      ['part', ...all.map(([, t]) => t.source)],
      names.map((n) => [words(n), ...all.map(([, t]) => percent(t.shares[n]))]),
    ),
  ];
}

export const moving = () => [
  '## How the person is moved',
  '',
  '### Before the tables',
  '',
  'Ours, practice: to be signed.',
  '',
  ...BEFORE_THE_TABLES.map((r) => `- ${r}`),
  '',
  ...decisionTables(),
  '### Which aid covers which',
  '',
  'From least to most help, task by task. Aids of different chains cannot be combined.',
  '',
  ...table(
    ['task', 'chains'],
    Object.entries(AID_CHAINS).map(([t, chains]) => [
      title(words(t)),
      chains.map((c) => c.map(words).join(' < ')).join('; '),
    ]),
  ),
  ...moreHelp(),
  ...stops(),
  ...triggers(),
  ...segments(),
];
