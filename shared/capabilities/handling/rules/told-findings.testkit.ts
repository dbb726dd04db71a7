/** Invented people of whom something else was found: what that changes against somebody who walks freely. */
import { allMet, assessment, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { StageSays } from '../../assessments/rules/assessment.testkit.ts';
import { DEFAULT_PROTOCOL } from '../../assessments/rules/protocol.ts';
import { securedWith } from '../../assessments/values.ts';
import { hold, limbs, stated, trigger, trust, weight } from './plan.testkit.ts';
import { change, coop, grouped, PEOPLE, person, planOf, seen, toldOf } from './told-plans.testkit.ts';
import type { Person } from './told-plans.testkit.ts';

/** What else may have been found: stages held, tried and not met, taken back, done some time ago. */
const FOUND: readonly Person[] = [
  ...securedWith.options.flatMap((by) =>
    [1, 2].flatMap((people) =>
      ['edge', 'stand', 'turn', 'walk'].map((stage) =>
        person(
          `${stage} held by ${by}, ${people}`,
          seen(stage, { [stage]: { how: 'secured', securedWith: by, people } }, coop('yes', 'yes')),
        ),
      ),
    ),
  ),
  ...['edge', 'stand', 'turn', 'walk'].flatMap((stage) =>
    [0, 1, 2, 3].flatMap((people) => [
      person(`${stage} free, ${people} beside`, seen(stage, { [stage]: { people } }, coop('yes', 'yes'))),
      person(
        `${stage} tried with ${people} and not met`,
        seen(stage, { [stage]: { outcome: 'not-met', people } }, coop('yes', 'yes')),
      ),
    ]),
  ),
  ...['edge', 'stand', 'turn', 'walk'].flatMap((stage) =>
    (['free', 'secured'] as const).map((how) =>
      person(`walked, then ${stage} was not met ${how}`, [
        assessment(upTo('walk'), { id: 'before', at: -2 }),
        assessment(upTo(stage, { [stage]: { outcome: 'not-met', how, ...held(how), people: 2 } }), {
          id: 'seen',
        }),
      ]),
    ),
  ),
  ...[-2, -20, -40].map((at) =>
    person(`walked ${-at} h ago`, [assessment(upTo('walk'), { id: 'seen', at }, coop('yes', 'yes'))]),
  ),
  person('walked, walked here before', seen('walk'), { everWalkedHere: true }),
  ...['left', 'right'].map((leg) =>
    person(
      `stands on the ${leg} leg, the other bears none`,
      seen('stand', { stand: { oneLeg: leg as 'left' } }),
      {
        orders: limbs({ [leg === 'left' ? 'right-leg' : 'left-leg']: 'none' }),
      },
    ),
  ),
  ...[136, 160].flatMap((kg) =>
    ['clear', 'edge', 'stand'].map((last) =>
      person(
        `got as far as ${last}, follows nothing, ${kg} kg`,
        seen(last, {}, coop('no', 'no')),
        weight(kg),
      ),
    ),
  ),
  ...[null, 70, 136].map((kg) =>
    person(`was never looked at, ${kg === null ? 'weight unknown' : `${kg} kg`}`, [], {
      ...(kg === null ? { weight: null } : weight(kg)),
    }),
  ),
  person('walks with a frame, on own', seen('walk', {}, coop('yes', 'yes')), {
    walkingSupport: stated('frame', 0, 'support'),
    everWalkedHere: true,
    onOwn: stated({ where: ['room', 'toilet', 'ward'], when: ['day', 'night'] }, 0, 'own'),
  }),
  person('walks, on own, and one trigger is open', seen('walk', {}, coop('yes', 'yes')), {
    everWalkedHere: true,
    onOwn: stated({ where: ['room', 'toilet', 'ward'], when: ['day', 'night'] }, 0, 'own'),
    trust: trust('current', trigger('asked-to-look-again')),
  }),
  person('walks, does not wait for help, on own', seen('walk', {}, coop('no', 'yes')), {
    everWalkedHere: true,
    onOwn: stated({ where: ['room', 'toilet', 'ward'], when: ['day', 'night'] }, 0, 'own'),
  }),
  person(
    'a hold on walking and sternum precautions, held in a standing aid',
    [...seen('stand', { stand: { how: 'secured', securedWith: 'standing-aid', people: 2 } })],
    { holds: [hold('walking')], orders: limbs({}, ['sternum']) },
  ),
];
function held(how: 'free' | 'secured'): StageSays {
  return how === 'free' ? {} : { securedWith: 'two-people' };
}

/** One part on one side not met, in an otherwise whole check. */
const PARTS: readonly Person[] = DEFAULT_PROTOCOL.stages.flatMap(({ id: stage, parts }) =>
  parts.flatMap(({ id, sided }) =>
    (sided ? (['left', 'right', 'both'] as const) : ([null] as const)).map((which) =>
      person(
        `walks; ${stage}: ${id}${which ? ` (${which})` : ''} not met`,
        seen(
          'walk',
          {
            [stage]: {
              findings: allMet(stage).map((f) =>
                f.part === id && (which === null || which === 'both' || f.side === which)
                  ? { ...f, result: 'not-met' as const }
                  : f,
              ),
            },
          },
          coop('yes', 'yes'),
        ),
      ),
    ),
  ),
);

/** What was found, against the first of the people above: only what differs. */
export function toldFindings(): string {
  const before = toldOf(planOf(PEOPLE[0]!));
  return `${[...FOUND, ...PARTS]
    .flatMap((who) => {
      const after = toldOf(planOf(who));
      const lines = grouped(new Map([...after].map(([of, is]) => [of, change(before.get(of)!, is)])));
      return [`# ${who.said}`, ...(lines.length > 0 ? lines : ['  nothing changes']), ''];
    })
    .join('\n')}\n`;
}
