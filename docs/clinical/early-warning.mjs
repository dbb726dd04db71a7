import {
  CONSCIOUSNESS_POINTS,
  NEWS2_CAUTIONS,
  NEWS2_CHART,
  NEWS2_SOURCE,
  OXYGEN_POINTS,
} from '@footboard/shared/capabilities/assessments/rules/news2-chart';
import { table, title, words } from './markdown.mjs';

/** The points of one scale, row by row: "up to 8: 3; up to 11: 1; above: 3". */
const points = ({ rows }) =>
  rows.map((r) => `${Number.isFinite(r.upTo) ? `up to ${r.upTo}` : 'above'}: ${r.points}`).join('; ');

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
  ...NEWS2_CAUTIONS.map((c) => `- ${c}`),
  '',
];
