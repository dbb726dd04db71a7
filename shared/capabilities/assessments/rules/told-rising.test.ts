/**
 * Pressures on rising, told whole: verdict, rules fired, what follows. Held against what was read before;
 * the published cases stand in pressure.published.test.ts.
 */
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { toIso } from '../../../kernel/times.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import type { Reading } from '../values.ts';
import { DEFAULT_PROTOCOL } from './default-protocol.ts';
import { judgeRising, type RisingInput } from './pressure.ts';

const CLOCK = Date.UTC(2026, 2, 3, 9, 0);
/** "lying 130/80 70 @0", "standing 108/78 95 @11 min1": posture, mmHg, a minute, minutes after the clock. */
function reading(said: string): Reading {
  const [posture, pressure, ...rest] = said.split(' ');
  const [systolic, diastolic] = pressure!.split('/').map(Number);
  const of = (mark: string) => rest.find((one) => one.startsWith(mark))?.slice(mark.length);
  const rate = rest.find((one) => /^\d/.test(one));
  return {
    kind: 'pressure',
    posture: posture as 'lying',
    systolic: systolic!,
    diastolic: diastolic!,
    at: toIso(CLOCK + Number(of('@')) * 60_000),
    ...(of('min') === undefined ? {} : { minute: Number(of('min')) }),
    ...(rate === undefined ? {} : { heartRate: Number(rate) }),
  };
}

