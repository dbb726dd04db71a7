import { attachmentKind } from '@footboard/shared/capabilities/stays/values';
import { precaution } from '@footboard/shared/capabilities/orders/values';
import { attachmentDemands } from '@footboard/shared/capabilities/handling/rules/more-people';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { table, words } from './markdown.mjs';
import { differs, NO_ORDERS, notKnown, PARTIAL, person, plans, stated, UNSEEN, WALKER } from './person.mjs';

const handling = DEFAULT_RULES.handling;
const heavy = handling.bariatricFromKg.value;
const weighs = (capability, kg) => ({
  ...capability,
  weightKg: kg,
  weightMarked: kg === null ? 'unknown' : 'measured',
});
const weight = (kg) => ({ weight: kg === null ? null : stated({ kg, how: 'measured' }) });

/** Plans of several people beside one another, a row a task. */
function beside(columns) {
  const made = columns.map(([, input]) => plans(input));
  return table(
    ['task', ...columns.map(([head]) => head)],
    made[0].map(([task], i) => [words(task), ...made.map((one) => one[i][1])]),
  );
}

function unknown() {
  return [
    '### Not known here',
    '',
    'Nobody has checked, or the last check has run out: the board says CHECK BEFORE MOVING. If it cannot wait, the last plan',
    'is joined with two people and a sling lift, and there is no standing or walking. Answered by the rules:',
    '',
    ...beside([
      ['never checked, 70 kg', notKnown(UNSEEN)],
      [`never checked, ${heavy} kg`, notKnown(weighs(UNSEEN, heavy), weight(heavy))],
      ['never checked, weight unknown', notKnown(weighs(UNSEEN, null), weight(null))],
      ['last seen walking alone, 70 kg', notKnown(WALKER)],
    ]),
    `A nurse who saw the person walk steadily on arrival may say so: stand by for ${handling.seenWalkingHours.value} h, until a trigger.`,
    '',
    '### Weight',
    '',
    `From ${heavy} kg, and while the weight is unknown, who must be carried is carried by the bariatric lift with at least three.`,
    `An estimate counts with ${Math.round(handling.estimatedWeightMargin.value * 100)} % added. **The body mass index is not known to the program**: the published bariatric trigger by`,
    'body mass index (with or without other illness) is left to the clinician, who may enter a plan of their own.',
    '',
    ...beside([
      ['seen to bear nothing, 70 kg', person(UNSEEN)],
      [`the same, ${heavy} kg`, person(weighs(UNSEEN, heavy), weight(heavy))],
      ['the same, weight unknown', person(weighs(UNSEEN, null), weight(null))],
    ]),
  ];
}

const attachment = (kind, more = {}) =>
  stated({ kind, needsOwnPerson: false, disconnects: 'anyone-trained', ...more });
const moreFor = (attachments) => {
  const demands = attachmentDemands(person(WALKER, { attachments }));
  const more = demands.reduce((sum, d) => sum + d.more, 0);
  return [more, demands.map((d) => d.because.words).join('; ') || '-'];
};
const attachments = () => [
  '### Attachments',
  '',
  'Each is named as a caution with who may disconnect it. People more, on every task:',
  '',
  ...table(
    ['attached', 'people more', 'as the board says it'],
    [
      ...attachmentKind.options.map((kind) => [words(kind), ...moreFor([attachment(kind)])]),
      [
        `${handling.manyAttachmentsFrom.value} of any kind`,
        ...moreFor(Array.from({ length: handling.manyAttachmentsFrom.value }, () => attachment('iv-line'))),
      ],
      ['one that needs a person to itself', ...moreFor([attachment('iv-line', { needsOwnPerson: true })])],
    ],
  ),
];

const HEADS = ['task', 'without', 'with', 'what the rule says'];
const told = (title, lines, input, options, from = person(WALKER)) => [
  `### ${title}`,
  '',
  ...lines,
  '',
  ...table(HEADS, differs(input, from, options)),
];
const ordered = (which) => ({ ...NO_ORDERS, precautions: new Map([[which, stated(true)]]) });
const ON_OWN = { onOwn: stated({ where: ['room', 'toilet', 'ward'], when: ['day'] }) };

/** What raises help beside the tables, told on somebody who walks alone. */
export const moreHelp = () => [
  ...unknown(),
  ...attachments(),
  ...told(
    'Pressure drop on rising',
    ['A fall of the pressure without symptoms, until a set without one.'],
    person(WALKER, { pressureDrop: stated(true) }),
    { rules: ['pressure-drop'] },
  ),
  ...told(
    'First time up since surgery or bed rest',
    [
      `Bed rest counts from ${handling.bedRestHours.value} h. The pressure set, two people whatever the tier, a chair behind.`,
    ],
    person(WALKER, { firstTimeUpPending: stated(true) }),
    { rules: ['first-time-up'] },
  ),
  ...told(
    'At night',
    [
      'Never less than by day, and stand by to the toilet unless "on own" at night was set. Somebody set "on own" by day only,',
      `and had a sedative less than ${handling.sedativeNightHours.value} h ago; without is the same person by night with neither:`,
    ],
    person(WALKER, { ...ON_OWN, sedatedAt: stated(true) }),
    { when: 'night', rules: ['night/sedative', 'on-own'] },
  ),
  '### Precautions',
  '',
  'As ordered. Told on somebody who walks alone, who bears part of the weight, and who bears none and is lifted.',
  '',
  ...table(
    ['precautions', 'person', ...HEADS],
    precaution.options.flatMap((which) =>
      [
        ['walks alone', WALKER],
        ['bears part', PARTIAL],
        ['bears none', UNSEEN],
      ].flatMap(([who, capability]) =>
        differs(person(capability, { orders: ordered(which) }), person(capability), {
          rules: ['order/precaution', 'before-the-tables/fit-for-the-aid'],
        }).map((cells) => [words(which), who, ...cells]),
      ),
    ),
  ),
  ...told('Brace', ['As ordered.'], person(WALKER, { orders: { ...NO_ORDERS, brace: stated(true) } }), {
    rules: ['order/brace'],
  }),
  ...told(
    'Spine or pelvis in doubt',
    [
      'After a fall or with a fracture that is unclear, until it is ruled out. No lift replaces the question.',
    ],
    person(WALKER, { spineOrPelvisInDoubt: stated(true) }),
    { rules: ['spine-or-pelvis-in-doubt'] },
  ),
];
