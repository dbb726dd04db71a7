/** The signs of critical care and the early-warning score, told whole by themselves and in what may start. */
import type { Role } from '../../../kernel/author.ts';
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { HOUR } from '../../../kernel/times.ts';
import { type Told } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { CriticalCareSigns } from '../values.ts';
import { criticalCareBar, vasoactive } from '../values.ts';
import { judgeCriticalCare } from './critical-care.ts';
import { impossibleScore } from './early-warning.ts';
import { CONSCIOUSNESS, scoreNews2, type News2Parts } from './news2.ts';
import { readings, checked, named, CARE, SCORED, BOTH, stay } from './told-start.testkit.ts';

const care = (h: number, of: Partial<CriticalCareSigns>, role: Role = 'nurse'): Told => ({
  type: 'critical-care-signs-recorded',
  at: h,
  role,
  id: `care-${h}-${role}`,
  payload: { bars: [], ...of },
});
const WHOLE: Partial<CriticalCareSigns> = {
  saturation: 96,
  oxygenFraction: 0.4,
  breathing: 18,
  endExpiratory: 8,
  meanPressure: 80,
  heartRate: 80,
  sedation: 0,
  temperature: 37,
  vasoactive: 'none',
  confusedNotFollowing: false,
};
const CARE_VALUES: readonly Partial<CriticalCareSigns>[] = [
  ...[87, 88, 89, 90, 91].map((saturation) => ({ saturation })),
  ...[0.5, 0.59, 0.6, 0.61].map((oxygenFraction) => ({ oxygenFraction })),
  ...[29, 30, 31, 35, 36, 40].map((breathing) => ({ breathing })),
  ...[9, 10, 11].map((endExpiratory) => ({ endExpiratory })),
  ...[59, 60, 64, 65, 66, 110, 111].map((meanPressure) => ({ meanPressure })),
  ...[59, 60, 61].map((meanPressure) => ({ meanPressure, meanPressureTarget: 60 })),
  ...[39, 40, 49, 50, 59, 60, 119, 120, 129, 130, 131, 149, 150, 151].map((heartRate) => ({ heartRate })),
  ...[-5, -4, -3, -2, -1, 0, 1, 2, 3, 4].map((sedation) => ({ sedation })),
  ...[true, false].map((confusedNotFollowing) => ({ confusedNotFollowing })),
  ...[38, 38.4, 38.5, 40].flatMap((temperature) => [{ temperature }, { temperature, activeCooling: true }]),
  ...vasoactive.options.map((drug) => ({ vasoactive: drug })),
  ...criticalCareBar.options.map((bar) => ({ bars: [bar] })),
];
const critical = [
  ...CARE_VALUES.flatMap((of) =>
    [0, 23.9 * HOUR, 48 * HOUR]
      .filter((ago) => ago === 0 || 'vasoactive' in of)
      .map(
        (ago) =>
          [
            `critical care ${JSON.stringify(of)}, ${ago / HOUR} h ago`,
            () => ({ reasons: judgeCriticalCare({ bars: [], ...of }, DEFAULT_RULES.criticalCare, ago) }),
          ] as const,
      ),
  ),
  stay('critical care off, signs recorded', [checked(1, readings(1)), care(1.5, { heartRate: 160 })]),
  stay('critical care on, nothing recorded', [checked(1, readings(1))], 2, CARE),
  stay('critical care on, the whole set', [checked(1, readings(1)), care(1.5, WHOLE)], 2, CARE),
  ...[3, 5.4, 5.5, 26].map((t) =>
    stay(
      `critical care on, the whole set, ${t - 1.5} h ago`,
      [checked(1, readings(1)), care(1.5, WHOLE)],
      t,
      CARE,
    ),
  ),
  ...Object.keys(WHOLE).map((name) =>
    stay(
      `critical care on, all but ${name}`,
      [
        checked(1, readings(1)),
        care(1.5, Object.fromEntries(Object.entries(WHOLE).filter(([n]) => n !== name))),
      ],
      2,
      CARE,
    ),
  ),
  ...(['nurse', 'aide'] as const).flatMap((role) => [
    stay(
      `a bar, then the whole set without it by ${role}`,
      [checked(1, readings(1)), care(1.2, { bars: ['lying-prone'] }), care(1.5, WHOLE, role)],
      2,
      CARE,
    ),
    stay(
      `a bar by ${role}, then another by a nurse`,
      [
        checked(1, readings(1)),
        care(1.2, { bars: ['lying-prone'] }, role),
        care(1.5, { bars: ['femoral-sheath'] }),
      ],
      2,
      CARE,
    ),
    stay(
      `heart rate 140, then 80 in critical care by ${role}`,
      [checked(1, readings(1)), care(1.2, { ...WHOLE, heartRate: 140 }), care(1.5, { heartRate: 80 }, role)],
      2,
      CARE,
    ),
    stay(
      `a target of 55 by ${role}, then a mean of 58`,
      [
        checked(1, readings(1)),
        care(1.2, { ...WHOLE, meanPressure: 70, meanPressureTarget: 55 }, role),
        care(1.5, { meanPressure: 58 }),
      ],
      2,
      CARE,
    ),
    stay(
      `a drug raised by ${role}, then steady`,
      [
        checked(1, readings(1)),
        care(1.2, { ...WHOLE, vasoactive: 'new-or-raised' }, role),
        care(1.5, { vasoactive: 'steady' }),
      ],
      2,
      CARE,
    ),
    stay(
      `a drug raised by ${role}`,
      [checked(1, readings(1)), care(1.2, { ...WHOLE, vasoactive: 'new-or-raised' }, role)],
      2,
      CARE,
    ),
  ]),
];

