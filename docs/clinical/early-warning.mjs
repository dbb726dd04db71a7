import {
  CONSCIOUSNESS_POINTS,
  HIGHEST_SCORE,
  HIGHEST_WITHOUT_THREE,
  NEWS2_CAUTIONS,
  NEWS2_CHART,
  NEWS2_SOURCE,
  OXYGEN_POINTS,
} from '@footboard/shared/capabilities/assessments/rules/news2-chart';
import { bandOf } from '@footboard/shared/capabilities/assessments/rules/news2';
import { DEFAULT_RULES } from '@footboard/shared/capabilities/wards/rules/rules-document';
import { bands, table, title, words } from './markdown.mjs';

/** The points of one scale, row by row: "up to 8: 3; up to 11: 1; above: 3". */
const points = ({ rows }) =>
  rows.map((r) => `${Number.isFinite(r.upTo) ? `up to ${r.upTo}` : 'above'}: ${r.points}`).join('; ');

/** What each total asks for, with and without a parameter at 3, answered by the rules. */
const asked = (highest, anyThree, from) =>
  bands(from, highest, 1, (total) => {
    const { word, asks, source } = bandOf(total, anyThree);
    return JSON.stringify([anyThree ? 'one or more' : 'none', word, asks, source]);
  }).map(({ says, answer }) => [says, ...JSON.parse(answer)]);

const asTrigger = () => {
  const { totalFrom, emergencyFrom, anyThree, riseBy, hours } = DEFAULT_RULES.earlyWarning;
  return (
    `Where the ward turns it on, it is a trigger from a total of ${totalFrom.value},${anyThree.value ? ' with one parameter at 3,' : ''} or after a rise by ` +
    `${riseBy.value} or more against a score of the last ${hours.value} h; the emergency review is from ${emergencyFrom.value}.`
  );
};

export const earlyWarning = () => [
  '## The early-warning score NEWS2',
  '',
  `Acknowledgement: ${NEWS2_SOURCE}. Off as a trigger until the ward turns it on.`,
  '',
  ...table(
    ['parameter', 'unit', 'points'],
    [
      ...Object.entries(NEWS2_CHART).map(([name, scale]) => [title(words(name)), scale.unit, points(scale)]),
      [
        'Air or oxygen',
        '',
        Object.entries(OXYGEN_POINTS)
          .map(([k, v]) => `${words(k)}: ${v}`)
          .join('; '),
      ],
      [
        'Consciousness',
        '',
        Object.entries(CONSCIOUSNESS_POINTS)
          .map(([k, v]) => `${words(k)}: ${v}`)
          .join('; '),
      ],
    ],
  ),
  ...table(
    ['total', 'parameters at 3', 'band', 'what the source asks for, in our words', 'source'],
    [...asked(HIGHEST_WITHOUT_THREE, false, 0), ...asked(HIGHEST_SCORE, true, 3)],
  ),
  'The board says what the source asks for and calls nobody. With a part missing there is no score, and the missing parts are',
  'named.',
  asTrigger(),
  '',
  ...NEWS2_CAUTIONS.map((c) => `- ${c}`),
  '',
];
