/** Each answer about a person names the entry it was read from, so that whoever doubts it can look there. */
import { describe, expect, it } from 'vitest';
import { allMet, assessment, notMet, upTo } from '../../assessments/rules/assessment.testkit.ts';
import type { StageSays } from '../../assessments/rules/assessment.testkit.ts';
import type { Task } from '../values.ts';
import { baseHelp } from './base-help.ts';
import { limbs, planInput } from './plan.testkit.ts';
import type { PlanInput } from './types.ts';

const check = (last: string, says: Record<string, StageSays> = {}, cooperates = true) => [
  assessment(
    upTo(last, says),
    { id: 'check' },
    { cooperation: { waitsForHelp: cooperates ? 'yes' : 'no', followsInstructions: 'yes' } },
  ),
];
const facts = (task: Task, input: PlanInput, rule: string, words = '') =>
  baseHelp(task, input)
    .filter((d) => d.because.rule === rule && d.because.words.includes(words))
    .map((d) => d.because.facts);

const free = planInput(check('walk'));
const waitsForNobody = planInput(check('walk', {}, false));
const inSling = planInput(check('stand', { stand: { how: 'secured', securedWith: 'sling', people: 1 } }));
const heldAtStanding = planInput(
  check('turn', { stand: { how: 'secured', securedWith: 'standing-aid', people: 1 } }),
);
const helpedByOne = planInput(check('walk', { edge: { people: 1 }, walk: { people: 1 } }));
const noPush = { findings: allMet('upright').filter((f) => f.part !== 'arm-pushes') };
const slides = check('edge', { upright: noPush, edge: { people: 1 } });
// The ward day of these tests turns 23 h after the check.
const nextDay = 23;

describe('given one check, the plan names it', () => {
  it.each<[string, Task, PlanInput, string, string]>([
    ['for moving up in bed', 'in-bed', free, 'osha-3182/figure-4', ''],
    ['for the edge of the bed', 'edge-of-bed', free, 'ours/edge-of-bed', ''],
    ['for one within reach', 'walk', waitsForNobody, 'ours/does-not-wait', ''],
    ['for a stand in a sling', 'stand', inSling, 'secured/keep', 'Stood in a sling'],
    [
      'for as many as at the stand',
      'stand',
      heldAtStanding,
      'secured/keep',
      'As many people as at the check',
    ],
    ['for as many as at the walk', 'walk', helpedByOne, 'ours/walk', 'As many people as at the check'],
    ['for no rise from the floor', 'from-floor', helpedByOne, 'ours/from-floor', ''],
    ['for how standing was held', 'bed-chair', heldAtStanding, 'secured/keep', 'Standing was held safe'],
    ['for not waiting', 'bed-chair', waitsForNobody, 'before-the-tables/not-cooperating', ''],
    ['for a turn not free', 'bed-chair', heldAtStanding, 'before-the-tables/turn-not-free', ''],
    [
      'for a seat that does not hold',
      'bed-chair',
      planInput(check('edge'), {}, nextDay),
      'before-the-tables/fit-for-the-aid',
      '',
    ],
    [
      'for no seated aid in the chair',
      'in-chair',
      planInput(slides, {}, nextDay),
      'before-the-tables/fit-for-the-aid',
      '',
    ],
  ])('%s', (_, task, input, rule, words) => {
    expect(facts(task, input, rule, words)).toEqual([['check']]);
  });
  it('and says of someone held at the edge why no seated aid holds in the chair', () => {
    const edge = { how: 'secured', securedWith: 'two-people', people: 2 } as const;
    const held = planInput(check('edge', { edge }), { orders: limbs({}, ['sternum']) });
    const words = 'Held safe at the edge of the bed: counts as no sitting balance';
    expect(facts('in-chair', held, 'capability/sitting-balance', words)).toEqual([['check']]);
  });
  it('of two, the one in which sitting unheld was not met, whatever came after', () => {
    const since = assessment(upTo('edge', { edge: { findings: [] } }), { at: 0.5, id: 'since' });
    const input = planInput([...check('edge', { edge: notMet('sits-hands-free') }), since]);
    const said = input.capability.because.filter((b) => b.rule === 'capability/sitting-balance');
    expect(said.map((b) => b.facts)).toEqual([['check']]);
  });
});