const score = (h: number, of: number, anyThree = false, role: Role = 'nurse'): Told => ({
  type: 'early-warning-recorded',
  at: h,
  role,
  id: `score-${h}-${role}`,
  payload: { score: of, anyThree, scale: 1 },
});
const scores = [
  ...[0, 2, 3, 4, 5, 6, 7, 12, 20].flatMap((n) =>
    [true, false].flatMap((three) => [
      [
        `a score of ${n}${three ? ' with a 3' : ''} can be`,
        () => ({ against: impossibleScore({ score: n, anyThree: three, scale: 1 }) }),
      ] as const,
      ...(n >= 3 || !three
        ? [
            stay(
              `score ${n}${three ? ' with a 3' : ''}`,
              [checked(1, readings(1)), score(1.5, n, three)],
              2,
              SCORED,
            ),
          ]
        : []),
    ]),
  ),
  [
    'a score of 13 without a 3 can be',
    () => ({ against: impossibleScore({ score: 13, anyThree: false, scale: 1 }) }),
  ] as const,
  stay('score 8, the score off', [checked(1, readings(1)), score(1.5, 8)]),
  ...[12, 13.4, 13.5, 14, 26].map((t) =>
    stay(`score 8, ${t - 1.5} h ago`, [checked(1, readings(1)), score(1.5, 8)], t, SCORED),
  ),
  ...(['nurse', 'aide'] as const).flatMap((role) => [
    stay(
      `score 2, then 4 by ${role}`,
      [checked(1, readings(1)), score(1.2, 2), score(1.5, 4, false, role)],
      2,
      SCORED,
    ),
    stay(
      `score 2 by ${role}, then 4`,
      [checked(1, readings(1)), score(1.2, 2, false, role), score(1.5, 4)],
      2,
      SCORED,
    ),
    stay(
      `score 7, then 1 by ${role}`,
      [checked(1, readings(1)), score(1.2, 7), score(1.5, 1, false, role)],
      2,
      SCORED,
    ),
    stay(
      `score 3, then 3 with a 3 by ${role}`,
      [checked(1, readings(1)), score(1.2, 3), score(1.5, 3, true, role)],
      2,
      SCORED,
    ),
    stay(
      `score 3 with a 3, then 3 by ${role}`,
      [checked(1, readings(1)), score(1.2, 3, true), score(1.5, 3, false, role)],
      2,
      SCORED,
    ),
    stay(
      `score 6 by ${role}, and 1 at the same time`,
      [checked(1, readings(1)), named(score(1.5, 6, false, role), 'a'), named(score(1.5, 1), 'b')],
      2,
      SCORED,
    ),
    stay(
      `score 3, 1 by ${role}, 4`,
      [checked(1, readings(1)), score(1.1, 3), score(1.3, 1, false, role), score(1.5, 4)],
      2,
      SCORED,
    ),
    stay(
      `score 6, then a check by ${role}`,
      [checked(0.5, readings(0.5)), score(1.2, 6), checked(1.5, readings(1.5), {}, role)],
      2,
      SCORED,
    ),
  ]),
  stay('score 8 and critical care', [checked(1, readings(1)), score(1.5, 8), care(1.6, WHOLE)], 2, BOTH),
];

const NEWS: News2Parts = {
  breathing: 16,
  saturation: 97,
  scale: 1,
  onOxygen: false,
  systolic: 120,
  pulse: 80,
  consciousness: 'alert',
  temperature: 37,
};
const news = [
  ['news2: all well', {}],
  ...Object.keys(NEWS).map((name) => [`news2: all but ${name}`, { [name]: null }] as const),
  ['news2: nothing', Object.fromEntries(Object.keys(NEWS).map((name) => [name, undefined]))],
  ['news2: not a number', { pulse: Number.NaN }],
  ...CONSCIOUSNESS.map((consciousness) => [`news2: ${consciousness}`, { consciousness }] as const),
  ...[1, 2].flatMap((scale) =>
    [true, false].flatMap((onOxygen) =>
      [83, 85, 86, 87, 88, 92, 93, 94, 95, 96, 97].map(
        (saturation) =>
          [
            `news2: ${saturation} % on scale ${scale}, ${onOxygen ? 'oxygen' : 'air'}`,
            { saturation, scale: scale as 1, onOxygen },
          ] as const,
      ),
    ),
  ),
  ['news2: scale 2, air or oxygen not said', { scale: 2 as const, onOxygen: null }],
  ...[35, 35.05, 35.1, 36, 36.1, 38, 38.05, 38.1, 39, 39.1].map(
    (temperature) => [`news2: ${temperature} °C`, { temperature }] as const,
  ),
  ['news2: total 4', { breathing: 22, pulse: 112 }],
  ['news2: total 5', { breathing: 22, pulse: 112, temperature: 39 }],
  ['news2: total 6', { breathing: 22, pulse: 112, temperature: 39.5 }],
  ['news2: total 7', { breathing: 25, pulse: 112, temperature: 39.5 }],
] as const satisfies readonly (readonly [string, Partial<News2Parts>])[];

heldAgainst(new URL('told-care.txt', import.meta.url), [
  ...critical,
  ...scores,
  ...news.map(([title, of]) => [title, () => scoreNews2({ ...NEWS, ...of })] as const),
]);
