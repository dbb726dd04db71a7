/** Steps of the goal by the limits that a ward set. */
import { expect, it } from 'vitest';
import { evaluateStay } from '../../board/rules/evaluate-stay.ts';
import { calendar, hours, notDone, stayOf, ward, type Told } from '../../board/rules/history.testkit.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { did } from '../../board/rules/signs.testkit.ts';
import { chair, twice, walks } from './progression.testkit.ts';

it("the limits are the ward's own", () => {
  const rules = structuredClone(DEFAULT_RULES);
  rules.activity.stepUpSessions.value = 3;
  rules.activity.stepUpEffort.value = 6;
  rules.activity.stepBackMisses.value = 1;
  const look = (...told: readonly Told[]) =>
    evaluateStay(stayOf(...told), { ...ward, rules }, calendar, hours(25)).view.proposal;
  const hard = { effort: 6 };
  expect(look(walks, chair, ...twice('chair', hard))).toBeNull();
  const three = look(walks, chair, ...twice('chair', hard), did(19, 'chair', hard));
  expect(three?.sessions).toHaveLength(3);
  expect(three?.because[0]?.words).toBe(
    '3 sessions at goal in a row, effort 6 of 10 or less, nothing went wrong',
  );
  expect(look(walks, chair, notDone(15, 'said-no'))?.step).toBe('back');
});