const REST: Readonly<Record<string, readonly string[]>> = {
  'at rest lying': ['lying 130/80 70 @0'],
  'at rest seated alone': ['seated 128/80 72 @2'],
  'lying, then fallen on sitting': ['lying 130/80 70 @0', 'seated 110/69 72 @5'],
  'lying, then just not fallen on sitting': ['lying 130/80 70 @0', 'seated 111/71 @5'],
  'lying high': ['lying 152/90 70 @0'],
  'lying at the limit of high': ['lying 150/90 @0', 'lying 149/91 @1'],
  'nothing at rest': [],
  'rest written down after': ['lying 131/81 70 @30', 'seated 128/80 @31'],
  'rested again, higher': ['lying 126/78 @0', 'lying 134/84 90 @14'],
};
const UP: Readonly<Record<string, readonly string[]>> = {
  'nothing standing': [],
  steady: ['standing 126/78 75 @11 min1', 'standing 127/79 76 @13 min3'],
  'just below the limits': ['standing 111/71 99 @11 min1', 'standing 112/72 @13 min3'],
  'at the limits at 1 min, back at 3': ['standing 110/70 100 @11 min1', 'standing 127/79 76 @13 min3'],
  'falls at 3 min alone': ['standing 126/78 @11 min1', 'standing 108/69 101 @13 min3'],
  'falls in the first seconds': [
    'standing 90/60 @10.25 min0.25',
    'standing 126/78 @11 min1',
    'standing 126/78 @13 min3',
  ],
  'falls late': ['standing 126/78 @11 min1', 'standing 126/78 @13 min3', 'standing 105/66 @18 min8'],
  'just late enough': [
    'standing 126/78 @11 min1',
    'standing 105/66 @13.5 min3.5',
    'standing 105/66 @13.6 min3.6',
  ],
  'fell, sat, fell not': [
    'standing 105/66 @11 min1',
    'standing 106/67 @13 min3',
    'seated 129/80 @16',
    'standing 125/78 @21 min1',
    'standing 126/79 @23 min3',
  ],
  'fell, sat, fell again, less measured': [
    'standing 105/66 @11 min1',
    'seated 129/80 @16',
    'standing 104/65 @21 min1',
  ],
  'falls at 3, tried again for 1 alone': [
    'standing 126/78 @11 min1',
    'standing 105/66 @13 min3',
    'standing 127/78 @21 min1',
  ],
  'low, then lower': ['standing 89/60 @11 min1', 'standing 85/58 @13 min3', 'standing 88/58 @14 min4'],
  'at the low limit': ['standing 90/60 @11 min1', 'standing 90/60 @13 min3'],
  'rises, high': ['standing 152/95 120 @11 min1', 'standing 150/95 130 @13 min3'],
  'rises, not yet high': ['standing 139/88 99 @11 min1', 'standing 138/88 @13 min3'],
  'as low, risen and fast again': [
    'standing 85/58 101 @11 min1',
    'standing 85/58 101 @13 min3',
    'lying 100/60 @15',
    'standing 150/90 101 @21 min1',
    'standing 150/90 101 @23 min3',
  ],
  'at the very time of rest': ['standing 126/78 @0 min0', 'standing 105/66 @5 min5'],
  'no minute said': ['standing 100/60 101 @11'],
  'near the minutes': ['standing 126/78 @11.5 min1.5', 'standing 126/78 @12.5 min2.5'],
  'not near enough': ['standing 126/78 @11.6 min1.6', 'standing 126/78 @13 min3'],
  'a minute of the first, another of the second': [
    'standing 126/78 @11 min1',
    'lying 130/80 @12',
    'standing 126/78 @23 min3',
  ],
  'out of order': ['standing 112/78 @13 min3', 'standing 126/78 @11 min1', 'standing 118/70 @9 min0.5'],
};
const ASKED: readonly (readonly [string, Partial<RisingInput>])[] = [
  ['demanded, no symptoms', { demanded: true, symptoms: [] }],
  ['demanded, not asked', { demanded: true, symptoms: undefined }],
  ['demanded, faint and blurred sight', { demanded: true, symptoms: ['faint', 'blurred-sight'] }],
  ['not demanded, not asked', { demanded: false, symptoms: undefined }],
  ['not demanded, dizzy', { demanded: false, symptoms: ['dizzy'] }],
];
function judge(rest: string, up: string, asked: Partial<RisingInput>, set = DEFAULT_PROTOCOL.pressureSet) {
  const { readings, ...verdict } = judgeRising({
    readings: [...REST[rest]!, ...UP[up]!].map(reading),
    symptoms: [],
    demanded: false,
    set,
    rules: DEFAULT_RULES.rising,
    ...asked,
  });
  return {
    taken: readings.map((r) => `${r.posture} ${r.systolic} at ${(r.at - CLOCK) / 60_000}, up ${r.series}`),
    ...verdict,
    fired: verdict.fired.map(({ from, to, ...fired }) => ({
      ...fired,
      from: from.at - CLOCK,
      to: to.at - CLOCK,
    })),
  };
}

const whole = Object.keys(REST).flatMap((rest) => Object.keys(UP).map((up) => [rest, up] as const));
const few = whole.filter(
  ([rest, up]) =>
    (rest === 'at rest lying' &&
      [
        'nothing standing',
        'steady',
        'at the limits at 1 min, back at 3',
        'fell, sat, fell not',
        'fell, sat, fell again, less measured',
        'low, then lower',
      ].includes(up)) ||
    (rest === 'nothing at rest' && up === 'steady') ||
    (rest === 'at rest seated alone' && up === 'not near enough'),
);
heldAgainst(new URL('told-rising.txt', import.meta.url), [
  ...whole.map(([rest, up]) => [`${rest}; ${up}`, () => judge(rest, up, ASKED[0]![1])] as const),
  ...few.flatMap(([rest, up]) =>
    ASKED.slice(1).map(([said, asked]) => [`${rest}; ${up}; ${said}`, () => judge(rest, up, asked)] as const),
  ),
  ...few.map(
    ([rest, up]) =>
      [
        `${rest}; ${up}; a set without lying, at 1 min alone`,
        () =>
          judge(rest, up, ASKED[0]![1], {
            ...DEFAULT_PROTOCOL.pressureSet,
            lying: false,
            standingMinutes: [1],
          }),
      ] as const,
  ),
]);
