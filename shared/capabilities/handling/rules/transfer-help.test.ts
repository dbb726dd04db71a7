/** How a person was held at the check, and what else the way to a chair asks for: design, section 4. */
import { describe, expect, it } from 'vitest';
import { allMet, assessment, notMet, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { StageSays } from '../../assessments/rules/assessment.testkit.ts';
import type { Bears } from './plan.testkit.ts';
import { help, leftLeg, limbs, planInput, seenTo, stated, uncooperative, walker } from './plan.testkit.ts';
import { peopleUsed, transferHelp } from './transfer-help.ts';
import type { PlanInput } from './types.ts';

const HELD_STAGES = ['secured/keep', 'ours/tried-and-not-met'];
/** What standing and turning ask of a transfer, each by its rule. */
const held = (input: PlanInput) =>
  transferHelp(input)
    .filter((d) => HELD_STAGES.includes(d.because.rule))
    .map((d) => [d.because.rule, d.help.people, ...d.help.aids]);
const by = (securedWith: 'sling' | 'standing-aid' | 'two-people', people = 1): StageSays => ({
  how: 'secured',
  securedWith,
  people,
});
const noGrip: Record<string, StageSays> = {
  upright: {
    findings: allMet('upright').map((f) => (f.part === 'grip' ? { ...f, result: 'not-met' as const } : f)),
  },
};

describe('as many people as were there', () => {
  it.each([
    [0, 'stand-by'],
    [1, 'one'],
    [2, 'two'],
    [3, 'three-or-more'],
    [6, 'three-or-more'],
  ] as const)('%i beside the person: %s', (count, people) => {
    expect(peopleUsed(count)).toBe(people);
  });
});

// Common practice, no source.
describe('how the person was held at standing or turning', () => {
  it.each([
    ['in a standing aid by one', by('standing-aid'), [['secured/keep', 'one', 'standing-aid']]],
    ['in a standing aid by nobody', by('standing-aid', 0), [['secured/keep', 'one', 'standing-aid']]],
    [
      'in a standing aid by three',
      by('standing-aid', 3),
      [['secured/keep', 'three-or-more', 'standing-aid']],
    ],
    ['by two people', by('two-people', 2), [['secured/keep', 'two']]],
    ['in a sling by one', by('sling'), [['secured/keep', 'two', 'sling-lift']]],
    ['not at all', {}, []],
  ] as const)('standing %s is what the transfer keeps', (_, stand, expected) => {
    expect(held(planInput(seenTo('stand', { stand })))).toEqual(expected);
  });
  it('is kept when standing was taken back since, and a free rise taken back keeps nothing', () => {
    const since = (stand: StageSays) =>
      planInput([
        ...seenTo('stand', { stand }),
        assessment(upTo('edge', { edge: notMet('sits') }), { at: 0.5 }),
      ]);
    // Nobody goes over the feet then: the people stay, the standing aid does not.
    expect(held(since(by('standing-aid', 2)))).toEqual([['secured/keep', 'two']]);
    expect(held(since(by('standing-aid', 1)))).toEqual([['secured/keep', 'one']]);
    expect(held(since({}))).toEqual([]);
  });
  it('leaves the people and not the standing aid where the way is a lift, not over the feet', () => {
    const input = planInput(seenTo('stand', { ...noGrip, stand: by('standing-aid') }));
    expect(held(input)).toEqual([['secured/keep', 'one']]);
    expect(help(input, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
  });
  it('when standing was tried and not met it takes two, and a sling when it was tried in a sling', () => {
    const tried = (how: StageSays) => planInput(seenTo('stand', { stand: { ...how, ...notMet('rises') } }));
    expect(held(tried({}))).toEqual([['ours/tried-and-not-met', 'two']]);
    expect(held(tried(by('standing-aid', 3)))).toEqual([['ours/tried-and-not-met', 'three-or-more']]);
    expect(held(tried(by('sling')))).toEqual([['ours/tried-and-not-met', 'two', 'sling-lift']]);
    expect(help(tried({}), 'bed-chair')).toEqual(['go', 'two', 'seated-transfer-aid']);
    expect(help(tried(by('sling')), 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
  });
});

describe('a standing aid for someone who does not follow instructions', () => {
  it('is none: standing held in it is a HOLD', () => {
    const stands = (followsInstructions: 'yes' | 'no') =>
      planInput([
        assessment(
          upTo('stand', { stand: by('standing-aid', 2) }),
          {},
          { cooperation: { waitsForHelp: 'yes', followsInstructions } },
        ),
      ]);
    expect(help(stands('yes'), 'stand')).toEqual(['go', 'two', 'standing-aid']);
    expect(help(stands('no'), 'stand')).toEqual(['hold', 'two', 'sling-lift']);
  });
});

describe('bearing full weight, but taken as partial', () => {
  const frame = (facts = walker, more: Bears = {}) =>
    planInput(facts, {
      walkingSupport: stated('frame' as const),
      orders: limbs({ ...more, 'right-arm': 'none' }),
    });
  const reason = (input: PlanInput, rule: string) => transferHelp(input).find((d) => d.because.rule === rule);
  it.each([
    ['before-the-tables/not-cooperating', planInput(uncooperative('waits'))],
    ['before-the-tables/turn-not-free', planInput(seenTo('stand'))],
    ['ours/arms', frame()],
  ])('%s asks for one person by itself, whatever the row says', (rule, input) => {
    expect(reason(input, rule)?.help).toEqual({ hold: false, people: 'one', aids: [] });
  });
  it('says so, when it is for a support that an order takes an arm from', () => {
    expect(reason(frame(), 'ours/arms')?.because).toEqual({
      rule: 'ours/arms',
      facts: ['o-right-arm'],
      words: 'Order: right arm bears nothing, and the frame needs it: ask; taken as partial (ours, practice)',
    });
  });
  it('lends nobody a leg: who bears nothing is lifted, whatever support an order forbids', () => {
    const sits = frame(seenTo('edge'));
    expect(help(sits, 'bed-chair')).toEqual(['go', 'two', 'sling-lift']);
    expect(reason(sits, 'ours/arms')).toBeUndefined();
  });
  it('is not said of a leg that bears in part anyway', () => {
    expect(reason(frame(walker, { 'left-leg': 'limited' }), 'ours/arms')).toBeUndefined();
    expect(reason(planInput(walker, { orders: leftLeg('limited') }), 'ours/arms')).toBeUndefined();
  });
});
