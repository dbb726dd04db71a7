/** What two checks and three say together: what stands, what is taken back, what is disputed. */
import { heldAgainst } from '../../../kernel/told.testkit.ts';
import { toIso } from '../../../kernel/times.ts';
import type { Fact } from '../../corrections/facts.ts';
import { assessment, hours, notMet } from './assessment.testkit.ts';
import {
  seen,
  asked,
  short,
  oneLeg,
  withPart,
  secured,
  set,
  fell,
  type When,
} from './told-checks.testkit.ts';

/** A second check after a first, at once, soon and later; exact or about; by each role. */
const FIRST: readonly (readonly [string, () => Fact])[] = [
  ['walked', () => seen('walk', {}, { id: 'one' })],
  ['sat at the edge', () => seen('edge', {}, { id: 'one' })],
  ['stood in a standing aid', () => seen('stand', secured('stand', 'standing-aid'), { id: 'one' })],
  ['stood on the left leg', () => seen('walk', oneLeg('left'), { id: 'one', role: 'therapist' })],
  [
    'did not stand, held in a sling',
    () =>
      seen(
        'stand',
        { stand: { ...notMet('rises'), how: 'secured', securedWith: 'sling', people: 3 } },
        { id: 'one' },
      ),
  ],
  ['did not sit at the edge', () => seen('edge', { edge: notMet('sits-hands-free') }, { id: 'one' })],
];
const SECOND: readonly (readonly [string, (when: When) => Fact])[] = [
  ['walked', (when) => seen('walk', {}, when)],
  ['sat at the edge', (when) => seen('edge', {}, when)],
  ['did not sit at the edge', (when) => seen('edge', { edge: notMet('sits-hands-free') }, when)],
  ['did not rise', (when) => seen('stand', { stand: notMet('rises') }, when)],
  ['did not walk', (when) => seen('walk', { walk: notMet('walks-out') }, when)],
  ['stood held by two people', (when) => seen('stand', secured('stand', 'two-people', 3), when)],
  [
    'did not rise, went on to walk',
    (when) => seen('walk', { stand: notMet('rises'), ...secured('turn', 'sling', 2) }, when),
  ],
  ['stood on the right leg', (when) => seen('stand', oneLeg('right'), when)],
  [
    'one leg only does not bear',
    (when) => seen('stand', withPart('stand', 'leg-bears', 'not-met', 'left'), when),
  ],
  ['no leg pushes', (when) => seen('upright', withPart('upright', 'sole-pushes', 'not-met'), when)],
];
const WHEN: readonly (readonly [string, Parameters<typeof assessment>[1]])[] = [
  ['at once', { at: 0 }],
  ['half a minute later', { at: 0.5 / 60 }],
  ['a minute later', { at: 1 / 60 }],
  ['ten minutes later or about that', { at: 10 / 60, precision: 'about' }],
  ['a quarter of an hour later or about that', { at: 15 / 60, precision: 'about' }],
  ['an hour later, by an aide', { at: 1, role: 'aide' }],
  ['at once, by an aide', { at: 0, role: 'aide' }],
  ['an hour later, by a therapist', { at: 1, role: 'therapist' }],
];
const pairs = FIRST.flatMap(([was, first]) =>
  SECOND.flatMap(([is, second]) =>
    WHEN.filter(
      (_, i) => ['walked', 'stood in a standing aid', 'stood on the left leg'].includes(was) || i % 3 === 0,
    ).map(([said, when]) => short(`${was}; ${is} ${said}`, () => [first(), second({ id: 'two', ...when })])),
  ),
);
const threes = FIRST.flatMap(([was, first]) =>
  [SECOND[0]!, SECOND[3]!, SECOND[6]!].flatMap(([is, second]) => [
    short(`${was}; ${is} at once; walked an hour later`, () => [
      first(),
      second({ id: 'two' }),
      seen('walk', {}, { id: 'three', at: 1, role: 'therapist' }),
    ]),
    short(`${was}; ${is} at once; did not walk an hour later`, () => [
      first(),
      second({ id: 'two' }),
      seen('walk', { walk: notMet() }, { id: 'three', at: 1 }),
    ]),
  ]),
);
const firstAbout = SECOND.map(([is, second]) =>
  short(`walked or about then; ${is} ten minutes later`, () => [
    seen('walk', {}, { id: 'one', precision: 'about' }),
    second({ id: 'two', at: 10 / 60 }),
  ]),
);
const partsAtOnce = [0, 1].map((at) =>
  short(`a leg that does not bear, then one that does, ${at} h later`, () => [
    seen('stand', withPart('stand', 'leg-bears', 'not-met', 'left'), { id: 'one' }),
    seen('walk', {}, { id: 'two', at }),
  ]),
);
const toldEarly = short('a stage timed after it was recorded', () => [
  seen('edge', { edge: { at: toIso(hours(5)) } }, { id: 'one' }),
]);
const pressures = (
  [
    ['a whole set, nothing fell', (at: number) => set(at, 126, 126)],
    ['a whole set, it fell', fell],
    ['without the third minute', (at: number) => set(at, 126, null)],
    ['fell, without the third minute', (at: number) => set(at, 105, null)],
    ['a whole set, dizzy', (at: number) => set(at, 126, 126, ['dizzy'])],
    ['low on standing', (at: number) => set(at, 85, 126)],
    ['rose', (at: number) => set(at, 152, 155)],
  ] as const
).flatMap(([said, readings]) => [
  asked(`${said}, alone`, () => [seen('walk', {}, { id: 'one' }, readings(0))]),
  ...(['nurse', 'aide'] as const).flatMap((role) => [
    asked(`fell before, then ${said}, by ${role}`, () => [
      seen('walk', {}, { id: 'one' }, fell(0)),
      seen('walk', {}, { id: 'two', at: 2, role }, readings(2)),
    ]),
    asked(`fell before, then ${said} at once, by ${role}`, () => [
      seen('walk', {}, { id: 'one' }, fell(0)),
      seen('walk', {}, { id: 'two', at: 0, role }, readings(0)),
    ]),
  ]),
]);
heldAgainst(new URL('told-pairs.txt', import.meta.url), [
  ...pairs,
  ...threes,
  ...firstAbout,
  ...partsAtOnce,
  toldEarly,
  ...pressures,
]);
