/** Two holds held against each other, and the reasons for which nobody is moved: design, section 1 (hold) and rule 2. */
import { describe, expect, it } from 'vitest';
import type { HoldView } from '../../board/moving-view.ts';
import { hold, hours, stayOf, type Told } from '../../board/rules/history.testkit.ts';
import { effectiveFacts } from '../../corrections/rules/effective.ts';
import { DEFAULT_RULES } from '../../wards/rules/rules-document.ts';
import { holdReason } from '../values.ts';
import { holdsAsMuch, holdsInForce, leavesBoneInDoubt } from './holds.ts';

/** The hold as it stands an hour after it was placed. */
function placed(says: { hold?: string; scope?: string; reason?: string }): HoldView {
  const { payload, ...rest } = hold(1, 'standing', 10);
  const told: Told = { ...rest, payload: { ...(payload as object), ...says } };
  const { facts } = effectiveFacts(stayOf(told));
  return holdsInForce(facts, hours(2), DEFAULT_RULES, () => undefined)[0]!;
}

describe('given a hold for one of the reasons a hold can have', () => {
  it.each(holdReason.options)(
    '%s: a bone is in doubt where a break is not ruled out, or after a fall',
    (reason) => {
      const inDoubt = reason === 'fracture-unclear' || reason === 'after-fall';
      expect(leavesBoneInDoubt(placed({ reason }))).toBe(inDoubt);
    },
  );
});

describe('given a hold on standing, does what a later entry makes of it hold as much?', () => {
  const was = (reason?: string) => placed(reason ? { reason } : {});
  it('yes, when it is the same hold, or one of the same id that stops more', () => {
    expect(holdsAsMuch(placed({}), was())).toBe(true);
    expect(holdsAsMuch(placed({ scope: 'out-of-bed' }), was())).toBe(true);
    expect(holdsAsMuch(placed({ scope: 'all-including-turning' }), was())).toBe(true);
  });
  it('no, when it stops less, or is another hold, however much that stops', () => {
    expect(holdsAsMuch(placed({ scope: 'walking' }), was())).toBe(false);
    expect(holdsAsMuch(placed({ hold: 'hold-2' }), was())).toBe(false);
    expect(holdsAsMuch(placed({ hold: 'hold-2', scope: 'all-including-turning' }), was())).toBe(false);
    expect(holdsAsMuch(placed({ hold: 'hold-2', reason: 'after-fall' }), was())).toBe(false);
    // Stopping less, it is no more for leaving a bone in doubt.
    expect(holdsAsMuch(placed({ scope: 'walking', reason: 'after-fall' }), was())).toBe(false);
  });
  it('no, when a bone was in doubt and is so no longer, at any scope', () => {
    expect(holdsAsMuch(placed({ reason: 'unstable' }), was('after-fall'))).toBe(false);
    expect(
      holdsAsMuch(placed({ scope: 'all-including-turning', reason: 'order' }), was('fracture-unclear')),
    ).toBe(false);
  });
  it('yes, when a bone is in doubt now, whether it was before or not', () => {
    expect(holdsAsMuch(placed({ reason: 'after-fall' }), was())).toBe(true);
    expect(holdsAsMuch(placed({ reason: 'after-fall' }), was('fracture-unclear'))).toBe(true);
  });
});
