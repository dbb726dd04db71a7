/** Two things more at once: what the second changes beside the first. Held by told-plans.test.ts. */
import { securedWith } from '../../assessments/values.ts';
import { hold, limbs, stated, trigger, trust, weight } from './plan.testkit.ts';
import { change, coop, grouped, person, planOf, seen, toldOf, type Person } from './told-plans.testkit.ts';
import type { StayPlan } from './plan.ts';
import type { PlanInput } from './types.ts';

type Extra = Partial<PlanInput>;
const WHO: readonly Person[] = [
  person('walks freely', seen('walk', {}, coop('yes', 'yes'))),
  person(
    'stands on the right leg, does not wait',
    seen('stand', { stand: { oneLeg: 'right' } }, coop('no', 'yes')),
  ),
  person(
    'sits held by two',
    seen('edge', { edge: { how: 'secured', securedWith: 'two-people', people: 2 } }, coop('yes', 'no')),
  ),
  person(
    'walks with two, held in a sling',
    seen('walk', { walk: { how: 'secured', securedWith: 'sling', people: 2 } }, coop('yes', 'yes')),
  ),
  person('was never looked at', []),
];
/** Of two about one thing, but for holds, only the second counts. */
const THINGS: readonly (readonly [string, Extra])[] = [
  ['hold on standing', { holds: [hold('standing')] }],
  ['hold on raising the back', { holds: [hold('raising-the-back')] }],
  ['left leg limited', { orders: limbs({ 'left-leg': 'limited' }) }],
  ['left arm bears nothing, spine precautions', { orders: limbs({ 'left-arm': 'none' }, ['spine']) }],
  [
    'both legs limited, sternum precautions',
    { orders: limbs({ 'left-leg': 'limited', 'right-leg': 'limited' }, ['sternum']) },
  ],
  [
    'hip precautions, a brace',
    { orders: { ...limbs({}, ['hip']), brace: stated(true as const, 0, 'brace') } },
  ],
  ['a frame in use', { walkingSupport: stated('frame', 0, 'support') }],
  ['seen walking with two sticks', { seenWalking: stated('two-sticks', 0, 'arrival') }],
  ['150 kg', weight(150)],
  ['weight not known', { weight: null }],
  [
    'fell and bled',
    {
      trust: trust(
        're-check',
        trigger('fall'),
        trigger('bleed'),
        trigger('sedation'),
        trigger('asked-to-look-again'),
      ),
    },
  ],
  [
    'a line changed, a block off',
    {
      trust: trust('re-check', trigger('attachment-change'), trigger('block-off'), trigger('failed-attempt')),
    },
  ],
  [
    'on own everywhere',
    { onOwn: stated({ where: ['room', 'toilet', 'ward'], when: ['day', 'night'] }, 0, 'own') },
  ],
  ['a sedative now', { sedatedAt: stated(true, 0.5, 'sedative') }],
  [
    'three lines, one of them nobody disconnects',
    {
      attachments: (['nobody', 'nurse', 'anyone-trained'] as const).map((disconnects, i) =>
        stated({ kind: 'iv-line' as const, needsOwnPerson: i === 0, disconnects }, 0, `line-${i}`),
      ),
    },
  ],
];

/** A reason by its rule and facts: its words stand in the other files. */
const brief = (plan: StayPlan): Map<string, readonly string[]> =>
  new Map(
    [...toldOf(plan)].map(([of, lines]) => [of, lines.map((l) => l.replace(/^(\S+ \[[^\]]*\]) .*$/, '$1'))]),
  );

export function toldPairs(): string {
  const told: string[] = [];
  for (const who of WHO) {
    for (const [i, [said, first]] of THINGS.entries()) {
      const before = brief(planOf(who, first));
      for (const [also, second] of THINGS.slice(i + 1)) {
        const after = brief(
          planOf(who, { ...first, ...second, holds: [...(first.holds ?? []), ...(second.holds ?? [])] }),
        );
        const lines = grouped(new Map([...after].map(([of, is]) => [of, change(before.get(of)!, is)])));
        if (lines.length > 0) told.push(`# ${who.said}; ${said}, then ${also}`, ...lines, '');
      }
    }
  }
  const kinds = securedWith.options.flatMap((by) =>
    ['edge', 'stand', 'turn', 'walk'].map((stage) =>
      person(
        `stands in a standing aid; ${stage} by ${by}; a leg bears nothing`,
        seen(
          'walk',
          {
            stand: { how: 'secured', securedWith: 'standing-aid', people: 2 },
            [stage]: { how: 'secured', securedWith: by, people: 3 },
          },
          coop('yes', 'yes'),
        ),
        { orders: limbs({ 'right-leg': 'none' }), ...weight(140) },
      ),
    ),
  );
  for (const who of kinds) told.push(`# ${who.said}`, ...grouped(toldOf(planOf(who))), '');
  return `${told.join('\n')}\n`;
}
