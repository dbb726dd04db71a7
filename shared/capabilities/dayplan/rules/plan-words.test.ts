/** The plan of a stay as it is told to the ward that expects the person. Ours, practice. */
import { describe, expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, check, hold, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import type { TaskPlan } from '../../board/moving-view.ts';
import { planInWords } from './plan-words.ts';
import { at, known, MORNING, rowOf } from './round.testkit.ts';

const weighed = known[0]!;
const rowWith = (...told: readonly Told[]) => evaluateStay(stayOf(...told), ward, calendar, at(0)).view;

/** Somebody whose row says all that is asked about, with some of the moves planned in another way. */
function planned(moves: Partial<Record<TaskPlan['task'], Partial<TaskPlan>>>) {
  const row = rowOf(at(0));
  const day = row.plan!.day.map((plan) => ({ ...plan, ...moves[plan.task] }));
  return planInWords({ ...row, plan: { ...row.plan!, day } });
}

describe('how a person moved on the ward they come from', () => {
  it('given somebody seen walking freely, then bed to chair, toilet and walk are told, in that order', () => {
    expect(planInWords(rowOf(at(0)))).toEqual([
      'Bed to chair: stand by, no aid',
      'Toilet: stand by, no aid',
      'Walk: 1 person, no aid',
    ]);
  });

  it('given somebody who was lifted, then with how many and by which lift', () => {
    const [chair, toilet] = planInWords(rowWith(weighed, check('clear', MORNING - 0.5)));
    expect(chair).toBe('Bed to chair: 2 people, sling lift');
    expect(toilet).toBe('Toilet: 2 people, sling lift');
  });

  it.each<[TaskPlan['people'], TaskPlan['aid'], string]>([
    ['on-own', 'none', 'on own, no aid'],
    ['stand-by', 'walking-support', 'stand by, walking support'],
    ['one', 'seated-transfer-aid', '1 person, seated transfer aid'],
    ['two', 'standing-aid', '2 people, standing aid'],
    ['three-or-more', 'bariatric-lift', '3 people or more, bariatric lift'],
  ])(
    'given a move with %s and %s, then it is told as "%s", each move by its own plan',
    (people, aid, words) => {
      expect(planned({ toilet: { people, aid } })).toEqual([
        'Bed to chair: stand by, no aid',
        `Toilet: ${words}`,
        'Walk: 1 person, no aid',
      ]);
    },
  );

  it('given a hold on walking, then the walk alone is told as held', () => {
    const [chair, toilet, walk] = planInWords(rowOf(at(0), hold(MORNING - 0.2, 'walking', MORNING + 9)));
    expect(chair).toBe('Bed to chair: stand by, no aid');
    expect(toilet).toMatch(/^Toilet: (?!HOLD)/);
    expect(walk).toMatch(/^Walk: HOLD; \S/);
  });

  it('given somebody whom nobody checked there, then that is told first, and the moves as for one that cannot wait', () => {
    const [first, ...moves] = planInWords(rowWith(weighed));
    expect(first).toBe('Not checked there; if it could not wait');
    expect(moves.map((line) => line.split(':')[0])).toEqual(['Bed to chair', 'Toilet', 'Walk']);
  });

  it('given a plan that says nothing of a move, then nothing is told of it', () => {
    const row = rowOf(at(0));
    const day = row.plan!.day.filter(({ task }) => task === 'walk');
    expect(planInWords({ ...row, plan: { ...row.plan!, day } })).toEqual(['Walk: 1 person, no aid']);
  });

  it.each<[string, object]>([
    ['Comfort plan', { scope: 'comfort' }],
    ["Clinician's plan only", { scope: 'clinicians-plan', fence: 'traction', plan: { ref: 't' } }],
  ])('given what the board plans no moves for, then that alone is told: %s', (words, payload) => {
    expect(planInWords(rowOf(at(0), { type: 'scope-set', at: MORNING - 0.2, payload }))).toEqual([words]);
  });
});
