import { LADDER } from '@footboard/shared/capabilities/sessions/rules/activities';
import { NEEDED_FOR } from '@footboard/shared/capabilities/sessions/rules/needed-for';
import {
  judgeMeasure,
  MEASURES_STANDING_LINE,
} from '@footboard/shared/capabilities/measures/rules/judge-measure';
import { CHAIR_STANDS } from '@footboard/shared/capabilities/measures/rules/tables/chair-stands';
import { SIX_MINUTE_WALK } from '@footboard/shared/capabilities/measures/rules/tables/six-minute-walk';
import { WALKING_SPEED } from '@footboard/shared/capabilities/measures/rules/tables/walking-speed';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { table, words } from './markdown.mjs';

export function goals() {
  const { activity: a, signs: s } = DEFAULT_RULES;
  return [
    '## Goals, progression and signs',
    '',
    'A goal starts from the person’s usual way of moving and wish. What is cleared, held or ordered only caps it. It is set',
    'by a nurse or therapist; what the rules propose is marked as proposed. Ours, practice.',
    '',
    ...table(
      ['activity', 'stage that must be cleared first', 'proposed by the rules'],
      Object.entries(NEEDED_FOR).map(([one, stage]) => [
        words(one),
        stage ?? 'none',
        LADDER.includes(one) ? 'yes' : 'no',
      ]),
    ),
    `- A step up is proposed after ${a.stepUpSessions.value} sessions at goal with effort of at most ${a.stepUpEffort.value} of 10 and no event.`,
    `- A step back and a review are proposed after ${a.stepBackMisses.value} misses or one event.`,
    '- Neither is ever automatic: a qualified person accepts it.',
    `- A walk goal grows to at most ${a.walkCeilingMetres.value} m (${a.walkCeilingMetres.source}).`,
    `- Movement debt begins ${a.debtFreeHours.value} waking hours after the person was last up.`,
    '',
    'Signs are a line on the board and a reason in the round, never an alarm:',
    '',
    `- ${s.stagesLost.value} stages lost in ${s.stagesLostHours.value} h.`,
    `- ${s.refusalsInRow.value} refusals in a row.`,
    `- ${s.daysBelowBaseline.value} days below the person’s own usual way.`,
    `- Ready for the next stage: ${s.readySessions.value} sessions that show it.`,
    '',
  ];
}

const byAge = (name, unit, one, decimals = 0) => [
  `### ${name}`,
  '',
  `Source: ${one.source}. Owner: ${one.owner}. Review by ${one.reviewBy}. Outside these ages: no norm.`,
  '',
  ...table(
    ['ages', `men (${unit})`, `women (${unit})`],
    one.bands.map((b) => [`${b.from} to ${b.to}`, b.male.toFixed(decimals), b.female.toFixed(decimals)]),
  ),
];

const LIMITS = DEFAULT_RULES.walking;
const speed = { kind: 'gait-speed', metres: 10, seconds: 10, pace: 'usual', start: 'walking', turn: false };
const at70 = { age: 70, sex: 'female' };
/** Worked examples: one measure, read by age and sex or without. */
const MEASURED = [
  [{ ...speed, support: 'none' }, at70],
  [{ ...speed, seconds: 20, support: 'frame' }, at70],
  [{ ...speed, seconds: 30, support: 'none', turn: true }, at70],
  [{ ...speed, support: 'none', start: 'from-standing' }, at70],
  [{ ...speed, support: 'none', pace: 'fast' }, at70],
  [{ ...speed, support: 'none' }, undefined],
  [
    { ...speed, support: 'none' },
    { age: 19, sex: 'male' },
  ],
  [{ kind: 'six-minute-walk', metres: 400, heightCm: 162, weightKg: 65, support: 'none' }, at70],
  [{ kind: 'six-minute-walk', metres: 400, support: 'stick' }, undefined],
  [
    { kind: 'six-minute-walk', metres: 400, heightCm: 162, weightKg: 65, support: 'none' },
    { age: 85, sex: 'female' },
  ],
  [{ kind: 'chair-stands', stands: 9, usedArms: false }, at70],
  [{ kind: 'chair-stands', stands: 9, usedArms: true }, at70],
  [
    { kind: 'chair-stands', stands: 9, usedArms: false },
    { age: 50, sex: 'female' },
  ],
  [{ kind: 'five-rises', seconds: 16, usedArms: false }, undefined],
  [{ kind: 'five-rises', seconds: 12, usedArms: true }, undefined],
  [{ kind: 'five-rises', seconds: null, usedArms: false }, undefined],
  [{ kind: 'up-and-go', seconds: 12, support: 'none' }, undefined],
  [{ kind: 'up-and-go', seconds: null, support: 'none' }, undefined],
];
const read = () => [
  '### How a measure reads',
  '',
  `${MEASURES_STANDING_LINE} Worked examples, answered by the rules, with their warnings and where there is no norm:`,
  '',
  ...table(
    ['measure', 'read by', 'how it reads', 'warnings', 'source'],
    MEASURED.map(([measure, by]) => {
      const { words: done, says, warnings, source } = judgeMeasure(measure, by, LIMITS);
      return [done, by ? `${by.sex}, ${by.age}` : 'not given', says, warnings.join(' ') || '-', source];
    }),
  ),
];

export function measures() {
  const w = SIX_MINUTE_WALK;
  return [
    '## Walking measures',
    '',
    'Off until a therapist turns them on for a stay. No rule of the plan reads them.',
    '',
    ...byAge('Walking speed at the usual pace, mean', 'm/s', WALKING_SPEED, 2),
    ...byAge('Chair stands in 30 s, below average if fewer than', 'stands', CHAIR_STANDS),
    '### Six-minute walk, reference distance',
    '',
    `Source: ${w.source}. Owner: ${w.owner}. Review by ${w.reviewBy}. Ages ${w.ages[0]} to ${w.ages[1]} only.`,
    '',
    ...table(
      [
        '',
        'm per cm of height',
        'm per year of age',
        'm per kg',
        'constant (m)',
        'lower limit is less by (m)',
      ],
      ['male', 'female'].map((sex) => {
        const e = w[sex];
        return [sex === 'male' ? 'men' : 'women', e.perCm, e.perYear, e.perKg, e.constant, e.lowerBy];
      }),
    ),
    ...read(),
  ];
}
