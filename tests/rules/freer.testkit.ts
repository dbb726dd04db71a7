/** What a property means by freer: between two views of one stay, in whatever a view can free. */
import type { TaskPlan } from '@footboard/shared/capabilities/board/moving-view';
import type { StayView } from '@footboard/shared/capabilities/board/view';
import { aidCovers, atLeast } from '@footboard/shared/capabilities/handling/rules/help';
import { holdScope } from '@footboard/shared/capabilities/orders/values';

const TRUST = ['current', 're-check', 'not-known'];

/** In what the view after asks for less help, or stops less, than the view before. */
export function freer(before: StayView, after: StayView, weighed = false): string[] {
  const found: string[] = [];
  const plans = (v: StayView): (TaskPlan & { when: string })[] =>
    (['day', 'night'] as const).flatMap((when) => (v.plan?.[when] ?? []).map((p) => ({ ...p, when })));
  const now = new Map(plans(after).map((p) => [`${p.when} ${p.task}`, p]));
  // The clinician's plan forbids what the staged check allows: nothing is freer under it.
  for (const was of after.scope.kind === 'clinicians-plan' ? [] : plans(before)) {
    const is = now.get(`${was.when} ${was.task}`);
    const less =
      !is ||
      (was.hold && !is.hold) ||
      !atLeast(is.people, was.people) ||
      // Under HOLD the aid shown is one of several that cannot be combined. A weight may lead to another
      // table with an aid of another kind (VA bariatric tables, rev. 2007): then it must not be a lesser one.
      (!is.hold &&
        !aidCovers(was.task, was.aid, is.aid) &&
        (!weighed || is.aid === 'none' || aidCovers(was.task, is.aid, was.aid)));
    if (less) found.push(`${was.when} ${was.task}: ${said(was)} became ${is ? said(is) : 'nothing'}`);
  }
  for (const hold of before.holds) {
    const still = after.holds.find((h) => h.hold === hold.hold);
    if (!still || holdScope.options.indexOf(still.scope) < holdScope.options.indexOf(hold.scope)) {
      found.push(`the hold ${hold.hold} went or narrowed`);
    }
  }
  for (const open of before.trust.openTriggers) {
    if (!after.trust.openTriggers.some((o) => o.event === open.event)) found.push(`${open.kind} was closed`);
  }
  if (TRUST.indexOf(after.trust.state) < TRUST.indexOf(before.trust.state)) {
    found.push(`trust went from ${before.trust.state} to ${after.trust.state}`);
  }
  const wider = (key: 'where' | 'when') => after.onOwn?.[key].some((x) => !before.onOwn?.[key].includes(x));
  if (wider('where') || wider('when')) found.push('"on own" widened');
  if ((after.tier.notch ?? -1) > (before.tier.notch ?? -1)) found.push(`tier rose to ${after.tier.word}`);
  if (before.checkBeforeMoving && !after.checkBeforeMoving) found.push('CHECK BEFORE MOVING went');
  if (before.firstTimeUpPending && !after.firstTimeUpPending) found.push('first time up went');
  if (before.attachments.some((x) => !after.attachments.some((y) => y.attachment === x.attachment))) {
    found.push('an attachment went');
  }
  return found;
}
const said = (p: TaskPlan) => `${p.hold ? 'HOLD ' : ''}${p.people} ${p.aid}`;
